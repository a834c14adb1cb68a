namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// A section of another line let into the feed line at a distance from the load; no lumped parts.
/// n = Z1/Z0, r + jx = Z/Z0: tan b = √(((r - 1)² + x²)/(r(n - 1/n)² - (r - 1)² - x²)), tan a = ((n - r/n)·tan b + x)/(r + x·n·tan b - 1)
/// (Regier 1978, from memory); a of the feed line at the load, then b of the other.
/// </summary>
public sealed class SeriesSection : ITopology
{
    /// <inheritdoc/>
    public string Id => "series-section";

    /// <inheritdoc/>
    public string Title => "section of standard line let into the feed line";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var feed = problem.FeedType;
        foreach (var line in problem.Lines)
        {
            if (Angles(problem.TargetOhm / problem.LineOhm, line.CharacteristicOhm / problem.LineOhm) is not var (a, b))
                continue;
            yield return Reactances.LadderOf(
                new LineSection(line, line.LengthM(b, problem.FrequencyHz)),
                new LineSection(feed, feed.LengthM(a, problem.FrequencyHz)));
        }
    }

    /// <summary>The electrical lengths a (feed line at the load) and b (section), radians; null when there is no solution.</summary>
    internal static (double A, double B)? Angles(System.Numerics.Complex load, double n)
    {
        var (r, x) = (load.Real, load.Imaginary);
        var off = ((r - 1) * (r - 1)) + (x * x);
        var denominator = (r * (n - (1 / n)) * (n - (1 / n))) - off;
        if (denominator <= 0 || off == 0)
            return null;
        var tanB = Math.Sqrt(off / denominator);
        var a = Math.Atan((((n - (r / n)) * tanB) + x) / (r + (x * n * tanB) - 1));
        return (a < 0 ? a + Math.PI : a, Math.Atan(tanB));
    }
}
