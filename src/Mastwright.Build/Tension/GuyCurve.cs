using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace Mastwright.Build.Tension;

/// <summary>
/// The exact curve of a guy hanging between its pins under its own weight: the elastic catenary (Irvine, Cable
/// Structures, MIT Press 1981, ch. 1, from memory), here with the horizontal tension given and the unstretched length
/// found. With u = sinh a and v = sinh b the slopes at anchor and mast, L0 = (H/w)(v − u),
/// l = (H/w)(b − a) + H L0/EA and h = (H/w)(cosh b − cosh a) + (H²/2wEA)(v² − u²).
/// </summary>
public sealed class GuyCurve
{
    // A guy with sag of a quarter of its chord is no longer a guy; below this horizontal tension nothing is looked for.
    private const double SlackestOverWeight = 0.5;

    // Strand yields long before a strain of 2 %.
    private const double LargestStrain = 0.02;

    private GuyCurve(GuySpan span, double horizontalN, double anchorSlope, double mastSlope)
    {
        Span = span;
        HorizontalN = horizontalN;
        VerticalAtAnchorN = horizontalN * anchorSlope;
        VerticalAtMastN = horizontalN * mastSlope;
        UnstretchedM = (VerticalAtMastN - VerticalAtAnchorN) / span.SpreadWeightNPerM;
    }

    /// <summary>The guy.</summary>
    public GuySpan Span { get; }

    /// <summary>Horizontal component of tension, the same all along, newtons.</summary>
    public double HorizontalN { get; }

    /// <summary>Vertical component at the anchor, positive when the guy rises from it.</summary>
    public double VerticalAtAnchorN { get; }

    /// <summary>Vertical component at the mast.</summary>
    public double VerticalAtMastN { get; }

    /// <summary>Unstretched length between the pins, metres.</summary>
    public double UnstretchedM { get; }

    /// <summary>Tension at the anchor, newtons.</summary>
    public double AtAnchorN => double.Hypot(HorizontalN, VerticalAtAnchorN);

    /// <summary>Tension at the mast, newtons.</summary>
    public double AtMastN => double.Hypot(HorizontalN, VerticalAtMastN);

    /// <summary>Mean tension over the unstretched length.</summary>
    public double MeanN => GaussLegendreRule.Integrate(TensionAt, 0, UnstretchedM, 16) / UnstretchedM;

    /// <summary>Tension at an unstretched distance from the anchor.</summary>
    public double TensionAt(double unstretchedFromAnchorM) =>
        double.Hypot(HorizontalN, VerticalAtAnchorN + (Span.SpreadWeightNPerM * unstretchedFromAnchorM));

    /// <summary>
    /// Time of a sideways pulse from anchor to mast and back, seconds: 2∫√(m(1 + T/EA)/T) ds over the unstretched
    /// length, the speed in a stretched string being √(T/m′) with m′ its mass by stretched length.
    /// </summary>
    public double PulseReturnS => 2 * GaussLegendreRule.Integrate(
        s =>
        {
            var t = TensionAt(s);
            return Math.Sqrt(Span.SpreadMassKgPerM * (1 + (t / Span.AxialStiffnessN)) / t);
        },
        0,
        UnstretchedM,
        32);

    /// <summary>Vertical sag below the chord at half the horizontal distance, metres.</summary>
    public double MidSagM
    {
        get
        {
            // The place where x = l/2 has no closed form; x grows with s, so it is bracketed by the ends.
            var s = Brent.FindRoot(s => PointAt(s).X - (Span.SpanM / 2), 0, UnstretchedM, 1e-12, 200);
            return (Span.RiseM / 2) - PointAt(s).Y;
        }
    }

    /// <summary>Distance on the mast from the guy's pin down to where the tangent at the anchor meets it, metres.</summary>
    public double TangentInterceptM => Span.RiseM - (Span.SpanM * VerticalAtAnchorN / HorizontalN);

