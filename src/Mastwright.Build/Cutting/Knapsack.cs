using System.Collections.Immutable;

namespace Mastwright.Build.Cutting;

/// <summary>The most valuable filling of one reel: depth first by value for length, with the fractional filling as bound.</summary>
internal sealed class Knapsack(ImmutableArray<long> sizes, ImmutableArray<int> most)
{
    private const int NodeLimit = 400_000;

    /// <summary>Best counts, their value, and a value that none can exceed (the same unless the search was cut short).</summary>
    public (int[] Counts, double Value, double Ceiling) Fill(long capacity, double[] values)
    {
        var order = Enumerable.Range(0, sizes.Length).Where(i => values[i] > 0 && sizes[i] <= capacity).OrderByDescending(i => values[i] / sizes[i]).ToArray();
        var counts = new int[sizes.Length];
        var best = new int[sizes.Length];
        var bestValue = 0.0;
        var nodes = 0;
        Go(0, capacity, 0);
        return (best, bestValue, nodes <= NodeLimit ? bestValue : Fraction(0, capacity));

        void Go(int at, long left, double value)
        {
            if (value > bestValue)
            {
                bestValue = value;
                counts.CopyTo(best, 0);
            }
            if (at == order.Length || ++nodes > NodeLimit || value + Fraction(at, left) <= bestValue * (1 + 1e-12)) return;
            var i = order[at];
            for (var n = (int)Math.Min(most[i], left / sizes[i]); n >= 0; n--)
            {
                counts[i] = n;
                Go(at + 1, left - (n * sizes[i]), value + (n * values[i]));
            }
            counts[i] = 0;
        }

        double Fraction(int at, long left)
        {
            var value = 0.0;
            for (; at < order.Length && left > 0; at++)
            {
                var i = order[at];
                var n = Math.Min(most[i], (double)left / sizes[i]);
                value += n * values[i];
                left -= (long)Math.Floor(n * sizes[i]);
            }
            return value;
        }
    }
}
