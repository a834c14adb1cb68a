using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>
/// In-place LU factorisation with partial pivoting of a small dense real or complex system (Golub and Van Loan, Matrix
/// Computations, algorithm 3.4.1). Circuits have tens of unknowns, so nothing sparser would be faster.
/// Not safe for two threads on the same instance: it owns its workspace.
/// </summary>
internal sealed class DenseLu<T>(int size)
    where T : struct, INumberBase<T>
{
    private readonly T[] _a = new T[size * size];
    private readonly int[] _pivot = new int[size];

    public int Size => size;

    public Span<T> Row(int row) => _a.AsSpan(row * size, size);

    public void Add(int row, int column, T value) => _a[(row * size) + column] += value;

    public void Clear() => Array.Clear(_a);

    /// <summary>Factors what was added. Returns the column without a usable pivot, or -1 when all went well.</summary>
    public int Factor()
    {
        var columnScale = new double[size];
        for (var i = 0; i < size; i++)
            for (var j = 0; j < size; j++)
                columnScale[j] = Math.Max(columnScale[j], Size1(_a[(i * size) + j]));

        for (var k = 0; k < size; k++)
        {
            var best = k;
            var bestSize = Size1(_a[(k * size) + k]);
            for (var i = k + 1; i < size; i++)
            {
                var s = Size1(_a[(i * size) + k]);
                if (s > bestSize)
                    (best, bestSize) = (i, s);
            }

            if (!(bestSize > columnScale[k] * size * 1e-16) || !double.IsFinite(bestSize))
                return k;
            _pivot[k] = best;
            if (best != k)
                SwapRows(k, best);
            Eliminate(k);
        }

        return -1;
    }

    /// <summary>Solves for one right-hand side, which is overwritten with the solution.</summary>
    public void Solve(Span<T> x)
    {
        for (var k = 0; k < size; k++)
            (x[k], x[_pivot[k]]) = (x[_pivot[k]], x[k]);
        for (var k = 0; k < size; k++)
        {
            var xk = x[k];
            if (xk == T.Zero)
                continue;
            for (var i = k + 1; i < size; i++)
                x[i] -= _a[(i * size) + k] * xk;
        }

        for (var i = size - 1; i >= 0; i--)
        {
            var row = Row(i);
            var sum = x[i];
            for (var j = i + 1; j < size; j++)
                sum -= row[j] * x[j];
            x[i] = sum / row[i];
        }
    }

    // Rows are swapped whole, multipliers included, so Solve applies all swaps before it substitutes.
    private void SwapRows(int a, int b)
    {
        var ra = Row(a);
        var rb = Row(b);
        for (var j = 0; j < size; j++)
            (ra[j], rb[j]) = (rb[j], ra[j]);
    }

    private void Eliminate(int k)
    {
        var pivotRow = Row(k);
        var inverse = T.One / pivotRow[k];
        for (var i = k + 1; i < size; i++)
        {
            var row = Row(i);
            if (row[k] == T.Zero)
                continue;
            var factor = row[k] * inverse;
            row[k] = factor;
            for (var j = k + 1; j < size; j++)
                if (pivotRow[j] != T.Zero)
                    row[j] -= factor * pivotRow[j];
        }
    }

    // The type tests are settled when the method is compiled for T; nothing is boxed.
    private static double Size1(T value)
    {
        if (typeof(T) == typeof(double))
            return Math.Abs((double)(object)value);
        var z = (Complex)(object)value;
        return Math.Abs(z.Real) + Math.Abs(z.Imaginary);
    }
}
