namespace Mastwright.Numerics.Banded;

/// <summary>
/// A = L D L^T of a symmetric banded matrix, with the count of negative pivots. By Sylvester's law that count is the number
/// of negative eigenvalues: for a stiffness matrix, the number of ways in which the structure is unstable. Golub and Van
/// Loan, Matrix Computations, 4th ed., sections 4.1.2, 4.3 and 8.4.2. No library at hand has it.
/// </summary>
/// <remarks>
/// There is no pivoting, so that the band is kept. For definite matrices that is backward stable; for indefinite ones the count
/// stays right unless a pivot is nearly zero, that is unless a leading part of the structure is just at its critical load;
/// <see cref="SmallestPivotRatio"/> tells how close it came.
/// </remarks>
public sealed class BandLdl
{
    private readonly SymmetricBand _factor;

    private BandLdl(SymmetricBand factor, int negativePivots, double smallestPivotRatio)
    {
        _factor = factor;
        NegativePivots = negativePivots;
        SmallestPivotRatio = smallestPivotRatio;
    }

    /// <summary>Order.</summary>
    public int Order => _factor.Order;

    /// <summary>Number of negative eigenvalues.</summary>
    public int NegativePivots { get; }

    /// <summary>The smallest |pivot| over the diagonal element it grew from; below about 1e-10, digits are lost.</summary>
    public double SmallestPivotRatio { get; }

    /// <summary>Whether all eigenvalues are positive.</summary>
    public bool IsPositiveDefinite => NegativePivots == 0;

    /// <summary>Factors a matrix, which is kept.</summary>
    /// <returns>Null when a pivot is exactly zero or not finite; <paramref name="failedRow"/> then says which, counted from 0.</returns>
    public static BandLdl? TryFactor(SymmetricBand matrix, out int failedRow)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        var f = matrix.Clone();
        var w = f.HalfBandwidth;
        var negative = 0;
        var smallest = double.PositiveInfinity;
        for (var i = 0; i < f.Order; i++)
        {
            var row = f.Row(i);
            var diagonal = Math.Abs(row[w]);
            var first = Math.Max(0, i - w);
            for (var j = first; j < i; j++)
            {
                // Until it is scaled below, the row holds L D.
                var other = f.Row(j);
                var start = Math.Max(first, j - w);
                for (var k = start; k < j; k++)
                    row[j - i + w] -= row[k - i + w] * other[k - j + w];
            }

            for (var j = first; j < i; j++)
            {
                var ld = row[j - i + w];
                row[j - i + w] = ld / f.Row(j)[w];
                row[w] -= ld * row[j - i + w];
            }

            if (row[w] == 0 || !double.IsFinite(row[w]))
            {
                failedRow = i;
                return null;
            }

            negative += row[w] < 0 ? 1 : 0;
            smallest = Math.Min(smallest, Math.Abs(row[w]) / Math.Max(diagonal, double.Epsilon));
        }

        failedRow = -1;
        return new(f, negative, smallest);
    }

    /// <summary>Solves A x = b.</summary>
    public double[] Solve(ReadOnlySpan<double> rhs)
    {
        if (rhs.Length != Order)
            throw new ArgumentException($"The right-hand side needs {Order} values, got {rhs.Length}.", nameof(rhs));
        var x = rhs.ToArray();
        var w = _factor.HalfBandwidth;
        for (var i = 0; i < Order; i++)
        {
            var row = _factor.Row(i);
            for (var j = Math.Max(0, i - w); j < i; j++)
                x[i] -= row[j - i + w] * x[j];
        }

        for (var i = 0; i < Order; i++)
            x[i] /= _factor.Row(i)[w];
        for (var i = Order - 1; i >= 0; i--)
        {
            var row = _factor.Row(i);
            for (var j = Math.Max(0, i - w); j < i; j++)
                x[j] -= row[j - i + w] * x[i];
        }

        return x;
    }
}
