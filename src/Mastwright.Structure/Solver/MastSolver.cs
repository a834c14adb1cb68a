using Mastwright.Model.Trails;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>
/// The way in: a guyed mast and a load case go in, the equilibrium comes out.
/// <para>
/// The mast is a chain of beams that may move and turn without limit (<c>BeamElement</c>), the guys are exact
/// elastic catenaries, the loads keep their directions. Whatever the mast does, the call returns: a mast that
/// gives way is a result, not an error.
/// </para>
/// </summary>
public static class MastSolver
{
    /// <summary>Solves one case.</summary>
    /// <param name="mast">The mast.</param>
    /// <param name="loadCase">What acts on it.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MastSolution Solve(GuyedMast mast, LoadCase loadCase, SolverOptions? options = null, CancellationToken cancellation = default) =>
        Prepare(mast, [loadCase], options).Solve(loadCase, null, cancellation);

    /// <summary>
    /// Readies a mast for many cases: looks the input over, cuts the mesh and finds the guy lengths once.
    /// The result is read-only and may be used by several threads at once.
    /// </summary>
    /// <param name="mast">The mast.</param>
    /// <param name="cases">All cases to come; the heights of their point loads become nodes.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    public static PreparedMast Prepare(GuyedMast mast, IEnumerable<LoadCase> cases, SolverOptions? options = null)
    {
        options ??= SolverOptions.Default;
        var findings = InputCheck.Of(mast).ToList();
        if (findings.Count > 0)
        {
            return new(mast, options, null, findings);
        }

        var lengths = new double[mast.Guys.Count];
        for (var g = 0; g < lengths.Length; g++)
        {
            var guy = mast.Guys[g];
            if (!guy.Setting.IsTension)
            {
                lengths[g] = guy.Setting.Value;
            }
            else if (UnstressedLength(mast, guy) is { } length)
            {
                lengths[g] = length;
            }
            else
            {
                findings.Add(new("guy-tension-too-low", Severity.Error, $"Guy '{guy.Name}' pulls more than its initial tension by its weight alone.", null, $"{guy.Setting.Value:G6} N", "a tension its weight does not exceed", "Raise the initial tension or use a lighter strand."));
            }
        }

        if (findings.Count > 0)
        {
            return new(mast, options, null, findings);
        }

        var heights = cases.SelectMany(c => c.PointLoads).Select(p => p.HeightM).Where(h => h >= 0 && h <= mast.HeightM);
        return new(mast, options, MastMesh.Create(mast, heights, options, lengths), findings);
    }

    /// <summary>
    /// The unstressed length at the installation temperature that gives a guy its initial tension at the anchor
    /// in still air, the mast straight and at its undeformed height; null when its weight alone pulls more.
    /// </summary>
    public static double? UnstressedLength(GuyedMast mast, Guy guy) => guy.Setting.IsTension
        ? GuyLine.UnstressedLength(guy, guy.UndeformedChord(mast.FootM), guy.Setting.Value)
        : guy.Setting.Value;
}
