using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Coils;

/// <summary>What a coil is at one frequency.</summary>
/// <param name="Coil">The coil.</param>
/// <param name="FrequencyHz">The frequency.</param>
/// <param name="Inductance">Low-frequency inductance, H.</param>
/// <param name="SelfCapacitance">Self-capacitance, F.</param>
/// <param name="SelfResonance">Frequency at which inductance and self-capacitance resonate, Hz.</param>
/// <param name="Resistance">Series resistance at the frequency, ohms.</param>
/// <param name="Quality">Q = ωL/R, in free air or installed as asked.</param>
/// <param name="Findings">Where a model is outside its range, or the coil cannot work here.</param>
public sealed record CoilReport(
    AirCoil Coil,
    double FrequencyHz,
    Trail Inductance,
    Trail SelfCapacitance,
    Trail SelfResonance,
    Trail Resistance,
    Trail Quality,
    System.Collections.Immutable.ImmutableArray<Finding> Findings)
{
    private static readonly Source Rosa = Source.FromMemory("Rosa and Grover, Bulletin of the Bureau of Standards 8; NBS Circular 74");
    private static readonly Source MedhurstC = Source.Literature("Medhurst, Wireless Engineer, Feb/Mar 1947, self-capacitance table as reprinted");
    private static readonly Source MedhurstR = Source.FromMemory("Medhurst, Wireless Engineer, 1947, table VIII");
    private static readonly Source Page = Source.Derived("docs/theory/circuits-coils.md");

    /// <summary>The loss model of this coil for a network: its resistance here, growing with √f.</summary>
    public CoilLoss Loss => CoilLoss.SkinEffect(Resistance.Value, FrequencyHz);

    /// <summary>Works a coil out at a frequency.</summary>
    /// <param name="coil">The coil.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="installedQShare">
    /// Share of its free-air Q that it keeps when installed, above 0, at most 1. Boxes, bars, joints and leads take the rest.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CoilReport Of(AirCoil coil, double frequencyHz, double installedQShare = 1)
    {
        Guard.Positive(frequencyHz);
        if (installedQShare is not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(installedQShare), installedQShare, "Above 0, at most 1.");
        var stated = new Source("the coil as described", SourceKind.Design);
        var d = Trail.Given("mean diameter", "D", coil.DiameterM, QuantityKind.FineLength, stated);
        var n = Trail.Given("turns", "N", coil.Turns, QuantityKind.Count, stated);
        var p = Trail.Given("pitch", "p", coil.PitchM, QuantityKind.FineLength, stated);
        var w = Trail.Given("wire diameter", "d", coil.WireM, QuantityKind.FineLength, stated);
        var f = Trail.Given("frequency", "f", frequencyHz, QuantityKind.Frequency, stated);
        var k = Trail.Computed("Nagaoka coefficient", "K", Nagaoka.Coefficient(coil.DiameterM / coil.LengthM), QuantityKind.Ratio, "K(D/l), l = N·p", Rosa, d, n, p);
        var a = Trail.Computed("Rosa's self correction", "A", RoundWire.RosaA(coil.WireM / coil.PitchM), QuantityKind.Ratio, "A = 5/4 - ln(2p/d)", Rosa, p, w);
        var b = Trail.Computed("Rosa's mutual correction", "B", RoundWire.RosaB(coil.Turns), QuantityKind.Ratio, "B(N)", Rosa, n);
        var inductance = Trail.Computed("inductance", "L", coil.InductanceH, QuantityKind.Inductance, "L = μ0·π(D/2)²·N²·K/l - μ0·(D/2)·N·(A + B)", Rosa, d, n, p, k, a, b);

        var c = Trail.Computed("self-capacitance", "C", Medhurst.SelfCapacitanceF(coil.DiameterM, coil.LengthM), QuantityKind.Capacitance, "C = H(l/D)·D, pF and cm", MedhurstC, d, n, p)
            .Within(Medhurst.CapacitanceRange, Medhurst.CapacitanceCovers(coil.DiameterM, coil.LengthM) ? null : "The coil's shape lies outside Medhurst's table; the end of the table was used.");
        var resonance = Trail.Computed("self-resonance", "f0", 1 / (2 * Math.PI * Math.Sqrt(inductance.Value * c.Value)), QuantityKind.Frequency, "f0 = 1/(2π·√(LC))", Page, inductance, c);

        var straight = RoundWire.AcOhmPerM(coil.WireM, coil.ConductivitySPerM, frequencyHz);
        var perM = Trail.Computed("resistance of a metre of straight wire", "R1", straight, QuantityKind.Resistance, "Re[ka·J0(ka)/(2·J1(ka))]·4/(π·d²·σ)", Page, w, f);
        var phi = Trail.Computed("proximity factor", "Φ", Medhurst.ProximityFactor(coil.LengthM / coil.DiameterM, coil.WireM / coil.PitchM), QuantityKind.Ratio, "Φ(l/D, d/p)", MedhurstR, d, n, p, w);
        var wire = Trail.Computed("wire in the winding", "s", coil.WireLengthM, QuantityKind.Length, "s = N·√(π²D² + p²)", Page, n, d, p);
        var thin = coil.WireM > 4 * RoundWire.SkinDepthM(coil.ConductivitySPerM, frequencyHz);
        var outside = (thin, coil.Turns) switch
        {
            (false, _) => "The wire is thin against the skin depth; the proximity factor is too high.",
            (_, < 30) => $"Medhurst measured coils of about 30 turns and more; with {coil.Turns:0.#} turns the factor is an estimate on the high side.",
            _ => null,
        };
        var share = Trail.Assumed("share of the free-air Q kept when installed", "κ", installedQShare, QuantityKind.Ratio, installedQShare == 1 ? "free air" : "common practice, no source: boxes, bars, joints and leads take the rest");
        var resistance = Trail.Computed("coil resistance", "R", straight * phi.Value * wire.Value / installedQShare, QuantityKind.Resistance, "R = R1·Φ·s/κ", Page, perM, phi, wire, share)
            .Within(Medhurst.ResistanceRange, outside);
        var q = Trail.Computed("quality factor", "Q", 2 * Math.PI * frequencyHz * inductance.Value / resistance.Value, QuantityKind.Ratio, "Q = 2πf·L/R", Page, f, inductance, resistance)
            .Remark(installedQShare == 1 ? "Bare winding in free air; formers, nearby metal, joints and weather only lower it." : "Lowered from the bare winding's by the stated share; measure the finished coil.");
        return new(coil, frequencyHz, inductance, c, resonance, resistance, q, FindingsOf(frequencyHz, resonance.Value));
    }

    /// <summary>What a current does to the coil.</summary>
    /// <param name="current">RMS current through the winding.</param>
    /// <param name="dutyRatio">Average over peak power of the mode, above 0, at most 1.</param>
    /// <param name="peakFactor">Crest with modulation over the crest at that current, at least 1.</param>
    public CoilStress At(RmsAmps current, double dutyRatio = 1, double peakFactor = 1) => CoilStress.Of(this, current, dutyRatio, peakFactor);

    private static System.Collections.Immutable.ImmutableArray<Finding> FindingsOf(double f, double f0) => f switch
    {
        _ when f >= f0 => [new("coil-beyond-resonance", Severity.Error, "The coil is used above its self-resonance: it is a capacitor there.", Value: FormattableString.Invariant($"{f / 1e6:0.###} MHz"), Allowed: FormattableString.Invariant($"below {f0 / 1e6:0.###} MHz"), WayOut: "Wind a smaller coil, or split it in two in series.")],
        _ when f > f0 / 2 => [new("coil-near-resonance", Severity.Warning, "The coil works near its self-resonance: its apparent inductance, and the voltage stress, rise.", Value: FormattableString.Invariant($"{f / f0:0.00} of self-resonance"), Allowed: "below 0.5", WayOut: "Wind it with less diameter or fewer turns, or count its self-capacitance in the network.")],
        _ => [],
    };
}

