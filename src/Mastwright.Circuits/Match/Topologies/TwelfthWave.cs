namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// Two equal sections of the two impedances to be joined, swapped: at the load a section of Z0, then one of the line
/// nearest the load's resistance R. tan²θ = 1/(B + 1 + 1/B), B = Z0/R (about a twelfth wave each). Where the line is not
/// exactly R the two lengths are tuned; a series element cancels the load's reactance.
/// </summary>
public sealed class TwelfthWave : ITopology
{
    /// <inheritdoc/>
    public string Id => "twelfth-wave";

    /// <inheritdoc/>
    public string Title => "two twelfth-wave sections of standard line";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var (r, xa) = (problem.TargetOhm.Real, problem.TargetOhm.Imaginary);
        var other = problem.Lines.Where(l => Math.Abs((l.CharacteristicOhm / problem.LineOhm) - 1) > 0.05).MinBy(l => Math.Abs(Math.Log(l.CharacteristicOhm / r)));
        if (other is null || Math.Abs(Math.Log(other.CharacteristicOhm / r)) > 0.3)
            yield break;
        var angle = Angle(problem.LineOhm, other.CharacteristicOhm);
        var series = Reactances.Series(problem, Reactances.Reactance("series reactance", "X", -xa, "X = -Xa", Reactances.LoadReactance(xa)));
        var feed = problem.FeedType;
        var start = Reactances.LadderOf(
            new LineSection(other, other.LengthM(angle, problem.FrequencyHz)),
            new LineSection(feed, feed.LengthM(angle, problem.FrequencyHz)),
            series);
        if (LadderTuner.Tune(start, problem, 0, 1) is { } tuned)
            yield return tuned;
    }

    /// <summary>Electrical length of each section, radians.</summary>
    internal static double Angle(double lineOhm, double loadOhm)
    {
        var b = lineOhm / loadOhm;
        return Math.Atan(1 / Math.Sqrt(b + 1 + (1 / b)));
    }
}
