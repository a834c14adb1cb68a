using System.Numerics;

namespace Mastwright.Circuits.Tests.Outside;

/// <summary>Comparisons with a stated relative tolerance.</summary>
internal static class Near
{
    public static void Relative(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), $"expected {expected:R}, got {actual:R}, relative {Math.Abs(actual / expected - 1):E3}, allowed {tolerance:E1}");

    public static void Absolute(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"expected {expected:R}, got {actual:R}, allowed ±{tolerance:E1}");

    public static void Equal(Complex expected, Complex actual, double tolerance) =>
        Assert.True((actual - expected).Magnitude <= tolerance * Math.Max(1e-12, expected.Magnitude), $"expected {expected}, got {actual}, relative {(actual - expected).Magnitude / expected.Magnitude:E3}, allowed {tolerance:E1}");
}
