namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// A stub of the feed line's kind at a distance d from the load. With t = tan βd:
/// t = (X ± √(R((Z0 - R)² + X²)/Z0))/(R - Z0), the stub cancels the susceptance left there
/// (derivation in any line textbook; the 60 - j80 Ω case is a textbook example).
/// </summary>
public sealed class SingleStub : ITopology
{
    /// <inheritdoc/>
    public string Id => "stub";

    /// <inheritdoc/>
    public string Title => "stub on the feed line";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var line = problem.FeedType;
        var beta = 2 * Math.PI / line.WavelengthM(problem.FrequencyHz);
        foreach (var (d, b) in Places(problem.TargetOhm, problem.LineOhm))
        {
            foreach (var shorted in new[] { false, true })
            {
                // Open: Y = j tan(βs)/Z0; shorted: Y = -j cot(βs)/Z0.
                var s = shorted ? Math.Atan(1 / (b * problem.LineOhm)) : -Math.Atan(b * problem.LineOhm);
                if (s < 0)
                    s += Math.PI;
                yield return Reactances.LadderOf(new StubSection(line, s / beta, shorted), new LineSection(line, d / beta));
            }
        }
    }

    /// <summary>Electrical distance from the load, radians, and the susceptance of the line there, siemens.</summary>
    internal static IEnumerable<(double Angle, double SusceptanceS)> Places(System.Numerics.Complex load, double z0)
    {
        var (r, x) = (load.Real, load.Imaginary);
        if (Math.Abs(r - z0) < 1e-9 * z0)
        {
            // The quadratic loses its square: one place has t = -X/(2·Z0), the other lies a quarter wave from the load.
            if (Math.Abs(x) < 1e-9 * z0)
                yield break;
            yield return Place(-x / (2 * z0));
            yield return (Math.PI / 2, x / (z0 * z0));
            yield break;
        }

        var root = Math.Sqrt(r * (((z0 - r) * (z0 - r)) + (x * x)) / z0);
        yield return Place((x + root) / (r - z0));
        yield return Place((x - root) / (r - z0));

        (double, double) Place(double t)
        {
            var b = ((r * r * t) - ((z0 - (x * t)) * (x + (z0 * t)))) / (z0 * ((r * r) + ((x + (z0 * t)) * (x + (z0 * t)))));
            var angle = Math.Atan(t);
            return (angle < 0 ? angle + Math.PI : angle, b);
        }
    }
}
