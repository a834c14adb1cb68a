using System.Globalization;
using System.Numerics;
using Mastwright.Fields.Kernels;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Earth;

/// <summary>Loss in the ground around a mast, referred to its base current.</summary>
/// <param name="Total">Loss resistance, ohms: the heat in the soil out to the near-field limit divided by the square of the base current.</param>
/// <param name="Inside">The part under the radials.</param>
/// <param name="Outside">The part beyond their ends, out to the near-field limit.</param>
public sealed record RadialLossEstimate(Trail Total, Trail Inside, Trail Outside);

/// <summary>
/// The engineering estimate of ground loss: the magnetic field of the mast as it would be over perfect ground drives a current
/// through the surface impedance of soil and radials in parallel, and the heat of that current is summed out to 0.35 wavelength.
/// See docs/theory/fields-radial-loss.md for the equations, the sources and what the estimate cannot do.
/// </summary>
public static class RadialLoss
{
    /// <summary>
    /// Soil heating is counted out to this many wavelengths; what is lost beyond belongs to the wave's travel, not to the antenna.
    /// The sum would grow for ever otherwise. The number is a calibration: with it the estimate agrees with the exact half space of
    /// this library (field at a distance for the same input) to about 15 % for a quarter wave over 15 to 120 radials in wet and average
    /// soil. It is not taken from any measurement.
    /// </summary>
    public const double NearFieldLimitWavelengths = 0.35;

    private const string Range =
        "eight or more equal radials on or just under the soil, soil that conducts (σ/ωε at least 1.5, |n²| above about 12), mast up to about 0.4 wavelength; an estimate within about ±35 % for 15 to 120 radials, for choosing and comparing";

    /// <summary>
    /// Below this loss tangent σ/ωε the soil is more an insulator than a conductor. It then takes in power the estimate counts as lost, yet
    /// the field along the ground hardly suffers: against the exact half space the estimate ran 50 % high at 1.0, three times at 0.7, and
    /// the exact loss fell to nothing below that.
    /// </summary>
    public const double LeastLossTangent = 1.5;

    private static readonly Source Method = Source.FromMemory(
        "Wait and Pope 1954 (surface impedance of a radial screen); Brown, Lewis and Epstein 1937; Monteath 1951 (compensation theorem)");

    /// <summary>Estimates the loss resistance of a mast's ground.</summary>
    /// <param name="soil">The soil.</param>
    /// <param name="screen">The radials.</param>
    /// <param name="field">The mast's magnetic field along the ground.</param>
    /// <param name="groundingRadiusM">Radius of the metal in contact with the soil at the base (rod, strap, footing), metres: soil heating is counted from there on.</param>
    public static RadialLossEstimate Estimate(Soil soil, RadialScreen screen, BaseField field, double groundingRadiusM = 0.1)
    {
        ArgumentNullException.ThrowIfNull(soil);
        ArgumentNullException.ThrowIfNull(screen);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(groundingRadiusM);
        var f = field.FrequencyHz;
        var wavelengthM = Vacuum.WavelengthM(f);
        var limitM = Math.Max(screen.Count > 0 ? screen.LengthM : 0, NearFieldLimitWavelengths * wavelengthM);
        var edgeM = screen.Count > 0 ? Math.Max(screen.LengthM, groundingRadiusM) : groundingRadiusM;
        double Integrand(double r) => screen.EffectiveImpedanceOhm(soil, r, f).Real * field.MeanSquare(r) * 2 * Math.PI * r;
        var insideOhm = LogIntegral(Integrand, groundingRadiusM, edgeM, wavelengthM);
        var outsideOhm = LogIntegral(r => soil.SurfaceImpedanceOhm(f).Real * field.MeanSquare(r) * 2 * Math.PI * r, edgeM, limitM, wavelengthM);

        Trail[] inputs =
        [
            Trail.Given("soil relative permittivity", "εr", soil.PermittivityAt(f), QuantityKind.Ratio, Source.DesignFile, soil.Name),
            Trail.Given("soil conductivity", "σ", soil.ConductivityAt(f), QuantityKind.Conductivity, Source.DesignFile, soil.Name),
            Trail.Given("number of radials", "N", screen.Count, QuantityKind.Count, Source.DesignFile),
            Trail.Given("radial length", "a", screen.LengthM, QuantityKind.Length, Source.DesignFile),
            Trail.Given("radial wire radius", "c", screen.WireRadiusM, QuantityKind.FineLength, Source.DesignFile),
            Trail.Given("frequency", "f", f, QuantityKind.Frequency, Source.DesignFile),
            Trail.Given("grounding radius", "r0", groundingRadiusM, QuantityKind.FineLength, Source.DesignFile),
        ];
        var inside = Trail.Computed(
            "ground loss under the radials", "R_in", insideOhm, QuantityKind.Resistance,
            "R_in = ∫(r0..a) Re[Zs·Zg/(Zs + Zg)]·|H/I|²·2πr dr, Zs = η0/n, Zg = jη0(d/λ)·ln(d/2πc), d = 2πr/N", Method, inputs)
            .Remark($"H from: {field.Origin}");
        var outside = Trail.Computed(
            "ground loss beyond the radials", "R_out", outsideOhm, QuantityKind.Resistance,
            "R_out = ∫(a..0.35λ) Re[Zs]·|H/I|²·2πr dr", Method, inputs)
            .Remark($"H from: {field.Origin}; counted out to {(limitM / wavelengthM).ToString("F2", CultureInfo.InvariantCulture)} wavelengths from the base");
        var total = Trail.Computed(
            "ground loss resistance", "R_g", insideOhm + outsideOhm, QuantityKind.Resistance, "R_g = R_in + R_out", Method, inside, outside)
            .Within(Range, Limits(soil, screen, field));
        return new(total, inside, outside);
    }

