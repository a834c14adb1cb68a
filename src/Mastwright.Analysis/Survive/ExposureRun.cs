using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.People;

namespace Mastwright.Analysis.Survive;

/// <summary>Distances on one band.</summary>
/// <param name="Band">The band.</param>
/// <param name="Population">For whom.</param>
/// <param name="Between">From the solved near field, midway between the guys, largest first.</param>
/// <param name="Along">The same along the guys, down to their anchors: close to a guy its own current counts.</param>
/// <param name="Far">By the far-field estimate, for each limit; not valid near the mast, and says so.</param>
public sealed record BandExposure(BandResult Band, Population Population, ImmutableArray<NearFieldDistance> Between, ImmutableArray<NearFieldDistance> Along, ImmutableArray<ExposureDistance> Far);

/// <summary>A guy within reach.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="Band">The band with the greatest current.</param>
/// <param name="CurrentA">Current from its lowest piece into the anchor: what a person in the anchor's place would carry at most.</param>
/// <param name="LimitA">Contact-current limit for the public.</param>
public sealed record GuyTouch(string Guy, string Band, Trail CurrentA, Trail LimitA);

/// <summary>Distances from one mast while others transmit: its group, the fields of all its masts added as they are driven, or a neighbour alone.</summary>
/// <param name="Name">Group and switch position, or band and neighbour.</param>
/// <param name="FrequencyHz">Its frequency, Hz.</param>
/// <param name="Population">For whom.</param>
/// <param name="Around">Distances for each limit, largest first; places nearer to another mast belong to that one's fence.</param>
public sealed record GroupExposure(string Name, double FrequencyHz, Population Population, ImmutableArray<NearFieldDistance> Around);

/// <summary>Exposure and burns around one mast.</summary>
/// <param name="Bands">Every band, for the public and for people who know and control the exposure.</param>
/// <param name="Guys">Guys of metal that end within reach.</param>
/// <param name="FenceM">The radius of the fence that satisfies every limit for the public and every reach, guys and all.</param>
/// <param name="BetweenM">The radius that would do between the guys.</param>
/// <param name="Checks">Fence and burns.</param>
/// <param name="Findings">What the solver of the currents had to say, and limits exceeded farther out than was looked.</param>
public sealed record ExposureReport(ImmutableArray<BandExposure> Bands, ImmutableArray<GuyTouch> Guys, Trail FenceM, Trail BetweenM, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings)
{
    /// <summary>Every switch position of the groups the mast is driven in, and every neighbour that transmits alone.</summary>
    public ImmutableArray<GroupExposure> Groups { get; init; } = [];

    /// <summary>What the fields assume, in words.</summary>
    public string Range { get; init; } = "";
}

/// <summary>People near a mast: exposure distances from the solved near field, burns, and the fence.</summary>
public static class ExposureRun
{
    private const double FarthestM = 60;
    private const double NearestM = 0.6;

    // Over real soil a field costs a hundred times as much: the search goes in steps of 8 % instead of 2 %, rounded up as ever.
    private const int StepsOverSoil = 60;

