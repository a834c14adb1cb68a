using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Circuits.Match;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Lightning;

namespace Mastwright.Analysis.Survive;

/// <summary>One stroke followed through a mast.</summary>
/// <param name="Scenario">What was followed.</param>
/// <param name="Result">What happened.</param>
public sealed record StrikeCase(StrikeScenario Scenario, StrikeResult Result);

/// <summary>Everything about a strike on one mast.</summary>
/// <param name="Cases">Every stroke with the station as designed.</param>
/// <param name="PanelBonded">The steepest stroke with the cable's shield bonded at an entry panel; null without a cable.</param>
/// <param name="PanelMissing">The same without the bond; null without a cable.</param>
/// <param name="CableBuried">The same as designed with the cable buried; null without a cable.</param>
/// <param name="CableOnGround">The same as designed with the cable on the ground; null without a cable.</param>
/// <param name="StrapCost">Rise of the base voltage for each metre of strap, steepest stroke; null without a gap.</param>
/// <param name="Checks">The checks of all strokes, the worst of each part.</param>
/// <param name="Findings">Remarks and faults; when it has errors there are no cases.</param>
public sealed record StrikeReport(
    ImmutableArray<StrikeCase> Cases, StrikeCase? PanelBonded, StrikeCase? PanelMissing, StrikeCase? CableBuried, StrikeCase? CableOnGround,
    Trail? StrapCost, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings);

/// <summary>Maps a design to strikes and follows them.</summary>
public static class StrikeRun
{
    private const double LeastDepthM = 0.02; // radials on the turf grow in

    /// <summary>The strokes the design is held against: the level's three and the user's own.</summary>
    public static ImmutableArray<HeidlerStroke> Strokes(Station station)
    {
        var level = LightningCurrents.All(LevelOf(station));
        return station.Lightning.Stroke is { } own ? [.. level, Own(own)] : level;
    }

    /// <summary>The lightning level of the design.</summary>
    public static LightningLevel LevelOf(Station station) => station.Lightning.Level switch
    {
        StrikeLevel.I => LightningLevel.I,
        StrikeLevel.II => LightningLevel.II,
        StrikeLevel.III => LightningLevel.III,
        _ => LightningLevel.IV,
    };

    /// <summary>The scenario of one stroke on one mast.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="result">Its result: gap and network.</param>
    /// <param name="stroke">The stroke.</param>
    public static StrikeScenario Scenario(Station station, Mast mast, MastResult result, HeidlerStroke stroke)
    {
        var insulator = Catalogue.Default.BaseInsulators[mast.Base.Insulator];
        var spec = station.Lightning;
        var gap = GapRun.SpacingM(station, result.Gap) is { } spacingM
            ? new StruckGap(GapRun.ElectrodesOf(station.Protection), spacingM, SiteAir.Dense(station), spec.StrapLengthM, spec.StrapWidthM, spec.StrapThicknessM, MetalOf(spec.StrapMetal))
            {
                StatisticalLagS = spec.StatisticalLagS,
            }
            : null;
        return new StrikeScenario(
            stroke, new StruckMast(mast.TopM, MeanRadiusM(mast), BandRun.BaseCapacitanceF(station, mast)), gap, EarthOf(station, mast),
            FeedOf(station, result), CableOf(station), HouseOf(station))
        {
            InsulatorStrengthPeakV = insulator.ImpulseV,
        };
    }

    /// <summary>Follows every stroke, and the steepest one with other cables.</summary>
    public static StrikeReport Of(Station station, Mast mast, MastResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var strokes = Strokes(station);
        var first = Scenario(station, mast, result, strokes[0]);
        if (first.Faults() is { IsEmpty: false } faults)
        {
            return new([], null, null, null, null, null, [], faults);
        }

        var done = 0;
        StrikeCase Follow(StrikeScenario scenario)
        {
            progress?.Report(new AnalysisStep($"Following the {scenario.Stroke.Name} down mast {mast.Name}", Math.Min(0.95, done++ / 9.0)));
            return new(scenario, StrikeSimulation.Run(scenario, cancellation: cancellation)!);
        }

        StrikeCase? Other(Func<StrikeScenario, StrikeScenario> change) => first.Cable is null ? null : Follow(change(Steepest(station, mast, result)));
        var cases = strokes.Select(s => Follow(first with { Stroke = s })).ToImmutableArray();
        return new(
            cases,
            Other(s => s with { House = s.House! with { PanelBonded = true } }),
            Other(s => s with { House = s.House! with { PanelBonded = false } }),
            Other(s => s with { Cable = s.Cable! with { Route = CableRoute.Buried } }),
            Other(s => s with { Cable = s.Cable! with { Route = CableRoute.OnGround } }),
            StrikeSimulation.CostOfLongerStrap(Steepest(station, mast, result)),
            Worst(cases, station, mast), Remarks(station, result));
    }

