namespace Mastwright.Structure.Tests.Support;

/// <summary>The textbook equations solved by bisection inside bisection: slow and sure.</summary>
internal static class PlainCatenary
{
    public static (double H, double V) Solve(double l, double h, double length, double w, double ea)
    {
        double low = 1e-12, high = 1;
        while (Span(high) < l)
        {
            high *= 2;
        }

        for (var i = 0; i < 200; i++)
        {
            var mid = low * high > 0 && high / low > 4 ? Math.Sqrt(low * high) : 0.5 * (low + high);
            if (Span(mid) < l)
            {
                low = mid;
            }
            else
            {
                high = mid;
            }
        }

        var found = 0.5 * (low + high);
        return (found, Upper(found));

        double Span(double across)
        {
            var v = Upper(across);
            return (across * length / ea) + (across / w * (Math.Asinh(v / across) - Math.Asinh((v - (w * length)) / across)));
        }

        double Upper(double across)
        {
            double a = -1, b = 1;
            while (Rise(across, a) > h)
            {
                a *= 2;
            }

            while (Rise(across, b) < h)
            {
                b *= 2;
            }

            for (var i = 0; i < 200; i++)
            {
                var m = 0.5 * (a + b);
                (a, b) = Rise(across, m) < h ? (m, b) : (a, m);
            }

            return 0.5 * (a + b);
        }

        double Rise(double across, double v)
        {
            double vi = v - (w * length), ti = Math.Sqrt((across * across) + (vi * vi)), tj = Math.Sqrt((across * across) + (v * v));
            return (((tj * tj) - (ti * ti)) / (2 * ea * w)) + ((tj - ti) / w);
        }
    }
}