    /// <summary>Everything around one mast.</summary>
    public static ExposureReport Of(Station station, int mastIndex, MastResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var mast = station.Masts[mastIndex];
        var bands = new (ImmutableArray<BandExposure> Exposure, ImmutableArray<(string Guy, double A)> Guys)[result.Bands.Length];
        var ranges = new (string Band, string Range)[bands.Length];
        var solver = new ImmutableArray<Finding>[bands.Length];
        var solutions = new WireSolution[result.Bands.Length];
        var done = 0;
        Parallel.For(0, bands.Length, new ParallelOptions { CancellationToken = cancellation }, b =>
        {
            var band = station.Bands[b];
            (var solution, solver[b]) = MastDrive.Solve(station, band.FrequencyHz, cancellation);
            solutions[b] = solution;
            var drive = MastDrive.Of(station, solution, mastIndex);
            var request = OnOwnGround(Request(mast, band, drive, FarthestM), station, mastIndex);
            var (between, along) = (FenceRun.Remembering(Turned(request, mast, false)), FenceRun.Remembering(Turned(request, mast, true)));
            ranges[b] = (band.Title, drive.Range);
            var gain = Math.Pow(10, result.Bands[b].GainDbi.Value / 10);
            bands[b] = (
                [.. new[] { Population.Public, Population.Occupational }.Select(p => new BandExposure(result.Bands[b], p, NearFieldExposure.Distances(between, p, cancellation), NearFieldExposure.Distances(along, p, cancellation),
                    FarFieldExposure.Distances(request.Emission with { Gain = gain }, p, GroundReflection.InGain)))],
                [.. IntoPerfectAnchors(station, mastIndex, band, drive, cancellation)]);
            progress?.Report(new AnalysisStep($"Fields around mast {mast.Name}, {band.Title}", Math.Min(0.95, Interlocked.Increment(ref done) / (double)bands.Length)));
        });

        var all = bands.SelectMany(b => b.Exposure).ToImmutableArray();
        progress?.Report(new AnalysisStep($"Fields of the groups around mast {mast.Name}", 0.96));
        var (groups, told) = Groups(station, mastIndex, solutions, cancellation);
        var together = groups.Where(g => g.Population == Population.Public && !g.Around.IsEmpty).Select(g => g.Around[0].Governing).ToList();
        var known = all.Where(b => b.Population == Population.Public && !b.Between.IsEmpty).ToList();
        var arm = RfBurn.ReachOver(station.Fence?.HeightM);
        var free = RfBurn.FenceRadius([.. known.Select(b => b.Between[0].Governing)], mast.Base.LeadDiameterM / 2, arm);
        var fence = RfBurn.FenceRadius([.. known.Select(b => b.Between[0].Governing), .. known.Select(b => b.Along[0].Governing), .. together], mast.Base.LeadDiameterM / 2, arm);
        var checks = FenceRun.Burns(station, mast, result);
        if (station.Fence is { } built)
        {
            var radius = Trail.Given("fence radius", "r", built.RadiusM, QuantityKind.Length, Source.DesignFile);
            var around = RfBurn.FenceCheck(radius, free) with { Id = $"survive.fence[{mast.Name}]", Title = "The fence keeps people far enough from the mast, between the guys" };
            var guys = RfBurn.FenceCheck(radius, fence) with { Id = $"survive.fence.guys[{mast.Name}]", Title = "The fence keeps people off the guys' lower ends" };

            // A guy is thin and seen: keeping off it by hand's breadths is not the same as a field that fills a garden.
            checks = [.. checks, around, guys.Verdict != Verdict.Fail ? guys
                : guys with { Verdict = Verdict.Caution, Cure = "Fence each anchor, put an insulator more into the lowest piece of the guy, or widen the fence." }];
        }

        var beyond = all.SelectMany(b => b.Between.Concat(b.Along).SelectMany(n => n.Findings)).Concat(groups.SelectMany(g => g.Around.SelectMany(n => n.Findings)));
        return new(all, Guys(station, bands), fence, free, checks, [.. solver.SelectMany(f => f).Concat(told).Concat(beyond).DistinctBy(f => f.Message)])
        {
            Groups = groups,
            Range = Ranges(ranges),
        };
    }

    /// <summary>The words of all bands: once where they are the same for all, else each with the bands it stands for.</summary>
    internal static string Ranges(IReadOnlyList<(string Band, string Range)> ranges)
    {
        var distinct = ranges.GroupBy(r => r.Range).ToList();
        return distinct.Count == 1 ? distinct[0].Key : string.Join(". ", distinct.Select(g => $"{string.Join(", ", g.Select(r => r.Band))}: {g.Key}"));
    }