    /// <summary>The stroke whose slow current along the cable is compared: the first negative one, fast and long at once.</summary>
    private static StrikeScenario Steepest(Station station, Mast mast, MastResult result) =>
        Scenario(station, mast, result, LightningCurrents.Of(LevelOf(station), StrokeKind.FirstNegative));

    private static ImmutableArray<Check> Worst(ImmutableArray<StrikeCase> cases, Station station, Mast mast)
    {
        var checks = cases.SelectMany(c => c.Result.Checks.Select(k => k with { GoverningCase = c.Scenario.Stroke.Name }))
            .GroupBy(c => c.Id).Select(g => g.OrderByDescending(c => c.Ratio).First()).ToList();
        if (station.Lightning.MetalDistanceM is { } distanceM)
        {
            var worst = cases.MaxBy(c => c.Result.SideFlashM.Value)!;
            checks.Add(Check.AtLeast("survive.strike.side-flash", Trade.Survive, "Other metal stands out of reach of a side flash",
                Trail.Given("distance of the nearest metal", "d", distanceM, QuantityKind.Length, Source.DesignFile), worst.Result.SideFlashM, worst.Scenario.Stroke.Name,
                "Bond that metal to the plate, or move it away.", StrikeCautions.Storm));
        }

        return [.. checks.Select(c => c with { Id = CheckIds.Of(c.Id, mast.Name) })];
    }

    private static ImmutableArray<Finding> Remarks(Station station, MastResult result)
    {
        var remarks = ImmutableArray.CreateBuilder<Finding>();
        if (result.Gap is Protection.Gaps.NoGapFits && station.Protection.GapM is null)
        {
            remarks.Add(new("strike-no-gap", Severity.Warning, "No gap fits between working voltage and weakest part; the strike was followed with the smallest gap that holds off.", WayOut: "Mend the gap first."));
        }

        if (station.Earth.RadialBond == RadialBond.None)
        {
            remarks.Add(new("strike-radials-loose", Severity.Warning, "The radials are not bonded for a strike; it was followed as if they were, which is the best case.", WayOut: "Bond every radial to one plate at the foot."));
        }

        if (station.Earth.Ring is not null)
        {
            remarks.Add(new("strike-ring", Severity.Note, "The buried ring is left out of the transient earth, which is a little on the safe side; the study of the earth solves it."));
        }

        if (station.Cable is null)
        {
            remarks.Add(new("strike-no-cable", Severity.Warning, "The file names no cable to the house: nothing is said about what a strike does there.", WayOut: "Add the block “cable:” with line and length."));
        }

        if (result.Bands.Length > 0 && FeedOf(station, result).IsEmpty)
        {
            remarks.Add(new("strike-no-network", Severity.Note, "The network is not a ladder of coils and capacitors and was left out behind the gap."));
        }

        return remarks.ToImmutable();
    }

    private static HeidlerStroke Own(OwnStroke own)
    {
        var raw = new HeidlerStroke("own stroke", own.CrestA, 1, own.FrontS, own.TailS);
        return raw with { Correction = raw.CurrentA(raw.CrestTimeS()) / own.CrestA };
    }

    private static double MeanRadiusM(Mast mast) => mast.Sections.Sum(s => s.LengthM * WireModels.RadiusM(s)) / mast.LengthM;

    internal static double SoilOhmM(Station station) => station.Earth.ResistivityOhmM ?? (1 / Soils.Of(station.Site).ConductivitySPerM);

