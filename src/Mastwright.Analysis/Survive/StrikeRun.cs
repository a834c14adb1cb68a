using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Lightning;

namespace Mastwright.Analysis.Survive;

/// <summary>One stroke followed through a mast.</summary>
/// <param name="Scenario">What was followed.</param>
/// <param name="Result">What happened.</param>
public sealed record StrikeCase(StrikeScenario Scenario, StrikeResult Result);

/// <summary>The steepest stroke with other arresters.</summary>
/// <param name="Name">Which arresters.</param>
/// <param name="Case">The scenario and what happened.</param>
public sealed record ArresterCase(string Name, StrikeCase Case);

/// <summary>Everything about a strike on one mast.</summary>
/// <param name="Cases">Every stroke with the station as designed and the worst network in circuit.</param>
public sealed record StrikeReport(ImmutableArray<StrikeCase> Cases)
{
    /// <summary>Every band's network in the steepest stroke, the worst first; empty without networks.</summary>
    public ImmutableArray<NetworkStrike> Networks { get; init; } = [];

    /// <summary>The first negative stroke with the cable's shield bonded at an entry panel; null without a cable.</summary>
    public StrikeCase? PanelBonded { get; init; }

    /// <summary>The same without the bond; null without a cable.</summary>
    public StrikeCase? PanelMissing { get; init; }

    /// <summary>The same as designed with the cable buried; null without a cable.</summary>
    public StrikeCase? CableBuried { get; init; }

    /// <summary>The same as designed with the cable on the ground; null without a cable.</summary>
    public StrikeCase? CableOnGround { get; init; }

    /// <summary>The steepest stroke without arresters, with one at the mast, one at the house, and both; empty without a cable.</summary>
    public ImmutableArray<ArresterCase> Arresters { get; init; } = [];

    /// <summary>Rise of the base voltage for each metre of strap, first negative stroke; null without a gap.</summary>
    public Trail? StrapCost { get; init; }

    /// <summary>The earth as solved, with what each electrode carries among the others; null when there are faults.</summary>
    public RadialEarth? Earth { get; init; }

    /// <summary>The checks of all strokes, the worst of each part.</summary>
    public ImmutableArray<Check> Checks { get; init; } = [];

    /// <summary>Remarks and faults; when it has errors there are no cases.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];
}

/// <summary>Maps a design to strikes and follows them.</summary>
public static class StrikeRun
{
    private const double LeastDepthM = 0.02; // radials on the turf grow in
    private const double UsualArresterV = 600; // a gas arrester for a kilowatt on 50 Ω
    private const double ArresterFollowedS = 100e-6;

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
    /// <param name="network">The network in circuit; null for that of the lowest band, which is the largest.</param>
    public static StrikeScenario Scenario(Station station, Mast mast, MastResult result, HeidlerStroke stroke, StruckNetwork? network = null)
    {
        network ??= StrikeNetworks.Of(station, result).FirstOrDefault();
        var insulator = Catalogue.Default.BaseInsulators[mast.Base.Insulator];
        var spec = station.Lightning;
        var gap = GapRun.SpacingM(station, result.Gap) is { } spacingM
            ? new StruckGap(GapRun.ElectrodesOf(station.Protection), spacingM, SiteAir.Dense(station), spec.StrapLengthM, spec.StrapWidthM, spec.StrapThicknessM, MetalOf(spec.StrapMetal))
            {
                FormativeLagS = spec.FormativeLagS,
                StatisticalLagS = spec.StatisticalLagS,
            }
            : null;
        return new StrikeScenario(
            stroke, new StruckMast(mast.TopM, MeanRadiusM(mast), BandRun.BaseCapacitanceF(station, mast)), gap, EarthOf(station, mast),
            StrikeNetworks.Crossings(mast).AddRange(network?.Parts ?? []), CableOf(station), HouseOf(station))
        {
            InsulatorStrengthPeakV = insulator.ImpulseV,
            LineOhm = network is null or { Parts.IsEmpty: true } ? null : station.Feed.LineOhm,
        };
    }

