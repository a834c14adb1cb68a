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
    /// <param name="start">The solution of a neighbouring case to begin from; null begins from rest.</param>
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
        var end = new Equilibrium(Mesh, loads, Options, assembly, cancellation).Find(start?.State);
        var recovery = new Recovery(Mesh, loads, assembly, end);
        recovery.Settle();
        return new(
            loadCase.Name,
            end.Outcome,
            end.CaseShare,
            end.OwnShare,
            end.RelativeResidual,
            end.Iterations,
            recovery.Nodes(),
            recovery.Sections(),
            recovery.Foot(),
            recovery.Guys(),
            Remarks(loadCase, end, loose))
        {
            State = end.State,
            Case = loadCase,
        };
    }

    // On a ball, only guys attached off the axis stop the mast from turning about itself.
    internal bool TwistIsLoose(LoadSet loads) =>
        Mast.Foot == FootFixity.Ball && !Mesh!.Guys.Where((g, i) => loads.Present[i] && g.Arm != Vec3.Zero).Any();

    private static List<Finding> Remarks(LoadCase loadCase, PathEnd end, bool loose)
    {
        var list = new List<Finding>();
        if (loose)
        {
            list.Add(new("twist-unrestrained", Severity.Warning, "Nothing stops the mast from turning about its axis: the foot is a ball and every guy attaches on the axis. It was solved as if the foot held the twist.", WayOut: "Attach the guys at a radius, or use a foot that holds the twist."));
        }

        if (end.Outcome == Outcome.Mechanism)
        {
            list.Add(new("mechanism", Severity.Error, $"Case '{loadCase.Name}': nothing holds the mast upright, even without its weight.", WayOut: "Check that every direction has a guy that is not slack."));
        }
        else if (end.Outcome == Outcome.Unstable)
        {
            list.Add(end.OwnShare < 1
                ? new("own-weight-unstable", Severity.Error, $"Case '{loadCase.Name}': the mast gives way at {100 * end.OwnShare:F0} % of its own weight in still air.", WayOut: "Use a stiffer mast, more guy levels or more initial tension.")
                : new("unstable", Severity.Error, $"Case '{loadCase.Name}': the mast gives way at {100 * end.CaseShare:F0} % of the case.", WayOut: "Use a stiffer mast, more guy levels, larger strand or more initial tension."));
        }

        return list;
    }

    private static MastSolution Refused(LoadCase loadCase, IReadOnlyList<Finding> findings) => new(
        loadCase.Name, Outcome.InvalidInput, 0, 0, 0, 0, [], [], new(Vec3.Zero, Vec3.Zero, 0, 0), [], findings);
}