    private static StruckEarth EarthOf(Station station, Mast mast)
    {
        var radius = mast.Radials.WireDiameterM / 2;
        return new StruckEarth(
            SoilOhmM(station), mast.Radials.Count, mast.Radials.LengthM, radius, Math.Max(mast.Radials.DepthM, LeastDepthM),
            station.Earth.Rods, station.Earth.RodLengthM, station.Earth.RodDiameterM / 2, Soils.Of(station.Site).RelativePermittivity)
        {
            RadialMetal = MetalOf(station.Earth.RadialMetal),
        };
    }

    // The network of the lowest band, from the mast on: it sees the strike like the others, and is the largest.
    private static ImmutableArray<FeedPart> FeedOf(Station station, MastResult result)
    {
        if (result.Bands.IsEmpty || result.Bands.MinBy(b => b.FrequencyHz)!.Match is not { } match)
        {
            return [];
        }

        return [.. match.Ladder.Sections.Select((s, i) => (Section: s, Name: match.Ladder.NameOf(i))).Reverse().SelectMany(s => FeedPartsOf(station, s.Section, s.Name))];
    }

    // From the mast towards the line. The two runs of a tapped coil count without their coupling, a transformer as its winding on the
    // mast's side; a length of line is short against the front of a strike and is left out.
    private static IEnumerable<FeedPart> FeedPartsOf(Station station, LadderSection section, string name)
    {
        FeedPart Coil(string what, bool series, double henry) => new($"{what} {name}", FeedElement.Coil, series, henry, StrengthOf(station, coil: true));
        switch (section)
        {
            case ReactiveSection { IsCoil: true } coil:
                return [Coil(coil.Title, coil.IsSeries, coil.Value)];
            case ReactiveSection capacitor:
                return [new FeedPart($"{capacitor.Title} {name}", FeedElement.Capacitor, capacitor.IsSeries, capacitor.Value, StrengthOf(station, coil: false))];
            case TappedCoilSection tapped:
                var (lower, upper) = (Coil("run to ground of coil", false, tapped.LowerH), Coil("run to the tap of coil", true, tapped.UpperH));
                return tapped.LoadOnTop ? [upper, lower] : [lower, upper];
            case TransformerSection transformer:
                return [Coil("winding to ground of transformer", false, transformer.PrimaryH / (transformer.TurnsRatio * transformer.TurnsRatio))];
            default:
                return [];
        }
    }

    // The parts behind the gap are named freely; their names say which kind they are.
    private static double? StrengthOf(Station station, bool coil)
    {
        var words = coil ? new[] { "coil", "inductor", "choke", "variometer" } : ["capacitor", "condenser"];
        var named = station.Protection.Parts.Where(p => words.Any(w => p.Name.Contains(w, StringComparison.OrdinalIgnoreCase))).ToList();
        return named.Count == 0 ? null : named.Min(p => p.WithstandPeakV);
    }

    private static StruckCable? CableOf(Station station)
    {
        if (station.Cable is not { } cable)
        {
            return null;
        }

        var line = Catalogue.Default.Lines[cable.Line];
        var route = cable.Route switch { CableRun.Buried => CableRoute.Buried, CableRun.Overhead => CableRoute.Overhead, _ => CableRoute.OnGround };
        return new StruckCable(cable.LengthM, route, line.ImpedanceOhm, cable.ShieldOhmPerM, cable.ArresterV, line.PeakVoltageV);
    }

    private static StruckHouse? HouseOf(Station station) => station.Cable is { } cable
        ? new StruckHouse(cable.PanelBonded, cable.PanelEarthOhm, cable.PanelStrapM, cable.MainsEarthOhm, cable.BondLengthM, cable.RadioPathM)
        : null;

    /// <summary>The heating data of a metal of straps and radials.</summary>
    public static StrikeMetal MetalOf(StrapMetal metal) => metal switch
    {
        StrapMetal.Aluminium => StrikeMetal.Aluminium,
        StrapMetal.Steel => StrikeMetal.MildSteel,
        StrapMetal.Stainless => StrikeMetal.Stainless,
        _ => StrikeMetal.Copper,
    };
}
