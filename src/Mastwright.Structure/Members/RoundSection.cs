using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>A round tube, or a solid round when the wall is 0: exact circle formulas.</summary>
/// <param name="OuterDiameterM">Outside diameter, m.</param>
/// <param name="WallM">Wall, m; 0 (or half the diameter) for a solid round.</param>
public sealed record RoundSection(double OuterDiameterM, double WallM)
{
    private static readonly Source Circle = Source.Literature("mechanics of materials: circle and annulus");

    /// <summary>Whether it is solid.</summary>
    public bool IsSolid => WallM <= 0 || WallM >= OuterDiameterM / 2;

    /// <summary>Inside diameter, 0 when solid.</summary>
    public double InnerDiameterM => IsSolid ? 0 : OuterDiameterM - (2 * WallM);

    /// <summary>Cross-section, m².</summary>
    public double AreaM2 => Math.PI / 4 * (Power(OuterDiameterM, 2) - Power(InnerDiameterM, 2));

    /// <summary>Second moment of area, m⁴.</summary>
    public double SecondMomentM4 => Math.PI / 64 * (Power(OuterDiameterM, 4) - Power(InnerDiameterM, 4));

    /// <summary>Radius of gyration, m.</summary>
    public double RadiusOfGyrationM => Math.Sqrt(SecondMomentM4 / AreaM2);

    /// <summary>Elastic section modulus, m³.</summary>
    public double ElasticModulusM3 => SecondMomentM4 / (OuterDiameterM / 2);

    /// <summary>Plastic section modulus, m³.</summary>
    public double PlasticModulusM3 => (Power(OuterDiameterM, 3) - Power(InnerDiameterM, 3)) / 6;

    /// <summary>Every property with its trail, for a metal.</summary>
    public SectionProperties Properties(MemberMetal metal)
    {
        var d = Trail.Given("outside diameter", "D", OuterDiameterM, QuantityKind.FineLength, InputSource.Design);
        var di = Trail.Given("inside diameter", "d", InnerDiameterM, QuantityKind.FineLength, InputSource.Design);
        var a = Area(d, di);
        var i = Trail.Computed("second moment of area", "I", SecondMomentM4, QuantityKind.SecondMomentOfArea, "I = π/64·(D⁴ - d⁴)", Circle, d, di);
        var e = metal.Modulus;
        var g = Trail.Given($"shear modulus of {metal.Name}", "G", metal.ShearModulusPa, QuantityKind.Stress, metal.Source);
        var rho = Trail.Given($"density of {metal.Name}", "ρ", metal.DensityKgPerM3, QuantityKind.Density, metal.Source);
        return new(
            a,
            i,
            Trail.Computed("radius of gyration", "r", RadiusOfGyrationM, QuantityKind.FineLength, "r = √(I/A)", Circle, i, a),
            Trail.Computed("elastic section modulus", "S", ElasticModulusM3, QuantityKind.SectionModulus, "S = 2·I/D", Circle, i, d),
            Trail.Computed("plastic section modulus", "Z", PlasticModulusM3, QuantityKind.SectionModulus, "Z = (D³ - d³)/6", Circle, d, di),
            Trail.Computed("axial stiffness", "EA", metal.ModulusPa * AreaM2, QuantityKind.Force, "EA = E·A", Circle, e, a),
            Trail.Computed("bending stiffness", "EI", metal.ModulusPa * SecondMomentM4, QuantityKind.BendingStiffness, "EI = E·I", Circle, e, i),
            Trail.Computed(
                "shear stiffness", "GAs", (IsSolid ? 0.9 : 0.5) * metal.ShearModulusPa * AreaM2, QuantityKind.Force,
                IsSolid ? "GAs = 0.9·G·A" : "GAs = 0.5·G·A", Source.FromMemory("Cowper 1966: shear coefficient of a thin tube and of a solid round"), g, a),
            Trail.Computed("torsional stiffness", "GJ", 2 * metal.ShearModulusPa * SecondMomentM4, QuantityKind.BendingStiffness, "GJ = G·2·I", Circle, g, i),
            Trail.Computed("mass per length", "m", metal.DensityKgPerM3 * AreaM2, QuantityKind.LinearMass, "m = ρ·A", Circle, rho, a));
    }

    /// <summary>The cross-section with its trail.</summary>
    internal Trail Area(Trail d, Trail di) => Trail.Computed("cross-section", "A", AreaM2, QuantityKind.SectionArea, "A = π/4·(D² - d²)", Circle, d, di);

    private static double Power(double x, int n) => Math.Pow(x, n);
}
