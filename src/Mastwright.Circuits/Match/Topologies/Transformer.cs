namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// A two-winding transformer for the resistance, with a series element at the load for the reactance and the
/// transformer's own leakage. The line's winding has a reactance of four times the line impedance (common practice,
/// no source); ratio and element are found by search.
/// </summary>
public sealed class Transformer : ITopology
{
    /// <inheritdoc/>
    public string Id => "transformer";

    /// <inheritdoc/>
    public string Title => "transformer with a series element";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var (r, xa) = (problem.TargetOhm.Real, problem.TargetOhm.Imaginary);
        var ratio = Math.Sqrt(problem.LineOhm / r);
        if (ratio is < 0.2 or > 5)
            yield break;
        var primary = 4 * problem.LineOhm / problem.Omega;
        var k = problem.TransformerCoupling;
        var leakage = 4 * problem.LineOhm / (ratio * ratio) * (1 - (k * k));
        if (Reactances.Series(problem, Reactances.Reactance("series reactance", "X", -xa - leakage, "X = -Xa - leakage", Reactances.LoadReactance(xa))) is not { } series)
            yield break;
        var start = Reactances.LadderOf(new TransformerSection(primary, ratio, k), series);
        if (LadderTuner.Tune(start, problem, 0, 1) is { } tuned)
            yield return tuned;
    }
}
