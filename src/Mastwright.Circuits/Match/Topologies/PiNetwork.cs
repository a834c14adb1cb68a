namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// Shunt, series, shunt: two L networks back to back over a virtual resistance below both ends.
/// Rv = max(Z0, 1/G)/(Q² + 1), q1 = √(Z0/Rv - 1), q2 = √(1/(G·Rv) - 1), X = Rv(q1 + q2), B1 = q1/Z0, B2 = q2·G - Ba.
/// The low-pass form has capacitors to ground, the high-pass form coils.
/// </summary>
public sealed class PiNetwork : ITopology
{
    /// <inheritdoc/>
    public string Id => "pi";

    /// <inheritdoc/>
    public string Title => "pi network";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem) =>
        from q in LoadedQ.Choices(problem.LineOhm * (1 / problem.TargetOhm).Real)
        from sign in new[] { 1, -1 }
        select At(problem, q, sign);

    /// <summary>The network at a chosen Q of its higher end; Q must be above √(ratio of the ends - 1).</summary>
    internal static Ladder At(MatchProblem problem, double q, int sign)
    {
        var y = 1 / problem.TargetOhm;
        var (g, ba, z0) = (y.Real, y.Imaginary, problem.LineOhm);
        var rv = Math.Max(z0, 1 / g) / ((q * q) + 1);
        var (q1, q2) = (Math.Sqrt(Math.Max(0, (z0 / rv) - 1)), Math.Sqrt(Math.Max(0, (1 / (g * rv)) - 1)));
        var virtualOhm = Reactances.Reactance("virtual resistance", "Rv", rv, "Rv = max(Z0, 1/G)/(Q² + 1)", Reactances.Line(problem), Reactances.LoadConductance(problem), Reactances.Q(q));
        var b1 = Reactances.Susceptance("shunt susceptance at the line", "B1", sign * q1 / z0, "B1 = √(Z0/Rv - 1)/Z0, negative in the high-pass form", virtualOhm, Reactances.Line(problem));
        var b2 = Reactances.Susceptance("shunt susceptance at the load", "B2", (sign * q2 * g) - ba, "B2 = G·√(1/(G·Rv) - 1) - Ba, first term negative in the high-pass form", virtualOhm, Reactances.LoadConductance(problem), Reactances.LoadSusceptance(problem));
        var x = Reactances.Reactance("series reactance", "X", sign * rv * (q1 + q2), "X = Rv·(q1 + q2), negative in the high-pass form", virtualOhm);
        return Reactances.LadderOf(Reactances.Shunt(problem, b1), Reactances.Series(problem, x), Reactances.Shunt(problem, b2));
    }
}
