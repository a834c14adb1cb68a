using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tension;

/// <summary>A tension found from a measurement.</summary>
/// <param name="Method">The method, in words.</param>
/// <param name="TautString">Tension of a straight string without weight: what the rule of thumb gives.</param>
/// <param name="AtAnchor">Tension at the anchor from the exact curve: the number to hold against the table.</param>
/// <param name="AtMast">Tension at the mast from the exact curve.</param>
/// <param name="UncertaintyN">What the stated reading error does to the tension, newtons, one standard deviation.</param>
public sealed record TensionEstimate(string Method, Trail TautString, Trail AtAnchor, Trail AtMast, double UncertaintyN);

/// <summary>
/// Tension of a guy from what can be measured on the ground. Each method gives the taut-string figure and the tension of
/// the exact elastic catenary that would have given the same reading. Readings that no guy could give come back as
/// findings.
/// </summary>
public static class TensionMethods
{
    private static readonly Source StringSource = Source.Literature("taut string: c = √(T/m); f = c/(2L)");
    private static readonly Source CurveSource = Source.Derived("tension-methods.md");

    /// <summary>From the time of a number of returns of a sideways pulse struck at the anchor.</summary>
    /// <param name="span">The guy.</param>
    /// <param name="returns">Number of returns timed.</param>
    /// <param name="timeS">Time of all of them, seconds.</param>
    /// <param name="timeErrorS">Error of the timing, seconds.</param>
    public static Reading<TensionEstimate> FromPulse(GuySpan span, int returns, double timeS, double timeErrorS = 0.1)
    {
        if (Refuse(span, ("returns", returns), ("time", timeS)) is { } refused) return refused;
        var one = timeS / returns;
        var inputs = Inputs(span, Measured("number of returns", "N", returns, QuantityKind.Count), Measured("time of all returns", "t", timeS, QuantityKind.Time));
        var taut = 4 * span.SpreadMassKgPerM * span.ChordM * span.ChordM / (one * one);
        return Estimate("pulse return", span, taut, "T = 4 m L² N²/t²", GuyCurve.Where(span, c => c.PulseReturnS, one),
            "t/N = 2∫√(m(1 + T/EA)/T) ds on the elastic catenary", 2 * timeErrorS / timeS, inputs,
            span.LumpedMasses.Length > 0 ? "Insulators are spread evenly; a pulse is partly thrown back at each of them, so wait for the strong return from the mast." : null);
    }

    /// <summary>From the time of a number of full swings of the whole guy moving in one half wave, or of a higher mode.</summary>
    /// <param name="span">The guy.</param>
    /// <param name="swings">Number of full swings, there and back.</param>
    /// <param name="timeS">Time of all of them, seconds.</param>
    /// <param name="plane">Direction of the swing.</param>
    /// <param name="mode">Number of half waves.</param>
    /// <param name="timeErrorS">Error of the timing, seconds.</param>
    public static Reading<TensionEstimate> FromSwing(GuySpan span, int swings, double timeS, SwingPlane plane = SwingPlane.Sideways, int mode = 1, double timeErrorS = 0.1)
    {
        if (Refuse(span, ("swings", swings), ("time", timeS), ("mode", mode)) is { } refused) return refused;
        return Vibration("swing count", span, swings / timeS, plane, mode, 2 * timeErrorS / timeS,
            Inputs(span, Measured("number of swings", "N", swings, QuantityKind.Count), Measured("time of all swings", "t", timeS, QuantityKind.Time), Measured("half waves", "n", mode, QuantityKind.Count)),
            "T = 4 m L² (N/(n t))²");
    }

    /// <summary>From the pitch of the plucked guy.</summary>
    /// <param name="span">The guy.</param>
    /// <param name="pitchHz">Frequency heard or shown, hertz.</param>
    /// <param name="mode">Which mode it is: 1 for the fundamental, 2 for the octave above.</param>
    /// <param name="pitchErrorHz">Error of the pitch, hertz.</param>
    public static Reading<TensionEstimate> FromPitch(GuySpan span, double pitchHz, int mode = 1, double pitchErrorHz = 0.05)
    {
        if (Refuse(span, ("pitch", pitchHz), ("mode", mode)) is { } refused) return refused;
        return Vibration("tuned pitch", span, pitchHz, SwingPlane.Sideways, mode, 2 * pitchErrorHz / pitchHz,
            Inputs(span, Measured("pitch", "f", pitchHz, QuantityKind.VibrationFrequency), Measured("half waves", "n", mode, QuantityKind.Count)),
            "T = 4 m L² (f/n)²");
    }

