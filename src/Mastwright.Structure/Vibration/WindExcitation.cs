using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Vibration;

/// <summary>
/// Screens for vibration excited by steady wind: vortices shed in turn from both sides of a round member, and the
/// galloping of members that ice or shape has made unround. Screens only: they say where to look and what helps.
/// </summary>
public static class WindExcitation
{
    /// <summary>Strouhal number of a round member in EN 1991-1-4 annex E, table E.1 (from memory).</summary>
    public const double StrouhalRound = 0.18;

    /// <summary>Strouhal number of a round wire in the classic subcritical range.</summary>
    public const double StrouhalWire = 0.20;

    private static readonly Source AnnexE = new("EN 1991-1-4 annex E", SourceKind.FromMemory, "2005");
    private static readonly Source Given = new("given", SourceKind.Design);

    /// <summary>Frequency of vortex shedding: f = St U/d.</summary>
    public static Trail SheddingFrequency(double speedMPerS, double diameterM, double strouhal = StrouhalWire) => Trail.Computed(
        "vortex shedding frequency", "f", strouhal * speedMPerS / diameterM, QuantityKind.VibrationFrequency, "f = St·U/d",
        new Source("Strouhal's relation, e.g. Blevins, Flow-Induced Vibration", SourceKind.Literature),
        Trail.Given("Strouhal number", "St", strouhal, QuantityKind.Ratio, AnnexE), Trail.Given("wind speed", "U", speedMPerS, QuantityKind.Speed, Given), Trail.Given("diameter", "d", diameterM, QuantityKind.FineLength, Given))
        .Within("round members below the drag crisis");

    /// <summary>Wind speed at which vortices come at a natural frequency: U = f d/St.</summary>
    public static Trail CriticalSpeed(double frequencyHz, double diameterM, double strouhal = StrouhalRound) => Trail.Computed(
        "critical wind speed for vortex shedding", "v_crit", frequencyHz * diameterM / strouhal, QuantityKind.Speed, "v_crit = f·d/St", AnnexE,
        Trail.Given("natural frequency", "f", frequencyHz, QuantityKind.VibrationFrequency, new Source("vibration of the model", SourceKind.Derived)),
        Trail.Given("diameter", "d", diameterM, QuantityKind.FineLength, Given), Trail.Given("Strouhal number", "St", strouhal, QuantityKind.Ratio, AnnexE));

    /// <summary>Scruton number Sc = 2 δ m/(ρ d²): mass and damping against the air moved.</summary>
    /// <param name="massKgPerM">Equivalent mass per metre of the mode.</param>
    /// <param name="logDecrement">Logarithmic decrement of the structure's own damping; welded or flanged steel tubes about 0.012, bolted lattices about 0.03, strand about 0.02.</param>
    /// <param name="diameterM">Diameter across the wind.</param>
    public static Trail Scruton(double massKgPerM, double logDecrement, double diameterM) => Trail.Computed(
        "Scruton number", "Sc", 2 * logDecrement * massKgPerM / (Air.DensityKgPerM3 * diameterM * diameterM), QuantityKind.Ratio, "Sc = 2·δ·m/(ρ·d²)", AnnexE,
        Trail.Given("logarithmic decrement", "δ", logDecrement, QuantityKind.Ratio, Given), Trail.Given("equivalent mass per metre", "m", massKgPerM, QuantityKind.LinearMass, Given),
        Trail.Given("air density", "ρ", Air.DensityKgPerM3, QuantityKind.Density, AnnexE), Trail.Given("diameter", "d", diameterM, QuantityKind.FineLength, Given));

