using System.Numerics;

namespace Mastwright.Fields.Tests;

/// <summary>Textbook LU factorisation with partial pivoting, row by row (Golub and Van Loan, Matrix Computations, 3.4).</summary>
internal sealed class PlainLu
{
    private readonly Complex[] _lu;
    private readonly int[] _pivots;
    private readonly int _n;

    private PlainLu(Complex[] lu, int[] pivots, int n)
    {
        _lu = lu;
        _pivots = pivots;
        _n = n;
    }

    /// <summary>Factorises a row-major matrix in place; the caller gives it up.</summary>
    /// <exception cref="ArithmeticException">The matrix is singular to working precision.</exception>
    public static PlainLu Factor(Complex[] matrix, int n, CancellationToken cancellation = default)
    {
        var pivots = new int[n];
        for (var k = 0; k < n; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            var best = k;
            var size = -1.0;
            for (var i = k; i < n; i++)
            {
                var z = matrix[(i * n) + k];
                var s = Math.Abs(z.Real) + Math.Abs(z.Imaginary);
                if (s > size)
                    (best, size) = (i, s);
            }

            if (!(size > 0))
                throw new ArithmeticException("The matrix of the wire currents is singular.");
            pivots[k] = best;
            if (best != k)
            {
                var a = matrix.AsSpan(k * n, n);
                var b = matrix.AsSpan(best * n, n);
                for (var j = 0; j < n; j++)
                    (a[j], b[j]) = (b[j], a[j]);
            }

            Eliminate(matrix, n, k);
        }

        return new(matrix, pivots, n);
    }

    /// <summary>Replaces the right side by the solution.</summary>
    public void Solve(Span<Complex> rightSide)
    {
        for (var k = 0; k < _n; k++)
            if (_pivots[k] != k)
                (rightSide[k], rightSide[_pivots[k]]) = (rightSide[_pivots[k]], rightSide[k]);
        for (var i = 1; i < _n; i++)
        {
            var sum = Complex.Zero;
            for (var j = 0; j < i; j++)
                sum += _lu[(i * _n) + j] * rightSide[j];
            rightSide[i] -= sum;
        }

        for (var i = _n - 1; i >= 0; i--)
        {
            var sum = rightSide[i];
            for (var j = i + 1; j < _n; j++)
                sum -= _lu[(i * _n) + j] * rightSide[j];
            rightSide[i] = sum / _lu[(i * _n) + i];
        }
    }

    private static void Eliminate(Complex[] matrix, int n, int k)
    {
        var inverse = 1 / matrix[(k * n) + k];
        void Row(int i)
        {
            var factor = matrix[(i * n) + k] * inverse;
            matrix[(i * n) + k] = factor;
            var pivotRow = matrix.AsSpan((k * n) + k + 1, n - k - 1);
            var row = matrix.AsSpan((i * n) + k + 1, n - k - 1);
            double fr = factor.Real, fi = factor.Imaginary;
            for (var j = 0; j < row.Length; j++)
            {
                var p = pivotRow[j];
                var r = row[j];
                row[j] = new(r.Real - (fr * p.Real) + (fi * p.Imaginary), r.Imaginary - (fr * p.Imaginary) - (fi * p.Real));
            }
        }

        for (var i = k + 1; i < n; i++)
            Row(i);
    }
}
