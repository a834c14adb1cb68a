using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Build.Sweeps;

/// <summary>Something between the analyser and the antenna's feed point.</summary>
public abstract record PlaneElement
{
    private protected PlaneElement() { }

    /// <summary>Impedance seen from the analyser's side when <paramref name="loadOhm"/> closes the far side.</summary>
    public abstract Complex SeenThrough(Complex loadOhm, double frequencyHz);

    /// <summary>The load on the far side when <paramref name="seenOhm"/> is seen from the analyser's side: the inverse of <see cref="SeenThrough"/>.</summary>
    public abstract Complex LoadBehind(Complex seenOhm, double frequencyHz);
}

/// <summary>
/// A length of coaxial cable with real characteristic impedance: reflection against it is turned by 2βl and shrunk by
/// the loss there and back (Pozar, Microwave Engineering, ch. 2, from memory). Loss goes with √f from its given point.
/// </summary>
/// <param name="CharacteristicOhm">Characteristic impedance, ohms.</param>
/// <param name="LengthM">Length in metres.</param>
/// <param name="VelocityFactor">Wave speed over that of light, above 0 to 1.</param>
/// <param name="LossDbPerM">Matched loss in dB for one metre at <paramref name="LossAtHz"/>; 0 for none.</param>
/// <param name="LossAtHz">Frequency of that loss.</param>
public sealed record Cable(double CharacteristicOhm, double LengthM, double VelocityFactor, double LossDbPerM = 0, double LossAtHz = 10e6) : PlaneElement
{
    /// <inheritdoc/>
    public override Complex SeenThrough(Complex loadOhm, double frequencyHz) => Turn(loadOhm, frequencyHz, -1);

    /// <inheritdoc/>
    public override Complex LoadBehind(Complex seenOhm, double frequencyHz) => Turn(seenOhm, frequencyHz, +1);

    /// <summary>Matched loss of the length, dB one way.</summary>
    public double LossDb(double frequencyHz) => LossDbPerM * LengthM * Math.Sqrt(frequencyHz / LossAtHz);

    // Written with z − Z0 and z + Z0 rather than with Γ, so that an open end stays finite on the way.
    private Complex Turn(Complex z, double frequencyHz, int direction)
    {
        var nepers = LossDb(frequencyHz) * Math.Log(10) / 20;
        var phase = 2 * Math.PI * frequencyHz * LengthM / (VelocityFactor * Vacuum.SpeedOfLightMPerS);
        var factor = Complex.Exp(direction * 2 * new Complex(nepers, phase));
        var forward = z + CharacteristicOhm;
        var back = (z - CharacteristicOhm) * factor;
        return CharacteristicOhm * (forward + back) / (forward - back);
    }
}

/// <summary>Resistance and inductance in series, with the stray capacitance of the winding across both.</summary>
/// <param name="ResistanceOhm">Resistance, ohms.</param>
/// <param name="InductanceH">Inductance, henries.</param>
/// <param name="StrayCapacitanceF">Capacitance across the winding, farads.</param>
public sealed record Choke(double ResistanceOhm, double InductanceH, double StrayCapacitanceF = 0)
{
    /// <summary>Its impedance.</summary>
    public Complex ImpedanceOhm(double frequencyHz)
    {
        var omega = 2 * Math.PI * frequencyHz;
        var winding = new Complex(ResistanceOhm, omega * InductanceH);
        return winding / (1 + (winding * new Complex(0, omega * StrayCapacitanceF)));
    }
}

/// <summary>A choke or lead in the hot conductor, in series with the antenna.</summary>
/// <param name="Branch">What is in series.</param>
public sealed record SeriesChoke(Choke Branch) : PlaneElement
{
    /// <inheritdoc/>
    public override Complex SeenThrough(Complex loadOhm, double frequencyHz) => loadOhm + Branch.ImpedanceOhm(frequencyHz);

    /// <inheritdoc/>
    public override Complex LoadBehind(Complex seenOhm, double frequencyHz) => seenOhm - Branch.ImpedanceOhm(frequencyHz);
}

/// <summary>A static-drain choke across the base, in parallel with the antenna.</summary>
/// <param name="Branch">What is in parallel.</param>
public sealed record DrainChoke(Choke Branch) : PlaneElement
{
    /// <inheritdoc/>
    public override Complex SeenThrough(Complex loadOhm, double frequencyHz) =>
        1 / ((1 / loadOhm) + (1 / Branch.ImpedanceOhm(frequencyHz)));

    /// <inheritdoc/>
    public override Complex LoadBehind(Complex seenOhm, double frequencyHz) =>
        1 / ((1 / seenOhm) - (1 / Branch.ImpedanceOhm(frequencyHz)));
}

/// <summary>A stray capacitance across the base: clip leads, the insulator, the open feed box.</summary>
/// <param name="CapacitanceF">Capacitance in farads.</param>
public sealed record StrayShunt(double CapacitanceF) : PlaneElement
{
    /// <inheritdoc/>
    public override Complex SeenThrough(Complex loadOhm, double frequencyHz) => 1 / ((1 / loadOhm) + Susceptance(frequencyHz));

