namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// Two elements, the shunt one at the load and the series one at the line: for a load conductance below the line's.
/// Bt = ±√(G/Z0 - G²), B = Bt - Ba, Xs = Bt·Z0/G (derived: the impedance of G + jBt is Z0 - jXs).
/// </summary>
public sealed class LShuntAtLoad : ITopology
{
    /// <inheritdoc/>
    public string Id => "l-shunt-at-load";

    /// <inheritdoc/>
    public string Title => "L network, shunt element at the load";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var y = 1 / problem.TargetOhm;
        var (g, ba, z0) = (y.Real, y.Imaginary, problem.LineOhm);
        if (g * z0 > 1)
            yield break;
        foreach (var sign in g * z0 == 1 ? new[] { 1 } : [1, -1])
        {
            var bt = sign * Math.Sqrt(g * ((1 / z0) - g));
            var tg = Reactances.LoadConductance(problem);
            var tb = Reactances.LoadSusceptance(problem);
            var tz = Reactances.Line(problem);
            var total = Reactances.Susceptance("shunt arm susceptance", "Bt", bt, sign > 0 ? "Bt = √(G/Z0 - G²)" : "Bt = -√(G/Z0 - G²)", tg, tz);
            var shunt = Reactances.Susceptance("shunt susceptance to add", "B", bt - ba, "B = Bt - Ba", total, tb);
            var series = Reactances.Reactance("series reactance", "Xs", bt * z0 / g, "Xs = Bt·Z0/G", total, tg, tz);
            yield return Reactances.LadderOf(Reactances.Series(problem, series), Reactances.Shunt(problem, shunt));
        }
    }
}
