using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>
/// A cable of several pieces in line with lumps of load between them: strand, rods, ropes, insulators. The tension at
/// any point is that at the start less all load passed, so the end is a sum of closed forms and the flexibility a sum
/// of flexibilities; the complementary energy stays strictly convex, and the same Newton step as for a single
/// catenary finds the three components of the pull at the start.
/// Source: Irvine, Cable Structures, 1981, ch. 1, piece by piece.
/// </summary>
public static class CompositeCable
{
    private const int MostIterations = 100;

    /// <summary>Solves the cable.</summary>
    /// <param name="chordM">From the start (anchor) to the end (mast).</param>
    /// <param name="spans">The pieces from the start; at least one.</param>
    /// <exception cref="ArgumentException">No piece, or one without a positive length or stiffness.</exception>
    public static CableState Solve(Vec3 chordM, IReadOnlyList<CableSpan> spans)
    {
        if (spans.Count == 0 || spans.Any(s => !(s.UnstressedLengthM > 0) || !(s.AxialStiffnessN > 0)))
        {
            throw new ArgumentException("At least one piece is needed, each with a positive length and stiffness.", nameof(spans));
        }

        var length = spans.Sum(s => s.UnstressedLengthM);
        var stiffness = length / spans.Sum(s => s.UnstressedLengthM / s.AxialStiffnessN);
        var load = spans.Aggregate(Vec3.Zero, (sum, s) => sum + s.TotalLoadN);
        var even = ElasticCatenary.Solve(chordM, length, stiffness, load / length);
        if (load.Length < 1e-12 * stiffness)
        {
            return even;
        }

        var pull = even.StartPullN;
        var distance = chordM.Length;
        var converged = false;
        var iteration = 0;
        double best = double.PositiveInfinity;
        var bestPull = pull;
        var stale = 0;
        for (; iteration < MostIterations; iteration++)
        {
            var miss = End(spans, pull) - chordM;
            if (miss.Length < best)
            {
                (best, bestPull, stale) = (miss.Length, pull, 0);
            }
            else
            {
                stale++;
            }

            if (best <= 4e-16 * (distance + length) || (stale >= 2 && best <= 1e-12 * distance))
            {
                converged = true;
                break;
            }

            var step = -(Flexibility(spans, pull).Inverse() * miss);
            var slope = miss.Dot(step);
            var share = 1.0;
            for (var cut = 0; cut < 40; cut++)
            {
                var next = (End(spans, pull + (share * step)) - chordM).Dot(step);
                if (next <= -0.9 * slope || Math.Abs(slope) < 1e-25)
                {
                    break;
                }

                share *= Math.Clamp(-slope / (next - slope), 0.1, 0.7);
            }

            pull += share * step;
        }

        converged |= best <= 1e-11 * distance;
        return new(bestPull, load - bestPull, Flexibility(spans, bestPull).Inverse(), length, stiffness, load / length, iteration + even.Iterations, converged) { Spans = spans };
    }

    private static Vec3 End(IReadOnlyList<CableSpan> spans, Vec3 pull)
    {
        var end = Vec3.Zero;
        foreach (var s in spans)
        {
            end += s.Reach(pull, s.UnstressedLengthM);
            pull -= s.TotalLoadN;
        }

        return end;
    }

    private static Stiffness3 Flexibility(IReadOnlyList<CableSpan> spans, Vec3 pull)
    {
        var sum = default(Stiffness3);
        foreach (var s in spans)
        {
            sum += s.Flexibility(pull);
            pull -= s.TotalLoadN;
        }

        return sum;
    }
}