    /// <summary>
    /// Largest movement by vortex shedding, y/d = K·K_W·c_lat/(St²·Sc), with the least favourable mode factor 0.13
    /// and correlation factor 0.6 of the annex.
    /// </summary>
    public static Trail VortexAmplitude(Trail scruton, Trail criticalSpeed, double diameterM, double strouhal = StrouhalRound)
    {
        var reynolds = criticalSpeed.Value * diameterM / Air.KinematicViscosityM2PerS;
        var lateral = LateralForce(reynolds);
        var amplitude = diameterM * 0.13 * 0.6 * lateral / (strouhal * strouhal * scruton.Value);
        return Trail.Computed(
            "movement by vortex shedding", "y", amplitude, QuantityKind.FineLength, "y = d·K·K_W·c_lat/(St²·Sc)", AnnexE,
            Trail.Given("diameter", "d", diameterM, QuantityKind.FineLength, Given),
            Trail.Given("mode factor, least favourable", "K", 0.13, QuantityKind.Ratio, AnnexE),
            Trail.Given("correlation factor, largest", "K_W", 0.6, QuantityKind.Ratio, AnnexE),
            Trail.Computed("lateral force coefficient", "c_lat", lateral, QuantityKind.Ratio, "figure E.2 at Re = v_crit·d/ν", AnnexE, criticalSpeed),
            Trail.Given("Strouhal number", "St", strouhal, QuantityKind.Ratio, AnnexE), scruton)
            .Within("movement below 0.6 of the diameter", amplitude > 0.6 * diameterM ? "The estimate exceeds 0.6 of the diameter, beyond which the formula no longer holds: treat the member as one that will vibrate strongly." : null);
    }

    /// <summary>Wind speed at which galloping starts: v = 2 Sc f d/a_G.</summary>
    /// <param name="scruton">Scruton number of the member with its ice.</param>
    /// <param name="frequencyHz">Natural frequency with its ice.</param>
    /// <param name="widthM">Width across the wind with its ice.</param>
    /// <param name="instabilityFactor">a_G: 1.0 for ice on cables, more for sharp-edged sections (annex E, table E.7).</param>
    public static Trail GallopingOnset(Trail scruton, double frequencyHz, double widthM, double instabilityFactor = 1.0) => Trail.Computed(
        "onset speed of galloping", "v_CG", 2 * scruton.Value * frequencyHz * widthM / instabilityFactor, QuantityKind.Speed, "v_CG = 2·Sc·f·d/a_G", AnnexE,
        scruton, Trail.Given("natural frequency", "f", frequencyHz, QuantityKind.VibrationFrequency, new Source("vibration of the model", SourceKind.Derived)),
        Trail.Given("width", "d", widthM, QuantityKind.FineLength, Given), Trail.Given("factor of galloping instability", "a_G", instabilityFactor, QuantityKind.Ratio, AnnexE));

    /// <summary>The wind speeds at which a mode of the mast is in danger of vortex vibration, and how far it may move.</summary>
    /// <param name="mode">A mode of the mast.</param>
    /// <param name="diameterM">Diameter of the tube where the mode moves most.</param>
    /// <param name="logDecrement">Logarithmic decrement.</param>
    /// <param name="allowedMovementM">Movement the builder accepts, e.g. a tenth of the diameter.</param>
    /// <param name="siteMeanSpeedMPerS">Design mean wind speed at the top: modes whose critical speed exceeds 1.25 times this need not be looked at.</param>
    public static Check MastVortexCheck(MastMode mode, double diameterM, double logDecrement, double allowedMovementM, double siteMeanSpeedMPerS)
    {
        var critical = CriticalSpeed(mode.FrequencyHz, diameterM);
        var scruton = Scruton(mode.EquivalentMassKgPerM, logDecrement, diameterM);
        var beyond = critical.Value > 1.25 * siteMeanSpeedMPerS;
        var movement = beyond
            ? Trail.Computed("movement by vortex shedding", "y", 0, QuantityKind.FineLength, "none: v_crit > 1.25 v_m", AnnexE, critical)
            : VortexAmplitude(scruton, critical, diameterM);
        var allowed = Trail.Given("movement accepted", "y_max", allowedMovementM, QuantityKind.FineLength, Given);
        return Check.AtMost(
            $"stand.mast.vortex[{mode.FrequencyHz:F2} Hz]", Trade.Stand, "Vortex shedding from the mast", movement, allowed,
            $"wind of {critical.Value:F1} m/s across the mode at {mode.FrequencyHz:F2} Hz, largest at {mode.WorstHeightM:F1} m",
            "Add damping (a hanging chain or rope inside the tube), or a rope wound around the upper part as a spoiler.");
    }

    private static double LateralForce(double reynolds)
    {
        // Figure E.2, read as straight lines on a logarithmic axis (from memory).
        if (reynolds <= 3e5)
        {
            return 0.7;
        }

        return reynolds <= 5e5
            ? 0.7 + ((0.2 - 0.7) * Math.Log(reynolds / 3e5) / Math.Log(5.0 / 3))
            : reynolds <= 5e6 ? 0.2 : Math.Min(0.3, 0.2 + (0.1 * Math.Log(reynolds / 5e6) / Math.Log(2)));
    }
}