    /// <summary>From the vertical sag below the chord at half the horizontal distance.</summary>
    public static Reading<TensionEstimate> FromSag(GuySpan span, double sagM, double sagErrorM = 0.005)
    {
        if (Refuse(span, ("sag", sagM)) is { } refused) return refused;
        var taut = span.SpreadWeightNPerM * span.ChordM * span.ChordM / (8 * sagM);
        return Estimate("sag sighting", span, taut, "T = w L²/(8 d)", GuyCurve.Where(span, c => c.MidSagM, sagM),
            "d = sag of the elastic catenary at l/2", sagErrorM / sagM, Inputs(span, Measured("vertical sag at half span", "d", sagM, QuantityKind.FineLength)));
    }

    /// <summary>From the tangent at the anchor, sighted along the guy to where it meets the mast below the guy's pin.</summary>
    public static Reading<TensionEstimate> FromTangent(GuySpan span, double interceptM, double interceptErrorM = 0.02)
    {
        if (Refuse(span, ("intercept", interceptM)) is { } refused) return refused;
        var taut = span.SpreadWeightNPerM * span.ChordM * span.ChordM / (2 * interceptM);
        return Estimate("tangent sighting", span, taut, "T = w L²/(2 I)", GuyCurve.Where(span, c => c.TangentInterceptM, interceptM),
            "I = h − l·V/H at the anchor of the elastic catenary", interceptErrorM / interceptM, Inputs(span, Measured("intercept on the mast below the pin", "I", interceptM, QuantityKind.Length)));
    }

    /// <summary>From a spring gauge in line with the guy at the anchor.</summary>
    /// <param name="span">The guy.</param>
    /// <param name="readingN">What the gauge shows when it carries the whole tension, newtons.</param>
    /// <param name="zeroN">What it shows unloaded.</param>
    /// <param name="scale">True force over shown force, from its calibration.</param>
    /// <param name="errorFraction">Error of the gauge as a fraction.</param>
    public static Reading<TensionEstimate> FromGauge(GuySpan span, double readingN, double zeroN = 0, double scale = 1, double errorFraction = 0.02)
    {
        if (Refuse(span, ("gauge reading less its zero", readingN - zeroN), ("gauge scale", scale)) is { } refused) return refused;
        var tension = (readingN - zeroN) * scale;
        return Estimate("spring gauge", span, tension, "T = k (F − F0)", GuyCurve.ForAnchorTension(span, tension), "T at the anchor is what the gauge carries", errorFraction,
            Inputs(span, Measured("gauge reading", "F", readingN, QuantityKind.Force), Measured("zero of the gauge", "F0", zeroN, QuantityKind.Force), Measured("scale of the gauge", "k", scale, QuantityKind.Ratio)));
    }

    /// <summary>
    /// From a sideways pull: a spring gauge pulls the guy level and square to its plane, and the way it gives is measured
    /// at the same place. The tension the pull adds by stretching the guy is taken out again.
    /// </summary>
    /// <param name="span">The guy.</param>
    /// <param name="distanceM">Distance of the pull from the anchor's pin along the chord, metres.</param>
    /// <param name="pullN">Pull, newtons.</param>
    /// <param name="deflectionM">How far the guy gives, metres.</param>
    /// <param name="errorFraction">Error of pull over deflection, as a fraction.</param>
    public static Reading<TensionEstimate> FromSidePull(GuySpan span, double distanceM, double pullN, double deflectionM, double errorFraction = 0.05)
    {
        if (Refuse(span, ("distance", distanceM), ("distance to the mast", span.ChordM - distanceM), ("pull", pullN), ("deflection", deflectionM)) is { } refused) return refused;
        var (a, b, d, ea) = (distanceM, span.ChordM - distanceM, deflectionM, span.AxialStiffnessN);
        var taut = pullN / ((d / a) + (d / b));
        var (la, lb) = (double.Hypot(a, d), double.Hypot(b, d));
        var pulled = pullN / ((d / la) + (d / lb));
        var unstretched = (la + lb) / (1 + (pulled / ea));
        var mean = ea * ((span.ChordM / unstretched) - 1);
        return Estimate("side pull", span, taut, "T = F/(d/a + d/b)", mean > 0 ? GuyCurve.ForMeanTension(span, mean) : null,
            "T′ = F/(sinα + sinβ), L0 = L′/(1 + T′/EA), mean T = EA(L/L0 − 1)", errorFraction,
            Inputs(span, Measured("distance from the anchor", "a", a, QuantityKind.Length), Measured("side pull", "F", pullN, QuantityKind.Force), Measured("deflection", "d", d, QuantityKind.FineLength)));
    }

