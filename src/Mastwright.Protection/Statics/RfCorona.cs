using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>Where and at what radio-frequency voltage a mast begins to spray.</summary>
/// <param name="Part">Foot or top.</param>
/// <param name="HeightM">Height of the place in metres.</param>
/// <param name="GradientPerVolt">Surface gradient for one volt on the mast, in 1/m.</param>
/// <param name="OnsetPeakV">Crest voltage at which corona begins there.</param>
public sealed record RfCoronaPlace(string Part, double HeightM, double GradientPerVolt, Trail OnsetPeakV);

/// <summary>A surface under the station's own voltage.</summary>
/// <param name="Part">What it is.</param>
/// <param name="HeightM">Height of the place in metres.</param>
/// <param name="GradientVPerM">Crest of the gradient there.</param>
/// <param name="OnsetVPerM">Gradient at which corona begins there at radio frequency.</param>
public sealed record RfSurface(string Part, double HeightM, Trail GradientVPerM, Trail OnsetVPerM)
{
    /// <summary>Gradient over onset: above 1 it sprays.</summary>
    public double Use => GradientVPerM.Value / OnsetVPerM.Value;
}

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

    /// <summary>
    /// Gradients on the top from the gradient solved on the shaft some way below it: near the top the field is electrostatic, so that the outline at one volt
    /// gives the ratio between the two. Places on rod, shaft and ring; empty when the outline has faults.
    /// </summary>
    /// <param name="mast">The outline.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    /// <param name="shaftPeak">Crest of the gradient on a round shaft of the outline's radius at <paramref name="atM"/>.</param>
    /// <param name="atM">Height at which it was solved, in metres.</param>
    public static ImmutableArray<RfSurface> Top(MastOutline mast, AirState air, double roughness, Trail shaftPeak, double atM)
    {
        if (!mast.Faults().IsEmpty)
            return [];
        var field = AxisymmetricElectrostatics.Solve([mast.ToBody()]).With([ConductorState.At(1)], 0);
        var middle = 0.5 * (mast.BaseHeightM + mast.HeightM);
        var at = Enumerable.Range(0, field.Basis.Points.Length).Where(i => !mast.OnRing(field.Basis.Points[i])).MinBy(i => Math.Abs(field.Basis.Points[i].Position.Z - atM));
        var perVolt = Math.Abs(field.SurfaceFieldVPerM[at]) * field.Basis.Points[at].Position.X / mast.RadiusM;
        var volts = Trail.Computed("voltage of the top, crest", "Ut", shaftPeak.Value / perVolt, QuantityKind.PeakVoltage, "Ut = E/(E per volt), at the same height, boundary elements",
            Source.Derived("docs/theory/corona-static.md"), shaftPeak, Trail.Given("height", "z", atM, QuantityKind.Length, Source.DesignFile))
            .Within("the last metres of the mast small against the wavelength");
        List<RfSurface> places = [Surface(mast.RodLengthM > 0 ? "rod and top" : "top", p => p.Position.Z >= middle && !mast.OnRing(p))];
        if (mast.Ring is not null)
            places.Add(Surface("ring", mast.OnRing));
        return [.. places];

        RfSurface Surface(string part, Func<SurfacePoint, bool> where)
        {
            var (point, gain, gradient) = CoronaOnset.First(field, where, air, roughness);
            var peak = Trail.Computed($"gradient on the {part}, crest", "E", gain * volts.Value, QuantityKind.ElectricField, "E = Ut·(E per volt)", Source.Derived("docs/theory/corona-static.md"), volts);
            return new(part, point.Position.Z, peak, Lowered(gradient));
        }
    }

    /// <summary>Gradient on a round wire from its charge: q/(2π·ε0·a), crest.</summary>
    /// <param name="part">What the wire is.</param>
    /// <param name="heightM">Height of the place in metres.</param>
    /// <param name="radiusM">Radius of the wire in metres.</param>
    /// <param name="chargePeakCPerM">Crest of the charge for each metre, in C/m.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    public static RfSurface Wire(string part, double heightM, double radiusM, double chargePeakCPerM, AirState air, double roughness) => new(part, heightM,
        Trail.Computed($"gradient on the {part}, crest", "E", chargePeakCPerM / (2 * Math.PI * Vacuum.PermittivityFPerM * radiusM), QuantityKind.ElectricField,
            "E = q/(2π·ε0·a), q = |dI/ds|/ω of the solved current", Source.Derived("docs/theory/corona-static.md"), Trail.Given("radius", "a", radiusM, QuantityKind.FineLength, Source.DesignFile)),
        Lowered(CoronaOnset.GradientVPerM(radiusM, double.PositiveInfinity, air, roughness)));

    /// <summary>
    /// Gradient on the legs of a lattice from the charge of the whole: each of n legs on a circle of radius R carries a share, and its outer side most,
    /// q/(2π·ε0·n·a)·(1 + (n − 1)·a/R), as on a bundle of line conductors (Maruvada; from memory).
    /// </summary>
    /// <param name="part">What it is.</param>
    /// <param name="heightM">Height of the place in metres.</param>
    /// <param name="legs">Number of legs.</param>
    /// <param name="legRadiusM">Radius of a leg in metres.</param>
    /// <param name="circleRadiusM">Radius of the circle through the legs in metres.</param>
    /// <param name="chargePeakCPerM">Crest of the charge for each metre of mast, in C/m.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    public static RfSurface Legs(string part, double heightM, int legs, double legRadiusM, double circleRadiusM, double chargePeakCPerM, AirState air, double roughness)
    {
        var side = 1 + ((legs - 1) * legRadiusM / circleRadiusM);
        var one = Wire(part, heightM, legRadiusM, chargePeakCPerM / legs, air, roughness);
        return one with
        {
            GradientVPerM = Trail.Computed($"gradient on the {part}, crest", "E", side * one.GradientVPerM.Value, QuantityKind.ElectricField, "E = q/(2π·ε0·n·a)·(1 + (n − 1)·a/R)",
                Source.FromMemory("Maruvada, Corona Performance of High-Voltage Transmission Lines: gradient of bundles", "2000"), one.GradientVPerM,
                Trail.Given("number of legs", "n", legs, QuantityKind.Count, Source.DesignFile), Trail.Given("circle through the legs", "R", circleRadiusM, QuantityKind.Length, Source.DesignFile)),
        };
    }

    /// <summary>A check that a gradient under power stays below onset.</summary>
    public static Check Check(RfSurface surface, string id) => Model.Trails.Check.AtMost(id, Trade.Survive, $"No corona on the {surface.Part} under power", surface.GradientVPerM, surface.OnsetVPerM,
        "highest working gradient", "Take thicker wire or tube there, round its end, or lower the voltage of that band.", Caution);

    private static Trail Lowered(Trail gradient) =>
        Trail.Computed("corona onset gradient at radio frequency", "Ec'", RfShare * gradient.Value, QuantityKind.ElectricField, "Ec' = krf·Ec", Source.Derived("docs/theory/corona-static.md"), gradient, Lowering());

    private static Trail Lowering() => Trail.Assumed("lowering at radio frequency", "krf", RfShare, QuantityKind.Ratio, "spheres at 40 kHz lost 12 to 26 % against 60 Hz over 1 to 10 mm; corona at MHz is not tabulated");

    /// <summary>A check that a working crest stays below onset.</summary>
    /// <param name="place">The place.</param>
    /// <param name="workingPeakV">Working crest at that place.</param>
    public static Check Check(RfCoronaPlace place, Trail workingPeakV) => Model.Trails.Check.AtMost($"survive.rf-corona[{place.Part}]", Trade.Survive,
        $"No corona at the {place.Part} under power", workingPeakV, place.OnsetPeakV, "highest working voltage", "Round it with a larger radius or a ring, or lower the voltage of that band.", Caution);

    private static RfCoronaPlace Place(string part, ElectrostaticField field, Func<SurfacePoint, bool> where, AirState air, double roughness)
    {
        var (point, perVolt, gradient) = CoronaOnset.First(field, where, air, roughness);
        return new(part, point.Position.Z, perVolt, Trail.Computed($"corona onset at the {part}", "Uc", RfShare * gradient.Value / perVolt, QuantityKind.PeakVoltage,
            "Uc = krf·Ec/(E per volt), boundary elements", Source.Derived("docs/theory/corona-static.md"), gradient, Lowering())
            .Within("foot and top small against the wavelength", null));
    }
}
