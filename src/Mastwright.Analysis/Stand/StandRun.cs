using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Stand;

/// <summary>What the structure of one mast came to.</summary>
/// <param name="Result">The figures.</param>
/// <param name="Checks">The checks.</param>
/// <param name="Findings">What the solver had to say.</param>
internal sealed record StandAnswer(StandResult Result, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings);

/// <summary>One solved case with the wind that made it.</summary>
internal sealed record SolvedCase(StandCase Case, MastSolution Solution)
{
    public string Name => Case.Case.Name;
}

/// <summary>Solves every load combination of a mast and draws the checks from them.</summary>
internal static class StandRun
{
    public static StandAnswer Of(Station station, Mast mast, CancellationToken cancellation)
    {
        var model = StandModel.Of(station, mast);
        var cases = LoadCases.Of(station, model);
        var prepared = MastSolver.Prepare(model.Structure, cases.Select(c => c.Case));
        var solved = new SolvedCase[cases.Count];
        Parallel.For(0, solved.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            solved[i] = new SolvedCase(cases[i], prepared.Solve(cases[i].Case, null, cancellation)));

        var findings = solved.SelectMany(s => s.Solution.Findings).DistinctBy(f => (f.Code, f.Message)).ToImmutableArray();
        var checks = new StandChecks(station, model, solved);
        var all = checks.Stability(cancellation).Concat(checks.WhereStable()).ToImmutableArray();
        return new StandAnswer(
            new StandResult
            {
                Cases = [.. solved.Select(c => CaseOf(c, model))],
                BaseCompressionN = checks.BaseCompression,
                GuyTensions = checks.GuyTensions,
            },
            all,
            findings);
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
            WindFromRad = solved.Case.WindFromRad,
            Axis = s.IsStable ? [.. s.Nodes.Select(n => new AxisMove(n.HeightM, n.DisplacementM))] : [],
            Guys = s.IsStable ? [.. model.Guys.Select(g => new GuyInCase(g.Level, g.Anchor.Name, s.Guy(g.Guy.Name).LargestTensionN, s.Guy(g.Guy.Name).AnchorTensionN, g.Strand.BreakingN))] : [],
        };
    }
}