    // The fields of all masts of a group add with their phases. A mast that stands idle while another transmits alone is looked at too: it is not without field.
    private static (ImmutableArray<GroupExposure> Groups, ImmutableArray<Finding> Findings) Groups(Station station, int mastIndex, WireSolution[] solutions, CancellationToken cancellation)
    {
        const int bearings = 8;
        var mast = station.Masts[mastIndex];
        var known = solutions.DistinctBy(s => s.FrequencyHz).ToDictionary(s => s.FrequencyHz);
        var drives = GroupDrives.Of(station, mastIndex, known, cancellation);
        var requests = drives
            .Select(d => (d.Name, Request: Request(mast, new MastDrive(d.Driven, d.Group.PowerW), new Emission(d.Group.FrequencyHz, d.Group.PowerW, 1, GroupRun.BandOf(station, d.Group)?.Duty ?? 1), FarthestM)))
            .Concat(Idle(station, mastIndex, solutions)).ToList();
        var found = new ImmutableArray<GroupExposure>[requests.Count];
        Parallel.For(0, requests.Count, new ParallelOptions { CancellationToken = cancellation }, r =>
        {
            var (name, asked) = requests[r];
            var request = OnOwnGround(FenceRun.Remembering(asked), station, mastIndex) with { Bearings = bearings };
            found[r] = [.. new[] { Population.Public, Population.Occupational }.Select(p => new GroupExposure(name, request.Emission.FrequencyHz, p, NearFieldExposure.Distances(request, p, cancellation)))];
        });
        return ([.. found.SelectMany(f => f)], [.. drives.SelectMany(d => d.Findings)]);
    }

    private static IEnumerable<(string Name, NearFieldRequest Request)> Idle(Station station, int mastIndex, WireSolution[] solutions)
    {
        foreach (var (solution, band) in solutions.Zip(station.Bands))
        {
            for (var other = 0; other < station.Masts.Length; other++)
            {
                if (other == mastIndex)
                {
                    continue;
                }

                yield return ($"{band.Title}, {station.Masts[other].Name} alone, this mast idle", Request(station.Masts[mastIndex], band, MastDrive.Of(station, solution, other), FarthestM));
            }
        }
    }

    // A place nearer to another mast belongs to that one's fence.
    private static NearFieldRequest OnOwnGround(NearFieldRequest request, Station station, int mastIndex)
    {
        var mast = station.Masts[mastIndex];
        var others = station.Masts.Where((_, i) => i != mastIndex).Select(m => (m.EastM, m.NorthM)).ToList();
        return others.Count == 0 ? request : request with
        {
            Field = point =>
            {
                var own = double.Hypot(point.X - mast.EastM, point.Y - mast.NorthM);
                return others.Any(o => double.Hypot(point.X - o.EastM, point.Y - o.NorthM) < own) ? default : request.Field(point);
            },
        };
    }

    /// <summary>The near field of one mast on one band as the exposure limits ask for it.</summary>
    internal static NearFieldRequest Request(Mast mast, Band band, MastDrive drive, double farthestM, Func<Vec3, NearFieldSample>? fields = null) =>
        Request(mast, drive, new Emission(band.FrequencyHz, band.PowerW, 1, band.Duty), farthestM, fields);

    private static NearFieldRequest Request(Mast mast, MastDrive drive, Emission emission, double farthestM, Func<Vec3, NearFieldSample>? known = null)
    {
        var foot = new Vec3(mast.EastM, mast.NorthM, 0);
        var fields = known ?? MastDrive.Fields(drive.Driven, foot, farthestM);
        var request = new NearFieldRequest(
            point =>
            {
                var sample = fields(point);
                return new FieldStrength(sample.Electric.Magnitude, sample.Magnetic.Magnitude);
            },
            drive.ReferenceW, emission, foot, NearestM, farthestM);
        return drive.OverSoil ? request with { Steps = StepsOverSoil } : request;
    }

