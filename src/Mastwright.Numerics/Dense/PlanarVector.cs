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

    /// <summary>Swaps rows <paramref name="from"/> to <paramref name="to"/> - 1 with their pivots, in order.</summary>
    public void Permute(ReadOnlySpan<int> pivots, int from, int to)
    {
        for (var k = from; k < to; k++)
            Swap(k, pivots[k]);
    }

    /// <summary>Undoes <see cref="Permute"/>.</summary>
    public void PermuteBack(ReadOnlySpan<int> pivots, int from, int to)
    {
        for (var k = to - 1; k >= from; k--)
            Swap(k, pivots[k]);
    }

    private void Swap(int a, int b)
    {
        (Re[a], Re[b]) = (Re[b], Re[a]);
        (Im[a], Im[b]) = (Im[b], Im[a]);
    }
}
