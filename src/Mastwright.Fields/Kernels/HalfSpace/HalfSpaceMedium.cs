using System.Numerics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>Which side of the interface source and observer lie on.</summary>
internal enum Region
{
    /// <summary>Both in the air.</summary>
    Air,

    /// <summary>Both in the soil.</summary>
    Soil,

    /// <summary>One in each.</summary>
    Across,
}

/// <summary>Air over uniform soil; lengths in units of 1/k₀, so that k₀ = 1 and the soil's wave number is its index n.</summary>
/// <param name="IndexSquared">n² = εr − jσ/ωε₀.</param>
internal readonly record struct HalfSpaceMedium(Complex IndexSquared)
{
    /// <summary>Refractive index, real part positive, imaginary part zero or negative.</summary>
    public Complex Index => Complex.Sqrt(IndexSquared);

    /// <summary>The quasi-static image factor (n² − 1)/(n² + 1).</summary>
    public Complex ImageFactor => (IndexSquared - 1) / (IndexSquared + 1);
}

/// <summary>The smooth remainders of the half-space kernels at one place, quasi-static images taken out; units of k₀.</summary>
internal readonly record struct KernelRemainder(Complex Horizontal, Complex Charge, Complex Vertical, Complex Turning);