    /// <summary>Follows every stroke, and one of them with other networks, cables and arresters.</summary>
    public static StrikeReport Of(Station station, Mast mast, MastResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var strokes = Strokes(station);
        var plain = Scenario(station, mast, result, Level(station, StrokeKind.Subsequent), new StruckNetwork("", []));
        if (plain.Faults() is { IsEmpty: false } faults)
        {
            return new([]) { Findings = faults };
        }

        progress?.Report(new AnalysisStep($"Solving the earth of mast {mast.Name} for the strike", 0.02));
        var earth = new RadialEarth(plain.Earth, Protection.Earthing.SoilIonisation.CriticalFieldCigre);
        var networks = StrikeNetworks.Follow(plain, StrikeNetworks.Of(station, result), plain.InsulatorStrengthPeakV!.Value, station.Feed.LineOhm, earth, cancellation).OrderByDescending(n => n.Use).ToImmutableArray();
        var first = networks.IsEmpty ? plain : plain with { Feed = plain.Feed.AddRange(networks[0].Network.Parts), LineOhm = station.Feed.LineOhm };

        // Fast and long at once: the stroke that shows what goes along a cable.
        var negative = first with { Stroke = Level(station, StrokeKind.FirstNegative) };
        var jobs = new List<StrikeScenario>();
        int Ask(StrikeScenario scenario)
        {
            jobs.Add(scenario);
            return jobs.Count - 1;
        }

        int? Other(Func<StrikeScenario, StrikeScenario> change) => first.Cable is null ? null : Ask(change(negative));
        var strokeAt = strokes.Select(s => Ask(first with { Stroke = s })).ToArray();
        var bonded = Other(s => s with { House = s.House! with { PanelBonded = true } });
        var missing = Other(s => s with { House = s.House! with { PanelBonded = false } });
        var buried = Other(s => s with { Cable = s.Cable! with { Route = CableRoute.Buried } });
        var onGround = Other(s => s with { Cable = s.Cable! with { Route = CableRoute.OnGround } });
        var arresters = first.Cable is { } cable ? Arresters(cable).Select(a => (a.Name, At: Ask(first with { Cable = a.Cable, EndS = ArresterFollowedS }))).ToArray() : [];

        var done = new StrikeCase[jobs.Count];
        var finished = 0;
        Parallel.For(0, jobs.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            done[i] = new(jobs[i], StrikeSimulation.Run(jobs[i], solved: earth, cancellation: cancellation)!);
            progress?.Report(new AnalysisStep($"Following strokes down mast {mast.Name}", 0.2 + (0.7 * Interlocked.Increment(ref finished) / jobs.Count)));
        });
        StrikeCase? At(int? at) => at is { } index ? done[index] : null;
        var cases = strokeAt.Select(i => done[i]).ToImmutableArray();
        return new(cases)
        {
            Networks = networks,
            PanelBonded = At(bonded),
            PanelMissing = At(missing),
            CableBuried = At(buried),
            CableOnGround = At(onGround),
            Arresters = [.. arresters.Select(a => new ArresterCase(a.Name, done[a.At]))],
            StrapCost = StrikeSimulation.CostOfLongerStrap(negative with { EndS = ArresterFollowedS }, solved: earth),
            Earth = earth,
            Checks = Worst(cases, station, mast),
            Findings = Remarks(station, result, networks),
        };
    }

    // What arresters are worth is shown by adding them: with the file's own sparkover where it states one.
    private static IEnumerable<(string Name, StruckCable Cable)> Arresters(StruckCable cable)
    {
        var (mast, house) = (cable.ArresterSparkoverV ?? UsualArresterV, cable.HouseArresterSparkoverV ?? UsualArresterV);
        yield return ("none", cable with { ArresterSparkoverV = null, HouseArresterSparkoverV = null });
        yield return ("at the mast only", cable with { ArresterSparkoverV = mast, HouseArresterSparkoverV = null });
        yield return ("at the house only", cable with { ArresterSparkoverV = null, HouseArresterSparkoverV = house });
        yield return ("at both ends", cable with { ArresterSparkoverV = mast, HouseArresterSparkoverV = house });
    }

    private static HeidlerStroke Level(Station station, StrokeKind kind) => LightningCurrents.Of(LevelOf(station), kind);

    private static ImmutableArray<Check> Worst(ImmutableArray<StrikeCase> cases, Station station, Mast mast)
    {
        var checks = cases.SelectMany(c => c.Result.Checks.Select(k => k with { GoverningCase = c.Scenario.Stroke.Name }))
            .GroupBy(c => c.Id).Select(g => g.OrderByDescending(c => c.Ratio).First()).ToList();
        var atBase = cases.MaxBy(c => c.Result.Parts[0].PeakV.Value)!;
        foreach (var part in StrikeNetworks.AcrossBase(station))
        {
            checks.Add(Check.AtMost($"survive.strike.voltage[{part.Name}]", Trade.Survive, $"{part.Name} withstands the base voltage of a strike", atBase.Result.Parts[0].PeakV,
                Trail.Given($"strength of {part.Name}", "Us", part.WithstandPeakV, QuantityKind.PeakVoltage, Source.DesignFile), atBase.Scenario.Stroke.Name,
                "Narrow the gap, shorten its straps, or fit a stronger part.", StrikeCautions.Storm));
        }

        if (station.Lightning.MetalDistanceM is { } distanceM)
        {
            var worst = cases.MaxBy(c => c.Result.SideFlashM.Value)!;
            checks.Add(Check.AtLeast("survive.strike.side-flash", Trade.Survive, "Other metal stands out of reach of a side flash",
                Trail.Given("distance of the nearest metal", "d", distanceM, QuantityKind.Length, Source.DesignFile), worst.Result.SideFlashM, worst.Scenario.Stroke.Name,
                "Bond that metal to the plate, or move it away.", StrikeCautions.Storm));
        }

        return [.. checks.Select(c => c with { Id = CheckIds.Of(c.Id, mast.Name) })];
    }

    private static ImmutableArray<Finding> Remarks(Station station, MastResult result, ImmutableArray<NetworkStrike> networks)
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

        if (station.Cable is null)
        {
            remarks.Add(new("strike-no-cable", Severity.Warning, "The file names no cable to the house: nothing is said about what a strike does there, and the network is taken to end in the impedance of its line.", WayOut: "Add the block “cable:” with line and length."));
        }

        if (StrikeNetworks.LeftOut(result) is { IsEmpty: false } left)
        {
            remarks.Add(new("strike-no-network", Severity.Note, $"No network is known on {string.Join(", ", left)}: what a strike does to it is not followed."));
        }

        if (networks.Length > 1)
        {
            remarks.Add(new("strike-network", Severity.Note,
                $"Which network is in circuit when a stroke comes is not known. Each was followed in the steepest stroke; all strokes are then followed with that of {networks[0].Network.Band}, whose parts fare worst."));
        }

        if (station.Protection.Parts.Where(p => p.Kind is null).ToList() is { Count: > 0 } untold)
        {
            remarks.Add(new("strike-part-kind", Severity.Note,
                $"The file does not say what kind of part these are: {string.Join(", ", untold.Select(p => $"{p.Name} (taken as {Words(StrikeNetworks.KindOf(p))})"))}.",
                WayOut: "Add “kind:” (capacitor, coil, relay, cable or across-base) to each part."));
        }

        return remarks.ToImmutable();
    }

    private static HeidlerStroke Own(OwnStroke own)
    {
        var raw = new HeidlerStroke("own stroke", own.CrestA, 1, own.FrontS, own.TailS) { Source = Source.DesignFile };
        return raw with { Correction = raw.CurrentA(raw.CrestTimeS()) / own.CrestA };
    }

    private static double MeanRadiusM(Mast mast) => mast.Sections.Sum(s => s.LengthM * (WireModels.RadiusM(s) + WireModels.TopRadiusM(s)) / 2) / mast.LengthM;

    internal static double SoilOhmM(Station station) => station.Earth.ResistivityOhmM ?? (1 / Soils.Of(station.Site).ConductivitySPerM);

    private static StruckEarth EarthOf(Station station, Mast mast)
    {
        var radius = mast.Radials.WireDiameterM / 2;
        return new StruckEarth(
            SoilOhmM(station), mast.Radials.Count, mast.Radials.LengthM, radius, Math.Max(mast.Radials.DepthM, LeastDepthM),
            station.Earth.Rods, station.Earth.RodLengthM, station.Earth.RodDiameterM / 2, Soils.Of(station.Site).RelativePermittivity)
        {
            RadialMetal = MetalOf(station.Earth.RadialMetal),
            RodDistanceM = station.Earth.RodDistanceM,
            Ring = station.Earth.Ring is { } ring ? new StruckRing(ring.DiameterM, ring.WireDiameterM / 2, ring.DepthM) : null,
        };
    }

    private static string Words(PartKind? kind) => kind is null or PartKind.AcrossBase ? "lying across the base" : $"a {kind.ToString()!.ToLowerInvariant()}";

    private static StruckCable? CableOf(Station station)
    {
        if (station.Cable is not { } cable)
        {
            return null;
        }

        var line = Catalogue.Default.Lines[cable.Line];
        var route = cable.Route switch { CableRun.Buried => CableRoute.Buried, CableRun.Overhead => CableRoute.Overhead, _ => CableRoute.OnGround };
        return new StruckCable(cable.LengthM, route, line.ImpedanceOhm, cable.ShieldOhmPerM, cable.ArresterV, StrikeNetworks.StrengthOf(station, PartKind.Cable) ?? line.PeakVoltageV)
        {
            HouseArresterSparkoverV = cable.HouseArresterV,
            VelocityFactor = line.VelocityFactor,
        };
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
