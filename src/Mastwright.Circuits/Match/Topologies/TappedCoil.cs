namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// A coil from the base to ground whose inductance resonates the load's capacitance and whose tap sets the ratio;
/// found by search, because its two parts couple. Its drain path to ground comes free.
/// </summary>
public sealed class TappedCoil : ITopology
{
    /// <inheritdoc/>
    public string Id => "tapped-coil";

    /// <inheritdoc/>
    public string Title => "coil tapped to ground";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var y = 1 / problem.TargetOhm;
        if (y.Imaginary <= 0)
            yield break;
        var ratio = problem.LineOhm * y.Real;
        var loadOnTop = ratio < 1;
        var share = Math.Clamp(loadOnTop ? Math.Sqrt(ratio) : 1 / Math.Sqrt(ratio), 0.05, 0.95);
        var coil = 1 / (problem.Omega * y.Imaginary) * (loadOnTop ? 1 : 1 / (share * share));
        if (coil > 500e-6)
            yield break;

        var (ladder, reflection) = Search(problem, new TappedCoilSection(coil, share, loadOnTop));
        if (reflection < 1e-6)
            yield return ladder;
    }

    /// <summary>Sets coil and tap for the best match, from a start of stated shape and loss.</summary>
    internal static (Ladder Ladder, double Reflection) Search(MatchProblem problem, TappedCoilSection start)
    {
        // The tap is searched as s/(1 - s), so that it stays inside the coil.
        Ladder At(double[] v) => Reactances.LadderOf(start with { InductanceH = v[0], TapShare = v[1] / (1 + v[1]) });
        return LadderTuner.Search(At, [start.InductanceH, start.TapShare / (1 - start.TapShare)], problem);
    }
}
