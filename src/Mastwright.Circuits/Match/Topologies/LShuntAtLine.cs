namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// Two elements, the series one at the load and the shunt one at the line: for a load resistance below the line's.
/// Xt = ±√(R(Z0 - R)), Xs = Xt - Xa, B = Xt/(R·Z0) (derived: the input admittance of R + jXt is 1/Z0 - jB).
/// </summary>
public sealed class LShuntAtLine : ITopology
{
    /// <inheritdoc/>
    public string Id => "l-shunt-at-line";

    /// <inheritdoc/>
    public string Title => "L network, shunt element at the line";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var (r, xa, z0) = (problem.TargetOhm.Real, problem.TargetOhm.Imaginary, problem.LineOhm);
        if (r > z0)
            yield break;
        foreach (var sign in r == z0 ? new[] { 1 } : [1, -1])
        {
            var xt = sign * Math.Sqrt(r * (z0 - r));
            var (tr, tx, tz) = (Reactances.LoadResistance(r), Reactances.LoadReactance(xa), Reactances.Line(problem));
            var total = Reactances.Reactance("series arm reactance", "Xt", xt, sign > 0 ? "Xt = √(R·(Z0 - R))" : "Xt = -√(R·(Z0 - R))", tr, tz);
            var series = Reactances.Reactance("series reactance to add", "Xs", xt - xa, "Xs = Xt - Xa", total, tx);
            var shunt = Reactances.Susceptance("shunt susceptance", "B", xt / (r * z0), "B = Xt/(R·Z0)", total, tr, tz);
            yield return Reactances.LadderOf(Reactances.Shunt(problem, shunt), Reactances.Series(problem, series));
        }
    }
}
