using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>Where and at what radio-frequency voltage a mast begins to spray.</summary>
/// <param name="Part">Foot or top.</param>
/// <param name="HeightM">Height of the place in metres.</param>
/// <param name="GradientPerVolt">Surface gradient for one volt on the mast, in 1/m.</param>
/// <param name="OnsetPeakV">Crest voltage at which corona begins there.</param>
public sealed record RfCoronaPlace(string Part, double HeightM, double GradientPerVolt, Trail OnsetPeakV);

/// <summary>
/// Corona under the station's own voltage: the mast at a potential over its plate, electrostatic because foot and top are small against the wavelength.
/// The foot is driven by the base voltage, the top by the voltage at the top, which is another.
/// </summary>
public static class RfCorona
{
    /// <summary>What stands beside corona under power.</summary>
    public const string Caution = "Corona under power sets insulators and dry leaves on fire. Look for it only from outside the fence, and switch off before going near.";

    private const double RfShare = 0.9;

    /// <summary>
    /// Places at foot and top; empty when the outline has faults or stands on the ground.
    /// </summary>
    /// <param name="mast">The mast.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    /// <param name="refinement">1 for about half a percent.</param>
    public static ImmutableArray<RfCoronaPlace> Places(MastOutline mast, AirState air, double roughness, double refinement = 1)
    {
        if (!mast.Faults().IsEmpty || mast.BaseHeightM <= 0)
            return [];
        var field = AxisymmetricElectrostatics.Solve([mast.ToBody()], refinement: refinement).With([ConductorState.At(1)], 0);
        var middle = 0.5 * (mast.BaseHeightM + mast.HeightM);
        return [Place("foot", field, p => p.Position.Z < middle, air, roughness), Place("top", field, p => p.Position.Z >= middle, air, roughness)];
    }

    /// <summary>A check that a working crest stays below onset.</summary>
    /// <param name="place">The place.</param>
    /// <param name="workingPeakV">Working crest at that place.</param>
    public static Check Check(RfCoronaPlace place, Trail workingPeakV) => Model.Trails.Check.AtMost($"survive.rf-corona[{place.Part}]", Trade.Survive,
        $"No corona at the {place.Part} under power", workingPeakV, place.OnsetPeakV, "highest working voltage", "Round it with a larger radius or a ring, or lower the voltage of that band.", Caution);

    private static RfCoronaPlace Place(string part, ElectrostaticField field, Func<SurfacePoint, bool> where, AirState air, double roughness)
    {
        var (point, perVolt, gradient) = CoronaOnset.First(field, where, air, roughness);
        var lowering = Trail.Assumed("lowering at radio frequency", "krf", RfShare, QuantityKind.Ratio, "spheres at 40 kHz lost 12 to 26 % against 60 Hz over 1 to 10 mm; corona at MHz is not tabulated");
        return new(part, point.Position.Z, perVolt, Trail.Computed($"corona onset at the {part}", "Uc", RfShare * gradient.Value / perVolt, QuantityKind.PeakVoltage,
            "Uc = krf·Ec/(E per volt), boundary elements", Source.Derived("docs/theory/corona-static.md"), gradient, lowering)
            .Within("foot and top small against the wavelength", null));
    }
}
