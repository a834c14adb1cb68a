using System.Numerics;

namespace Mastwright.Circuits;

/// <summary>
/// Levenberg-Marquardt over the logarithms of a few positive values, with complex residuals and difference quotients
/// (Marquardt 1963). Every step that is taken lowers the sum of squares. A network often has more knobs than conditions,
/// which the fitter of the numerics library, meant for measurements, refuses; here the damping picks the nearest answer.
/// </summary>
internal static class KnobSearch
{
    private const double Span = 100;

    /// <summary>Lowers the residuals from a start.</summary>
    /// <param name="residuals">Residuals of a set of values.</param>
    /// <param name="start">Start, all above zero; no value moves further than a hundredfold.</param>
    /// <param name="goal">Root of the sum of squares at which to stop.</param>
    /// <param name="most">Most steps.</param>
    public static (double[] Values, double Residual) Minimise(Func<double[], Complex[]> residuals, double[] start, double goal = 1e-10, int most = 60)
    {
        var origin = Array.ConvertAll(start, v => Math.Log(v));
        var x = (double[])origin.Clone();
        Complex[] At(double[] logs) => residuals(Array.ConvertAll(logs, Math.Exp));
        var r = At(x);
        var size = Size(r);
        var damping = 1e-3;
        for (var i = 0; i < most && size > goal; i++)
        {
            var jacobian = new Complex[x.Length][];
            for (var k = 0; k < x.Length; k++)
            {
                var moved = (double[])x.Clone();
                moved[k] += 1e-6;
                jacobian[k] = [.. At(moved).Zip(r, (a, b) => (a - b) / 1e-6)];
            }

            var improved = false;
            for (var t = 0; t < 8 && !improved; t++)
            {
                var step = Step(jacobian, r, damping);
                var longest = Math.Max(step.Max(Math.Abs), 1e-300);
                var tried = x.Select((v, k) => v + (step[k] * Math.Min(1, 0.5 / longest))).ToArray();
                var rt = At(tried);
                improved = Size(rt) < size && tried.Zip(origin).All(p => Math.Abs(p.First - p.Second) < Math.Log(Span));
                if (improved)
                    (x, r, size, damping) = (tried, rt, Size(rt), damping / 5);
                else
                    damping *= 8;
            }

            if (!improved)
                break;
        }

        return (Array.ConvertAll(x, Math.Exp), size);
    }

    private static double Size(Complex[] r)
    {
        var sum = r.Sum(z => (z.Real * z.Real) + (z.Imaginary * z.Imaginary));
        return double.IsNaN(sum) ? double.PositiveInfinity : Math.Sqrt(sum);
    }

    // (JᵀJ + λ·diag JᵀJ)·s = -Jᵀr, real and imaginary parts being residuals of their own.
    private static double[] Step(Complex[][] j, Complex[] r, double damping)
    {
        var n = j.Length;
        var lu = new Ac.DenseLu<double>(n);
        var s = new double[n];
        for (var a = 0; a < n; a++)
        {
            for (var b = 0; b < n; b++)
                lu.Add(a, b, Dot(j[a], j[b]));
            lu.Add(a, a, (damping * Dot(j[a], j[a])) + 1e-14);
            s[a] = -Dot(j[a], r);
        }

        if (lu.Factor() >= 0)
            return new double[n];
        lu.Solve(s);
        return s;
    }

    private static double Dot(Complex[] a, Complex[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += (a[i].Real * b[i].Real) + (a[i].Imaginary * b[i].Imaginary);
        return sum;
    }
}
