using Mastwright.Model.Trails;

namespace Mastwright.Structure.Members;

/// <summary>Which rules a metal falls under.</summary>
public enum MetalFamily
{
    /// <summary>Carbon and structural steel.</summary>
    Steel,

    /// <summary>Artificially aged wrought aluminium alloys (T5, T6).</summary>
    Aluminium,

    /// <summary>Austenitic and duplex stainless steel.</summary>
    Stainless,
}

/// <summary>Strength and stiffness of the metal of a member.</summary>
/// <param name="Name">Its name, e.g. <c>"6061-T6"</c>.</param>
/// <param name="Family">Steel or aluminium.</param>
/// <param name="ModulusPa">Modulus of elasticity.</param>
/// <param name="YieldPa">Yield strength (0.2 % proof strength).</param>
/// <param name="UltimatePa">Tensile strength.</param>
/// <param name="DensityKgPerM3">Density.</param>
/// <param name="Source">Where the strengths come from.</param>
public sealed record MemberMetal(
    string Name, MetalFamily Family, double ModulusPa, double YieldPa, double UltimatePa, double DensityKgPerM3, Source Source)
{
    /// <summary>Yield strength within 25 mm of a weld; the parent's where welding does not soften.</summary>
    public double WeldedYieldPa { get; init; } = YieldPa;

    /// <summary>Tensile strength within 25 mm of a weld; the parent's where welding does not soften.</summary>
    public double WeldedUltimatePa { get; init; } = UltimatePa;

    /// <summary>Poisson's ratio.</summary>
    public double PoissonRatio { get; init; } = Family == MetalFamily.Aluminium ? 0.33 : 0.30;

    /// <summary>Shear modulus, E/(2(1 + ν)).</summary>
    public double ShearModulusPa => ModulusPa / (2 * (1 + PoissonRatio));

    internal Trail Yield => Trail.Given($"yield strength of {Name}", "Fy", YieldPa, QuantityKind.Stress, Source);

    internal Trail Ultimate => Trail.Given($"tensile strength of {Name}", "Fu", UltimatePa, QuantityKind.Stress, Source);

    internal Trail WeldedYield => Trail.Given($"yield strength of {Name} in the weld zone", "Fyw", WeldedYieldPa, QuantityKind.Stress, Source);

    internal Trail WeldedUltimate => Trail.Given($"tensile strength of {Name} in the weld zone", "Fuw", WeldedUltimatePa, QuantityKind.Stress, Source);

    internal Trail Modulus => Trail.Given($"modulus of elasticity of {Name}", "E", ModulusPa, QuantityKind.Stress, Source);
}
