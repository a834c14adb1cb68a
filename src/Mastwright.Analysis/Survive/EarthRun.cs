using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.Earthing;
using Mastwright.Protection.Lightning;
using Wire = Mastwright.Fields.Electrostatics.Wire;

namespace Mastwright.Analysis.Survive;

/// <summary>One electrode by hand beside the solved one.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Hand">By the hand formula; null where none exists.</param>
/// <param name="Solved">By line sources on the real wires.</param>
public sealed record ElectrodeRow(string Name, Trail? Hand, Trail Solved);

/// <summary>The earth of one mast.</summary>
/// <param name="Rows">Each electrode alone, and all bonded together last.</param>
/// <param name="Together">All bonded together.</param>
/// <param name="Limits">The hand formulas that lie around the whole: a plate as wide as the radials, and a half ball that holds the rods.</param>
/// <param name="RodUnderCurrent">Resistance of the rods where the soil breaks down; null without rods.</param>
/// <param name="RadialSheath">Radius of broken-down soil round a radial; null when the current is not followed.</param>
/// <param name="Rise">Rise of the plate in the first negative stroke, from the strike's transient; null when it cannot be followed.</param>
/// <param name="Around">Step and touch voltages with that rise, from the solved earth of every electrode.</param>
/// <param name="HandStep">Step voltage by hand beside a half ball of the same resistance at a metre; null without a rise.</param>
/// <param name="StepLimit">Step limit for half a second of power-frequency current.</param>
/// <param name="TouchLimit">Touch limit for the same.</param>
/// <param name="Findings">Remarks.</param>
public sealed record EarthReport(
    ImmutableArray<ElectrodeRow> Rows, Trail Together, ImmutableArray<Trail> Limits, Trail? RodUnderCurrent, Trail? RadialSheath, Trail? Rise,
    ImmutableArray<GroundVoltage> Around, Trail? HandStep, Trail StepLimit, Trail TouchLimit, ImmutableArray<Finding> Findings);

/// <summary>Solves the earth of a mast as the design describes it.</summary>
public static class EarthRun
{
    private const int MostArms = 24; // more hardly lower the resistance, and would only cost time
    private const int RingSides = 24;
    private const double FaultS = 0.5;

    private static readonly double[] HubCutsM = [0.3, 1, 3];
    private static readonly Source Page = Source.Derived("docs/theory/earth.md");

    /// <summary>The earth of one mast.</summary>
    public static EarthReport Of(Station station, Mast mast, MastResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = StrikeRun.SoilOhmM(station);
        var parts = Parts(station, mast);
        progress?.Report(new AnalysisStep($"Solving the earth of mast {mast.Name}", 0.2));
        var rows = parts.Select(p => new ElectrodeRow(p.Name, p.Hand, Ohms(p.Name, BuriedConductors.Solve(p.Wires, soil, p.SegmentM), soil))).ToList();
        var all = BuriedConductors.Solve([.. parts.SelectMany(p => p.Wires)], soil, parts.Min(p => p.SegmentM));
        var together = Ohms("all bonded together", all, soil);
        if (rows.Count > 1)
        {
            rows.Add(new("all bonded together", InParallel(rows), together));
        }

        progress?.Report(new AnalysisStep("Following a stroke into the earth", 0.6));
        var stroke = LightningCurrents.Of(StrikeRun.LevelOf(station), StrokeKind.FirstNegative);
        var scenario = StrikeRun.Scenario(station, mast, result, stroke);
        var strike = StrikeSimulation.Run(scenario, cancellation: cancellation);
        var around = strike is null ? [] : GroundPotential.Along(all, strike.PlatePeakV, Math.PI / Arms(mast), [0.5, 1, 2, 3, 5, 8, 12, 20]);
        var factor = station.Earth.SurfaceOhmM is { } layer ? StepTouch.SurfaceFactor(soil, layer, station.Earth.SurfaceThicknessM) : StepTouch.SurfaceFactor(soil, soil, 0);
        return new(
            [.. rows], together, Around(station, mast, soil), UnderCurrent(station, soil, stroke.CrestA), Sheath(mast, soil, stroke.CrestA), strike?.PlatePeakV, around,
            strike is null ? null : StepTouch.StepBesideHemisphere(soil, strike.PlatePeakV.Value / together.Value, 1),
            StepTouch.StepLimit(factor, station.Earth.SurfaceOhmM ?? soil, FaultS, BodyWeight.Kg50), StepTouch.TouchLimit(factor, station.Earth.SurfaceOhmM ?? soil, FaultS, BodyWeight.Kg50),
            [.. scenario.Faults(), .. Remarks(station, mast)]);
    }

    private sealed record Electrode(string Name, Trail? Hand, ImmutableArray<Wire> Wires, double SegmentM);

    private static List<Electrode> Parts(Station station, Mast mast)
    {
        var soil = StrikeRun.SoilOhmM(station);
        List<Electrode> parts = [Radials(mast, soil)];
        if (station.Earth.Rods > 0)
        {
            parts.Add(Rods(station.Earth, mast, soil));
        }

        if (station.Earth.Ring is { } ring)
        {
            var depth = Math.Abs(ring.DepthM - DepthM(mast)) < 0.05 ? DepthM(mast) + 0.05 : ring.DepthM;
            var wires = Enumerable.Range(0, RingSides).Select(k => new Wire(OnRing(ring.DiameterM / 2, k, depth), OnRing(ring.DiameterM / 2, k + 1, depth), ring.WireDiameterM / 2));
            parts.Add(new("buried ring", EarthElectrode.Ring(soil, ring.DiameterM, ring.WireDiameterM / 2, depth), [.. wires], ring.DiameterM / 8));
        }

        return parts;
    }