/// <summary>What a current does to a coil.</summary>
/// <param name="PeakVoltage">Crest voltage across the whole coil, V.</param>
/// <param name="PerTurn">Crest voltage from turn to turn, evenly shared, V.</param>
/// <param name="Heat">Average heat, W.</param>
/// <param name="TemperatureRise">Rise of the wire above still air, K.</param>
public sealed record CoilStress(Trail PeakVoltage, Trail PerTurn, Trail Heat, Trail TemperatureRise)
{
    // Natural convection plus radiation from a dull surface in still air.
    private const double SurfaceWPerM2K = 12;

    internal static CoilStress Of(CoilReport report, RmsAmps current, double duty, double peakFactor)
    {
        if (duty is not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(duty), duty, "Above 0, at most 1.");
        ArgumentOutOfRangeException.ThrowIfLessThan(peakFactor, 1);
        var page = Source.Derived("docs/theory/circuits-coils.md");
        var coil = report.Coil;
        var i = Trail.Given("coil current", "I", current.Value, QuantityKind.RmsCurrent, new("the network's solution", SourceKind.Derived));
        var d = Trail.Given("duty of the mode", "η", duty, QuantityKind.Ratio, new("the mode as stated", SourceKind.Design));
        var m = CrestFactor.Of(peakFactor);
        var z = Math.Sqrt(Math.Pow(2 * Math.PI * report.FrequencyHz * report.Inductance.Value, 2) + Math.Pow(report.Resistance.Value, 2));
        var volts = Trail.Computed("coil peak voltage", "Vp", Math.Sqrt(2) * peakFactor * current.Value * z, QuantityKind.PeakVoltage, "Vp = √2·m·I·√((2πfL)² + R²)", page, i, m, report.Inductance, report.Resistance);
        var turn = Trail.Computed("peak voltage per turn", "Vt", volts.Value / coil.Turns, QuantityKind.PeakVoltage, "Vt = Vp/N", page, volts)
            .Within("even along the coil", report.FrequencyHz > report.SelfResonance.Value / 4 ? "So near self-resonance the end turns take more than their share." : null);
        var heat = Trail.Computed("heat in the coil", "P", current.Value * current.Value * report.Resistance.Value * duty, QuantityKind.Power, "P = η·I²·R", page, d, i, report.Resistance);
        var area = Math.PI * coil.WireM * coil.WireLengthM;
        var rise = Trail.Computed("temperature rise of the wire", "ΔT", heat.Value / (SurfaceWPerM2K * area), QuantityKind.TemperatureDifference, "ΔT = P/(h·π·d·s), h = 12 W/(m²K)", Source.CommonPractice, heat)
            .Within("still air, turns not touching, no former and no box around it; a closed box adds its own rise");
        return new(volts, turn, heat, rise);
    }
}
