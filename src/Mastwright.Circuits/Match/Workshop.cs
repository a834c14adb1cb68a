using System.Collections.Immutable;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Quantities;

namespace Mastwright.Circuits.Match;

/// <summary>The room and the stock a network is built from.</summary>
/// <param name="Capacitors">Capacitors that can be had.</param>
/// <param name="CoilDiameterM">Width of the room for each coil, metres.</param>
/// <param name="CoilLengthM">Length of the room for each coil, metres.</param>
public sealed record Workshop(ImmutableArray<CapacitorItem> Capacitors, double CoilDiameterM = 0.25, double CoilLengthM = 0.4)
{
    /// <summary>Average over peak power of the mode.</summary>
    public double DutyRatio { get; init; } = 1;

    /// <summary>Crest with modulation over the crest at the stated power: 1 for speech at its peak envelope power, 2 for amplitude modulation counted from the carrier.</summary>
    public double PeakFactor { get; init; } = 1;

    /// <summary>Share of its free-air Q that a coil keeps when installed (common practice, no source: half).</summary>
    public double InstalledQShare { get; init; } = 0.5;

    /// <summary>Capacitors already at hand, for the network's capacitors from the line on; empty to choose from the stock.</summary>
    public ImmutableArray<CapacitorItem> Own { get; init; } = [];

    /// <summary>Wires and tubes to wind from, metres; the usual ones when null.</summary>
    public ImmutableArray<double>? WiresM { get; init; }

    /// <summary>What a capacitor of a solved network must do.</summary>
    /// <param name="farad">Capacitance, farads.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="state">The part in the solution at the stated power.</param>
    internal CapacitorDuty Duty(double farad, double frequencyHz, PartState state) => new(farad, frequencyHz, state.PeakVoltage, state.HighestCurrent, DutyRatio, PeakFactor);

    /// <summary>The coil wanted for an inductance: as good as the design counted on, and no bigger than that takes.</summary>
    /// <param name="henry">Inductance, henries.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="current">RMS current at full power.</param>
    /// <param name="counted">What the design counted on.</param>
    internal CoilWish Wish(double henry, double frequencyHz, RmsAmps current, PartQuality counted)
    {
        var q = 2 * Math.PI * frequencyHz * henry / counted.Coil.ResistanceOhm(henry, frequencyHz);
        var wish = new CoilWish(henry, frequencyHz, current, CoilDiameterM, CoilLengthM)
        {
            DutyRatio = DutyRatio,
            PeakFactor = PeakFactor,
            InstalledQShare = InstalledQShare,
            LeastQ = double.IsFinite(q) ? q : null,
        };
        return WiresM is { } wires ? wish with { WiresM = wires } : wish;
    }
}