    // Looked at from bearings that begin at a guy or midway between two: the same request, turned about the mast.
    internal static NearFieldRequest Turned(NearFieldRequest request, Mast mast, bool alongGuy)
    {
        var bearings = mast.Anchors.Select(a => (Math.PI / 2) - a.BearingRad).Select(a => a - (2 * Math.PI * Math.Floor(a / (2 * Math.PI)))).Order().ToList();
        var (from, gap) = bearings.Zip(bearings.Skip(1).Append(bearings[0] + (2 * Math.PI)), (a, b) => (From: a, Gap: b - a)).MaxBy(g => g.Gap);
        var (sin, cos) = Math.SinCos(alongGuy ? from : from + (gap / 2));
        var centre = request.Centre;
        return request with
        {
            Bearings = Alike(mast, bearings) ? 1 : Math.Clamp(bearings.Count, 3, 6),
            Field = point =>
            {
                var (dx, dy) = (point.X - centre.X, point.Y - centre.Y);
                return request.Field(new Vec3(centre.X + (dx * cos) - (dy * sin), centre.Y + (dx * sin) + (dy * cos), point.Z));
            },
        };
    }

    // Guys evenly spread and alike all round: one bearing stands for all.
    private static bool Alike(Mast mast, List<double> bearings)
    {
        var first = mast.Anchors[0];
        var even = 2 * Math.PI / bearings.Count;
        return mast.Anchors.All(a => Math.Abs(a.DistanceM - first.DistanceM) < 0.1 && Math.Abs(a.RiseM - first.RiseM) < 0.1)
            && bearings.Skip(1).Zip(bearings, (b, a) => b - a).All(g => Math.Abs(g - even) < 0.02)
            && mast.Guys.All(g => g.Anchors.IsEmpty) && (mast.TopWires is null || mast.TopWires.PartOfGuys);
    }

    private static ImmutableArray<GuyTouch> Guys(Station station, (ImmutableArray<BandExposure> Exposure, ImmutableArray<(string Guy, double A)> Guys)[] bands)
    {
        if (bands.Length == 0)
        {
            return [];
        }

        return
        [
            .. bands.SelectMany((b, i) => b.Guys.Select(g => (g.Guy, g.A, Band: station.Bands[i]))).GroupBy(g => g.Guy).Select(g => g.MaxBy(x => x.A)).Select(g => new GuyTouch(g.Guy, g.Band.Title,
                Trail.Computed("current into the anchor", "Ia", g.A, QuantityKind.RmsCurrent, "current at the lower end of the lowest piece, solved", Source.Derived("docs/theory/fields-wires.md"),
                    Trail.Given("power", "P", g.Band.PowerW, QuantityKind.Power, Source.DesignFile)).Within("the anchor as a perfect earth, which draws the most current"),
                RfBurn.ContactLimit(Population.Public, g.Band.FrequencyHz))),
        ];
    }

    // Real anchors are worse earths than a perfect plane and draw less: the most is asked for, whatever the fields are solved over.
    private static IEnumerable<(string Guy, double A)> IntoPerfectAnchors(Station station, int mastIndex, Band band, MastDrive drive, CancellationToken cancellation)
    {
        var perfect = drive.OverSoil ? MastDrive.Of(station, WireSolver.Solve(WireModels.Of(station), band.FrequencyHz, null, cancellation).Require(), mastIndex) : drive;
        return AnchorCurrents(station.Masts[mastIndex], perfect.Driven).Select(g => (g.Guy, g.A * Math.Sqrt(band.PowerW / perfect.ReferenceW)));
    }

    // The lowest piece of each guy ends at its anchor; what flows there is the most a hand put in the anchor's place could carry.
    private static IEnumerable<(string Guy, double A)> AnchorCurrents(Mast mast, DrivenWires driven)
    {
        foreach (var guy in driven.Mesh.Model.Wires.Where(w => w.Name.StartsWith("guy ", StringComparison.Ordinal) && w.Name.Contains($" of {mast.Name} to ", StringComparison.Ordinal))
            .GroupBy(w => w.Name[..w.Name.IndexOf(", piece", StringComparison.Ordinal)]))
        {
            yield return (guy.Key, driven.CurrentsOn(guy.Last().Name)[^1].Current.Magnitude);
        }
    }
}