    private static Electrode Radials(Mast mast, double soil)
    {
        var (arms, length, depth, radius) = (Arms(mast), mast.Radials.LengthM, DepthM(mast), mast.Radials.WireDiameterM / 2);
        double[] cuts = [0, .. HubCutsM.Where(c => c < 0.6 * length), length];
        var wires = ImmutableArray.CreateBuilder<Wire>();
        for (var i = 0; i < arms; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / arms);
            for (var k = 1; k < cuts.Length; k++)
            {
                wires.Add(new(new(cuts[k - 1] * c, cuts[k - 1] * s, -depth), new(cuts[k] * c, cuts[k] * s, -depth), radius));
            }
        }

        // The formulas end at eight arms: the star of as many arms as there is a formula for lies above the truth.
        var known = EarthElectrode.StarArms.ToArray().Where(a => a <= mast.Radials.Count).Max();
        var hand = EarthElectrode.Star(known, soil, length, radius, depth);
        return new(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{mast.Radials.Count} radials"),
            known == mast.Radials.Count ? hand : hand?.Remark($"The formulas end at {known} arms here: the true resistance lies below."), wires.ToImmutable(), length / 6);
    }

    private static Electrode Rods(EarthSystem earth, Mast mast, double soil)
    {
        var n = earth.Rods;
        // Between two radials, so that no rod pierces a wire.
        var turn = Math.PI / Arms(mast);
        var wires = Enumerable.Range(0, n).Select(k =>
        {
            var (s, c) = Math.SinCos(turn + (2 * Math.PI * k / n));
            var r = n == 1 ? Math.Min(earth.RodDistanceM, 0.3) : earth.RodDistanceM;
            return new Wire(new(r * c, r * s, 0), new(r * c, r * s, -earth.RodLengthM), earth.RodDiameterM / 2);
        });
        var one = EarthElectrode.Rod(soil, earth.RodLengthM, earth.RodDiameterM / 2);
        var hand = n switch
        {
            1 => one,
            2 => EarthElectrode.TwoRods(soil, earth.RodLengthM, earth.RodDiameterM / 2, 2 * earth.RodDistanceM),
            _ => Trail.Computed("resistance of the rods, one over their number", "R", one.Value / n, QuantityKind.Resistance, "R = R1/n", Page, one).Remark("Their mutual effect is left out: the true resistance lies above."),
        };
        return new($"{n} rod{(n == 1 ? "" : "s")}", hand, [.. wires], earth.RodLengthM / 6);
    }

    private static Trail InParallel(List<ElectrodeRow> rows)
    {
        var hands = rows.Select(r => r.Hand).OfType<Trail>().ToArray();
        return Trail.Computed("electrodes in parallel by hand", "R", 1 / hands.Sum(h => 1 / h.Value), QuantityKind.Resistance, "1/R = Σ 1/Ri", Page, hands)
            .Remark("Their mutual effect is left out: the true resistance lies above.");
    }

    private static ImmutableArray<Trail> Around(Station station, Mast mast, double soil)
    {
        var plate = EarthElectrode.SurfacePlate(soil, mast.Radials.LengthM);
        return station.Earth.Rods > 0 ? [plate, EarthElectrode.Hemisphere(soil, double.Hypot(station.Earth.RodLengthM, station.Earth.RodDistanceM))] : [plate];
    }

    private static Trail? UnderCurrent(Station station, double soil, double currentA)
    {
        var earth = station.Earth;
        if (earth.Rods == 0)
        {
            return null;
        }

        // As if the rods alone took the whole current: what they come down to, and no more.
        var one = EarthElectrode.Rod(soil, earth.RodLengthM, earth.RodDiameterM / 2);
        return SoilIonisation.ConcentratedResistance(one, soil, currentA / earth.Rods, SoilIonisation.CriticalFieldCigre);
    }

    private static Trail Sheath(Mast mast, double soil, double currentA) =>
        SoilIonisation.SheathRadius(soil, mast.Radials.Count * mast.Radials.LengthM, currentA, SoilIonisation.CriticalFieldCigre);

    private static Trail Ohms(string name, BuriedConductors solved, double soil) =>
        Trail.Computed($"resistance, {name}", "R", solved.ResistanceOhm, QuantityKind.Resistance, "line sources on every wire, one potential", Page,
            Trail.Given("soil resistivity", "ρ", soil, QuantityKind.Resistivity, Source.DesignFile)).Within("uniform soil, low frequency");

    private static IEnumerable<Finding> Remarks(Station station, Mast mast)
    {
        if (station.Earth.ResistivityOhmM is null)
        {
            yield return new("earth-resistivity", Severity.Note, "The soil's resistivity is taken from its class at radio frequency; measured with low-frequency current it may differ by a factor of two or more, and with the season.",
                WayOut: "Measure it with four stakes and add “resistivity:” to the block “earth”.");
        }

        if (mast.Radials.Count > MostArms)
        {
            yield return new("earth-arms", Severity.Note, $"{mast.Radials.Count} radials are solved as {MostArms}: the true resistance is a little lower.");
        }
    }

    private static int Arms(Mast mast) => Math.Min(mast.Radials.Count, MostArms);

    private static double DepthM(Mast mast) => Math.Max(mast.Radials.DepthM, 0.02);

    private static Vec3 OnRing(double radiusM, int side, double depthM)
    {
        var (s, c) = Math.SinCos(2 * Math.PI * (side + 0.25) / RingSides);
        return new(radiusM * c, radiusM * s, -depthM);
    }
}
