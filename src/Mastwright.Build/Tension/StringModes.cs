using MathNet.Numerics.RootFinding;

namespace Mastwright.Build.Tension;

/// <summary>How a guy is set swinging.</summary>
public enum SwingPlane
{
    /// <summary>Sideways, out of the vertical plane of the guy: sag has hardly any say.</summary>
    Sideways,

    /// <summary>Up and down, in the plane of the guy: sag stiffens the first mode.</summary>
    UpAndDown,
}

/// <summary>Natural frequencies of a hanging guy.</summary>
public static class StringModes
{
    private const int Elements = 240;

    /// <summary>
    /// Frequency of a mode in hertz. Sideways: eigenvalue of d/ds(T/(1 + T/EA) dw/ds) + m ω² w = 0 on the exact curve,
    /// insulators as masses at their places, by line elements with half lumped, half consistent mass. Up and down: the
    /// same, times what the stretching of a sagging cable does to its symmetric modes (<see cref="SagFactor"/>).
    /// </summary>
    /// <param name="curve">The guy as it hangs.</param>
    /// <param name="mode">1 for one half wave, 2 for two.</param>
    /// <param name="plane">Direction of motion.</param>
    public static double FrequencyHz(GuyCurve curve, int mode, SwingPlane plane = SwingPlane.Sideways)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(mode, 1);
        var sideways = SidewaysHz(curve, mode);
        return plane == SwingPlane.Sideways ? sideways : sideways * SagFactor(SagNumber(curve), mode);
    }

    /// <summary>
    /// Irvine's λ² = (w cosθ L/T)² L/(T Le/EA), Le = L(1 + (w cosθ L/T)²/8), with T the mean tension and L the chord
    /// (Irvine, Cable Structures, 1981, ch. 3, from memory).
    /// </summary>
    public static double SagNumber(GuyCurve curve)
    {
        var span = curve.Span;
        var (chord, t) = (span.ChordM, curve.MeanN);
        var ratio = span.SpreadWeightNPerM * span.SpanM / t;
        return ratio * ratio * chord / (t * chord * (1 + (ratio * ratio / 8)) / span.AxialStiffnessN);
    }

    /// <summary>
    /// In-plane frequency over that of the taut string: 1 for even modes; for odd ones W/(nπ) with W the root of
    /// tan(W/2) = W/2 − (4/λ²)(W/2)³ that starts at nπ (Irvine, Cable Structures, 1981, ch. 3, from memory).
    /// </summary>
    public static double SagFactor(double sagNumber, int mode)
    {
        if (mode % 2 == 0 || sagNumber <= 0) return 1;
        var from = mode * Math.PI / 2;
        var x = Brent.FindRoot(x => Math.Sin(x) - (Math.Cos(x) * (x - (4 * x * x * x / sagNumber))), from, from + Math.PI, 1e-14, 200);
        return x / from;
    }

    private static double SidewaysHz(GuyCurve curve, int mode)
    {
        var span = curve.Span;
        var h = curve.UnstretchedM / Elements;
        var strandMass = span.WeightNPerM / GuySpan.Gravity * h;
        var stiffness = new double[Elements];
        for (var e = 0; e < Elements; e++)
        {
            var t = curve.TensionAt((e + 0.5) * h);
            stiffness[e] = t / (1 + (t / span.AxialStiffnessN)) / h;
        }
        var lumped = new double[Elements + 1];
        foreach (var mass in span.LumpedMasses)
        {
            var at = Math.Clamp(mass.Fraction, 0, 1) * Elements;
            var node = Math.Min((int)at, Elements - 1);
            lumped[node] += mass.MassKg * (1 - (at - node));
            lumped[node + 1] += mass.MassKg * (at - node);
        }

        // Half lumped (h), half consistent (h/6, 4h/6, h/6): the leading errors of the two cancel.
        var diagonal = strandMass * 5 / 6;
        var beside = strandMass / 12;
        var top = Math.Pow(2 * Math.PI * mode / curve.PulseReturnS, 2) * 16;
        var low = 0.0;
        while (Below(top) < mode) top *= 4;
        for (var i = 0; i < 200 && top - low > 1e-14 * top; i++)
        {
            var middle = (low + top) / 2;
            if (Below(middle) >= mode) top = middle;
            else low = middle;
        }
        return Math.Sqrt((low + top) / 2) / (2 * Math.PI);

        // Number of eigenvalues below x: negative pivots of K − x M (Sylvester's law of inertia).
        int Below(double x)
        {
            var count = 0;
            var pivot = 1.0;
            for (var i = 1; i < Elements; i++)
            {
                var d = stiffness[i - 1] + stiffness[i] - (x * (diagonal + lumped[i]));
                if (i > 1)
                {
                    var off = -stiffness[i - 1] - (x * beside);
                    d -= off * off / pivot;
                }
                pivot = d == 0 ? double.Epsilon : d;
                if (pivot < 0) count++;
            }
            return count;
        }
    }
}
