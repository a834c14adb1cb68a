using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>A group of masts to be driven with stated currents.</summary>
/// <param name="Load">The group's impedance matrix, one port a mast.</param>
/// <param name="Currents">Wanted base currents, one a mast; only their ratios matter.</param>
/// <param name="LineOhm">Impedance of the line from the transmitter, ohms.</param>
/// <param name="FrequencyHz">Design frequency, hertz.</param>
/// <param name="PowerW">Transmitter power, watts.</param>
/// <param name="Quality">How good the parts are.</param>
public sealed record GroupProblem(LoadImpedance Load, ImmutableArray<Complex> Currents, double LineOhm, double FrequencyHz, double PowerW, PartQuality Quality)
{
    /// <summary>The line used from the phasing box to the masts.</summary>
    public LineType Feeder { get; init; } = LineStock.Coax75;

    /// <summary>The shortest length of feeder that reaches each mast, metres; zero when they need not reach.</summary>
    public double ReachM { get; init; }

    /// <summary>Length of feeder to each mast where the lengths are given, metres; null to use <see cref="ReachM"/> for all.</summary>
    public ImmutableArray<double>? FeederLengthsM { get; init; }

    /// <summary>Number of masts.</summary>
    public int Masts => Currents.Length;

    /// <summary>Length of feeder to a mast, metres.</summary>
    internal double FeederM(int mast) => FeederLengthsM is { } lengths ? lengths[mast] : ReachM;

    /// <summary>Angular frequency, radians per second.</summary>
    internal double Omega => 2 * Math.PI * FrequencyHz;

    /// <summary>The mast with the largest wanted current, against which the others are judged.</summary>
    public int Reference => Enumerable.Range(0, Masts).MaxBy(k => Currents[k].Magnitude);

    /// <summary>Name of the hot node at a mast, counted from zero.</summary>
    public static string MastNode(int mast) => $"mast{mast + 1}";

    /// <summary>The group as a part hanging on its mast nodes.</summary>
    internal MultiportLoad Antenna() => new("ANT", [.. Enumerable.Range(0, Masts).Select(k => (MastNode(k), Network.Ground))], Load);

    /// <summary>Everything that makes the problem unsolvable; empty when it can be tried.</summary>
    public ImmutableArray<Finding> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<Finding>();
        if (Masts < 2 || Load.Ports != Masts)
            faults.Add(new("group-size", Severity.Error, "Currents and impedance matrix must be given for the same two or more masts.", Value: $"{Masts} currents, {Load.Ports} ports", WayOut: "Give one current for each mast."));
        else if (Currents.Any(i => !Complex.IsFinite(i)) || Currents.All(i => i == Complex.Zero))
            faults.Add(new("group-currents", Severity.Error, "The wanted currents must be finite and not all nothing.", WayOut: "Give each current as a ratio and an angle."));
        else if (!Load.IsPassive(FrequencyHz))
            faults.Add(new("group-active-load", Severity.Error, "The impedance matrix gives power back for some currents: no real group does.", WayOut: "Check the antenna model; mutual resistances may not exceed the self resistances."));
        if (FeederLengthsM is { } lengths && (lengths.Length != Masts || lengths.Any(l => !(l >= 0) || !double.IsFinite(l))))
            faults.Add(new("group-feeders", Severity.Error, "Feeder lengths must be given for every mast and may not be negative.", WayOut: "Give one length for each mast, or leave them out."));
        if (!(LineOhm > 0) || !(FrequencyHz > 0) || !(PowerW > 0))
            faults.Add(new("group-numbers", Severity.Error, "Line impedance, frequency and power must be above zero.", WayOut: "Give all three."));
        return faults.ToImmutable();
    }
}
