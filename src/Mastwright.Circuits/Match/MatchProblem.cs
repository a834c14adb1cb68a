using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>What is to be matched: a load, a line, a frequency, a power and the quality of the parts.</summary>
/// <param name="Load">The antenna at its base, one port.</param>
/// <param name="LineOhm">Impedance of the line, ohms.</param>
/// <param name="FrequencyHz">Design frequency, hertz.</param>
/// <param name="PowerW">Transmitter power, watts.</param>
/// <param name="Quality">How good the parts are.</param>
public sealed record MatchProblem(LoadImpedance Load, double LineOhm, double FrequencyHz, double PowerW, PartQuality Quality)
{
    /// <summary>Lowest and highest frequency wanted, hertz; null when only the design frequency matters.</summary>
    public (double LowHz, double HighHz)? Band { get; init; }

    /// <summary>Capacitance of the base insulator and its fittings across the load, farads.</summary>
    public double BaseShuntF { get; init; }

    /// <summary>Loss of that capacitance.</summary>
    public CapacitorLoss BaseShuntLoss { get; init; } = CapacitorLoss.None;

    /// <summary>Kinds of line at hand for line transformers and stubs.</summary>
    public ImmutableArray<LineType> Lines { get; init; } = LineStock.Usual;

    /// <summary>Coupling coefficient reached in a two-winding transformer (common practice, no source).</summary>
    public double TransformerCoupling { get; init; } = 0.98;

    /// <summary>Price of a section in the price file's currency; null when prices are unknown.</summary>
    public Func<LadderSection, double?>? PriceOf { get; init; }

    /// <summary>What the network has to match at the design frequency: the load with the insulator's capacitance across it.</summary>
    public Complex TargetOhm
    {
        get
        {
            var z = Load.At(FrequencyHz)[0, 0];
            return BaseShuntF == 0 ? z : 1 / ((1 / z) + new Complex(0, 2 * Math.PI * FrequencyHz * BaseShuntF));
        }
    }

    /// <summary>Angular frequency, radians per second.</summary>
    internal double Omega => 2 * Math.PI * FrequencyHz;

    /// <summary>The line of the stock with the feed line's impedance, or a lossless one when there is none.</summary>
    internal LineType FeedType => Lines.FirstOrDefault(l => Math.Abs((l.CharacteristicOhm / LineOhm) - 1) < 0.01) ?? LineStock.Ideal(LineOhm);

    /// <summary>Everything that makes the problem unsolvable; empty when it can be tried.</summary>
    public ImmutableArray<Finding> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<Finding>();
        void Need(bool ok, string code, string message, double value, string allowed, string wayOut)
        {
            if (!ok)
                faults.Add(new(code, Severity.Error, message, Value: FormattableString.Invariant($"{value:G6}"), Allowed: allowed, WayOut: wayOut));
        }

        Need(LineOhm is > 0 and < double.PositiveInfinity, "match-line", "The line impedance cannot be matched to.", LineOhm, "above 0 Ω", "Give the line's characteristic impedance, usually 50 Ω.");
        Need(FrequencyHz is > 0 and < double.PositiveInfinity, "match-frequency", "The frequency is not usable.", FrequencyHz, "above 0 Hz", "Give the design frequency.");
        Need(PowerW is > 0 and < double.PositiveInfinity, "match-power", "The power is not usable.", PowerW, "above 0 W", "Give the transmitter's power.");
        Need(Load.Ports == 1, "match-ports", "A matching network takes one port; this load has more.", Load.Ports, "1", "Match each port at its drive impedance in the group.");
        if (faults.Count > 0)
            return faults.ToImmutable();

        var r = Load.At(FrequencyHz)[0, 0].Real;
        Need(r != 0, "match-no-resistance", "The load has no resistance, so it cannot take power and nothing lossless can match it.", r, "R above 0 Ω", "Check the antenna model: a real antenna radiates and has earth loss.");
        Need(r >= 0, "match-negative-resistance", "The load gives power back: its resistance is negative.", r, "R above 0 Ω", "Check the impedance; in a group an element can do this, and then its power must be taken out of it by the phasing network.");
        return faults.ToImmutable();
    }
}
