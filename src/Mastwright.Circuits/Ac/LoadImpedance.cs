using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>The impedance matrix of an antenna over frequency, in ohms.</summary>
public sealed class LoadImpedance
{
    private readonly ImmutableArray<double> _frequencies;
    private readonly ImmutableArray<Complex[,]> _matrices;

    private LoadImpedance(ImmutableArray<double> frequencies, ImmutableArray<Complex[,]> matrices)
    {
        (_frequencies, _matrices) = (frequencies, matrices);
        Ports = matrices[0].GetLength(0);
    }

    /// <summary>Number of ports.</summary>
    public int Ports { get; }

    /// <summary>Whether the impedance was given over frequency, so that bandwidth means the antenna's too.</summary>
    public bool VariesWithFrequency => _frequencies.Length > 1;

    /// <summary>The lowest and highest frequency given; the whole axis for a constant impedance.</summary>
    public (double LowHz, double HighHz) Span => VariesWithFrequency ? (_frequencies[0], _frequencies[^1]) : (0, double.PositiveInfinity);

    /// <summary>One port, the same at every frequency.</summary>
    public static LoadImpedance Constant(Complex impedanceOhm) => Constant(new[,] { { impedanceOhm } });

    /// <summary>A square matrix, the same at every frequency.</summary>
    /// <exception cref="ArgumentException">The matrix is not square or not finite.</exception>
    public static LoadImpedance Constant(Complex[,] matrixOhm) => new([0], [Checked(matrixOhm)]);

    /// <summary>One port, tabulated over frequency.</summary>
    /// <exception cref="ArgumentException">The frequencies do not rise.</exception>
    public static LoadImpedance Table(IReadOnlyList<(double FrequencyHz, Complex ImpedanceOhm)> rows) =>
        Table([.. rows.Select(r => (r.FrequencyHz, new[,] { { r.ImpedanceOhm } }))]);

    /// <summary>A matrix tabulated over frequency; between the rows each entry follows a cubic with finite-difference slopes.</summary>
    /// <exception cref="ArgumentException">No rows, frequencies that do not rise, or matrices of unlike size.</exception>
    public static LoadImpedance Table(IReadOnlyList<(double FrequencyHz, Complex[,] MatrixOhm)> rows)
    {
        if (rows.Count == 0)
            throw new ArgumentException("A table needs at least one row.", nameof(rows));
        for (var i = 1; i < rows.Count; i++)
            if (!(rows[i].FrequencyHz > rows[i - 1].FrequencyHz) || rows[i].MatrixOhm.GetLength(0) != rows[0].MatrixOhm.GetLength(0))
                throw new ArgumentException("Frequencies must rise and all matrices must be of one size.", nameof(rows));
        return new([.. rows.Select(r => r.FrequencyHz)], [.. rows.Select(r => Checked(r.MatrixOhm))]);
    }

    /// <summary>The matrix at a frequency. Outside the table the end row holds; ask <see cref="Covers"/>.</summary>
    public Complex[,] At(double frequencyHz)
    {
        if (!VariesWithFrequency || frequencyHz <= _frequencies[0])
            return _matrices[0];
        if (frequencyHz >= _frequencies[^1])
            return _matrices[^1];
        var k = 0;
        while (_frequencies[k + 1] < frequencyHz)
            k++;
        var z = new Complex[Ports, Ports];
        for (var i = 0; i < Ports; i++)
            for (var j = 0; j < Ports; j++)
                z[i, j] = Hermite(k, i, j, frequencyHz);
        return z;
    }

    /// <summary>Whether a frequency lies inside the table.</summary>
    public bool Covers(double frequencyHz) => frequencyHz >= Span.LowHz && frequencyHz <= Span.HighHz;

    /// <summary>
    /// Whether the load takes power for every set of currents at the frequency: the Hermitian part of Z has no
    /// negative eigenvalue (Cholesky with a small allowance for rounding in the given figures).
    /// </summary>
    public bool IsPassive(double frequencyHz)
    {
        var z = At(frequencyHz);
        var trace = 0.0;
        for (var i = 0; i < Ports; i++)
            trace += Math.Abs(z[i, i].Real);
        var l = new Complex[Ports, Ports];
        for (var j = 0; j < Ports; j++)
        {
            for (var i = j; i < Ports; i++)
            {
                var sum = (z[i, j] + Complex.Conjugate(z[j, i])) / 2;
                if (i == j)
                    sum += 1e-9 * trace;
                for (var k = 0; k < j; k++)
                    sum -= l[i, k] * Complex.Conjugate(l[j, k]);
                if (i > j)
                    l[i, j] = sum / l[j, j];
                else if (sum.Real > 0)
                    l[j, j] = Math.Sqrt(sum.Real);
                else
                    return false;
            }
        }

        return true;
    }

    private Complex Hermite(int k, int i, int j, double f)
    {
        var (x0, x1) = (_frequencies[k], _frequencies[k + 1]);
        var (y0, y1) = (_matrices[k][i, j], _matrices[k + 1][i, j]);
        var h = x1 - x0;
        var secant = (y1 - y0) / h;
        var m0 = k == 0 ? secant : Slope(k, i, j);
        var m1 = k + 2 == _frequencies.Length ? secant : Slope(k + 1, i, j);
        var t = (f - x0) / h;
        var (t2, t3) = (t * t, t * t * t);
        return (y0 * ((2 * t3) - (3 * t2) + 1)) + (m0 * h * (t3 - (2 * t2) + t)) + (y1 * ((3 * t2) - (2 * t3))) + (m1 * h * (t3 - t2));
    }

    private Complex Slope(int k, int i, int j)
    {
        var (h0, h1) = (_frequencies[k] - _frequencies[k - 1], _frequencies[k + 1] - _frequencies[k]);
        var s0 = (_matrices[k][i, j] - _matrices[k - 1][i, j]) / h0;
        var s1 = (_matrices[k + 1][i, j] - _matrices[k][i, j]) / h1;
        return ((s0 * h1) + (s1 * h0)) / (h0 + h1);
    }

    private static Complex[,] Checked(Complex[,] m)
    {
        if (m.GetLength(0) != m.GetLength(1) || m.Length == 0)
            throw new ArgumentException("An impedance matrix is square.");
        foreach (var z in m)
            if (!Complex.IsFinite(z))
                throw new ArgumentException("An impedance matrix is finite.");
        return (Complex[,])m.Clone();
    }
}
