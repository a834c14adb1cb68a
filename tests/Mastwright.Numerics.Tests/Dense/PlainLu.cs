using System.Numerics;

namespace Mastwright.Numerics.Tests.Dense;

/// <summary>
/// Gaussian elimination with partial pivoting as the textbook has it (Golub and Van Loan, Matrix Computations, 4th ed.,
/// algorithm 3.4.1): the oracle of the fast one.
/// </summary>
internal static class PlainLu
{
    public static Complex[] Solve(Complex[,] matrix, Complex[] rhs)
    {
        var n = rhs.Length;
        var a = (Complex[,])matrix.Clone();
        var x = (Complex[])rhs.Clone();
        for (var k = 0; k < n; k++)
        {
            var best = k;
            for (var i = k + 1; i < n; i++)
            {
                if (Size(a[i, k]) > Size(a[best, k]))
                    best = i;
            }

            for (var j = 0; j < n; j++)
                (a[k, j], a[best, j]) = (a[best, j], a[k, j]);
            (x[k], x[best]) = (x[best], x[k]);
            for (var i = k + 1; i < n; i++)
            {
                var l = a[i, k] / a[k, k];
                for (var j = k + 1; j < n; j++)
                    a[i, j] -= l * a[k, j];
                x[i] -= l * x[k];
            }
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
                x[i] -= a[i, j] * x[j];
            x[i] /= a[i, i];
        }

        return x;
    }

    private static double Size(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);
}
