using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Build.Sweeps.Fit;

/// <summary>Covariance of parameters fitted with the soft loss, where the plain s² (JᵀJ)⁻¹ does not hold.</summary>
internal static class FitCovariance
{
    // Below this share of the largest singular value a direction in parameter space is not seen by the residuals.
    private const double Unseen = 1e-10;
    private const double DifferenceStep = 1e-5;

    /// <summary>
    /// s² (JᵀJ)⁻¹ with s² = Σψ²/(n − p)/(mean ψ′)², ψ = ρ′ r (Huber, Robust Statistics, 1981, ch. 7, from memory); without
    /// a soft scale ψ = r and this is the plain covariance. Parameters on a limit are held and have none.
    /// </summary>
    /// <param name="differences">Real and imaginary parts by turns, at given parameters.</param>
    /// <param name="fitted">Fitted parameters.</param>
    /// <param name="parameters">Their limits.</param>
    /// <param name="softScale">Length from which a difference counts less; null for plain least squares.</param>
    /// <param name="atLimit">Which rest on a limit.</param>
    /// <returns>The matrix; null when the differences do not fix all parameters.</returns>
    public static Matrix<double>? Of(Func<double[], double[]> differences, double[] fitted, IReadOnlyList<FitParameter> parameters, double? softScale, bool[] atLimit)
    {
        var free = Enumerable.Range(0, fitted.Length).Where(i => !atLimit[i]).ToArray();
        var result = Matrix<double>.Build.Dense(fitted.Length, fitted.Length);
        if (free.Length == 0) return result;
        var r = differences(fitted);
        var columns = free.Select(i => Derivative(differences, fitted, parameters[i], i)).ToArray();
        var size = columns.Select(c => Math.Sqrt(c.Sum(v => v * v))).ToArray();
        if (size.Any(s => s == 0)) return null;
        var svd = Matrix<double>.Build.Dense(r.Length, free.Length, (k, i) => columns[i][k] / size[i]).Svd();
        if (svd.S[free.Length - 1] < Unseen * svd.S[0]) return null;

        var (psi, slope) = (0.0, 0.0);
        for (var k = 0; k < r.Length; k++)
        {
            var w = softScale is { } c ? SoftLoss.Weight(r[k - (k % 2)], r[k - (k % 2) + 1], c) : 1;
            psi += w * w * r[k] * r[k];
            // ψ = w r with w = (1 + |r|²/C²)^(−1/2), so ψ′ = w − w³ r²/C².
            slope += softScale is { } s ? w - (w * w * w * r[k] * r[k] / (s * s)) : 1;
        }
        slope /= r.Length;
        var variance = psi / (r.Length - free.Length) / (slope * slope);
        for (var i = 0; i < free.Length; i++)
        {
            for (var j = 0; j < free.Length; j++)
            {
                var sum = Enumerable.Range(0, free.Length).Sum(k => svd.VT[k, i] * svd.VT[k, j] / (svd.S[k] * svd.S[k]));
                result[free[i], free[j]] = variance * sum / (size[i] * size[j]);
            }
        }
        return result;
    }

    private static double[] Derivative(Func<double[], double[]> differences, double[] at, FitParameter parameter, int i)
    {
        var h = DifferenceStep * Math.Max(Math.Abs(at[i]), 1e-3 * (parameter.Upper - parameter.Lower));
        var (a, b) = ((double[])at.Clone(), (double[])at.Clone());
        a[i] = Math.Max(at[i] - h, parameter.Lower);
        b[i] = Math.Min(at[i] + h, parameter.Upper);
        return [.. differences(b).Zip(differences(a), (x, y) => (x - y) / (b[i] - a[i]))];
    }
}

/// <summary>
/// The loss C² ρ(|r|²/C²), ρ(z) = 2(√(1 + z) − 1), of a complex difference r: like |r|² for small ones, like 2C|r| for
/// large ones.
/// </summary>
internal static class SoftLoss
{
    /// <summary>ρ′: what a difference counts against its square.</summary>
    public static double Weight(double re, double im, double scale) => 1 / Math.Sqrt(1 + (((re * re) + (im * im)) / (scale * scale)));

    /// <summary>
    /// Shrinks each difference to the length whose square is its loss, so that plain least squares of what comes out is
    /// least loss of what went in: r √(ρ(z)/z) = r √(2/(√(1 + z) + 1)).
    /// </summary>
    public static double[] Shrink(double[] differences, double scale)
    {
        var result = new double[differences.Length];
        for (var k = 0; k < differences.Length; k += 2)
        {
            var z = ((differences[k] * differences[k]) + (differences[k + 1] * differences[k + 1])) / (scale * scale);
            var factor = Math.Sqrt(2 / (Math.Sqrt(1 + z) + 1));
            (result[k], result[k + 1]) = (differences[k] * factor, differences[k + 1] * factor);
        }
        return result;
    }
}
