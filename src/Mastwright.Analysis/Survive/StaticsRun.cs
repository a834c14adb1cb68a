using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Analysis.Survive;

/// <summary>Static and corona of one mast.</summary>
/// <param name="Outline">What was solved.</param>
/// <param name="Static">The mast in the atmospheric field; null when its outline has faults.</param>
/// <param name="Ring">The smallest quiet ring.</param>
/// <param name="Current">Greatest current of point discharge.</param>
/// <param name="Drain">The drain that fits; null without bands.</param>
/// <param name="UnderPower">Places that may spray under the station's own voltage.</param>
/// <param name="Guys">Guys and their insulators; null when no guy is of metal.</param>
/// <param name="Checks">Corona in each weather, drain, and corona under power.</param>
/// <param name="Findings">Remarks and faults.</param>
public sealed record StaticsReport(
    MastOutline Outline, StaticResult? Static, QuietRingAnswer? Ring, Trail? Current, DrainAnswer? Drain, ImmutableArray<RfCoronaPlace> UnderPower, GuyStaticResult? Guys,
    ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings)
{
    /// <summary>Leg ends, whiskers and what stands among them, in three dimensions; empty when the top is round.</summary>
    public ImmutableArray<CoronaPlace> TopPoints { get; init; } = [];

    /// <summary>Surfaces under the station's own power, the nearest to onset first.</summary>
    public ImmutableArray<RfCoronaRow> RfSurfaces { get; init; } = [];
}

/// <summary>Maps a design to the electrostatics of its masts.</summary>
public static class StaticsRun
{
    private const double SharpPointVPerM = 860; // one point 8.4 m high at Kew

    private static readonly ImmutableArray<double> RingTubesM = [0.010, 0.022, 0.042, 0.076];
    private static readonly Source Page = Source.Derived("docs/theory/corona-static.md");

    /// <summary>The outline of a mast: a round shaft, every section with its radius at radio frequency, with rod and ring where the design has them.</summary>
    public static MastOutline Outline(Mast mast)
    {
        var top = mast.Top ?? new TopFitting();
        var radius = WireModels.TopRadiusM(mast.Sections[^1]);
        var outline = new MastOutline(mast.TopM, radius, mast.Base.HeightM, top.RodLengthM, top.RodLengthM > 0 ? top.RodDiameterM / 2 : 0);
        outline = top.RingDiameterM is { } ring ? outline with { Ring = new CoronaRing(ring, top.RingTubeM, outline.HighestM) } : outline;
        var stepped = outline with { Below = Below(mast) };

        // Sections shorter than their own shoulders are drawn with the radius of the topmost one.
        return stepped.Faults().IsEmpty ? stepped : outline;
    }

    // A tapered tube is drawn in short straight ones.
    private const int TaperSteps = 4;

    private static ImmutableArray<ShaftStep> Below(Mast mast)
    {
        var pieces = new List<ShaftStep>();
        var top = mast.Base.HeightM;
        foreach (var section in mast.Sections)
        {
            var (low, high) = (WireModels.RadiusM(section), WireModels.TopRadiusM(section));
            var count = Math.Abs(low - high) > 1e-6 ? TaperSteps : 1;
            pieces.AddRange(Enumerable.Range(0, count).Select(i => new ShaftStep(top + (section.LengthM * (i + 1) / count), low + ((high - low) * (i + 0.5) / count))));
            top += section.LengthM;
        }

        // The topmost piece has the radius of the outline itself.
        pieces[^1] = pieces[^1] with { RadiusM = WireModels.TopRadiusM(mast.Sections[^1]) };
        return [.. pieces.Zip(pieces.Skip(1)).Where(p => Math.Abs(p.First.RadiusM - p.Second.RadiusM) > 1e-6).Select(p => p.First)];
    }

    /// <summary>Roughness factor of the design's surfaces.</summary>
    public static double Roughness(Station station) => station.Statics.Surface switch
    {
        SurfaceState.Polished => CoronaOnset.Polished,
        SurfaceState.Stranded => CoronaOnset.Stranded,
        SurfaceState.Wet => CoronaOnset.Wet,
        _ => CoronaOnset.Weathered,
    };

