using Mastwright.Numerics.Banded;

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

/// <summary>The small dense problem inside the iteration: A·y = θ B·y, B positive definite up to rounding, by Cholesky and Jacobi rotations (Golub and Van Loan, secs. 8.5 and 8.7).</summary>
internal static class SmallEigen
{
    /// <returns>Eigenvalues from the largest down and vectors of unit length in B; directions in which B is nothing but rounding are dropped.</returns>
    public static (double[] Values, double[,] Vectors) Solve(double[,] a, double[,] b)
    {
        var n = a.GetLength(0);
        var (bValues, bVectors) = Jacobi(Scaled(b, out var scale));
        var keep = Enumerable.Range(0, n).Where(i => bValues[i] > 1e-11 * bValues.Max()).ToArray();
        var basis = new double[n, keep.Length];
        for (var c = 0; c < keep.Length; c++)
        {
            for (var r = 0; r < n; r++)
            {
                basis[r, c] = scale[r] * bVectors[r, keep[c]] / Math.Sqrt(bValues[keep[c]]);
            }
        }

        var small = new double[keep.Length, keep.Length];
        for (var p = 0; p < keep.Length; p++)
        {
            for (var q = 0; q < keep.Length; q++)
            {
                var sum = 0.0;
                for (var r = 0; r < n; r++)
                {
                    for (var s = 0; s < n; s++)
                    {
                        sum += basis[r, p] * 0.5 * (a[r, s] + a[s, r]) * basis[s, q];
                    }
                }

                small[p, q] = sum;
            }
        }

        var (values, vectors) = Jacobi(small);
        var order = Enumerable.Range(0, keep.Length).OrderByDescending(i => values[i]).ToArray();
        var result = new double[n, keep.Length];
        for (var c = 0; c < keep.Length; c++)
        {
            for (var r = 0; r < n; r++)
            {
                for (var k = 0; k < keep.Length; k++)
                {
                    result[r, c] += basis[r, k] * vectors[k, order[c]];
                }
            }
        }

        return ([.. order.Select(i => values[i])], result);
    }

    // Vectors of very different size are brought to unit length first.
    private static double[,] Scaled(double[,] b, out double[] scale)
    {
        var n = b.GetLength(0);
        var s = new double[n];
        for (var i = 0; i < n; i++)
        {
            s[i] = b[i, i] > 0 ? 1 / Math.Sqrt(b[i, i]) : 0;
        }

        var m = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                m[i, j] = s[i] * s[j] * 0.5 * (b[i, j] + b[j, i]);
            }
        }

        scale = s;
        return m;
    }

    private static (double[] Values, double[,] Vectors) Jacobi(double[,] m)
    {
        var n = m.GetLength(0);
        var a = (double[,])m.Clone();
        var v = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            v[i, i] = 1;
        }

        for (var sweep = 0; sweep < 60; sweep++)
        {
            var off = 0.0;
            var all = 0.0;
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    all += a[i, j] * a[i, j];
                    off += i == j ? 0 : a[i, j] * a[i, j];
                }
            }

            if (off <= 1e-30 * all)
            {
                break;
            }

            for (var p = 0; p < n - 1; p++)
            {
                for (var q = p + 1; q < n; q++)
                {
                    Rotate(a, v, p, q);
                }
            }
        }

        return ([.. Enumerable.Range(0, n).Select(i => a[i, i])], v);
    }

    private static void Rotate(double[,] a, double[,] v, int p, int q)
    {
        if (a[p, q] == 0)
        {
            return;
        }

        var n = a.GetLength(0);
        var tau = (a[q, q] - a[p, p]) / (2 * a[p, q]);
        var t = (tau >= 0 ? 1 : -1) / (Math.Abs(tau) + Math.Sqrt(1 + (tau * tau)));
        var c = 1 / Math.Sqrt(1 + (t * t));
        var s = t * c;
        for (var k = 0; k < n; k++)
        {
            (a[k, p], a[k, q]) = ((c * a[k, p]) - (s * a[k, q]), (s * a[k, p]) + (c * a[k, q]));
        }

        for (var k = 0; k < n; k++)
        {
            (a[p, k], a[q, k]) = ((c * a[p, k]) - (s * a[q, k]), (s * a[p, k]) + (c * a[q, k]));
            (v[k, p], v[k, q]) = ((c * v[k, p]) - (s * v[k, q]), (s * v[k, p]) + (c * v[k, q]));
        }
    }
}
