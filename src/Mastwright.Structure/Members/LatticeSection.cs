using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>A mast section of three or four equal round legs with equal faces of round bracing.</summary>
/// <param name="Legs">3 or 4.</param>
/// <param name="FaceWidthM">Face width between leg centres, m.</param>
/// <param name="PanelHeightM">Height of a panel, m.</param>
/// <param name="Leg">Leg.</param>
/// <param name="Diagonal">Diagonal.</param>
/// <param name="Horizontal">Horizontal; null when there is none.</param>
/// <param name="Pattern">Bracing pattern.</param>
/// <param name="Metal">Metal of all members.</param>
/// <param name="Welded">Whether the bracing is welded to the legs.</param>
public sealed record LatticeSection(
    int Legs, double FaceWidthM, double PanelHeightM, RoundSection Leg, RoundSection Diagonal, RoundSection? Horizontal, Bracing Pattern, MemberMetal Metal, bool Welded)
{
    private static readonly Source Page = Source.Derived("docs/theory/members.md");

    /// <summary>Length of a diagonal between leg centres, m.</summary>
    public double DiagonalLengthM => Math.Sqrt((FaceWidthM * FaceWidthM) + (PanelHeightM * PanelHeightM));

    /// <summary>Diagonals in one panel of one face.</summary>
    public int DiagonalsPerPanel => Pattern == Bracing.Cross ? 2 : 1;

    /// <summary>Distance of a leg from the middle, m.</summary>
    public double LegRadiusM => FaceWidthM / (2 * Math.Sin(Math.PI / Legs));

    /// <summary>Area within the lines between leg centres, m².</summary>
    public double EnclosedAreaM2 => Legs / 2.0 * LegRadiusM * LegRadiusM * Math.Sin(2 * Math.PI / Legs);

    /// <summary>What it looks like to wind and ice.</summary>
    /// <param name="faceAzimuthRad">Azimuth of the outward normal of one face, clockwise from north.</param>
    public LatticeShape Shape(double faceAzimuthRad = 0) =>
        new(Legs, FaceWidthM, PanelHeightM, Leg.OuterDiameterM, Diagonal.OuterDiameterM, Horizontal?.OuterDiameterM ?? 0, Pattern) { FaceAzimuthRad = faceAzimuthRad };

    /// <summary>Properties of the beam that stands for the lattice.</summary>
    public SectionProperties Properties()
    {
        var n = Trail.Given("number of legs", "n", Legs, QuantityKind.Count, InputSource.Design);
        var b = Trail.Given("face width between leg centres", "b", FaceWidthM, QuantityKind.Length, InputSource.Design);
        var p = Trail.Given("panel height", "p", PanelHeightM, QuantityKind.Length, InputSource.Design);
        var leg = Trail.Given("cross-section of a leg", "Al", Leg.AreaM2, QuantityKind.SectionArea, InputSource.Design);
        var diagonal = Trail.Given("cross-section of a diagonal", "Ad", Diagonal.AreaM2, QuantityKind.SectionArea, InputSource.Design);
        var e = Metal.Modulus;
        var areaM2 = Legs * Leg.AreaM2;
        var momentM4 = (Legs * Leg.AreaM2 * LegRadiusM * LegRadiusM / 2) + (Legs * Leg.SecondMomentM4);
        var d = Trail.Computed("length of a diagonal", "d", DiagonalLengthM, QuantityKind.Length, "d = √(b² + p²)", Page, b, p);
        // One face: the diagonals of a panel turn a shear force V into a shear angle V·d³/(E·Ad·p·b²).
        var faceN = DiagonalsPerPanel * Metal.ModulusPa * Diagonal.AreaM2 * PanelHeightM * FaceWidthM * FaceWidthM / Math.Pow(DiagonalLengthM, 3);
        var face = Trail.Computed(
            "shear stiffness of one face", "Sv1", faceN, QuantityKind.Force, Pattern == Bracing.Cross ? "Sv1 = 2·E·Ad·p·b²/d³" : "Sv1 = E·Ad·p·b²/d³",
            Source.FromMemory("EN 1993-1-1, fig. 6.9", "2005"), e, diagonal, p, b, d);
        var a = Trail.Computed("cross-section of the legs", "A", areaM2, QuantityKind.SectionArea, "A = n·Al", Page, n, leg);
        var i = Trail.Computed(
            "second moment of area", "I", momentM4, QuantityKind.SecondMomentOfArea, "I = n·Al·R²/2 + n·Il, R = b/(2·sin(π/n))", Page, n, leg, b);
        var massKgPerM = Metal.DensityKgPerM3 * Legs * (Leg.AreaM2
            + (((DiagonalsPerPanel * DiagonalLengthM * Diagonal.AreaM2) + (FaceWidthM * (Horizontal?.AreaM2 ?? 0))) / PanelHeightM));
        return new(
            a,
            i,
            Trail.Computed("radius of gyration", "r", Math.Sqrt(momentM4 / areaM2), QuantityKind.Length, "r = √(I/A)", Page, i, a),
            Trail.Computed("elastic section modulus", "S", momentM4 / LegRadiusM, QuantityKind.SectionModulus, "S = I/R", Page, i, b),
            null,
            Trail.Computed("axial stiffness", "EA", Metal.ModulusPa * areaM2, QuantityKind.Force, "EA = E·A", Page, e, a)
                .Remark("legs only; crossing diagonals between stiff horizontals add up to 2·n·Ad·(p/d)³, which is left out"),
            Trail.Computed("bending stiffness", "EI", Metal.ModulusPa * momentM4, QuantityKind.BendingStiffness, "EI = E·I", Page, e, i),
            Trail.Computed("shear stiffness", "Sv", Legs / 2.0 * faceN, QuantityKind.Force, "Sv = n/2·Sv1", Page, n, face)
                .Within("bracing carries shear as a truss; joints do not slip"),
            Trail.Computed(
                "torsional stiffness", "GJ", 4 * EnclosedAreaM2 * EnclosedAreaM2 * faceN / (Legs * FaceWidthM * FaceWidthM), QuantityKind.BendingStiffness,
                "GJ = 4·Ae²·Sv1/(n·b²), Ae the area between the legs (Bredt)", Page, face, n, b),
            Trail.Computed(
                "mass per length of legs and bracing", "m", massKgPerM, QuantityKind.LinearMass, "m = ρ·n·(Al + (diagonals·d·Ad + b·Ah)/p)", Page, n, leg, diagonal, d, b, p)
                .Remark("welds, flanges and bolts not counted"));
    }
}
