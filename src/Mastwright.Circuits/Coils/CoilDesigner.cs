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

    /// <summary>Crest with modulation over the crest at that current; insulation follows it, heating does not.</summary>
    public double PeakFactor { get; init; } = 1;

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
        var shapes = Shapes(wish).ToList();
        var fitting = shapes.Where(c => Fits(c, wish)).OrderBy(Room);
        var good = new List<CoilProposal>();
        foreach (var p in fitting.Select(c => Wound(c, wish)).OfType<CoilProposal>().Where(p => Stands(p, wish)))
        {
            good.Add(p);

            // The smallest come first: enough of the wanted quality end the search.
            if (wish.LeastQ is { } enough && good.Count(g => g.Report.Quality.Value >= enough) >= most)
                break;
        }

        if (good.Count > 0 && wish.LeastQ is { } least)
        {
            var reached = good.Where(p => p.Report.Quality.Value >= least).Take(most).ToImmutableArray();
            good = [.. good.OrderByDescending(p => p.Report.Quality.Value)];
            return reached.IsEmpty
                ? ([.. good.Take(most)], [new("coil-q", Severity.Warning, "No coil in this room reaches the Q counted on; the best is shown.", Value: FormattableString.Invariant($"{good[0].Report.Quality.Value:0}"), Allowed: FormattableString.Invariant($"at least {least:0}"), WayOut: "Enlarge the room, or count on less Q and accept the loss.")])
                : (reached, []);
        }

        if (good.Count > 0)
            return ([.. good.OrderByDescending(p => p.Report.Quality.Value).Take(most)], []);
        var nearest = shapes.OrderBy(c => Excess(c, wish)).Select(c => Wound(c, wish)).OfType<CoilProposal>().FirstOrDefault(p => Stands(p, wish));
        var what = FormattableString.Invariant($"{wish.InductanceH * 1e6:0.###} µH in {wish.BoxDiameterM * 1e3:0} × {wish.BoxLengthM * 1e3:0} mm");
        return nearest is null
            ? ([], [new("coil-none", Severity.Error, "No single-layer coil of the wires and diameters at hand gives this inductance below its self-resonance and stands the current.", Value: what, WayOut: Nearest(wish))])
            : ([nearest], [new("coil-box", Severity.Warning, "No coil that stands the current fits the room given; the nearest that does is shown.", Value: what, Allowed: FormattableString.Invariant($"at least {nearest.Report.Coil.OuterDiameterM * 1e3:0} × {nearest.Report.Coil.LengthM * 1e3:0} mm"), WayOut: "Enlarge the room, or accept more heat with thinner wire.")]);
    }

    /// <summary>A winding kept in wire, pitch and diameter with its turns set anew; null when it then fits the room or stands the current no more.</summary>
    /// <param name="before">The winding.</param>
    /// <param name="wish">What is wanted now.</param>
    public static CoilProposal? Rewound(CoilProposal before, CoilWish wish)
    {
        var coil = before.Report.Coil;
        if (TurnsFor(wish.InductanceH, coil.DiameterM, coil.PitchM, coil.WireM) is not { } turns || turns is < 2 or > 200)
            return null;
        var shape = new AirCoil(coil.DiameterM, turns, coil.PitchM, coil.WireM, coil.ConductivitySPerM);
        return Fits(shape, wish) && Wound(shape, wish) is { } wound && Stands(wound, wish) ? wound : null;
    }

    // What nearest value could be wound, so that a network can be looked for around it.
    private static string Nearest(CoilWish wish)
    {
        foreach (var factor in new[] { 1.2, 1.5, 2, 3, 5, 8, 12, 20, 40 })
            foreach (var value in new[] { wish.InductanceH * factor, wish.InductanceH / factor })
                if (Shapes(wish with { InductanceH = value }).Where(c => Fits(c, wish)).Take(20).Select(c => Wound(c, wish)).OfType<CoilProposal>().Any(p => Stands(p, wish)))
                    return FormattableString.Invariant($"About {value * 1e6:0.##} µH can be wound: take a network that asks for it, allow thicker tube or a larger diameter, or split the coil in two in series.");
        return "Allow thicker tube or a larger diameter, or split the coil in two in series.";
    }

    private static IEnumerable<AirCoil> Shapes(CoilWish wish)
    {
        foreach (var wire in wish.WiresM)
            foreach (var ratio in wish.PitchRatios)
                foreach (var diameter in wish.DiametersM)
                {
                    // Tube cannot be bent tighter than about five of its diameters (common practice, no source).
                    if (diameter < 5 * wire || TurnsFor(wish.InductanceH, diameter, wire * ratio, wire) is not { } turns || turns is < 2 or > 200)
                        continue;
                    yield return new AirCoil(diameter, turns, wire * ratio, wire, wish.ConductivitySPerM);
                }
    }

    private static CoilProposal? Wound(AirCoil coil, CoilWish wish)
    {
        var report = CoilReport.Of(coil, wish.FrequencyHz, wish.InstalledQShare);
        return report.SelfResonance.Value > 2 * wish.FrequencyHz ? new(report, report.At(wish.Current, wish.DutyRatio, wish.PeakFactor)) : null;
    }

    private static double? TurnsFor(double inductanceH, double diameterM, double pitchM, double wireM) =>
        new AirCoil(diameterM, 250, pitchM, wireM).TurnsFor(inductanceH);

    private static double Room(AirCoil c) => c.OuterDiameterM * c.OuterDiameterM * c.LengthM;

    private static bool Fits(AirCoil coil, CoilWish wish) => Excess(coil, wish) <= 1;

    private static double Excess(AirCoil coil, CoilWish wish) => Math.Max(coil.OuterDiameterM / wish.BoxDiameterM, coil.LengthM / wish.BoxLengthM);

    private static bool Stands(CoilProposal p, CoilWish wish) =>
        p.Stress.TemperatureRise.Value <= wish.MostRiseK
        && p.Stress.PerTurn.Value <= wish.MostVoltsPerM * (p.Report.Coil.PitchM - p.Report.Coil.WireM);
}
