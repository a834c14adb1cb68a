namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// Series, shunt, series: two L networks back to back over a virtual resistance above both ends.
/// Rv = min(Z0, R)(Q² + 1), q1 = √(Rv/Z0 - 1), q2 = √(Rv/R - 1), X1 = q1·Z0, X2 = q2·R - Xa, B = (q1 + q2)/Rv.
/// The low-pass form has coils in series, the high-pass form capacitors.
/// </summary>
public sealed class TNetwork : ITopology
{
    /// <inheritdoc/>
    public string Id => "t";

    /// <inheritdoc/>
    public string Title => "T network";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem) =>
        from q in LoadedQ.Choices(problem.LineOhm / problem.TargetOhm.Real)
        from sign in new[] { 1, -1 }
        select At(problem, q, sign);

    /// <summary>The network at a chosen Q of its lower end; Q must be above √(ratio of the ends - 1).</summary>
    internal static Ladder At(MatchProblem problem, double q, int sign)
    {
        var (r, xa, z0) = (problem.TargetOhm.Real, problem.TargetOhm.Imaginary, problem.LineOhm);
        var rv = Math.Min(z0, r) * ((q * q) + 1);
        var (q1, q2) = (Math.Sqrt(Math.Max(0, (rv / z0) - 1)), Math.Sqrt(Math.Max(0, (rv / r) - 1)));
        var (tr, tx, tz) = (Reactances.LoadResistance(r), Reactances.LoadReactance(xa), Reactances.Line(problem));
        var virtualOhm = Reactances.Reactance("virtual resistance", "Rv", rv, "Rv = min(Z0, R)·(Q² + 1)", tz, tr, Reactances.Q(q));
        var x1 = Reactances.Reactance("series reactance at the line", "X1", sign * q1 * z0, "X1 = Z0·√(Rv/Z0 - 1), negative in the high-pass form", virtualOhm, tz);
        var x2 = Reactances.Reactance("series reactance at the load", "X2", (sign * q2 * r) - xa, "X2 = R·√(Rv/R - 1) - Xa, first term negative in the high-pass form", virtualOhm, tr, tx);
        var b = Reactances.Susceptance("shunt susceptance", "B", sign * (q1 + q2) / rv, "B = (q1 + q2)/Rv, negative in the high-pass form", virtualOhm);
        return Reactances.LadderOf(Reactances.Series(problem, x1), Reactances.Shunt(problem, b), Reactances.Series(problem, x2));
    }
}
