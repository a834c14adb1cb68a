using System.Collections.Concurrent;

namespace Mastwright.Fields.Kernels;

/// <summary>Gauss–Legendre rules on [0, 1], exact for polynomials up to degree 2n − 1.</summary>
internal sealed class GaussRule
{
    private static readonly ConcurrentDictionary<int, GaussRule> Rules = new();

    private GaussRule(int count)
    {
        Nodes = new double[count];
        Weights = new double[count];
        for (var i = 0; i < count; i++)
        {
            // Newton on the Legendre polynomial from the usual cosine guess (Abramowitz and Stegun 22.16, from memory).
            var x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            double derivative;
            for (var iteration = 0; ; iteration++)
            {
                double p0 = 1, p1 = x;
                for (var n = 2; n <= count; n++)
                    (p0, p1) = (p1, (((2 * n) - 1) * x * p1 - ((n - 1) * p0)) / n);
                derivative = count == 1 ? 1 : count * ((x * p1) - p0) / ((x * x) - 1);
                var step = (count == 1 ? x : p1) / derivative;
                x -= step;
                if (Math.Abs(step) < 1e-15 || iteration > 50)
                    break;
            }

            Nodes[i] = 0.5 * (1 - x);
            Weights[i] = count == 1 ? 1 : 1 / ((1 - (x * x)) * derivative * derivative);
        }
    }

    /// <summary>Nodes in (0, 1), ascending.</summary>
    public double[] Nodes { get; }

    /// <summary>Weights, summing to 1.</summary>
    public double[] Weights { get; }

    /// <summary>The rule with <paramref name="count"/> points.</summary>
    public static GaussRule Of(int count) => Rules.GetOrAdd(count, static n => new(n));
}
