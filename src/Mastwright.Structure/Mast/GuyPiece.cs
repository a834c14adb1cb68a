namespace Mastwright.Structure.Mast;

/// <summary>One piece of a guy in line, counted from the anchor: a length of strand, rod or rope, and what hangs at its upper end.</summary>
/// <param name="Name">Shown in messages.</param>
/// <param name="LengthM">Unstressed length at the installation temperature, above zero.</param>
/// <param name="AxialStiffnessN">EA.</param>
/// <param name="WeightNPerM">Weight per unstressed metre.</param>
/// <param name="ThermalExpansionPerK">Thermal expansion coefficient.</param>
/// <param name="EndWeightN">Weight at its upper end: an insulator, a shackle, a thimble pair.</param>
public sealed record GuyPiece(string Name, double LengthM, double AxialStiffnessN, double WeightNPerM, double ThermalExpansionPerK = 0, double EndWeightN = 0);
