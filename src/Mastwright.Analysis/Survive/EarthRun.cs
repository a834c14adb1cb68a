using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
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
    private static readonly Source Page = Source.Derived("docs/theory/earth.md");

    /// <summary>The earth of one mast.</summary>
    public static EarthReport Of(Station station, Mast mast, MastResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = StrikeRun.SoilOhmM(station);
        var stroke = LightningCurrents.Of(StrikeRun.LevelOf(station), StrokeKind.FirstNegative);
        var scenario = StrikeRun.Scenario(station, mast, result, stroke);
        var earth = scenario.Earth;
        progress?.Report(new AnalysisStep($"Solving the earth of mast {mast.Name}", 0.2));
        var rows = Parts(earth).Select(p => new ElectrodeRow(p.Name, p.Hand, Ohms(p.Name, BuriedConductors.Solve(p.Wires, soil, EarthElectrodes.SegmentM(earth)), soil))).ToList();
        var all = new RadialEarth(earth, SoilIonisation.CriticalFieldCigre);
        var together = Ohms("all bonded together", all.Solved, soil);
        if (rows.Count > 1)
        {
            rows.Add(new("all bonded together", InParallel(rows), together));
        }

        progress?.Report(new AnalysisStep("Following a stroke into the earth", 0.6));
        var strike = StrikeSimulation.Run(scenario, solved: all, cancellation: cancellation);
        var factor = station.Earth.SurfaceOhmM is { } layer ? StepTouch.SurfaceFactor(soil, layer, station.Earth.SurfaceThicknessM) : StepTouch.SurfaceFactor(soil, soil, 0);
        var crest = Trail.Given("crest of the first negative stroke", "I", stroke.CrestA, QuantityKind.PeakCurrent, stroke.Source);
        var duration = Trail.Assumed("duration of the fault current", "t", 0.5, QuantityKind.Time, "common practice, no source: the time a mains protection usually needs");
        return new(
            [.. rows], together, Around(station, mast, soil), UnderCurrent(station, soil, crest), Sheath(mast, soil, crest), strike?.PlatePeakV, strike?.Ground ?? [],
            strike is null ? null : StepTouch.StepBesideHemisphere(soil, Trail.Computed("current into the earth", "I", strike.PlatePeakV.Value / together.Value, QuantityKind.PeakCurrent, "I = Up/R", Page, strike.PlatePeakV, together), 1),
            StepTouch.StepLimit(factor, station.Earth.SurfaceOhmM ?? soil, duration, BodyWeight.Kg50), StepTouch.TouchLimit(factor, station.Earth.SurfaceOhmM ?? soil, duration, BodyWeight.Kg50),
            [.. scenario.Faults(), .. Remarks(station, mast)]);
    }

    private sealed record Electrode(string Name, Trail? Hand, IReadOnlyList<Wire> Wires);

    private static IEnumerable<Electrode> Parts(StruckEarth earth)
    {
        yield return Radials(earth);
        if (earth.Rods > 0)
        {
            yield return Rods(earth);
        }

        if (earth.Ring is { } ring)
        {
            var wires = EarthElectrodes.Ring(earth);
            yield return new("buried ring", EarthElectrode.Ring(earth.SoilOhmM, ring.DiameterM, ring.WireRadiusM, -wires[0].Start.Z), wires);
        }
    }

    private static Electrode Radials(StruckEarth earth)
    {
        // The formulas end at eight arms: the star of as many arms as there is a formula for lies above the truth.
        var known = EarthElectrode.StarArms.ToArray().Where(a => a <= earth.Radials).Max();
        var hand = EarthElectrode.Star(known, earth.SoilOhmM, earth.RadialLengthM, earth.RadialRadiusM, earth.DepthM);
        return new(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{earth.Radials} radials"),
            known == earth.Radials ? hand : hand?.Remark($"The formulas end at {known} arms here: the true resistance lies below."), EarthElectrodes.Radials(earth));
    }

    private static Electrode Rods(StruckEarth earth)
    {
        var n = earth.Rods;
        var one = EarthElectrode.Rod(earth.SoilOhmM, earth.RodLengthM, earth.RodRadiusM);
        var hand = n switch
        {
            1 => one,
            2 => EarthElectrode.TwoRods(earth.SoilOhmM, earth.RodLengthM, earth.RodRadiusM, 2 * earth.RodDistanceM),
            _ => Trail.Computed("resistance of the rods, one over their number", "R", one.Value / n, QuantityKind.Resistance, "R = R1/n", Page, one).Remark("Their mutual effect is left out: the true resistance lies above."),
        };
        return new($"{n} rod{(n == 1 ? "" : "s")}", hand, EarthElectrodes.Rods(earth));
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

    private static Trail? UnderCurrent(Station station, double soil, Trail crest)
    {
        var earth = station.Earth;
        if (earth.Rods == 0)
        {
            return null;
        }

        // As if the rods alone took the whole current: what they come down to, and no more.
        var one = EarthElectrode.Rod(soil, earth.RodLengthM, earth.RodDiameterM / 2);
        var share = Trail.Computed("current into one rod", "I1", crest.Value / earth.Rods, QuantityKind.PeakCurrent, "I1 = I/n", Page, crest, Trail.Given("number of rods", "n", earth.Rods, QuantityKind.Count, Source.DesignFile));
        return SoilIonisation.ConcentratedResistance(one, soil, share, SoilIonisation.CriticalFieldCigre);
    }

    private static Trail Sheath(Mast mast, double soil, Trail crest) =>
        SoilIonisation.SheathRadius(soil, mast.Radials.Count * mast.Radials.LengthM, crest, SoilIonisation.CriticalFieldCigre);

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

        if (mast.Radials.Count > EarthElectrodes.MostArms)
        {
            yield return new("earth-arms", Severity.Note, $"{mast.Radials.Count} radials are solved as {EarthElectrodes.MostArms}: the true resistance is a little lower.");
        }
    }
}
