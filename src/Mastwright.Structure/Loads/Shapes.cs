using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>What a stretch of mast looks like to the wind and to the ice.</summary>
public abstract record MastShape;

/// <summary>A round tube.</summary>
/// <param name="DiameterM">Outside diameter, m.</param>
public sealed record TubeShape(double DiameterM) : MastShape
{
    /// <summary>Equivalent surface roughness k, m; galvanised steel 0.2 mm by default (EN 1991-1-4 table 7.13, from memory).</summary>
    public double RoughnessM { get; init; } = 0.2e-3;

    /// <summary>Height of the whole mast over the diameter, for the force coefficients of ASCE 7; slender by default.</summary>
    public double SlendernessForDrag { get; init; } = 25;

    /// <summary>Height of ribs or ice lumps over the diameter, which ASCE 7 calls rough from 0.02 and very rough from 0.08.</summary>
    public double RelativeRoughness { get; init; }
}

/// <summary>How the faces of a lattice are braced.</summary>
public enum Bracing
{
    /// <summary>One diagonal a panel, turning back and forth.</summary>
    Zigzag,

    /// <summary>Two diagonals a panel, crossing.</summary>
    Cross,
}

/// <summary>A triangular or square lattice of equal faces.</summary>
/// <param name="Legs">3 or 4.</param>
/// <param name="FaceWidthM">Face width between the centres of the legs.</param>
/// <param name="PanelHeightM">Height of one panel.</param>
/// <param name="LegDiameterM">Leg diameter (width seen by the wind).</param>
/// <param name="DiagonalDiameterM">Diameter of a diagonal.</param>
/// <param name="HorizontalDiameterM">Diameter of a horizontal; 0 when there is none.</param>
/// <param name="Pattern">Bracing pattern.</param>
public sealed record LatticeShape(
    int Legs, double FaceWidthM, double PanelHeightM, double LegDiameterM, double DiagonalDiameterM, double HorizontalDiameterM, Bracing Pattern)
    : MastShape
{
    /// <summary>Whether members are round; flat or angle members otherwise.</summary>
    public bool RoundMembers { get; init; } = true;

    /// <summary>Azimuth of the outward normal of one face, clockwise from north, rad.</summary>
    public double FaceAzimuthRad { get; init; }

    /// <summary>Length of diagonals per metre of one face, between the centres of the legs.</summary>
    public double DiagonalLengthPerM =>
        (Pattern == Bracing.Cross ? 2 : 1) * Math.Sqrt((FaceWidthM * FaceWidthM) + (PanelHeightM * PanelHeightM)) / PanelHeightM;

    /// <summary>Length of horizontals per metre of one face.</summary>
    public double HorizontalLengthPerM => HorizontalDiameterM > 0 ? FaceWidthM / PanelHeightM : 0;

    /// <summary>Solid area of one face per metre of height, with every member thicker by the ice around it.</summary>
    /// <param name="iceThickness">Radial ice thickness; null when bare.</param>
    public Trail SolidAreaPerM(Trail? iceThickness)
    {
        var t = iceThickness?.Value ?? 0;
        // Bracing is counted between the inner edges of the legs, where it is not hidden by them.
        var clear = Math.Max(0, 1 - ((LegDiameterM + (2 * t)) / FaceWidthM));
        var area = (2 * (LegDiameterM + (2 * t)))
            + (clear * DiagonalLengthPerM * (DiagonalDiameterM + (2 * t)))
            + (clear * HorizontalLengthPerM * (HorizontalDiameterM > 0 ? HorizontalDiameterM + (2 * t) : 0));
        var legs = Trail.Given("leg diameter", "dl", LegDiameterM, QuantityKind.FineLength, InputSource.Design);
        var diagonals = Trail.Given("diagonal diameter", "dd", DiagonalDiameterM, QuantityKind.FineLength, InputSource.Design);
        var horizontals = Trail.Given("horizontal diameter", "dh", HorizontalDiameterM, QuantityKind.FineLength, InputSource.Design);
        var width = Trail.Given("face width", "b", FaceWidthM, QuantityKind.Length, InputSource.Design);
        Trail[] inputs = iceThickness is null ? [legs, diagonals, horizontals, width] : [legs, diagonals, horizontals, width, iceThickness];
        return Trail.Computed(
            "solid area of one face per length", "As", Math.Min(area, GrossWidthM(t)), QuantityKind.Length,
            "As = 2·dl + clear·(ld·dd + lh·dh), each member thicker by twice the ice", Source.Derived("docs/theory/wind.md"), inputs);
    }

    /// <summary>Solid area over gross area of one face.</summary>
    public Trail Solidity(Trail solidAreaPerM, Trail? iceThickness)
    {
        var gross = Trail.Computed(
            "gross width of one face", "Ag", GrossWidthM(iceThickness?.Value ?? 0), QuantityKind.Length, "Ag = b + dl, over the outer edges of the legs, ice included", Source.Derived("docs/theory/wind.md"),
            Trail.Given("face width", "b", FaceWidthM, QuantityKind.Length, InputSource.Design), Trail.Given("leg diameter", "dl", LegDiameterM, QuantityKind.FineLength, InputSource.Design));
        return Trail.Computed("solidity", "ε", Math.Min(1, solidAreaPerM.Value / gross.Value), QuantityKind.Ratio, "ε = As/Ag", Source.Derived("docs/theory/wind.md"), solidAreaPerM, gross);
    }

    /// <summary>Angle between the wind and the normal of the nearest face, 0 to half the angle between faces.</summary>
    public double ToFaceNormal(double windTowardsAzimuthRad)
    {
        var period = 2 * Math.PI / Legs;
        // The wind comes from the opposite of where it blows, and meets the face whose normal looks there.
        var off = Math.IEEERemainder(windTowardsAzimuthRad + Math.PI - FaceAzimuthRad, period);
        return Math.Abs(off);
    }

    private double GrossWidthM(double ice) => FaceWidthM + LegDiameterM + (2 * ice);
}
