using System.Collections.Immutable;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Batch;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Keep;

/// <summary>A storm as it was reported.</summary>
/// <param name="GustMPerS">Strongest 3-second gust at 10 m over open country, m/s; null when not known.</param>
/// <param name="IceM">Radial ice, m; 0 for none.</param>
/// <param name="FromAzimuthRad">Bearing the wind came from; null when not known: then all round is looked at.</param>
/// <param name="TemperatureK">Air temperature meanwhile.</param>
public sealed record ReportedStorm(double? GustMPerS, double IceM, double? FromAzimuthRad, double TemperatureK);

/// <summary>What a storm did to one guy.</summary>
/// <param name="Name">The guy.</param>
/// <param name="BeforeN">Tension at the anchor in still air at the storm's temperature.</param>
/// <param name="Largest">Largest tension of the storm, at the upper end.</param>
/// <param name="ShareOfBreaking">That over the breaking strength.</param>
/// <param name="WentSlack">Whether it went slack on the lee side in any case.</param>
/// <param name="Governing">The case of the largest tension.</param>
public sealed record GuyInStorm(string Name, double BeforeN, Trail Largest, double ShareOfBreaking, bool WentSlack, string Governing);

/// <summary>What the model says a storm did to a mast.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Stood">Whether the model finds it standing in every case looked at.</param>
/// <param name="Guys">Guy by guy; empty when it did not stand in any case.</param>
/// <param name="FootCompressionN">Largest compression at the foot.</param>
/// <param name="TopDeflectionM">Largest level movement of the top.</param>
/// <param name="Checks">The design's own checks, held against these loads without load factors.</param>
public sealed record StormEffect(string Mast, bool Stood, ImmutableArray<GuyInStorm> Guys, double FootCompressionN, double TopDeflectionM, ImmutableArray<Check> Checks);

/// <summary>Loads the structure again with the wind and ice that were reported.</summary>
public static class StormReplay
{
    private static readonly Source Equilibrium = Source.Derived("docs/theory/structure-mast.md");

    /// <summary>Gusts below this are replayed with it: the wind method reads no less, and such a gust hardly loads a mast.</summary>
    public const double LeastGustMPerS = 10;

    /// <summary>Gusts above this cannot be replayed.</summary>
    public const double GreatestGustMPerS = 110;

    /// <summary>What the replay assumes, in words.</summary>
    public const string Assumes =
        "The gust is taken as a 3-second gust at 10 m over open country, its pressure after ASCE 7-22 with the site's exposure and no directionality or load factor; reported ice is the same at every height and carries the whole gust. Guys are at their set lengths: a guy that had drifted before the storm saw another tension.";

    /// <summary>Replays it.</summary>
    public static StormEffect Of(Station station, Mast mast, ReportedStorm storm, CancellationToken cancellation)
    {
        var model = StandingMast(station, mast, cancellation);
        var reported = station with { Limits = station.Limits with { WindLoadFactor = 1 } };
        var cases = LoadCases.Reported(reported, model, storm);
        var prepared = MastSolver.Prepare(model.Structure, cases.Select(c => c.Case));
        var solutions = CaseBatch.Run(prepared, [.. cases.Select(c => c.Case)], cancellation: cancellation);
        var solved = cases.Zip(solutions, (c, s) => new SolvedCase(c, s)).ToList();
        var stable = solved.Where(s => s.Solution.IsStable).ToList();
        if (stable.Count == 0)
        {
            return new StormEffect(mast.Name, false, [], 0, 0, []);
        }

        var checks = new StandChecks(reported, model, solved, []);
        return new StormEffect(
            mast.Name,
            stable.Count == solved.Count,
            [.. model.Guys.Select(g => Guy(g, stable))],
            stable.Max(s => s.Solution.Foot.ReactionN.Z),
            stable.Max(s => double.Hypot(s.Solution.Nodes[^1].DisplacementM.X, s.Solution.Nodes[^1].DisplacementM.Y)),
            [.. checks.WhereStable()]);
    }

    private static StandModel StandingMast(Station station, Mast mast, CancellationToken cancellation) => Tune.StandingMast.Set(station, mast, cancellation);

    private static GuyInStorm Guy(ModelGuy guy, List<SolvedCase> stable)
    {
        var name = guy.Guy.Name;
        var worst = stable.MaxBy(s => s.Solution.Guy(name).LargestTensionN)!;
        var largest = worst.Solution.Guy(name).LargestTensionN;
        return new GuyInStorm(
            name, stable[0].Solution.Guy(name).AnchorTensionN,
            Trail.Computed($"largest tension of {name}", "T", largest, QuantityKind.Force, "equilibrium of the mast under the reported wind and ice", Equilibrium),
            largest / guy.Strand.BreakingN, stable.Any(s => s.Solution.Guy(name).IsSlack), worst.Name);
    }
}