    /// <summary>Place (horizontal, vertical) from the anchor at an unstretched distance.</summary>
    public (double X, double Y) PointAt(double unstretchedFromAnchorM)
    {
        var (h, w, ea, s) = (HorizontalN, Span.SpreadWeightNPerM, Span.AxialStiffnessN, unstretchedFromAnchorM);
        var v = VerticalAtAnchorN + (w * s);
        var x = (h * s / ea) + (h / w * (Math.Asinh(v / h) - Math.Asinh(VerticalAtAnchorN / h)));
        var y = (((v * v) - (VerticalAtAnchorN * VerticalAtAnchorN)) / (2 * ea * w)) + ((TensionAt(s) - AtAnchorN) / w);
        return (x, y);
    }

    /// <summary>The curve with a given horizontal tension; null when the solve fails, which needs an absurd guy.</summary>
    public static GuyCurve? ForHorizontal(GuySpan span, double horizontalN)
    {
        var (l, h, w, ea, hh) = (span.SpanM, span.RiseM, span.SpreadWeightNPerM, span.AxialStiffnessN, horizontalN);
        // Unknowns p = (a + b)/2 and q = (b − a)/2 start from the inextensible, taut curve.
        var q = w * l / (2 * hh);
        var p = Math.Asinh(h / l * q / Math.Sinh(q));
        for (var i = 0; i < 60; i++)
        {
            var (sp, cp, sq, cq) = (Math.Sinh(p), Math.Cosh(p), Math.Sinh(q), Math.Cosh(q));
            // v − u = 2 cosh p sinh q, cosh b − cosh a = 2 sinh p sinh q, v² − u² = sinh 2p sinh 2q.
            var stretch = hh / ea;
            var fx = (hh / w * ((2 * q) + (stretch * 2 * cp * sq))) - l;
            var fy = (hh / w * ((2 * sp * sq) + (stretch * 2 * sp * cp * sq * cq))) - h;
            var xp = hh / w * stretch * 2 * sp * sq;
            var xq = hh / w * (2 + (stretch * 2 * cp * cq));
            var yp = hh / w * ((2 * cp * sq) + (stretch * 2 * ((cp * cp) + (sp * sp)) * sq * cq));
            var yq = hh / w * ((2 * sp * cq) + (stretch * 2 * sp * cp * ((cq * cq) + (sq * sq))));
            var det = (xp * yq) - (xq * yp);
            var dp = -((fx * yq) - (fy * xq)) / det;
            var dq = -((xp * fy) - (yp * fx)) / det;
            p += dp;
            q = Math.Max(q + dq, q / 4);
            if (Math.Abs(dp) <= 1e-14 * (1 + Math.Abs(p)) && Math.Abs(dq) <= 1e-14 * q)
                return new(span, hh, Math.Sinh(p - q), Math.Sinh(p + q));
        }
        return null;
    }

    /// <summary>The curve with a given tension at the anchor; null when the guy would be slacker or tighter than a guy can be.</summary>
    public static GuyCurve? ForAnchorTension(GuySpan span, double tensionN) => Where(span, c => c.AtAnchorN, tensionN);

    /// <summary>The curve with a given mean tension; null when out of reach.</summary>
    public static GuyCurve? ForMeanTension(GuySpan span, double tensionN) => Where(span, c => c.MeanN, tensionN);

    /// <summary>The curve cut to a given unstretched length; null when out of reach.</summary>
    public static GuyCurve? ForUnstretched(GuySpan span, double unstretchedM) => Where(span, c => c.UnstretchedM, unstretchedM);

    /// <summary>The curve on which a quantity that grows or falls steadily with tension has a given value; null when out of reach.</summary>
    public static GuyCurve? Where(GuySpan span, Func<GuyCurve, double> quantity, double value)
    {
        var low = Math.Log(SlackestOverWeight * span.SpreadWeightNPerM * span.SpanM);
        var high = Math.Log(LargestStrain * span.AxialStiffnessN * span.SpanM / span.ChordM);
        double Difference(double logH) => ForHorizontal(span, Math.Exp(logH)) is { } curve ? quantity(curve) - value : double.NaN;
        var (atLow, atHigh) = (Difference(low), Difference(high));
        if (!(atLow * atHigh <= 0)) return null;
        return Brent.TryFindRoot(Difference, low, high, 1e-14, 300, out var root) ? ForHorizontal(span, Math.Exp(root)) : null;
    }
}