    /// <inheritdoc/>
    public override Complex LoadBehind(Complex seenOhm, double frequencyHz) => 1 / ((1 / seenOhm) - Susceptance(frequencyHz));

    private Complex Susceptance(double frequencyHz) => new(0, 2 * Math.PI * frequencyHz * CapacitanceF);
}

/// <summary>Moves a sweep between the plane it was measured at and the antenna.</summary>
public static class ReferencePlane
{
    // Beyond this loss there and back, the small error of a real analyser is multiplied by more than 4.
    private const double MuchLossDb = 6;

    /// <summary>
    /// The sweep at the antenna, from one measured through <paramref name="elements"/>. Warns when the result has
    /// negative resistance (the cable is entered longer or lossier than it is) and when so much loss was taken out that
    /// the reading error grows with it.
    /// </summary>
    /// <param name="measured">Sweep at the analyser.</param>
    /// <param name="elements">What lies between, in order from the analyser to the antenna.</param>
    public static Reading<ImpedanceSweep> ToAntenna(ImpedanceSweep measured, IReadOnlyList<PlaneElement> elements)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var points = ImmutableArray.CreateBuilder<SweepPoint>(measured.Points.Length);
        foreach (var point in measured.Points)
        {
            var z = elements.Aggregate(point.ImpedanceOhm, (seen, e) => e.LoadBehind(seen, point.FrequencyHz));
            if (Complex.IsFinite(z)) points.Add(point with { ImpedanceOhm = z });
            else findings.Add(new("impedance-infinite", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"At {point.FrequencyHz / 1e6:0.####} MHz nothing finite is left behind the cable; the point is left out."), new(measured.Name, 0, 0, ""), null, null, "Check the cable and choke entered."));
        }
        if (points.Count == 0)
        {
            findings.Add(new("sweep-empty", Severity.Error, "No point is left after moving the measuring plane.", new(measured.Name, 0, 0, ""), null, null, "Check the cable and choke entered."));
            return new(null, findings.ToImmutable());
        }
        var negative = points.Where(p => p.ImpedanceOhm.Real < 0).ToList();
        if (negative.Count > 0)
            findings.Add(new("resistance-negative", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"{negative.Count} of {points.Count} points have negative resistance at the antenna, first at {negative[0].FrequencyHz / 1e6:0.####} MHz."), new(measured.Name, 0, 0, ""), null, "resistance above 0 Ω", "The cable is entered longer or lossier than it is, or the choke's resistance too high. Calibrating at the far end of the cable avoids the question."));
        var loss = 2 * elements.OfType<Cable>().Sum(c => c.LossDb(measured.ToHz));
        if (loss > MuchLossDb)
            findings.Add(new("loss-large", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"{loss:0.0} dB of cable loss there and back was taken out; errors of reading grow {Math.Pow(10, loss / 20):0.#}-fold."), new(measured.Name, 0, 0, ""), null, $"below {MuchLossDb} dB", "Measure at the base of the mast."));
        return new(measured with { Points = points.ToImmutable() }, findings.ToImmutable());
    }

    /// <summary>
    /// A sweep without phase at the antenna's end of a cable that matches the analyser: only the loss there and back is
    /// taken out. Behind any other cable the ratio alone does not tell.
    /// </summary>
    public static Reading<SwrSweep> ToAntenna(SwrSweep measured, Cable cable)
    {
        if (Math.Abs(cable.CharacteristicOhm - measured.ReferenceOhm) > 1e-6 * measured.ReferenceOhm)
            return new(null, [new("plane-needs-phase", Severity.Error, string.Create(CultureInfo.InvariantCulture, $"A reading without phase cannot be moved through a {cable.CharacteristicOhm} Ω cable on a {measured.ReferenceOhm} Ω analyser."), new(measured.Name, 0, 0, ""), cable.CharacteristicOhm.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"{measured.ReferenceOhm} Ω"), "Export R and X or S11 with phase.")]);
        var moved = measured.Points.Select(p => (p.FrequencyHz, Size: StandingWave.Reflection(p.Swr) * Math.Pow(10, cable.LossDb(p.FrequencyHz) / 10))).ToList();
        var over = moved.Count(p => p.Size > 1);
        return new(
            measured with { Points = [.. moved.Select(p => (p.FrequencyHz, StandingWave.Ratio(p.Size)))] },
            over == 0 ? [] : [new("resistance-negative", Severity.Warning, $"At {over} of {moved.Count} points more comes back from the antenna than reaches it.", new(measured.Name, 0, 0, ""), null, null, "The cable is entered longer or lossier than it is.")]);
    }

    /// <summary>What an analyser would show through <paramref name="elements"/> (in order from the analyser to the antenna).</summary>
    public static ImpedanceSweep ToAnalyser(ImpedanceSweep antenna, IReadOnlyList<PlaneElement> elements) =>
        antenna with { Points = [.. antenna.Points.Select(p => p with { ImpedanceOhm = elements.Reverse().Aggregate(p.ImpedanceOhm, (z, e) => e.SeenThrough(z, p.FrequencyHz)) })] };
}
