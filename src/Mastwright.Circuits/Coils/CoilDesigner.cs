using System.Collections.Immutable;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Coils;

/// <summary>The coil wanted.</summary>
/// <param name="InductanceH">Inductance, henries.</param>
/// <param name="FrequencyHz">Working frequency, hertz.</param>
/// <param name="Current">RMS current at full power.</param>
/// <param name="BoxDiameterM">Width of the room for the winding, metres.</param>
/// <param name="BoxLengthM">Length of the room for the winding, metres.</param>
public sealed record CoilWish(double InductanceH, double FrequencyHz, RmsAmps Current, double BoxDiameterM, double BoxLengthM)
{
    /// <summary>Wire and tube diameters at hand, metres.</summary>
    public ImmutableArray<double> WiresM { get; init; } = [1.5e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6e-3, 8e-3, 10e-3];

    /// <summary>Winding diameters that can be wound, metres, centre of wire to centre of wire.</summary>
    public ImmutableArray<double> DiametersM { get; init; } = [0.03, 0.04, 0.05, 0.06, 0.075, 0.09, 0.1, 0.11, 0.125, 0.15, 0.175, 0.2, 0.25, 0.3];

    /// <summary>Pitch over wire diameter to try.</summary>
    public ImmutableArray<double> PitchRatios { get; init; } = [1.5, 2, 2.5, 3];

    /// <summary>Conductivity of the wire, S/m.</summary>
    public double ConductivitySPerM { get; init; } = AirCoil.CopperSPerM;

    /// <summary>Average over peak power of the mode.</summary>
    public double DutyRatio { get; init; } = 1;

    /// <summary>The least installed Q that will do; null to ask for the highest there is.</summary>
    public double? LeastQ { get; init; }

    /// <summary>Share of the free-air Q kept when installed (common practice, no source: half).</summary>
    public double InstalledQShare { get; init; } = 0.5;

    /// <summary>The most the wire may warm up, kelvin (common practice, no source: 60 K keeps soft solder and plastic bars safe).</summary>
    public double MostRiseK { get; init; } = 60;

    /// <summary>The most peak volts from turn to turn for each metre of clear air between turns; 3 MV/m would break it down, a tenth is kept.</summary>
    public double MostVoltsPerM { get; init; } = 0.3e6;
}

/// <summary>One coil that answers a wish.</summary>
/// <param name="Report">What it is.</param>
/// <param name="Stress">What the current does to it.</param>
public sealed record CoilProposal(CoilReport Report, CoilStress Stress);

/// <summary>Winds coils for a wanted inductance.</summary>
public static class CoilDesigner
{
    /// <summary>
    /// Coils that fit the room and stand the current: the smallest with the least Q asked for first, or the one with the
    /// highest Q when none is asked for. Otherwise a finding with the nearest workable answer.
    /// </summary>
    /// <param name="wish">What is wanted.</param>
    /// <param name="most">The most proposals to return.</param>
    public static (ImmutableArray<CoilProposal> Proposals, ImmutableArray<Finding> Findings) Design(CoilWish wish, int most = 10)
    {
        Guard.Positive(wish.InductanceH);
        Guard.Positive(wish.FrequencyHz);
        var all = Every(wish).ToList();
        var good = all.Where(p => Fits(p.Report.Coil, wish) && Stands(p, wish)).OrderByDescending(p => p.Report.Quality.Value).ToList();
        if (good.Count > 0 && wish.LeastQ is { } least)
        {
            var enough = good.Where(p => p.Report.Quality.Value >= least).OrderBy(Room).Take(most).ToImmutableArray();
            return enough.IsEmpty
                ? ([.. good.Take(most)], [new("coil-q", Severity.Warning, "No coil in this room reaches the Q counted on; the best is shown.", Value: FormattableString.Invariant($"{good[0].Report.Quality.Value:0}"), Allowed: FormattableString.Invariant($"at least {least:0}"), WayOut: "Enlarge the room, or count on less Q and accept the loss.")])
                : (enough, []);
        }

        if (good.Count > 0)
            return ([.. good.Take(most)], []);
        var nearest = all.Where(p => Stands(p, wish)).MinBy(p => Excess(p.Report.Coil, wish));
        var what = FormattableString.Invariant($"{wish.InductanceH * 1e6:0.##} µH in {wish.BoxDiameterM * 1e3:0} × {wish.BoxLengthM * 1e3:0} mm");
        return nearest is null
            ? ([], [new("coil-none", Severity.Error, "No single-layer coil of the wires and diameters at hand gives this inductance below its self-resonance and stands the current.", Value: what, WayOut: "Allow thicker tube or a larger diameter, or split the coil in two in series.")])
            : ([nearest], [new("coil-box", Severity.Warning, "No coil that stands the current fits the room given; the nearest that does is shown.", Value: what, Allowed: FormattableString.Invariant($"at least {nearest.Report.Coil.OuterDiameterM * 1e3:0} × {nearest.Report.Coil.LengthM * 1e3:0} mm"), WayOut: "Enlarge the room, or accept more heat with thinner wire.")]);
    }

    private static IEnumerable<CoilProposal> Every(CoilWish wish)
    {
        foreach (var wire in wish.WiresM)
            foreach (var ratio in wish.PitchRatios)
                foreach (var diameter in wish.DiametersM)
                {
                    // Tube cannot be bent tighter than about five of its diameters (common practice, no source).
                    if (diameter < 5 * wire || TurnsFor(wish.InductanceH, diameter, wire * ratio, wire) is not { } turns || turns is < 2 or > 200)
                        continue;
                    var report = CoilReport.Of(new AirCoil(diameter, turns, wire * ratio, wire, wish.ConductivitySPerM), wish.FrequencyHz, wish.InstalledQShare);
                    if (report.SelfResonance.Value > 2 * wish.FrequencyHz)
                        yield return new(report, report.At(wish.Current, wish.DutyRatio));
                }
    }

    private static double? TurnsFor(double inductanceH, double diameterM, double pitchM, double wireM) =>
        new AirCoil(diameterM, 250, pitchM, wireM).TurnsFor(inductanceH);

    private static double Room(CoilProposal p) => p.Report.Coil.OuterDiameterM * p.Report.Coil.OuterDiameterM * p.Report.Coil.LengthM;

    private static bool Fits(AirCoil coil, CoilWish wish) => Excess(coil, wish) <= 1;

    private static double Excess(AirCoil coil, CoilWish wish) => Math.Max(coil.OuterDiameterM / wish.BoxDiameterM, coil.LengthM / wish.BoxLengthM);

    private static bool Stands(CoilProposal p, CoilWish wish) =>
        p.Stress.TemperatureRise.Value <= wish.MostRiseK
        && p.Stress.PerTurn.Value <= wish.MostVoltsPerM * (p.Report.Coil.PitchM - p.Report.Coil.WireM);
}
