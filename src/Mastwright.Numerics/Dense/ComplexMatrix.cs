using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// A dense complex matrix that is filled by its owner and then handed to <see cref="ComplexLu"/>.
/// </summary>
/// <remarks>
/// Storage is planar and column-major: the real parts of a column are contiguous, and so are its imaginary parts, in
/// two separate planes. Fill it by element with the indexer, or faster by column with <see cref="RealColumn"/> and
/// <see cref="ImaginaryColumn"/>. Different columns may be filled from different threads at the same time.
/// A fresh matrix is zero. Memory is about 16 bytes an element; see <see cref="DenseMemory"/>.
/// </remarks>
public sealed class ComplexMatrix
{
    /// <summary>A zero matrix.</summary>
    /// <param name="rows">Number of rows, at least 1.</param>
    /// <param name="columns">Number of columns, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size below 1, or more elements than one array can hold (about 32 000 squared).</exception>
    public ComplexMatrix(int rows, int columns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(PlanarStorage<double>.Bytes(rows, columns) / sizeof(double), Array.MaxLength, nameof(columns));
        Storage = new PlanarStorage<double>(rows, columns);
    }

    internal ComplexMatrix(PlanarStorage<double> storage) => Storage = storage;

    /// <summary>Number of rows.</summary>
    public int Rows => Storage.Rows;

    /// <summary>Number of columns.</summary>
    public int Columns => Storage.Columns;

    internal PlanarStorage<double> Storage { get; private set; }

    /// <summary>One element; rows and columns count from 0.</summary>
    /// <exception cref="IndexOutOfRangeException">Outside the matrix.</exception>
    public Complex this[int row, int column]
    {
        get => new(RealColumn(column)[row], ImaginaryColumn(column)[row]);
        set
        {
            RealColumn(column)[row] = value.Real;
            ImaginaryColumn(column)[row] = value.Imaginary;
        }
    }

    /// <summary>A matrix with the elements of a rectangular array, first index the row.</summary>
    public static ComplexMatrix From(Complex[,] elements)
    {
        ArgumentNullException.ThrowIfNull(elements);
        var matrix = new ComplexMatrix(elements.GetLength(0), elements.GetLength(1));
        for (var j = 0; j < matrix.Columns; j++)
        {
            for (var i = 0; i < matrix.Rows; i++)
                matrix[i, j] = elements[i, j];
        }

        return matrix;
    }

    /// <summary>A matrix whose columns are the given vectors, all of one length.</summary>
    public static ComplexMatrix FromColumns(params IReadOnlyList<Complex[]> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        var matrix = new ComplexMatrix(columns[0].Length, columns.Count);
        for (var j = 0; j < columns.Count; j++)
            matrix.SetColumn(j, columns[j]);
        return matrix;
    }

    /// <summary>The identity of the given order.</summary>
    public static ComplexMatrix Identity(int order)
    {
        var matrix = new ComplexMatrix(order, order);
        for (var i = 0; i < order; i++)
            matrix[i, i] = Complex.One;
        return matrix;
    }

    /// <summary>Real parts of a column, to read or write in place.</summary>
    public Span<double> RealColumn(int column) => Storage.ReColumn(CheckedColumn(column));

    /// <summary>Imaginary parts of a column, to read or write in place.</summary>
    public Span<double> ImaginaryColumn(int column) => Storage.ImColumn(CheckedColumn(column));

    /// <summary>Copies a vector into a column.</summary>
    /// <exception cref="ArgumentException">The vector's length is not the number of rows.</exception>
    public void SetColumn(int column, ReadOnlySpan<Complex> values)
    {
        if (values.Length != Rows)
            throw new ArgumentException($"A column needs {Rows} values, got {values.Length}.", nameof(values));
        var re = RealColumn(column);
        var im = ImaginaryColumn(column);
        for (var i = 0; i < values.Length; i++)
        {
            re[i] = values[i].Real;
            im[i] = values[i].Imaginary;
        }
    }

    /// <summary>A column as a new vector.</summary>
    public Complex[] GetColumn(int column)
    {
        var re = RealColumn(column);
        var im = ImaginaryColumn(column);
        var values = new Complex[Rows];
        for (var i = 0; i < values.Length; i++)
            values[i] = new(re[i], im[i]);
        return values;
    }

    /// <summary>An independent copy.</summary>
    public ComplexMatrix Clone() => new(Storage.Clone());

    /// <summary>The product of this matrix and a vector of length <see cref="Columns"/>.</summary>
    /// <param name="x">The vector.</param>
    /// <param name="threads">Threads to use; 0 means one a core.</param>
    public Complex[] Multiply(ReadOnlySpan<Complex> x, int threads = 0)
    {
        if (x.Length != Columns)
            throw new ArgumentException($"The vector needs {Columns} values, got {x.Length}.", nameof(x));
        var y = PlanarVector<double>.Zero(Rows);
        PlanarOps<double>.MultiplyAdd(Storage, PlanarVector<double>.From(x, Columns), y, threads);
        return y.ToComplex();
    }

    /// <summary>The largest sum of absolute values in a column. Infinite or not-a-number elements carry through.</summary>
    public double OneNorm() => PlanarOps<double>.OneNorm(Storage, Environment.ProcessorCount);

    internal PlanarStorage<double> TakeStorage()
    {
        var storage = Storage;
        Storage = new PlanarStorage<double>(1, 1);
        return storage;
    }

    private int CheckedColumn(int column) =>
        (uint)column < (uint)Columns ? column : throw new IndexOutOfRangeException($"Column {column} of {Columns}.");
}
