using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>The order, form and normalisation of the numbers of one frequency, in both directions.</summary>
internal sealed class TouchstoneMatrix
{
    /// <summary>Decibels written for a magnitude of zero, which has no logarithm; it reads back as 1e-150.</summary>
    public const double SilenceDb = -3000;

    private readonly TouchstoneHeader header;
    private readonly int n;
    private readonly ImmutableArray<double> reference;
    private readonly (int Row, int Column)[] order;

    public TouchstoneMatrix(TouchstoneHeader header, int ports, ImmutableArray<double> reference)
    {
        this.header = header;
        n = ports;
        this.reference = reference;
        order = [.. Order()];
    }

    public int NumbersInSet => 1 + (2 * order.Length);

    /// <summary>Entries in the order they are written; rows lets the writer break lines.</summary>
    public IReadOnlyList<(int Row, int Column)> Written => order;

    public ImmutableArray<Complex> Entries(double[] numbers)
    {
        var entries = new Complex[n * n];
        for (var k = 0; k < order.Length; k++)
        {
            var (i, j) = order[k];
            var value = Pair(numbers[1 + (2 * k)], numbers[2 + (2 * k)]) * Scale(i, j);
            entries[(i * n) + j] = value;
            if (header.Matrix != MatrixFormat.Full) entries[(j * n) + i] = value;
        }
        return [.. entries];
    }

    public (double A, double B) Numbers(ImmutableArray<Complex> entries, int k)
    {
        var (i, j) = order[k];
        var value = entries[(i * n) + j] / Scale(i, j);
        if (header.Form == NumberForm.RealImaginary) return (value.Real, value.Imaginary);
        var magnitude = value.Magnitude;
        var degrees = value.Phase * 180 / Math.PI;
        return header.Form == NumberForm.MagnitudeAngle
            ? (magnitude, degrees)
            : (magnitude > 0 ? 20 * Math.Log10(magnitude) : SilenceDb, degrees);
    }

    public NoisePoint Noise(double[] numbers) => new(
        numbers[0] * header.FrequencyUnitHz,
        numbers[1],
        Complex.FromPolarCoordinates(numbers[2], numbers[3] * Math.PI / 180),
        numbers[4] * (header.IsVersion2 ? 1 : reference[0]));

    private Complex Pair(double a, double b) => header.Form switch
    {
        NumberForm.RealImaginary => new(a, b),
        NumberForm.MagnitudeAngle => Complex.FromPolarCoordinates(1, b * Math.PI / 180) * a,
        _ => Complex.FromPolarCoordinates(Math.Pow(10, a / 20), b * Math.PI / 180),
    };

    // Version 1 writes Z over R, Y times R, h11 and g22 over R, h22 and g11 times R; version 2 writes plain ohms and siemens.
    private double Scale(int i, int j)
    {
        if (header.IsVersion2) return 1;
        var r = Math.Sqrt(reference[i] * reference[j]);
        return (header.Parameter, i == j, i) switch
        {
            (NetworkParameter.Z, _, _) => r,
            (NetworkParameter.Y, _, _) => 1 / r,
            (NetworkParameter.H, true, 0) or (NetworkParameter.G, true, 1) => r,
            (NetworkParameter.H, true, 1) or (NetworkParameter.G, true, 0) => 1 / r,
            _ => 1,
        };
    }

    private IEnumerable<(int, int)> Order()
    {
        if (n == 2 && header.Matrix == MatrixFormat.Full && (!header.IsVersion2 || header.TwoPortOrder2112))
            return [(0, 0), (1, 0), (0, 1), (1, 1)];
        return from i in Enumerable.Range(0, n)
               from j in Enumerable.Range(0, n)
               where header.Matrix switch { MatrixFormat.Full => true, MatrixFormat.Lower => j <= i, _ => j >= i }
               select (i, j);
    }
}
