using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>A mast looked over and meshed once, to be solved under many cases. Read-only; safe for several threads.</summary>
public sealed class PreparedMast
{
    internal PreparedMast(GuyedMast mast, SolverOptions options, MastMesh? mesh, IReadOnlyList<Finding> findings)
    {
        Mast = mast;
        Options = options;
        Mesh = mesh;
        Findings = findings;
    }

    /// <summary>The mast.</summary>
    public GuyedMast Mast { get; }

    /// <summary>The options.</summary>
    public SolverOptions Options { get; }

    /// <summary>What is wrong with the mast; empty when it can be solved.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    internal MastMesh? Mesh { get; }

    /// <summary>Solves one case.</summary>
    /// <param name="loadCase">The case; its point loads should have been named when the mast was prepared, else they go to the nearest node.</param>
    /// <param name="start">The solution of a neighbouring case to begin from; of one that gave way only its limit is used. Null begins from rest.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    public MastSolution Solve(LoadCase loadCase, MastSolution? start = null, CancellationToken cancellation = default)
    {
        var wrong = Findings.Concat(InputCheck.Of(Mast, loadCase)).ToList();
        if (Mesh is null || wrong.Count > 0)
        {
            return Refused(loadCase, wrong);
        }

        var loads = new LoadSet(Mesh, loadCase);
        var loose = TwistIsLoose(loads);
        var assembly = new Assembly(Mesh, loose);
        var end = new Equilibrium(Mesh, loads, Options, assembly, cancellation).Find(start is { IsStable: true } near ? near.State : null, start is { Outcome: Outcome.Unstable, OwnWeightShare: >= 1 } gone ? gone.LoadShare : null);
        var recovery = new Recovery(Mesh, loads, assembly, end);
        recovery.Settle();
        var nodes = recovery.Nodes();
        var guys = recovery.Guys();
        var foot = recovery.Foot();
        return new(
            loadCase.Name,
            end.Outcome,
            end.CaseShare,
            end.OwnShare,
            end.RelativeResidual,
            end.Iterations,
            nodes,
            recovery.Sections(),
            foot,
            guys,
            Remarks.Of(Mast, loadCase, end, loose, guys, foot, nodes.Max(n => n.TiltRad)))
        {
            State = end.State,
            Case = loadCase,
        };
    }

    // On a ball, only guys attached off the axis stop the mast from turning about itself.
    internal bool TwistIsLoose(LoadSet loads) =>
        Mast.Foot == FootFixity.Ball && !Mesh!.Guys.Where((g, i) => loads.Present[i] && g.Arm != Vec3.Zero).Any();

    private static MastSolution Refused(LoadCase loadCase, IReadOnlyList<Finding> findings) => new(
        loadCase.Name, Outcome.InvalidInput, 0, 0, 0, 0, [], [], new(Vec3.Zero, Vec3.Zero, 0, 0), [], findings);
}
