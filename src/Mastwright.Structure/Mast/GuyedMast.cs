using Mastwright.Numerics;

namespace Mastwright.Structure.Mast;

/// <summary>What the foot of the mast allows. The foot never moves sideways or down; it may turn.</summary>
public enum FootFixity
{
    /// <summary>A ball or pivot: no moment, free to twist. Only the guys stop the mast from turning about its axis.</summary>
    Ball,

    /// <summary>A pivot that takes no bending but holds the mast against twist.</summary>
    PivotTwistHeld,

    /// <summary>Built in: takes bending and twist. Not for a mast on a base insulator.</summary>
    BuiltIn,
}

/// <summary>A guyed mast as the solver sees it: straight and plumb on its foot before any load acts.</summary>
/// <param name="FootM">The foot, in the coordinates the anchors use; z up.</param>
/// <param name="Segments">The mast from the foot up, without gaps; the first starts at height 0 above the foot.</param>
/// <param name="Guys">The guys, any number, any place. Names must differ.</param>
/// <param name="Foot">What the foot allows.</param>
/// <param name="InstallationTemperatureK">Temperature at which lengths and tensions were set.</param>
public sealed record GuyedMast(
    Vec3 FootM,
    IReadOnlyList<MastSegment> Segments,
    IReadOnlyList<Guy> Guys,
    FootFixity Foot = FootFixity.PivotTwistHeld,
    double InstallationTemperatureK = 288.15)
{
    /// <summary>Weights sitting at a height on the axis: flanges, guy lugs, a top hat, a cap.</summary>
    public IReadOnlyList<LumpedWeight> Weights { get; init; } = [];

    /// <summary>Height of the top above the foot.</summary>
    public double HeightM => Segments.Count == 0 ? 0 : Segments[^1].TopM;

    /// <summary>The point on the undeformed axis at a height above the foot.</summary>
    public Vec3 AxisPoint(double heightM) => FootM + (heightM * Vec3.Up);
}

/// <summary>A stretch of mast with constant section. Bending stiffness is the same in all directions, as for tubes and for three- and four-legged lattices.</summary>
/// <param name="Name">Shown in messages.</param>
/// <param name="BottomM">Lower end, height above the foot.</param>
/// <param name="TopM">Upper end, height above the foot.</param>
/// <param name="AxialStiffnessN">EA.</param>
/// <param name="BendingStiffnessNm2">EI.</param>
/// <param name="TorsionalStiffnessNm2">GJ.</param>
/// <param name="WeightNPerM">Weight per metre of height.</param>
/// <param name="ThermalExpansionPerK">Thermal expansion coefficient.</param>
/// <param name="ShearStiffnessN">Shear stiffness of the section (GA with shear coefficient; of a lattice, that of its bracing); infinite when shear is to be ignored.</param>
public sealed record MastSegment(
    string Name,
    double BottomM,
    double TopM,
    double AxialStiffnessN,
    double BendingStiffnessNm2,
    double TorsionalStiffnessNm2,
    double WeightNPerM,
    double ThermalExpansionPerK = 0,
    double ShearStiffnessN = double.PositiveInfinity);

/// <summary>A weight on the mast axis.</summary>
/// <param name="Name">Shown in messages.</param>
/// <param name="HeightM">Height above the foot.</param>
/// <param name="WeightN">Weight, not negative.</param>
public sealed record LumpedWeight(string Name, double HeightM, double WeightN);