    /// <summary>Everything about static on one mast.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="result">Its bands.</param>
    /// <param name="groups">The groups it may be driven in.</param>
    /// <param name="progress">Told what is being done; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static StaticsReport Of(Station station, Mast mast, MastResult result, ImmutableArray<GroupResult> groups, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var outline = Outline(mast);
        if (outline.Faults() is { IsEmpty: false } faults)
        {
            return new(outline, null, null, null, null, [], null, [], faults);
        }

        var (air, roughness) = (SiteAir.Thin(station), Roughness(station));
        progress?.Report(new AnalysisStep($"Mast {mast.Name} in the atmospheric field", 0.1));
        var still = StaticStudy.Solve(outline, air, roughness, Weather.Usual, 1, cancellation)!;
        progress?.Report(new AnalysisStep("Searching the smallest quiet ring", 0.3));
        var (shaft, parts, clearM) = TopOf(mast, outline);
        var ring = parts.IsEmpty
            ? QuietRing.Search(outline, air, roughness, station.Statics.QuietFieldVPerM, RingTubesM, cancellation)
            : QuietRing.Search(outline, station.Statics.QuietFieldVPerM,
                m => TopPoints.Solve(shaft with { Ring = m.Ring }, parts, air, roughness, [], cancellation).Min(p => p.OnsetField.Value), clearM, RingTubesM);
        progress?.Report(new AnalysisStep("Guys in the atmospheric field", 0.8));
        var guys = GuysOf(mast, outline);
        var guyStatics = guys.IsEmpty ? null : GuyStatics.Solve(outline with { Ring = null }, guys, air, CoronaOnset.Stranded, null, cancellation);
        var current = StormCurrent(station, outline, still.Places[0].OnsetField);
        var drain = result.Bands.IsEmpty ? null : StaticDrain.Size(Request(station, result, current, still.CapacitanceF));
        var places = RfCorona.Places(outline, air, roughness);
        progress?.Report(new AnalysisStep("Leg ends and whiskers on the top", 0.85));
        var points = parts.IsEmpty ? [] : TopPoints.Solve(shaft, parts, air, roughness, Weather.Usual, cancellation);
        progress?.Report(new AnalysisStep("Surfaces under the station's own power", 0.9));
        var (surfaces, solved) = result.Bands.IsEmpty ? new([], []) : RfCoronaRun.Of(station, station.Masts.IndexOf(mast), outline, cancellation);
        return new(outline, still, ring, current, drain, places, guyStatics,
            [
                .. still.Places.Concat(points).DistinctBy(p => p.Part).SelectMany(p => p.Checks).Select(c => AsCaution(c with { Id = CheckIds.Of(c.Id, mast.Name) })),
                .. Drained(station, mast, result, current),
                .. UnderPower(station, mast, result, groups, places),
                .. surfaces.Select(r => RfCorona.Check(r.Surface, $"survive.rf-corona[{mast.Name}, {r.Surface.Part}]") with { GoverningCase = r.Band }),
            ],
            [.. still.Findings, .. solved])
        {
            TopPoints = points,
            RfSurfaces = surfaces,
        };
    }

    // A lattice's legs end in the open: there the shaft is left off and each leg stands for itself. No parts: the top is round.
    private static (MastOutline Shaft, ImmutableArray<TopPart> Parts, double ClearM) TopOf(Mast mast, MastOutline outline)
    {
        const double facesApart = 3;
        var top = mast.Top ?? new TopFitting();
        var parts = ImmutableArray.CreateBuilder<TopPart>();
        var (shaft, clear) = (outline, outline.RadiusM);
        if (mast.Sections[^1].Lattice is { } name)
        {
            var lattice = Catalogue.Default.Lattices[name];
            var circle = lattice.FaceWidthM / 2 / Math.Sin(Math.PI / lattice.Legs);
            var apart = Math.Min(facesApart * lattice.FaceWidthM, 0.5 * mast.Sections[^1].LengthM);
            parts.Add(TopPoints.LegEnds(lattice.Legs, mast.TopM, apart, circle, lattice.LegDiameterM / 2));
            shaft = outline with { HeightM = outline.HeightM - apart, RodLengthM = outline.RodLengthM > 0 ? outline.RodLengthM + apart : 0 };
            clear = circle + (lattice.LegDiameterM / 2);
        }

        if (top.Whiskers > 0)
        {
            // They spring from outside the shaft; a ring round the top lies outside their feet.
            parts.Add(TopPoints.Whiskers(top.Whiskers, mast.TopM, 1.5 * outline.RadiusM, top.WhiskerLengthM, top.WhiskerDiameterM / 2, top.WhiskerSlopeRad));
            clear = Math.Max(clear, 2 * outline.RadiusM);
        }

        return (shaft, parts.ToImmutable(), clear);
    }

    /// <summary>Whether static has a way to earth, and what a stated drain costs: cheap, with the onset by hand.</summary>
    public static ImmutableArray<Check> DrainChecks(Station station, Mast mast, MastResult result)
    {
        var outline = Outline(mast);
        if (!outline.Faults().IsEmpty || result.Bands.IsEmpty)
        {
            return [];
        }

        var hand = StaticStudy.RodEnhancement(outline.HighestM, outline.RodLengthM > 0 ? outline.RodRadiusM : outline.RadiusM);
        var gradient = CoronaOnset.GradientVPerM(outline.RodLengthM > 0 ? outline.RodRadiusM : outline.RadiusM, outline.RodLengthM > 0 ? outline.RodRadiusM : outline.RadiusM, SiteAir.Thin(station), Roughness(station));
        var onset = Trail.Computed("atmospheric field at onset, by hand", "E1", gradient.Value / hand.Value, QuantityKind.ElectricField, "E1 = Ec/kE", Page, gradient, hand);
        return Drained(station, mast, result, StormCurrent(station, outline, onset));
    }

    // Spraying under a storm is no fault of the mast: it is bound to. Failing would only teach people not to look.
    private static Check AsCaution(Check check) => check.Verdict == Verdict.Fail ? check with { Verdict = Verdict.Caution } : check;

    // Bolts, leg ends and wire tips are on no drawing and spray long before a smooth top: the drain is sized for them.
    private static Trail StormCurrent(Station station, MastOutline outline, Trail onset)
    {
        var sharp = Trail.Given("atmospheric field at which sharp points high up spray", "E1", SharpPointVPerM, QuantityKind.ElectricField,
            Source.FromMemory("Whipple and Scrase, Point discharge in the electric field of the earth, Geophys. Mem. 68", "1936"));
        return PointDischarge.InWind(Weather.Usual[^1].FieldVPerM, onset.Value < sharp.Value ? onset : sharp, outline.HighestM, station.Statics.StormWindMPerS);
    }

    private static ImmutableArray<Check> Drained(Station station, Mast mast, MastResult result, Trail current)
    {
        var spec = station.Statics;
        var allowed = Trail.Given("static voltage allowed", "Udc", spec.AllowedV, QuantityKind.PeakVoltage, Source.DesignFile);
        var share = Trail.Given("allowed share of the power", "η", spec.DrainLossShare, QuantityKind.Ratio, Source.DesignFile);
        List<Check> checks = [];
        if (spec.DrainOhm is { } ohm)
        {
            var resistor = Trail.Given("drain resistor", "R", ohm, QuantityKind.Resistance, Source.DesignFile);
            checks.Add(Check.AtMost($"survive.drain.static[{mast.Name}]", Trade.Survive, "The drain keeps the static voltage down",
                Trail.Computed("static voltage on the mast", "Udc", current.Value * ohm, QuantityKind.PeakVoltage, "Udc = Ip·R", Page, current, resistor), allowed,
                "storm field", "Take a smaller resistance or a choke.", StaticStudy.Caution));
            checks.Add(Loss(band => band.BasePeakV.Value * band.BasePeakV.Value / 2 / ohm, "η = U²/(2·R·P)", resistor, "Take a larger resistance."));
        }

        if (spec.ChokeH is { } henry)
        {
            var choke = Trail.Given("drain choke", "L", henry, QuantityKind.Inductance, Source.DesignFile);
            checks.Add(Loss(band => band.BasePeakV.Value * band.BasePeakV.Value / 2 / (2 * Math.PI * band.FrequencyHz * henry * spec.ChokeQ), "η = U²/(2·ωL·Q·P)", choke,
                "Take a larger choke or one of higher quality."));
        }

        if (checks.Count == 0)
        {
            checks.Add(Undrained(mast, result));
        }

        return [.. checks];

        Check Loss(Func<BandResult, double> lossW, string formula, Trail part, string cure)
        {
            var worst = result.Bands.MaxBy(b => lossW(b) / b.PowerW)!;
            return Check.AtMost($"survive.drain.loss[{mast.Name}, {part.Name}]", Trade.Survive, "The drain costs little power",
                Trail.Computed("share lost in the drain", "ηd", lossW(worst) / worst.PowerW, QuantityKind.Ratio, formula, Page, worst.BasePeakV, part), share, worst.Name, cure);
        }
    }

    private static Check Undrained(Mast mast, MastResult result)
    {
        var draining = result.Bands.Count(b => b.Match?.DrainsStatic ?? false);
        var wanted = Trail.Given("bands whose network must lead static to earth", "n", result.Bands.Length, QuantityKind.Count, Source.CommonPractice);
        var found = Trail.Computed("bands whose network leads it to earth", "nd", draining, QuantityKind.Count, "a path of metal from mast to plate", Source.Derived("docs/theory/circuits-matching.md"));
        return new($"survive.drain.path[{mast.Name}]", Trade.Survive, "Static has a way from mast to earth", found, wanted, draining == result.Bands.Length ? 0 : 1,
            draining == result.Bands.Length ? Verdict.Pass : Verdict.Caution, $"mast {mast.Name}",
            draining == result.Bands.Length ? "" : "Fit a drain resistor or choke across the base and name it under “statics”; the study of corona and static gives its size.", StaticStudy.Caution);
    }

    private static DrainRequest Request(Station station, MastResult result, Trail current, Trail capacitance) => new(
        [.. result.Bands.Select(b => new DrainBand(b.Name, b.FrequencyHz, b.BaseRmsV, b.PowerW))],
        current, Trail.Given("static voltage allowed", "Udc", station.Statics.AllowedV, QuantityKind.PeakVoltage, Source.DesignFile), capacitance, station.Statics.DrainLossShare);

    /// <summary>Whether the foot stays below corona at the highest working crest of all bands and groups: the same that the base gap is held against.</summary>
    internal static IEnumerable<Check> UnderPower(Station station, Mast mast, MastResult result, ImmutableArray<GroupResult> groups, ImmutableArray<RfCoronaPlace> places)
    {
        if (places.FirstOrDefault(p => p.Part == "foot") is not { } foot || result.Bands.IsEmpty)
        {
            yield break;
        }

        var (peak, band) = GapWindow.WorkingPeak(GapRun.Request(station, mast, result.Bands, GapRun.PeaksInGroups(station, mast, groups)));
        var check = RfCorona.Check(foot, peak);
        yield return check with { Id = CheckIds.Of(check.Id, mast.Name), GoverningCase = band.Name };
    }

    // Metal guys only: rope neither carries charge nor enhances the field.
    private static ImmutableArray<InsulatedGuy> GuysOf(Mast mast, MastOutline outline)
    {
        var guys = ImmutableArray.CreateBuilder<InsulatedGuy>();
        foreach (var (level, l) in mast.Guys.Select((g, l) => (g, l + 1)))
        {
            if (Catalogue.Default.Strands.Find(level.Strand) is not { Found: true })
            {
                continue;
            }

            var strand = Catalogue.Default.Strands[level.Strand];
            var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
            foreach (var anchor in level.Anchors.IsEmpty ? mast.Anchors : [.. mast.Anchors.Where(a => level.Anchors.Contains(a.Name))])
            {
                var high = new Vec3(0, 0, level.HeightM);
                var low = new Vec3(anchor.DistanceM * Math.Sin(anchor.BearingRad), anchor.DistanceM * Math.Cos(anchor.BearingRad), Math.Max(0.1, anchor.RiseM));
                guys.Add(new InsulatedGuy($"guy {l} to {anchor.Name}", Breaks(high, low, level.InsulatorsAtM, insulator.LengthM, 2 * outline.RadiusM), strand.DiameterM / 2));
            }
        }

        return guys.ToImmutable();
    }

    private static ImmutableArray<Vec3> Breaks(Vec3 high, Vec3 low, ImmutableArray<double> at, double insulatorM, double nearestM)
    {
        var length = (low - high).Length;
        var along = (low - high).Unit();
        var points = ImmutableArray.CreateBuilder<Vec3>();
        foreach (var d in (at.IsEmpty ? [nearestM] : at.AsEnumerable()).Select(d => Math.Max(d, nearestM)).Where(d => d < length - 0.5).Distinct().Order())
        {
            if (points.Count > 0)
            {
                points.Add(high + ((d - (insulatorM / 2)) * along));
            }

            points.Add(high + ((d + (insulatorM / 2)) * along));
        }

        points.Add(low);
        return points.ToImmutable();
    }
}
