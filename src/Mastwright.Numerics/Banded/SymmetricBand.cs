namespace Mastwright.Numerics.Banded;

/// <summary>
/// A symmetric matrix whose elements further than <see cref="HalfBandwidth"/> from the diagonal are zero, such as the
/// stiffness of a chain of members. Only the lower half is kept; setting (i, j) sets (j, i) too.
/// </summary>
public sealed class SymmetricBand
{
    private readonly double[] _rows;

    /// <summary>A zero matrix.</summary>
    /// <param name="order">Order, at least 1.</param>
    /// <param name="halfBandwidth">Sub-diagonals kept, 0 for a diagonal matrix.</param>
    public SymmetricBand(int order, int halfBandwidth)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(halfBandwidth);
        Order = order;
        HalfBandwidth = Math.Min(halfBandwidth, order - 1);
        _rows = new double[checked(order * (HalfBandwidth + 1))];
    }

    private SymmetricBand(SymmetricBand other)
    {
        Order = other.Order;
        HalfBandwidth = other.HalfBandwidth;
        _rows = (double[])other._rows.Clone();
    }

    /// <summary>Order.</summary>
    public int Order { get; }

    /// <summary>Sub-diagonals kept.</summary>
    public int HalfBandwidth { get; }

    /// <summary>One element; outside the band it reads as zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Setting an element outside the band.</exception>
    public double this[int row, int column]
    {
        get => Math.Abs(row - column) > HalfBandwidth ? 0 : Row(Math.Max(row, column))[Math.Min(row, column) - Math.Max(row, column) + HalfBandwidth];
        set
        {
            if (Math.Abs(row - column) > HalfBandwidth)
                throw new ArgumentOutOfRangeException(nameof(column), $"({row}, {column}) lies outside half bandwidth {HalfBandwidth}.");
            Row(Math.Max(row, column))[Math.Min(row, column) - Math.Max(row, column) + HalfBandwidth] = value;
        }
    }

    /// <summary>An independent copy.</summary>
    public SymmetricBand Clone() => new(this);

    /// <summary>This matrix plus a multiple of another of the same shape.</summary>
    public SymmetricBand Plus(double factor, SymmetricBand other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Order != Order || other.HalfBandwidth != HalfBandwidth)
            throw new ArgumentException("The matrices differ in shape.", nameof(other));
        var sum = Clone();
        for (var i = 0; i < _rows.Length; i++)
            sum._rows[i] += factor * other._rows[i];
        return sum;
    }

    /// <summary>The product with a vector.</summary>
    public double[] Multiply(ReadOnlySpan<double> x)
    {
        if (x.Length != Order)
            throw new ArgumentException($"The vector needs {Order} values, got {x.Length}.", nameof(x));
        var y = new double[Order];
        for (var i = 0; i < Order; i++)
        {
            var row = Row(i);
            y[i] += row[HalfBandwidth] * x[i];
            for (var j = Math.Max(0, i - HalfBandwidth); j < i; j++)
            {
                y[i] += row[j - i + HalfBandwidth] * x[j];
                y[j] += row[j - i + HalfBandwidth] * x[i];
            }
        }

        return y;
    }

    /// <summary>Row i of the lower half: element (i, j) at j - i + half bandwidth.</summary>
    internal Span<double> Row(int i) => _rows.AsSpan(i * (HalfBandwidth + 1), HalfBandwidth + 1);
}
