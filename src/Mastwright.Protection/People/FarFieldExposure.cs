using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using static System.FormattableString;

namespace Mastwright.Protection.People;

/// <summary>How the ground is counted in the far-field estimate of OET Bulletin 65.</summary>
public enum GroundReflection
{
    /// <summary>No reflection: the antenna's gain already holds the ground, as a gain computed over ground does.</summary>
    InGain,

    /// <summary>Field 1.6 times the free-space field (power 2.56): typical ground.</summary>
    Typical,

    /// <summary>Field doubled (power 4): the worst case.</summary>
    Worst,
}

/// <summary>What is transmitted.</summary>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="PeakEnvelopeW">Power into the antenna at the peak of the envelope, in watts.</param>
/// <param name="Gain">Power gain over an isotropic antenna towards the person, a plain ratio (not dB).</param>
/// <param name="ModeDuty">Average over peak-envelope power of the mode, above 0 to 1: 1 FM and digital, about 0.4 telegraphy, about 0.2 speech without a compressor.</param>
/// <param name="TransmitFraction">Greatest share of the averaging time spent transmitting, above 0 to 1.</param>
public sealed record Emission(double FrequencyHz, double PeakEnvelopeW, double Gain, double ModeDuty = 1, double TransmitFraction = 1)
{
    /// <summary>Power that counts against a limit: averaged when the limit averages, the peak envelope when it holds at every instant.</summary>
    public Trail CountingPower(ExposureLimit limit)
    {
        var peak = Trail.Given("peak envelope power", "P", PeakEnvelopeW, QuantityKind.Power, Source.DesignFile);
        if (!limit.Averages)
            return Trail.Computed("power at any instant", "Pc", PeakEnvelopeW, QuantityKind.Power, "Pc = P", Source.Derived("docs/theory/exposure.md"), peak);
        return Trail.Computed("average power", "Pc", PeakEnvelopeW * ModeDuty * TransmitFraction, QuantityKind.Power, "Pc = P·d·a", Source.Derived("docs/theory/exposure.md"),
            peak,
            Trail.Given("duty factor of the mode", "d", ModeDuty, QuantityKind.Ratio, Source.DesignFile),
            Trail.Given("share of the averaging time on the air", "a", TransmitFraction, QuantityKind.Ratio, Source.DesignFile));
    }
}

/// <summary>The distance at which the far-field estimate falls to one limit.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="DistanceM">The distance from the antenna in metres, with its trail.</param>
public sealed record ExposureDistance(ExposureLimit Limit, Trail DistanceM);

/// <summary>
/// The far-field distance estimate of FCC OET Bulletin 65, S = F² P G/(4π R²), read as E = F √(30 P G)/R.
/// Near a mast for the low bands it is no proof: within about half a wavelength the electric and the magnetic field must be found apart,
/// with a solved near field.
/// </summary>
public static class FarFieldExposure
{
    /// <summary>What must stand beside every figure from this estimate.</summary>
    public const string Caution =
        "Close to a mast the electric and the magnetic field each have their own limit and must be computed or measured apart. " +
        "Touching a mast, guy or fence in a strong field can burn at any of these distances. Follow the rules of your country.";

    private static readonly Source Oet65 = Source.FromMemory("FCC OET Bulletin 65, Evaluating compliance with FCC guidelines", "97-01");

    /// <summary>Plane-wave power density in W/m² at a distance in metres.</summary>
    public static Trail PowerDensity(double averageW, double gain, double distanceM, GroundReflection ground)
    {
        var factor = FieldFactor(ground);
        return Trail.Computed("power density", "S", factor * factor * averageW * gain / (4 * Math.PI * distanceM * distanceM), QuantityKind.PowerDensity,
            "S = F²·P·G/(4π·R²)", Oet65,
            Trail.Given("ground reflection factor", "F", factor, QuantityKind.Ratio, Oet65),
            Trail.Given("average power", "P", averageW, QuantityKind.Power, Source.DesignFile),
            Trail.Given("gain", "G", gain, QuantityKind.Ratio, Source.DesignFile),
            Trail.Given("distance", "R", distanceM, QuantityKind.Length, Source.DesignFile));
    }

    /// <summary>Distance to every limit that exists at the frequency, largest first.</summary>
    public static ImmutableArray<ExposureDistance> Distances(Emission emission, Population population, GroundReflection ground = GroundReflection.Typical) =>
    [
        .. ExposureLimits.All(population, emission.FrequencyHz)
            .Select(limit => Distance(emission, limit, ground))
            .OrderByDescending(d => d.DistanceM.Value),
    ];

    /// <summary>Distance to one limit. Both fields are held against their limits with a plane wave's ratio of 376.73 Ω, and the larger distance is kept.</summary>
    public static ExposureDistance Distance(Emission emission, ExposureLimit limit, GroundReflection ground = GroundReflection.Typical)
    {
        var power = emission.CountingPower(limit);
        var factor = FieldFactor(ground);
        var product = factor * Math.Sqrt(30 * power.Value * emission.Gain); // V
        var byElectric = product / limit.ElectricVPerM.Value;
        var byMagnetic = product / Vacuum.WaveImpedanceOhm / limit.MagneticAPerM.Value;
        var electric = byElectric >= byMagnetic;
        var distance = Math.Max(byElectric, byMagnetic);
        var halfWave = 0.5 * Vacuum.WavelengthM(emission.FrequencyHz);
        var trail = Trail.Computed($"distance to {ExposureLimits.Name(limit.Rule)}", "R", distance, QuantityKind.Length,
            electric ? "R = F·√(30·Pc·G)/Elim" : "R = F·√(30·Pc·G)/(377 Ω·Hlim)", Oet65,
            Trail.Given("ground reflection factor", "F", factor, QuantityKind.Ratio, Oet65),
            power,
            Trail.Given("gain", "G", emission.Gain, QuantityKind.Ratio, Source.DesignFile),
            electric ? limit.ElectricVPerM : limit.MagneticAPerM);
        return new(limit, trail.Within("more than half a wavelength from the antenna", distance < halfWave
            ? Invariant($"The distance is inside half a wavelength ({halfWave:0.#} m): a far-field estimate is no proof there, E and H must be found apart.") : null));
    }

    private static double FieldFactor(GroundReflection ground) => ground switch
    {
        GroundReflection.InGain => 1,
        GroundReflection.Typical => 1.6,
        _ => 2,
    };
}