    private static Reading<TensionEstimate> Vibration(string method, GuySpan span, double hz, SwingPlane plane, int mode, double relativeError, ImmutableArray<Trail> inputs, string formula)
    {
        var perHalfWave = hz / mode;
        var taut = 4 * span.SpreadMassKgPerM * span.ChordM * span.ChordM * perHalfWave * perHalfWave;
        var curve = GuyCurve.Where(span, c => StringModes.FrequencyHz(c, mode, plane), hz);
        return Estimate(method, span, taut, formula, curve, plane == SwingPlane.Sideways ? "f = nth sideways mode of the elastic catenary" : "f = nth sideways mode × W/(nπ), Irvine's sag factor", relativeError, inputs);
    }

    private static Reading<TensionEstimate> Estimate(string method, GuySpan span, double tautN, string tautFormula, GuyCurve? curve, string curveFormula, double relativeError, ImmutableArray<Trail> inputs, string? note = null)
    {
        if (curve is null)
        {
            return new(null, [new("tension-out-of-reach", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"No tension of guy {span.Name} gives this reading by the {method} method; the taut-string rule gives {tautN:0} N."), null, null, "a guy that hangs with less than a quarter of its length in sag and is stretched by less than 2 %", "Check the reading, its units and the guy's length and weight.")]);
        }
        var taut = Trail.Computed("tension, taut string", "T", tautN, QuantityKind.Force, tautFormula, StringSource, [.. inputs])
            .Within("straight guy: sag small against length", curve.MidSagM > span.ChordM / 20 ? "The guy sags by more than a twentieth of its length; the taut-string figure is rough." : null);
        var anchor = Trail.Computed("tension at the anchor", "Ta", curve.AtAnchorN, QuantityKind.Force, curveFormula, CurveSource, [.. inputs]);
        var mast = Trail.Computed("tension at the mast", "Tm", curve.AtMastN, QuantityKind.Force, "Tm = √(H² + (V + w L0)²)", CurveSource, anchor);
        if (note is not null) (taut, anchor) = (taut.Remark(note), anchor.Remark(note));
        return new(new(method, taut, anchor, mast, curve.AtAnchorN * relativeError), []);
    }

    private static ImmutableArray<Trail> Inputs(GuySpan span, params ReadOnlySpan<Trail> measured) =>
    [
        Trail.Given("horizontal span", "l", span.SpanM, QuantityKind.Length, Source.DesignFile),
        Trail.Given("rise", "h", span.RiseM, QuantityKind.Length, Source.DesignFile),
        Trail.Given("chord", "L", span.ChordM, QuantityKind.Length, Source.DesignFile),
        Trail.Given("weight per length, insulators spread", "w", span.SpreadWeightNPerM, QuantityKind.LinearForce, Source.DesignFile),
        Trail.Given("mass per length, insulators spread", "m", span.SpreadMassKgPerM, QuantityKind.LinearMass, Source.DesignFile),
        Trail.Given("axial stiffness", "EA", span.AxialStiffnessN, QuantityKind.Force, Source.DesignFile),
        .. measured,
    ];

    private static Trail Measured(string name, string symbol, double value, QuantityKind kind) =>
        Trail.Given(name, symbol, value, kind, new("measured on site", SourceKind.Design));

    private static Reading<TensionEstimate>? Refuse(GuySpan span, params ReadOnlySpan<(string Name, double Value)> positive)
    {
        foreach (var (name, value) in (ReadOnlySpan<(string, double)>)[("horizontal span", span.SpanM), ("weight per length", span.WeightNPerM), ("axial stiffness", span.AxialStiffnessN), .. positive])
        {
            if (value > 0 && double.IsFinite(value)) continue;
            return new(null, [new("tension-input", Severity.Error, $"The {name} of guy {span.Name} cannot be used.", null, value.ToString(CultureInfo.InvariantCulture), "a number above 0", "Measure or enter it again.")]);
        }
        return null;
    }
}