    /// <summary>
    /// First-order change of a bare mast's base impedance by soil and screen, from the compensation theorem:
    /// ΔZ = ∫ Ze·(H/I)²·2πr dr over the whole plane. Its real part is not a loss: a negative one means less radiation as well.
    /// Monteath 1951; Wait and Surtees 1954 (from memory).
    /// </summary>
    /// <param name="soil">The soil.</param>
    /// <param name="screen">The radials.</param>
    /// <param name="heightM">Height of the bare mast, metres.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    /// <param name="innerRadiusM">Where the integral starts, metres.</param>
    /// <returns>The part under the radials and the part beyond, ohms.</returns>
    public static (Complex Inside, Complex Outside) ImpedanceChange(Soil soil, RadialScreen screen, double heightM, double frequencyHz, double innerRadiusM)
    {
        ArgumentNullException.ThrowIfNull(soil);
        ArgumentNullException.ThrowIfNull(screen);
        var k = Vacuum.WaveNumber(frequencyHz);
        var edgeM = Math.Max(innerRadiusM, screen.Count > 0 ? screen.LengthM : 0);
        Complex Square(Complex r)
        {
            var h = BaseField.SinusoidalH(k, heightM, r);
            return h * h * 2 * Math.PI * r;
        }

        var inside = LogIntegral(r => screen.EffectiveImpedanceOhm(soil, r, frequencyHz) * Square(r), innerRadiusM, edgeM, 2 * Math.PI / k);

        // The tail decays along r = a + (1 − j)s, which keeps clear of the branch points at ±jh.
        var turn = new Complex(1, -1);
        var outside = soil.SurfaceImpedanceOhm(frequencyHz) * LogIntegral(
            s => turn * Square(edgeM + (turn * (s - (1e-3 * edgeM)))), 1e-3 * edgeM, Math.Max(20 * edgeM, 40 / k), 2 * Math.PI / k);
        return (inside, outside);
    }

    private static string? Limits(Soil soil, RadialScreen screen, BaseField field)
    {
        var wavelengthM = Vacuum.WavelengthM(field.FrequencyHz);
        if (field.OutOfRange is { } why)
            return "ground loss: " + why;
        if (screen.HeightM > 0.005 * wavelengthM)
            return "ground loss: the radials are elevated; the estimate holds only for radials on or in the soil";
        if (screen.HeightM < -0.5 * soil.SkinDepthM(field.FrequencyHz))
            return "ground loss: the radials lie so deep that the soil above them carries part of the current";
        if (screen.Count < 8)
            return "ground loss: fewer than eight radials, so the current in the soil is far from evenly spread; take this as an order of magnitude";
        var n2 = soil.ComplexPermittivity(field.FrequencyHz);
        if (n2.Magnitude < 12)
            return "ground loss: the soil is so dry that a surface impedance describes it poorly; the estimate can be twice the true loss";
        return -n2.Imaginary < LeastLossTangent * n2.Real
            ? "ground loss: at this frequency the soil is more an insulator than a conductor; the estimate is too high, by half to several times, and the true loss can be next to none"
            : null;
    }

    private static double LogIntegral(Func<double, double> f, double from, double to, double wavelengthM) =>
        LogIntegral(r => new Complex(f(r), 0), from, to, wavelengthM).Real;

    // Gauss panels evenly spaced in the logarithm of the distance, a little more than one to a factor e,
    // and none longer than about a third of a wavelength: the field of a long mast beats along the ground.
    private static Complex LogIntegral(Func<double, Complex> f, double from, double to, double wavelengthM)
    {
        if (to <= from)
            return Complex.Zero;
        var span = Math.Log(to / from);
        var panels = Math.Max(1, (int)Math.Ceiling(Math.Max(1.2, to / (0.3 * wavelengthM)) * span));
        var rule = GaussRule.Of(6);
        var sum = Complex.Zero;
        for (var p = 0; p < panels; p++)
        {
            for (var g = 0; g < rule.Nodes.Length; g++)
            {
                var r = from * Math.Exp(span * (p + rule.Nodes[g]) / panels);
                sum += rule.Weights[g] * span / panels * r * f(r);
            }
        }

        return sum;
    }
}
