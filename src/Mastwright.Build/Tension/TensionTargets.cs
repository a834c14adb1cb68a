using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tension;

/// <summary>What the targets are computed for.</summary>
/// <param name="Returns">Pulse returns timed together.</param>
/// <param name="Swings">Swings timed together.</param>
/// <param name="PitchMode">Mode that is listened to.</param>
/// <param name="SidePullDistanceM">Distance of the side pull from the anchor along the guy, metres.</param>
/// <param name="SidePullN">Side pull, newtons.</param>
public sealed record TargetOptions(int Returns = 10, int Swings = 20, int PitchMode = 1, double SidePullDistanceM = 2, double SidePullN = 50);

/// <summary>The readings that say a guy has the tension wanted.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="GaugeReading">Tension at the anchor: what a spring gauge in line should carry.</param>
/// <param name="PulseTime">Time of the pulse returns.</param>
/// <param name="SwingTime">Time of the sideways swings.</param>
/// <param name="TunedPitch">Pitch of the plucked guy; its note names the musical note.</param>
/// <param name="MidSag">Vertical sag at half span.</param>
/// <param name="TangentIntercept">Distance below the pin where the tangent at the anchor meets the mast.</param>
/// <param name="SidePullDeflection">How far the guy gives to the side pull.</param>
/// <param name="UnstretchedLength">Unstretched length between the pins at this tension.</param>
public sealed record TensionTargets(
    GuySpan Guy,
    Trail GaugeReading,
    Trail PulseTime,
    Trail SwingTime,
    Trail TunedPitch,
    Trail MidSag,
    Trail TangentIntercept,
    Trail SidePullDeflection,
    Trail UnstretchedLength)
{
    private static readonly Source Curve = Source.Derived("tension-methods.md");

    /// <summary>Targets for a tension at the anchor; a finding when the guy cannot hang with that tension.</summary>
    public static Reading<TensionTargets> For(GuySpan span, Trail anchorTension, TargetOptions? options = null)
    {
        options ??= new();
        if (GuyCurve.ForAnchorTension(span, anchorTension.Value) is not { } curve)
        {
            return new(null, [new("tension-out-of-reach", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"Guy {span.Name} cannot hang with {anchorTension.Value:0} N at its anchor."), null, anchorTension.Value.ToString("0", CultureInfo.InvariantCulture), "less than a quarter of the length in sag, less than 2 % stretch", "Choose another tension.")]);
        }
        var pitch = StringModes.FrequencyHz(curve, options.PitchMode);
        Trail Of(string name, string symbol, double value, QuantityKind kind, string formula) => Trail.Computed(name, symbol, value, kind, formula, Curve, anchorTension);
        return new(
            new(span,
                anchorTension,
                Of($"time of {options.Returns} pulse returns", "t", options.Returns * curve.PulseReturnS, QuantityKind.Time, "t = 2N∫√(m(1 + T/EA)/T) ds"),
                Of($"time of {options.Swings} sideways swings", "t", options.Swings / StringModes.FrequencyHz(curve, 1), QuantityKind.Time, "t = N/f1 of the elastic catenary"),
                Of("pitch", "f", pitch, QuantityKind.VibrationFrequency, "f = nth sideways mode of the elastic catenary")
                    .Remark(pitch < 20 ? "too low to hear: count swings instead" : $"mode {options.PitchMode}: {Pitch.Nearest(pitch)}"),
                Of("vertical sag at half span", "d", curve.MidSagM, QuantityKind.FineLength, "d = sag of the elastic catenary at l/2"),
                Of("tangent intercept below the pin", "I", curve.TangentInterceptM, QuantityKind.Length, "I = h − l·V/H"),
                Of(string.Create(CultureInfo.InvariantCulture, $"deflection under a side pull of {options.SidePullN:0.#} N at {options.SidePullDistanceM:0.##} m"), "d", SidePull(curve, options), QuantityKind.FineLength, "F = T′(sinα + sinβ), T′ from the stretch"),
                Of("unstretched length between pins", "L0", curve.UnstretchedM, QuantityKind.Length, "L0 = (Vm − Va)/w")),
            []);
    }

    // Deflection of a straight elastic string with the curve's mean tension; force grows steadily with deflection.
    private static double SidePull(GuyCurve curve, TargetOptions options)
    {
        var chord = curve.Span.ChordM;
        var a = Math.Min(options.SidePullDistanceM, chord / 2);
        var b = chord - a;
        var ea = curve.Span.AxialStiffnessN;
        var unstretched = chord / (1 + (curve.MeanN / ea));
        double Pull(double d)
        {
            var (la, lb) = (double.Hypot(a, d), double.Hypot(b, d));
            return ea * ((la + lb - unstretched) / unstretched) * ((d / la) + (d / lb));
        }
        var guess = options.SidePullN / (curve.MeanN * ((1 / a) + (1 / b)));
        return MathNet.Numerics.RootFinding.Brent.FindRoot(d => Pull(d) - options.SidePullN, 0, guess * 1.01, 1e-12, 200);
    }
}
