namespace Mastwright.Structure.Solver;

/// <summary>
/// L·D·Lᵀ of a symmetric band matrix, without exchanging rows so that the signs of D count the negative
/// eigenvalues (Sylvester's law of inertia): Golub and Van Loan, Matrix Computations, 4th ed., secs. 4.1 and 4.3.
/// The cost is n·b². The matrix is kept by rows of the lower half, diagonal last.
/// </summary>
internal sealed class BandedLdl
{
    private readonly double[] _a;
    private readonly double[] _d;
    private readonly int _w;

    public BandedLdl(int size, int halfBandwidth)
    {
        Size = size;
        _w = halfBandwidth + 1;
        _a = new double[size * _w];
        _d = new double[size];
    }

    public int Size { get; }

    /// <summary>Negative pivots of the last factorisation: the number of negative eigenvalues.</summary>
    public int NegativePivots { get; private set; }

    /// <summary>Whether a pivot of the last factorisation was nothing but rounding: the matrix is singular.</summary>
    public bool Singular { get; private set; }

    /// <summary>The row of the smallest pivot relative to its own diagonal.</summary>
    public int WeakestRow { get; private set; }

    public void Clear() => Array.Clear(_a);

    /// <summary>Element (row, column) of the lower half, column not above row.</summary>
    public ref double this[int row, int column] => ref _a[(row * _w) + (_w - 1) - (row - column)];

    /// <summary>Multiplies every element.</summary>
    public void Scale(double factor)
    {
        for (var i = 0; i < _a.Length; i++)
        {
            _a[i] *= factor;
        }
    }

    /// <summary>y = A·x, for a matrix not yet factored.</summary>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y.Clear();
        for (var i = 0; i < Size; i++)
        {
            var row = _a.AsSpan(i * _w, _w);
            var first = Math.Max(0, i - _w + 1);
            var sum = row[_w - 1] * x[i];
            for (var j = first; j < i; j++)
            {
                var v = row[_w - 1 - (i - j)];
                sum += v * x[j];
                y[j] += v * x[i];
            }

            y[i] += sum;
        }
    }

    /// <summary>Factors in place.</summary>
    public void Factor()
    {
        NegativePivots = 0;
        Singular = false;
        var weakest = double.PositiveInfinity;
        Span<double> scaled = stackalloc double[_w];
        for (var i = 0; i < Size; i++)
        {
            var row = _a.AsSpan(i * _w, _w);
            var first = Math.Max(0, i - _w + 1);
            var diagonal = row[_w - 1];
            var pivot = diagonal;
            for (var j = first; j < i; j++)
            {
                // scaled[j] = A_ij - sum over k of (L_ik D_k) L_jk, that is L_ij D_j.
                var other = _a.AsSpan(j * _w, _w);
                var k0 = Math.Max(first, j - _w + 1);
                var sum = row[_w - 1 - (i - j)];
                for (var k = k0; k < j; k++)
                {
                    sum -= scaled[k - first] * other[_w - 1 - (j - k)];
                }

                scaled[j - first] = sum;
                var l = sum / _d[j];
                pivot -= sum * l;
                row[_w - 1 - (i - j)] = l;
            }

            var size = Math.Abs(diagonal);
            if (Math.Abs(pivot) <= 1e-13 * size || pivot == 0)
            {
                Singular = true;
                pivot = size > 0 ? 1e-13 * size : 1e-300;
            }

            if (Math.Abs(pivot) < weakest * size)
            {
                weakest = Math.Abs(pivot) / size;
                WeakestRow = i;
            }

            if (pivot < 0)
            {
                NegativePivots++;
            }

            _d[i] = pivot;
        }
    }

    /// <summary>Solves A·x = b in place with the factors.</summary>
    public void Solve(Span<double> x)
    {
        for (var i = 0; i < Size; i++)
        {
            var row = _a.AsSpan(i * _w, _w);
            var sum = x[i];
            for (var j = Math.Max(0, i - _w + 1); j < i; j++)
            {
                sum -= row[_w - 1 - (i - j)] * x[j];
            }

            x[i] = sum;
        }

        for (var i = Size - 1; i >= 0; i--)
        {
            x[i] /= _d[i];
        }

        for (var i = Size - 1; i >= 0; i--)
        {
            var row = _a.AsSpan(i * _w, _w);
            for (var j = Math.Max(0, i - _w + 1); j < i; j++)
            {
                x[j] -= row[_w - 1 - (i - j)] * x[i];
            }
        }
    }
}
