using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.People;

/// <summary>Who may be exposed.</summary>
public enum Population
{
    /// <summary>Anyone: neighbours, family, visitors.</summary>
    Public,

    /// <summary>People who know of the exposure and can control it.</summary>
    Occupational,
}

/// <summary>A published set of limits.</summary>
public enum ExposureRule
{
    /// <summary>47 CFR 1.1310, table 1.</summary>
    Fcc1310,

    /// <summary>ICNIRP 2020 reference levels, whole body, averaged over 30 minutes.</summary>
    IcnirpWholeBody,

    /// <summary>ICNIRP 2020 reference levels, local exposure, averaged over 6 minutes.</summary>
    IcnirpLocal,

    /// <summary>ICNIRP limits against nerve stimulation, 100 kHz to 10 MHz, never averaged.</summary>
    IcnirpStimulation,
}

/// <summary>One set of limits at one frequency.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Population">For whom.</param>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="ElectricVPerM">Limit of the electric field, rms, in V/m.</param>
/// <param name="MagneticAPerM">Limit of the magnetic field, rms, in A/m.</param>
/// <param name="AveragingS">Averaging time in seconds; 0 when the limit holds at every instant.</param>
public sealed record ExposureLimit(
    ExposureRule Rule, Population Population, double FrequencyHz, Trail ElectricVPerM, Trail MagneticAPerM, double AveragingS)
{
    /// <summary>Whether the limit may be met on average over <see cref="AveragingS"/>.</summary>
    public bool Averages => AveragingS > 0;
}

/// <summary>
/// Limits of human exposure to radio-frequency fields, as published. The edition is named on every number; which of them is law is for the reader's
/// own country to say.
/// </summary>
public static class ExposureLimits
{
    private static readonly Source Fcc = Source.Standard("47 CFR 1.1310, Radiofrequency radiation exposure limits, table 1", "as reprinted");
    private static readonly Source Whole = Source.FromMemory("ICNIRP Guidelines for limiting exposure to electromagnetic fields, table 5", "2020");
    private static readonly Source Local = Source.Literature("ICNIRP Guidelines 2020, table 6, as given in Bioelectromagnetism (handbook), table 7.8", "2020");
    private static readonly Source Stimulation = Source.FromMemory("ICNIRP Guidelines 2010 and 2020, limits against nerve stimulation (table 8)", "2020");

    /// <summary>Every set of limits that exists at a frequency, for a population.</summary>
    /// <param name="population">For whom.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public static ImmutableArray<ExposureLimit> All(Population population, double frequencyHz) =>
    [
        .. Enum.GetValues<ExposureRule>().Select(r => For(r, population, frequencyHz)).OfType<ExposureLimit>(),
    ];

    /// <summary>One set of limits at a frequency; null where the rule has none.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="population">For whom.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public static ExposureLimit? For(ExposureRule rule, Population population, double frequencyHz)
    {
        var f = frequencyHz / 1e6;
        var occupational = population == Population.Occupational;
        return rule switch
        {
            ExposureRule.Fcc1310 => FccLimit(f, occupational),
            ExposureRule.IcnirpWholeBody when f is >= 0.1 and <= 30 => occupational
                ? Limit(660 / Math.Pow(f, 0.7), 4.9 / f, "E = 660/f^0.7, H = 4.9/f, f in MHz", Whole, 30)
                : Limit(300 / Math.Pow(f, 0.7), 2.2 / f, "E = 300/f^0.7, H = 2.2/f, f in MHz", Whole, 30),
            ExposureRule.IcnirpLocal when f is >= 0.1 and <= 30 => occupational
                ? Limit(1504 / Math.Pow(f, 0.7), 10.8 / f, "E = 1504/f^0.7, H = 10.8/f, f in MHz", Local, 6)
                : Limit(671 / Math.Pow(f, 0.7), 4.9 / f, "E = 671/f^0.7, H = 4.9/f, f in MHz", Local, 6),
            ExposureRule.IcnirpStimulation when f is >= 0.1 and <= 10 => occupational
                ? Limit(170, 80, "constant from 0.1 to 10 MHz", Stimulation, 0)
                : Limit(83, 21, "constant from 0.1 to 10 MHz", Stimulation, 0),
            _ => null,
        };

        ExposureLimit Limit(double e, double h, string formula, Source source, double minutes) => new(
            rule, population, frequencyHz,
            Field("electric field limit", "Elim", e, QuantityKind.ElectricField, formula, source),
            Field("magnetic field limit", "Hlim", h, QuantityKind.MagneticField, formula, source),
            60 * minutes);

        Trail Field(string name, string symbol, double value, QuantityKind kind, string formula, Source source) =>
            Trail.Computed(name, symbol, value, kind, formula, source, Trail.Given("frequency", "f", frequencyHz, QuantityKind.Frequency, Source.DesignFile));

        ExposureLimit? FccLimit(double mhz, bool occ)
        {
            var minutes = occ ? 6 : 30;
            var flatTo = occ ? 3.0 : 1.34;
            if (mhz is < 0.3 or > 300)
                return null;
            if (mhz <= flatTo)
                return Limit(614, 1.63, "E = 614 V/m, H = 1.63 A/m", Fcc, minutes);
            if (mhz <= 30)
            {
                return occ
                    ? Limit(1842 / mhz, 4.89 / mhz, "E = 1842/f, H = 4.89/f, f in MHz", Fcc, minutes)
                    : Limit(824 / mhz, 2.19 / mhz, "E = 824/f, H = 2.19/f, f in MHz", Fcc, minutes);
            }

            return occ
                ? Limit(61.4, 0.163, "E = 61.4 V/m, H = 0.163 A/m", Fcc, minutes)
                : Limit(27.5, 0.073, "E = 27.5 V/m, H = 0.073 A/m", Fcc, minutes);
        }
    }

    /// <summary>The name of a rule as a reader knows it.</summary>
    public static string Name(ExposureRule rule) => rule switch
    {
        ExposureRule.Fcc1310 => "47 CFR 1.1310",
        ExposureRule.IcnirpWholeBody => "ICNIRP 2020, whole body",
        ExposureRule.IcnirpLocal => "ICNIRP 2020, local",
        _ => "ICNIRP 2020, nerve stimulation",
    };
}
