using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Numerics;
using MathNet.Numerics.Integration;

namespace Mastwright.Numerics.Integration;

/// <summary>
/// Gauss-Legendre rules: n points integrate polynomials up to degree 2n - 1 exactly. Nodes and weights are Math.NET's, which
/// do well enough; rules are kept once made.
/// </summary>
/// <param name="Nodes">Abscissas on (-1, 1), ascending.</param>
/// <param name="Weights">Weights; their sum is 2.</param>
public sealed record GaussLegendre(ImmutableArray<double> Nodes, ImmutableArray<double> Weights)
{
    private static readonly ConcurrentDictionary<int, GaussLegendre> Rules = new();

    /// <summary>The rule with the given number of points.</summary>
    /// <param name="points">1 to 1000.</param>
    public static GaussLegendre WithPoints(int points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(points, 1000);
        return Rules.GetOrAdd(points, static n =>
        {
            var rule = new GaussLegendreRule(-1, 1, n);
            return new([.. rule.Abscissas], [.. rule.Weights]);
        });
    }

    /// <summary>The integral of a real function from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public double Integrate(Func<double, double> f, double a, double b) => Sum(f, a, b);

    /// <summary>The integral of a complex function from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public Complex Integrate(Func<double, Complex> f, double a, double b) => Sum(f, a, b);

    private T Sum<T>(Func<double, T> f, double a, double b)
        where T : INumberBase<T>
    {
        var (middle, half) = ((a + b) / 2, (b - a) / 2);
        var sum = T.Zero;
        for (var i = 0; i < Nodes.Length; i++)
            sum += T.CreateTruncating(half * Weights[i]) * f(middle + (half * Nodes[i]));
        return sum;
    }
}
