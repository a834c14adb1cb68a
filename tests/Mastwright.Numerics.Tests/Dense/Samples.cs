using System.Numerics;
using Mastwright.Numerics.Dense;

namespace Mastwright.Numerics.Tests.Dense;

/// <summary>Matrices with known character.</summary>
internal static class Samples
{
    public static Complex[,] Random(int n, int seed)
    {
        var random = new Random(seed);
        var a = new Complex[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                a[i, j] = new((2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1);
        }

        return a;
    }

    public static Complex[] RandomVector(int n, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, n).Select(_ => new Complex((2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1))];
    }

    /// <summary>A product of two unitary-like discrete Fourier matrices around a graded diagonal: 2-norm condition number as asked, exactly.</summary>
    public static ComplexMatrix Conditioned(int n, double condition, int seed)
    {
        var shift = RandomVector(n, seed).Select(z => z.Phase).ToArray();
        var m = new ComplexMatrix(n, n);
        var circulant = new Complex[n];
        for (var k = 0; k < n; k++)
        {
            var eigenvalue = Complex.FromPolarCoordinates(Math.Pow(condition, -(double)k / (n - 1)), shift[k]);
            for (var d = 0; d < n; d++)
                circulant[d] += eigenvalue * Complex.FromPolarCoordinates(1.0 / n, Math.Tau * ((long)k * d % n) / n);
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                m[i, j] = circulant[(i - j + n) % n];
        }

        return m;
    }

    /// <summary>Largest |b - A x| over (largest row sum of A times largest |x|), in double arithmetic.</summary>
    public static double BackwardError(ComplexMatrix a, Complex[] x, Complex[] b)
    {
        var ax = a.Multiply(x, 1);
        var norm = Enumerable.Range(0, a.Rows).Max(i => Enumerable.Range(0, a.Columns).Sum(j => a[i, j].Magnitude));
        return ax.Zip(b, (p, q) => (p - q).Magnitude).Max() / (norm * x.Max(z => z.Magnitude));
    }
}
