using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Numerics.Fitting;

/// <summary>A fit and how sure it is.</summary>
/// <param name="Parameters">The best parameters.</param>
/// <param name="StandardErrors">
/// Their standard errors, linearised at the best point; infinite when the measurements do not settle a parameter. At a bound they say how sure it would be
/// without the bound.
/// </param>
/// <param name="Covariance">Their covariance, by rows.</param>
/// <param name="SumOfSquares">Sum of squared residuals.</param>
/// <param name="DegreesOfFreedom">Residuals minus parameters.</param>
/// <param name="KnownSpread">Whether the residuals' standard deviation was known; else it was estimated from the misfit.</param>
/// <param name="Iterations">Steps tried.</param>
/// <param name="Converged">Whether it settled.</param>
public sealed record LeastSquaresResult(
    ImmutableArray<double> Parameters,
    ImmutableArray<double> StandardErrors,
    ImmutableArray<ImmutableArray<double>> Covariance,
    double SumOfSquares,
    int DegreesOfFreedom,
    bool KnownSpread,
    int Iterations,
    bool Converged)
{
    /// <summary>Bounds of one parameter: Student's distribution, or the normal one when the spread was known.</summary>
    /// <param name="parameter">Which, counted from 0.</param>
    /// <param name="confidence">Between 0 and 1, e.g. 0.95.</param>
    public (double Low, double High) Interval(int parameter, double confidence = 0.95)
    {
        if (!(confidence is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence));
        var tail = 1 - ((1 - confidence) / 2);
        var factor = KnownSpread ? Normal.InvCDF(0, 1, tail)
            : DegreesOfFreedom > 0 ? StudentT.InvCDF(0, 1, DegreesOfFreedom, tail)
            : double.PositiveInfinity;
        var reach = factor * StandardErrors[parameter];
        return double.IsNaN(reach)
            ? (double.NegativeInfinity, double.PositiveInfinity)
            : (Parameters[parameter] - reach, Parameters[parameter] + reach);
    }

    internal static LeastSquaresResult From(double[] p, double[] r, Matrix<double> jacobian, bool knownSpread, int iterations, bool converged)
    {
        var sum = r.Sum(v => v * v);
        var freedom = r.Length - p.Length;
        var variance = knownSpread ? 1 : freedom > 0 ? sum / freedom : double.PositiveInfinity;

        // (J^T J)^-1 from the singular values of J with its columns scaled to one length.
        var lengths = Enumerable.Range(0, p.Length).Select(c => jacobian.Column(c).L2Norm()).Select(l => l > 0 ? l : 1).ToArray();
        var scaled = jacobian.MapIndexed((_, c, v) => v / lengths[c]).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).R;
        var svd = scaled.Svd();
        var settled = svd.S[^1] > 1e-10 * svd.S[0];
        var covariance = Enumerable.Range(0, p.Length).Select(i => Enumerable.Range(0, p.Length).Select(j =>
            settled
                ? variance * Enumerable.Range(0, p.Length).Sum(k => svd.VT[k, i] * svd.VT[k, j] / (svd.S[k] * svd.S[k])) / (lengths[i] * lengths[j])
                : double.PositiveInfinity).ToImmutableArray()).ToImmutableArray();
        return new([.. p], [.. covariance.Select((row, i) => Math.Sqrt(row[i]))], covariance, sum, freedom, knownSpread, iterations, converged);
    }
}
