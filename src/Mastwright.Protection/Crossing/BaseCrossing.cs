using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Crossing;

/// <summary>A band at the base.</summary>
/// <param name="Name">Name.</param>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="BaseImpedanceOhm">Impedance of the mast without the crossing.</param>
/// <param name="PowerW">Power at the base in watts.</param>
/// <param name="PeakFactor">Crest with modulation over the crest at that power: 1 for speech at its peak envelope power, 2 for amplitude modulation counted from the carrier.</param>
public sealed record CrossingBand(string Name, double FrequencyHz, Complex BaseImpedanceOhm, double PowerW, double PeakFactor = 1);

/// <summary>What a crossing does to one band.</summary>
/// <param name="Band">Name of the band.</param>
/// <param name="CrossingR">Resistance of the crossing.</param>
/// <param name="CrossingX">Reactance of the crossing.</param>
/// <param name="BaseR">Resistance of base and crossing together.</param>
/// <param name="BaseX">Reactance of base and crossing together.</param>
/// <param name="LossW">Power lost in the crossing.</param>
/// <param name="DetuningRatio">Size of the reflection between the base without and with the crossing, 0 when it does nothing.</param>
/// <param name="VoltagePeakV">Crest across it at full power, modulation counted.</param>
public sealed record CrossingEffect(string Band, Trail CrossingR, Trail CrossingX, Trail BaseR, Trail BaseX, Trail LossW, Trail DetuningRatio, Trail VoltagePeakV);

/// <summary>A crossing judged on every band and in a strike.</summary>
/// <param name="Effects">Effect on each band.</param>
/// <param name="Checks">Loss, detuning, working voltage, strike voltage.</param>
/// <param name="StrikePath">What a strike does on it, in words.</param>
/// <param name="StrikeVoltPerTurn">Voltage between turns in a strike if it divided evenly (a coil only).</param>
public sealed record CrossingAnswer(ImmutableArray<CrossingEffect> Effects, ImmutableArray<Check> Checks, string StrikePath, Trail? StrikeVoltPerTurn);

/// <summary>Judges cables that cross the base.</summary>
public static class BaseCrossing
{
    /// <summary>Greatest loss and greatest reflection that pass without remark.</summary>
    public const double AllowedLossShare = 0.01;

    /// <summary>Reflection between base with and without the crossing that a network easily takes up: SWR 1.22.</summary>
    public const double AllowedDetuning = 0.1;

    private static readonly Source Page = Source.Derived("docs/theory/cables-across-base.md");

    /// <summary>Judges one crossing.</summary>
    /// <param name="device">The crossing.</param>
    /// <param name="bands">Every band used.</param>
    /// <param name="strikePeakV">Peak voltage across the base in a strike, from the simulation; null to leave the strike out.</param>
    public static CrossingAnswer Judge(CrossingDevice device, ImmutableArray<CrossingBand> bands, Trail? strikePeakV)
    {
        var effects = bands.Select(b => Effect(device, b)).ToImmutableArray();
        var checks = ImmutableArray.CreateBuilder<Check>();
        foreach (var (band, effect) in bands.Zip(effects))
        {
            checks.Add(Check.AtMost($"survive.crossing.loss[{device.Name}, {band.Name}]", Trade.Survive, $"{device.Name} costs little power on {band.Name}", effect.LossW,
                Trail.Computed("allowed loss", "Pa", AllowedLossShare * band.PowerW, QuantityKind.Power, "Pa = 1 % of P", Source.CommonPractice), band.Name,
                "Raise its impedance on this band: a larger coil of higher Q, or a trap tuned for it."));
            checks.Add(Check.AtMost($"survive.crossing.detuning[{device.Name}, {band.Name}]", Trade.Survive, $"{device.Name} hardly detunes {band.Name}", effect.DetuningRatio,
                Trail.Given("reflection taken up by the network", "ρa", AllowedDetuning, QuantityKind.Ratio, Source.CommonPractice), band.Name,
                "Match with the crossing in place, or raise its impedance on this band."));
            if (device.StrengthPeakV is { } strength)
            {
                checks.Add(Check.AtMost($"survive.crossing.voltage[{device.Name}, {band.Name}]", Trade.Survive, $"{device.Name} holds the base voltage of {band.Name}", effect.VoltagePeakV,
                    Trail.Given("strength across it", "Us", strength, QuantityKind.PeakVoltage, Source.DesignFile), band.Name, "Fit a stronger one."));
            }
        }

        if (strikePeakV is not null && device.StrengthPeakV is { } hold)
        {
            checks.Add(Check.AtMost($"survive.crossing.strike[{device.Name}]", Trade.Survive, $"{device.Name} holds until the gap fires", strikePeakV,
                Trail.Given("strength across it", "Us", hold, QuantityKind.PeakVoltage, Source.DesignFile), "strike", "Narrow the base gap, shorten its straps, or fit a gap of its own beside it.",
                Lightning.StrikeCautions.Storm));
        }

        var perTurn = device is CoilCrossing coil && strikePeakV is not null
            ? Trail.Computed("strike voltage between turns", "Ut", strikePeakV.Value / coil.Turns, QuantityKind.PeakVoltage, "Ut = U/N", Page, strikePeakV,
                Trail.Given("turns", "N", coil.Turns, QuantityKind.Count, Source.DesignFile)).Remark("A steep front crowds onto the first turns: several times this between them.")
            : null;
        return new(effects, checks.ToImmutable(), device.StrikePath, perTurn);
    }

