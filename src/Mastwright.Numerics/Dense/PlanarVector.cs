using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>A complex vector as two real ones, padded with zeros to whole tiles.</summary>
internal sealed class PlanarVector<T>
    where T : unmanaged, INumberBase<T>
{
    private PlanarVector(int length)
    {
        Length = length;
        var padded = PlanarStorage<T>.PaddedRows(length);
        Re = new T[padded];
        Im = new T[padded];
    }

    public int Length { get; }

    public T[] Re { get; }

    public T[] Im { get; }

    public static PlanarVector<T> Zero(int length) => new(length);

    public static PlanarVector<T> From(ReadOnlySpan<Complex> values, int length)
    {
        var v = new PlanarVector<T>(length);
        for (var i = 0; i < values.Length; i++)
        {
            v.Re[i] = T.CreateTruncating(values[i].Real);
            v.Im[i] = T.CreateTruncating(values[i].Imaginary);
        }

        return v;
    }

    public Complex[] ToComplex()
    {
        var values = new Complex[Length];
        for (var i = 0; i < values.Length; i++)
            values[i] = new(double.CreateTruncating(Re[i]), double.CreateTruncating(Im[i]));
        return values;
    }

    /// <summary>Swaps rows in the order the factorisation swapped them.</summary>
    public void Permute(ReadOnlySpan<int> pivots)
    {
        for (var k = 0; k < pivots.Length; k++)
        {
            (Re[k], Re[pivots[k]]) = (Re[pivots[k]], Re[k]);
            (Im[k], Im[pivots[k]]) = (Im[pivots[k]], Im[k]);
        }
    }

    /// <summary>Undoes <see cref="Permute"/>.</summary>
    public void PermuteBack(ReadOnlySpan<int> pivots)
    {
        for (var k = pivots.Length - 1; k >= 0; k--)
        {
            (Re[k], Re[pivots[k]]) = (Re[pivots[k]], Re[k]);
            (Im[k], Im[pivots[k]]) = (Im[pivots[k]], Im[k]);
        }
    }
}
