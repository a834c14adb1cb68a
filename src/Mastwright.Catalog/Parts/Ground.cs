namespace Mastwright.Catalog;

/// <summary>Deformed reinforcing bar.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="DiameterM">Nominal diameter.</param>
/// <param name="YieldPa">Yield strength.</param>
public sealed record Bar(RowInfo Info, double DiameterM, double YieldPa) : Part(Info)
{
    /// <summary>Nominal cross-section.</summary>
    public double AreaM2 => Math.PI / 4 * DiameterM * DiameterM;
}

/// <summary>Concrete of a strength class.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="CylinderStrengthPa">Cylinder strength at 28 days.</param>
/// <param name="DensityKgPerM3">Density.</param>
public sealed record Concrete(RowInfo Info, double CylinderStrengthPa, double DensityKgPerM3) : Part(Info);

/// <summary>Screw anchor (generic).</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Helices">Number of plates, three diameters apart.</param>
/// <param name="HelixDiameterM">Diameter of the plates.</param>
/// <param name="LengthM">Length from eye to lowest plate.</param>
/// <param name="RatedN">Rated ultimate strength of shaft and eye.</param>
/// <param name="UpliftPerTorque">Uplift per installation torque, 1/m.</param>
public sealed record ScrewAnchorPart(RowInfo Info, int Helices, double HelixDiameterM, double LengthM, double RatedN, double UpliftPerTorque) : Part(Info);