    private static CrossingEffect Effect(CrossingDevice device, CrossingBand band)
    {
        var crossing = device.ImpedanceOhm(band.FrequencyHz);
        var alone = band.BaseImpedanceOhm;
        var both = 1 / ((1 / crossing) + (1 / alone));
        // P = |U|² Re(1/Z) for the two in parallel.
        var volts2 = band.PowerW / (1 / both).Real;
        var loss = volts2 * (1 / crossing).Real;
        // Power-wave reflection between two impedances: |(Z2 − Z1*)/(Z2 + Z1)| is 0 for a conjugate match kept; here the network was matched to the mast alone.
        var reflection = Complex.Abs((both - alone) / (both + Complex.Conjugate(alone)));
        var f = Trail.Given("frequency", "f", band.FrequencyHz, QuantityKind.Frequency, Source.DesignFile);
        var r = Trail.Computed("crossing resistance", "Rx", crossing.Real, QuantityKind.Resistance, device.Formula, Page, f);
        var x = Trail.Computed("crossing reactance", "Xx", crossing.Imaginary, QuantityKind.Resistance, device.Formula, Page, f);
        var br = Trail.Given("base resistance", "Rb", alone.Real, QuantityKind.Resistance, Source.DesignFile);
        var bx = Trail.Given("base reactance", "Xb", alone.Imaginary, QuantityKind.Resistance, Source.DesignFile);
        var power = Trail.Given("power", "P", band.PowerW, QuantityKind.Power, Source.DesignFile);
        return new(band.Name, r, x,
            Trail.Computed("base resistance with crossing", "R", both.Real, QuantityKind.Resistance, "Z = 1/(1/Zb + 1/Zx)", Page, br, bx, r, x),
            Trail.Computed("base reactance with crossing", "X", both.Imaginary, QuantityKind.Resistance, "Z = 1/(1/Zb + 1/Zx)", Page, br, bx, r, x),
            Trail.Computed("loss in the crossing", "Px", loss, QuantityKind.Power, "Px = P·Re(1/Zx)/Re(1/Z)", Page, power, r, x, br, bx),
            Trail.Computed("reflection", "ρ", reflection, QuantityKind.Ratio, "ρ = |(Z − Zb)/(Z + Zb*)|", Page, r, x, br, bx),
            Trail.Computed("crest across the crossing", "Ux", band.PeakFactor * Math.Sqrt(2 * volts2), QuantityKind.PeakVoltage, "Ux = m·√(2·P/Re(1/Z))", Page, power, r, x, br, bx,
                Trail.Given("crest with modulation over that at the stated power", "m", band.PeakFactor, QuantityKind.Ratio, Source.DesignFile)));
    }
}
