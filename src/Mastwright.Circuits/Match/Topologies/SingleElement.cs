using Mastwright.Circuits.Lines;

namespace Mastwright.Circuits.Match.Topologies;

/// <summary>A coil across the terminals (hairpin) that cancels the load's susceptance and leaves 1/G for the line.</summary>
public sealed class ShuntCoil : ITopology
{
    /// <inheritdoc/>
    public string Id => "shunt-coil";

    /// <inheritdoc/>
    public string Title => "coil across the base (hairpin)";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var ba = (1 / problem.TargetOhm).Imaginary;
        if (ba <= 0 || Mismatch.Swr(1 / (1 / problem.TargetOhm).Real, problem.LineOhm) > SingleElement.WorstSwr)
            yield break;
        yield return Reactances.LadderOf(Reactances.Shunt(problem, Reactances.Susceptance("shunt susceptance", "B", -ba, "B = -Ba", Reactances.LoadSusceptance(problem))));
    }
}

/// <summary>A capacitor in series that cancels the load's reactance and leaves R for the line.</summary>
public sealed class SeriesCapacitor : ITopology
{
    /// <inheritdoc/>
    public string Id => "series-capacitor";

    /// <inheritdoc/>
    public string Title => "series capacitor alone";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var z = problem.TargetOhm;
        if (z.Imaginary <= 0 || Mismatch.Swr(z.Real, problem.LineOhm) > SingleElement.WorstSwr)
            yield break;
        yield return Reactances.LadderOf(Reactances.Series(problem, Reactances.Reactance("series reactance", "X", -z.Imaginary, "X = -Xa", Reactances.LoadReactance(z.Imaginary))));
    }
}

/// <summary>What one element may leave.</summary>
internal static class SingleElement
{
    /// <summary>One element leaves a mismatch; beyond this it is not offered.</summary>
    public const double WorstSwr = 2;
}
