using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// Column-major planar storage of a complex matrix: one plane of real parts, one of imaginary parts, each column
/// starting on a 64-byte boundary. Rows are padded with zeros to a multiple of <see cref="RowPad"/> and columns to a
/// multiple of <see cref="ColumnPad"/>, so the register tiles never meet a ragged edge; the zeros stay zero through
/// the whole factorisation.
/// </summary>
internal sealed unsafe class PlanarStorage<T>
    where T : unmanaged, INumberBase<T>
{
    /// <summary>Columns are padded to a multiple of the tile width.</summary>
    public const int ColumnPad = 6;

    private const int Alignment = 64;
    private readonly AlignedBuffer<T> _buffer;

    public PlanarStorage(int rows, int columns)
        : this(rows, columns, zeroed: true)
    {
    }

    private PlanarStorage(int rows, int columns, bool zeroed)
    {
        Rows = rows;
        Columns = columns;
        Ld = LeadingDimension(rows);
        var plane = (long)Ld * PaddedColumns(columns);
        _buffer = new AlignedBuffer<T>(2 * plane, zeroed);
        Re = _buffer.Start;
        Im = Re + plane;
    }

    /// <summary>Rows are padded to a multiple of this: two 512-bit vectors.</summary>
    public static int RowPad => 2 * Alignment / sizeof(T);

    public int Rows { get; }

    public int Columns { get; }

    /// <summary>Distance in elements from one column to the next.</summary>
    public int Ld { get; }

    public T* Re { get; }

    public T* Im { get; }

    public static int PaddedRows(int rows) => (rows + RowPad - 1) / RowPad * RowPad;

    public static int PaddedColumns(int columns) => (columns + ColumnPad - 1) / ColumnPad * ColumnPad;

    /// <summary>Bytes one matrix takes, padding included.</summary>
    public static long Bytes(int rows, int columns) =>
        ((2L * LeadingDimension(rows) * PaddedColumns(columns)) + (Alignment / sizeof(T))) * sizeof(T);

    /// <summary>The largest square order one array can hold.</summary>
    public static int LargestOrder => (int)Math.Sqrt(Array.MaxLength / 2.0) - 200;

    public Span<T> ReColumn(int j) => _buffer.Slice((long)j * Ld, Rows);

    public Span<T> ImColumn(int j) => _buffer.Slice((Im - Re) + ((long)j * Ld), Rows);

    /// <summary>A matrix whose padding is zero and whose elements are yet to be written, every one of them.</summary>
    public static PlanarStorage<T> Unwritten(int rows, int columns)
    {
        var fresh = new PlanarStorage<T>(rows, columns, zeroed: false);
        for (var j = 0; j < PaddedColumns(columns); j++)
        {
            var from = j < columns ? rows : 0;
            new Span<T>(fresh.Re + ((long)j * fresh.Ld) + from, fresh.Ld - from).Clear();
            new Span<T>(fresh.Im + ((long)j * fresh.Ld) + from, fresh.Ld - from).Clear();
        }

        return fresh;
    }

    public PlanarStorage<T> Clone()
    {
        var copy = new PlanarStorage<T>(Rows, Columns, zeroed: false);
        var bytes = (long)Ld * PaddedColumns(Columns) * sizeof(T);
        Buffer.MemoryCopy(Re, copy.Re, bytes, bytes);
        Buffer.MemoryCopy(Im, copy.Im, bytes, bytes);
        GC.KeepAlive(this);
        return copy;
    }

    // Columns whose distance is a multiple of 2 KiB would all land in the same few cache sets.
    private static int LeadingDimension(int rows)
    {
        var padded = Math.Max(RowPad, PaddedRows(rows));
        return padded * sizeof(T) % 2048 == 0 ? padded + RowPad : padded;
    }
}
