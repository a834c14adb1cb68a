using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Build.Sweeps.Fit;

/// <summary>Covariance of fitted parameters.</summary>
public static class FitCovariance
{
    // Below this share of the largest singular value a direction in parameter space is not seen by the residuals.
    private const double Unseen = 1e-10;

    /// <summary>
    /// s² (JᵀJ)⁻¹ with s² = Σr²/(n − p) for plain least squares; for the soft loss s² = Σψ²/(n − p)/(mean ψ′)² with
    /// ψ = ρ′ r (Huber, Robust Statistics, 1981, ch. 7, from memory). Parameters held by a bound have no variance.
    /// </summary>
    /// <returns>The matrix; null when the residuals do not fix all parameters.</returns>
    public static Matrix<double>? Of(LeastSquaresResult found, LeastSquaresOptions options)
    {
        var n = found.Parameters.Length;
        var free = Enumerable.Range(0, n).Where(i => !found.AtBound[i]).ToArray();
        var result = Matrix<double>.Build.Dense(n, n);
        if (free.Length == 0) return result;
        var size = free.Select(i => found.Jacobian.Column(i).L2Norm()).ToArray();
        if (size.Any(s => s == 0)) return null;
        var scaled = Matrix<double>.Build.Dense(found.Residuals.Length, free.Length, (k, i) => found.Jacobian[k, free[i]] / size[i]);
        var svd = scaled.Svd();
        if (svd.S[^1] < Unseen * svd.S[0]) return null;

        var weights = LevenbergMarquardt.Weights(found.Residuals, options);
        var (psi, slope) = (0.0, 0.0);
        for (var k = 0; k < found.Residuals.Length; k++)
        {
            var w = weights[k / options.Group];
            var r = found.Residuals[k];
            psi += w * w * r * r;
            // dψ/dr with w = (1 + |r|²/C²)^(−1/2): w − w³ r²/C².
            slope += options.SoftScale is { } c ? w - (w * w * w * r * r / (c * c)) : 1;
        }
        slope /= found.Residuals.Length;
        var variance = psi / (found.Residuals.Length - free.Length) / (slope * slope);
        var v = svd.VT.Transpose();
        for (var i = 0; i < free.Length; i++)
        {
            for (var j = 0; j < free.Length; j++)
            {
                var sum = 0.0;
                for (var k = 0; k < free.Length; k++) sum += v[i, k] * v[j, k] / (svd.S[k] * svd.S[k]);
                result[free[i], free[j]] = variance * sum / (size[i] * size[j]);
            }
        }
        return result;
    }
}
