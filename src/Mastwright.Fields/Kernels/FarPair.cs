using System.Numerics;
using System.Runtime.CompilerServices;

namespace Mastwright.Fields.Kernels;

/// <summary>Product Gauss rule for filaments well apart.</summary>
internal static class FarPair
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static PairBlock Compute(in Filament p, in Filament q, Complex k, double gapM)
    {
        double size = k.Magnitude, beta = k.Real, alpha = -k.Imaginary;
        var ruleP = GaussRule.Of(Order(gapM / p.LengthM, size * p.LengthM));
        var ruleQ = GaussRule.Of(Order(gapM / q.LengthM, size * q.LengthM));
        double aa = 0.25 * p.RadiusM * p.RadiusM, bb = 0.25 * q.RadiusM * q.RadiusM;
        var radii = p.RadiusM + q.RadiusM;
        var corrected = gapM < 40 * radii;
        double m00R = 0, m00I = 0, m01R = 0, m01I = 0, m10R = 0, m10I = 0, m11R = 0, m11I = 0;
        for (var i = 0; i < ruleP.Nodes.Length; i++)
        {
            var x = ruleP.Nodes[i];
            var from = p.PointAt(x * p.LengthM) - q.Start;
            double s0R = 0, s0I = 0, s1R = 0, s1I = 0;
            for (var j = 0; j < ruleQ.Nodes.Length; j++)
            {
                var y = ruleQ.Nodes[j];
                var d = from - (y * q.LengthM * q.Tangent);
                var r2 = d.Dot(d);
                var r = Math.Sqrt(r2);
                var (sin, cos) = Math.SinCos(beta * r);
                var g = ruleQ.Weights[j] / r;
                if (alpha != 0)
                    g *= Math.Exp(-alpha * r);
                double re = g * cos, im = -g * sin;

                // The radii weaken or strengthen the static field; they touch the radiating part only in the order (ka)².
                if (corrected)
                {
                    double cp = d.Dot(p.Tangent), cq = d.Dot(q.Tangent);
                    re *= 1 + (((aa * (r2 - (3 * cp * cp))) + (bb * (r2 - (3 * cq * cq)))) / (r2 * r2));
                }

                s0R += (1 - y) * re;
                s0I += (1 - y) * im;
                s1R += y * re;
                s1I += y * im;
            }

            double w0 = (1 - x) * ruleP.Weights[i], w1 = x * ruleP.Weights[i];
            m00R += w0 * s0R;
            m00I += w0 * s0I;
            m01R += w0 * s1R;
            m01I += w0 * s1I;
            m10R += w1 * s0R;
            m10I += w1 * s0I;
            m11R += w1 * s1R;
            m11I += w1 * s1I;
        }

        var scale = p.LengthM * q.LengthM;
        return new()
        {
            M00 = new(scale * m00R, scale * m00I),
            M01 = new(scale * m01R, scale * m01I),
            M10 = new(scale * m10R, scale * m10I),
            M11 = new(scale * m11R, scale * m11I),
        };
    }

    private static int Order(double gapOverLength, double phase)
    {
        var order = gapOverLength > 10 ? 2 : gapOverLength > 4 ? 3 : gapOverLength > 1.5 ? 4 : 6;
        return phase > 1 ? order + 1 : phase > 0.35 ? Math.Max(order, 3) : order;
    }
}
