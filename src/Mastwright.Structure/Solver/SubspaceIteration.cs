using Mastwright.Numerics.Banded;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Structure.Solver;

/// <summary>
/// Largest eigenvalues θ of A·x = θ K·x for a symmetric band A of any sign and a positive definite band K that is
/// already factored, by simultaneous iteration with K⁻¹A and projection: Bathe, Finite Element Procedures, sec. 11.6.
/// The pairs of equal eigenvalues a three-way mast has come out together.
/// </summary>
internal static class SubspaceIteration
{
    /// <param name="a">Band matrix A, not factored.</param>
    /// <param name="k">K, factored.</param>
    /// <param name="wanted">How many eigenvalues.</param>
    /// <param name="held">Unknowns that stay at zero.</param>
    /// <param name="cancellation">Honoured between sweeps.</param>
    /// <returns>Eigenvalues from the largest down, with vectors of unit length in K; fewer than wanted when the rest is not positive or did not settle.</returns>
    public static List<(double Value, double[] Vector)> Largest(SymmetricBand a, BandLdl k, int wanted, int[] held, CancellationToken cancellation)
    {
        var n = a.Order;
        var count = Math.Min(Math.Max(wanted + 6, 2 * wanted), n - held.Length);
        var x = Start(n, count, held);
        var ax = new double[count][];
        double[] previous = [];
        for (var sweep = 0; sweep < 300; sweep++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var c = 0; c < count; c++)
            {
                // x ← K⁻¹ A x; then K x is the old A x, so the projection of K needs no second matrix.
                ax[c] = a.Multiply(x[c]);
                foreach (var h in held)
                {
                    ax[c][h] = 0;
                }

                x[c] = k.Solve(ax[c]);
            }

            var kr = new double[count, count];
            var ar = new double[count, count];
            for (var c = 0; c < count; c++)
            {
                var image = a.Multiply(x[c]);
                for (var r = 0; r < count; r++)
                {
                    kr[r, c] = Dot(x[r], ax[c]);
                    ar[r, c] = Dot(x[r], image);
                }
            }

            var (values, vectors) = SmallEigen.Solve(ar, kr);
            count = values.Length;
            var next = new double[count][];
            for (var c = 0; c < count; c++)
            {
                next[c] = new double[n];
                for (var r = 0; r < x.Length; r++)
                {
                    for (var i = 0; i < n; i++)
                    {
                        next[c][i] += vectors[r, c] * x[r][i];
                    }
                }
            }

            x = next;
            ax = new double[count][];
            var settled = Math.Min(wanted, count);
            if (previous.Length >= settled && Enumerable.Range(0, settled).All(i => Math.Abs(values[i] - previous[i]) <= 1e-9 * Math.Abs(values[i])))
            {
                return [.. Enumerable.Range(0, settled).Where(i => values[i] > 1e-12 * Math.Abs(values[0]) && values[i] > 0).Select(i => (values[i], x[i]))];
            }

            previous = values;
        }

        return [];
    }

    private static double[][] Start(int n, int count, int[] held)
    {
        // Fixed seed: the same mast gives the same digits.
        var random = new Random(20240607);
        var x = new double[count][];
        for (var c = 0; c < count; c++)
        {
            x[c] = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble() - 0.5)];
            foreach (var h in held)
            {
                x[c][h] = 0;
            }
        }

        return x;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}

/// <summary>The small dense problem inside the iteration: A·y = θ B·y, B positive definite up to rounding (Golub and Van Loan, sec. 8.7).</summary>
internal static class SmallEigen
{
    /// <returns>Eigenvalues from the largest down and vectors of unit length in B; directions in which B is nothing but rounding are dropped.</returns>
    public static (double[] Values, double[,] Vectors) Solve(double[,] a, double[,] b)
    {
        // Vectors of very different size are brought to unit length in B first.
        var n = a.GetLength(0);
        var scale = Matrix<double>.Build.DenseOfDiagonalArray([.. Enumerable.Range(0, n).Select(i => b[i, i] > 0 ? 1 / Math.Sqrt(b[i, i]) : 0)]);
        var metric = Symmetric(scale * Matrix<double>.Build.DenseOfArray(b) * scale).Evd(Symmetricity.Symmetric);
        var lengths = metric.EigenValues.Real();
        var keep = Enumerable.Range(0, n).Where(i => lengths[i] > 1e-11 * lengths.Maximum()).ToArray();
        var basis = Matrix<double>.Build.DenseOfColumnVectors(keep.Select(i => metric.EigenVectors.Column(i) / Math.Sqrt(lengths[i])));
        basis = scale * basis;
        var small = Symmetric(basis.TransposeThisAndMultiply(Symmetric(Matrix<double>.Build.DenseOfArray(a)) * basis)).Evd(Symmetricity.Symmetric);
        var values = small.EigenValues.Real();
        var order = Enumerable.Range(0, keep.Length).OrderByDescending(i => values[i]).ToArray();
        var vectors = basis * Matrix<double>.Build.DenseOfColumnVectors(order.Select(i => small.EigenVectors.Column(i)));
        return ([.. order.Select(i => values[i])], vectors.ToArray());
    }

    private static Matrix<double> Symmetric(Matrix<double> m) => 0.5 * (m + m.Transpose());
}
