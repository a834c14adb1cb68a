using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Batch;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Analysis.Stand;

/// <summary>What the structure of one mast came to.</summary>
/// <param name="Result">The figures.</param>
/// <param name="Checks">The checks.</param>
/// <param name="Findings">What the solver had to say.</param>
internal sealed record StandAnswer(StandResult Result, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings)
{
    /// <summary>Largest pull on each anchor, N; empty when no case finds an equilibrium.</summary>
    public IReadOnlyDictionary<string, double> AnchorPullsN { get; init; } = ImmutableDictionary<string, double>.Empty;
}

/// <summary>One solved case with the wind that made it.</summary>
internal sealed record SolvedCase(StandCase Case, MastSolution Solution)
{
    public string Name => Case.Case.Name;
}

/// <summary>Solves every load combination of a mast and draws the checks from them.</summary>
internal static class StandRun
{
    private const double MuchCarried = 0.5;

    /// <param name="station">The station.</param>
    /// <param name="mast">Its mast.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="directions">Wind directions.</param>
    /// <param name="screens">Whether lost guys, vibration, tension table and the make-up of the guys are looked at too.</param>
    /// <param name="options">How patiently to solve, where a case that carries less than half of its load need not be known well; null for the defaults.</param>
    public static StandAnswer Of(Station station, Mast mast, CancellationToken cancellation, int directions = LoadCases.Directions, bool screens = true, SolverOptions? options = null)
    {
        var asked = StandModel.Of(station, mast);

        // What the design calls initial tension is what a gauge shows on the finished mast.
        var model = TensionSetting.SetPlumb(asked.Structure, null, cancellation) is { } set ? asked with { Structure = set.Mast } : asked;
        var gust = GustRun.Of(station, model, cancellation);
        var cases = LoadCases.Of(station, model, directions, gust.Factor);
        var prepared = MastSolver.Prepare(model.Structure, cases.Select(c => c.Case), options);
        var solutions = CaseBatch.Run(prepared, [.. cases.Select(c => c.Case)], cancellation: cancellation);
        solutions = options is null ? solutions : WithFineSteps(model, cases, solutions, cancellation);
        var solved = cases.Zip(solutions, (c, s) => new SolvedCase(c, s)).ToList();

        var findings = solved.SelectMany(s => s.Solution.Findings).DistinctBy(f => (f.Code, f.Message)).ToImmutableArray();
        var studies = new StandStudies(station, model, prepared, solved);
        var buckling = studies.Buckling(cancellation);
        var (lostChecks, lost) = screens ? studies.LostGuys(cancellation) : ([], []);
        var patches = screens && studies.Stands ? PatchRun.Of(station, model, prepared, cancellation) : PatchRun.Answer.None;
        var checks = new StandChecks(station, model, solved, lost) { Patches = patches };
        var (windChecks, frequencies) = screens ? studies.Vibration(cancellation) : ([], []);
        var tensions = screens ? studies.Tensions(cancellation) : [];
        var chains = new ChainRun(station, model, [.. solved.Where(x => x.Solution.IsStable)], tensions).Examine();
        var lifting = screens ? LiftChecks.Of(station, mast, cancellation) : [];
        var all = checks.Stability(cancellation).Concat(checks.WhereStable()).Concat(buckling is { } b ? [b.Check] : []).Concat(lostChecks).Concat(windChecks).Concat(gust.Checks).Concat(PatchRun.Guys(station, model, patches))
            .Concat(chains.Checks).Concat(lifting);
        return new StandAnswer(
            new StandResult
            {
                Cases = [.. solved.Select(c => CaseOf(c, model))],
                BaseCompressionN = checks.BaseCompression,
                GuyTensions = checks.GuyTensions,
                BucklingFactor = buckling?.Factor,
                LostGuys = lost,
                MastFrequencies = frequencies,
                Tensions = tensions,
                Chains = chains.Chains,
                GustFactor = gust.Factor,
            },
            [.. all],
            findings.AddRange(chains.Findings))
        {
            AnchorPullsN = checks.AnchorPullsN,
        };
    }

    // Long steps may miss what short ones walk up to: a case that carries much by them is solved again before it counts as lost.
    private static IReadOnlyList<MastSolution> WithFineSteps(StandModel model, IReadOnlyList<StandCase> cases, IReadOnlyList<MastSolution> coarse, CancellationToken cancellation)
    {
        var again = Enumerable.Range(0, cases.Count).Where(i => coarse[i] is { Outcome: Outcome.Unstable, LoadShare: >= MuchCarried }).ToList();
        if (again.Count == 0)
        {
            return coarse;
        }

        var fine = MastSolver.Prepare(model.Structure, cases.Select(c => c.Case));
        MastSolution[] solutions = [.. coarse];
        Parallel.ForEach(again, new ParallelOptions { CancellationToken = cancellation }, i => solutions[i] = fine.Solve(cases[i].Case, coarse[i], cancellation));
        return solutions;
    }

    private static CaseResult CaseOf(SolvedCase solved, StandModel model)
    {
        var s = solved.Solution;
        var top = s.Nodes.Count > 0 ? s.Nodes[^1].DisplacementM : default;
        return new CaseResult(
            solved.Name, s.IsStable, double.Hypot(top.X, top.Y), s.Foot.ReactionN.Z,
            s.Guys.Select(g => g.LargestTensionN).DefaultIfEmpty().Max(), s.LargestMoment?.BendingMomentNm ?? 0)
        {
            Kind = solved.Case.Kind,
            TemperatureK = solved.Case.Case.TemperatureK,
            WindFromRad = solved.Case.WindFromRad,
            Axis = s.IsStable ? [.. s.Nodes.Select(n => new AxisMove(n.HeightM, n.DisplacementM))] : [],
            Guys = s.IsStable ? [.. model.Guys.Select(g => new GuyInCase(g.Level, g.Anchor.Name, s.Guy(g.Guy.Name).LargestTensionN, s.Guy(g.Guy.Name).AnchorTensionN, g.Strand.BreakingN))] : [],
        };
    }
}
