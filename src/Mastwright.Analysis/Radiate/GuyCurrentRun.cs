using System.Collections.Immutable;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>A cut proposed in a guy.</summary>
/// <param name="Level">Guy level, from 1.</param>
/// <param name="AtM">Where to cut, along the guy from the mast, m.</param>
public sealed record GuyCut(int Level, double AtM);

/// <summary>The guys of a mast on every band, and cuts that silence them.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Drives">Band by band, then every switch position of the groups.</param>
/// <param name="Cuts">Cuts proposed; empty when none is wanted.</param>
/// <param name="AfterCuts">Band by band with the cuts made.</param>
/// <param name="Checks">Whether the insulators hold.</param>
public sealed record GuyCurrents(string Mast, ImmutableArray<GuyDrive> Drives, ImmutableArray<GuyCut> Cuts, ImmutableArray<GuyDrive> AfterCuts, ImmutableArray<Check> Checks);

/// <summary>What the guys do at radio frequency, and where to cut them.</summary>
public static class GuyCurrentRun
{
    private const int MostRounds = 3;

    /// <summary>Every mast.</summary>
    public static ImmutableArray<GuyCurrents> Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        progress?.Report(new AnalysisStep("Solving the currents", 0.1));
        var before = Drives(station, cancellation);
        var (after, cut) = (before, station);
        for (var round = 1; round <= MostRounds && after.Any(m => m.Any(d => d.Pieces.Any(p => p.Rings))); round++)
        {
            progress?.Report(new AnalysisStep("Trying cuts", 0.1 + (0.3 * round)));
            cut = Cut(cut, after);
            after = Drives(cut, cancellation);
        }

        return [.. station.Masts.Select((mast, i) => new GuyCurrents(
            mast.Name, before[i], [.. New(mast, cut.Masts[i])], after[i], [.. GuyStress.Checks(mast, before[i], station.UnitSystem)]))];
    }

    private static ImmutableArray<ImmutableArray<GuyDrive>> Drives(Station station, CancellationToken cancellation)
    {
        var model = WireModels.Of(station);
        var frequencies = station.Bands.Select(b => b.FrequencyHz).Concat(station.Groups.Select(g => g.FrequencyHz)).Distinct().ToList();
        var sweep = WireSolver.Sweep(model, frequencies, null, cancellation);
        var solutions = sweep.Solutions.IsEmpty ? [] : frequencies.Zip(sweep.Solutions).ToDictionary(p => p.First, p => p.Second);
        var soil = EarthChoice.IsExact(station) ? OverSoil(station, frequencies, cancellation) : [];
        var groups = GroupRun.Guys(station, solutions, soil);
        return [.. station.Masts.Select((mast, feed) => solutions.Count == 0 ? [] : station.Bands
            .Select(band => (Band: band, Drive: MastDrive.Of(station, soil.GetValueOrDefault(band.FrequencyHz) ?? solutions[band.FrequencyHz], feed)))
            .Select(b => GuyStress.OfBand(mast, b.Band, b.Drive.Driven, b.Drive.ReferenceW))
            .Concat(groups[feed]).ToImmutableArray())];
    }

    private static Dictionary<double, WireSolution> OverSoil(Station station, List<double> frequencies, CancellationToken cancellation)
    {
        var model = SoilModels.Of(station).Model;
        return frequencies.Select(f => (f, SoilSolver.Solve(model, f, cancellation).Solution)).Where(s => s.Solution is not null).ToDictionary(s => s.f, s => s.Solution!);
    }

    // Each ringing piece is halved; the same cut goes into every guy of the level, so that the mast stays round.
    private static Station Cut(Station station, ImmutableArray<ImmutableArray<GuyDrive>> drives) => station with
    {
        Masts = [.. station.Masts.Select((mast, i) => mast with
        {
            Guys = [.. mast.Guys.Select((guy, g) =>
            {
                var middles = drives[i].SelectMany(d => d.Pieces).Where(p => p.Level == g + 1 && p.Rings).Select(p => Math.Round((p.FromM + p.ToM) / 2, 1)).Distinct();
                var places = guy.InsulatorsAtM.IsEmpty ? [0.0] : guy.InsulatorsAtM;
                return guy with { InsulatorsAtM = [.. middles.Aggregate(places.AsEnumerable(), (all, m) => all.Any(p => Math.Abs(p - m) < 0.5) ? all : [.. all, m]).Order()] };
            })],
        })],
    };

    private static IEnumerable<GuyCut> New(Mast before, Mast after) => before.Guys.SelectMany((guy, g) =>
        after.Guys[g].InsulatorsAtM.Where(m => m > 0 && !guy.InsulatorsAtM.Any(p => Math.Abs(p - m) < 1e-6)).Select(m => new GuyCut(g + 1, m)));
}
