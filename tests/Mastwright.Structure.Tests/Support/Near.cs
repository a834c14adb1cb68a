using Mastwright.Numerics;

namespace Mastwright.Structure.Tests.Support;

internal static class Near
{
    public static void Relative(double expected, double actual, double tolerance, string what = "") =>
        Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), $"{what}: expected {expected:G9}, got {actual:G9}, off by {(actual - expected) / expected:P3}");

    public static void Absolute(double expected, double actual, double tolerance, string what = "") =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"{what}: expected {expected:G9}, got {actual:G9}, off by {actual - expected:G4}");

    public static void Absolute(Vec3 expected, Vec3 actual, double tolerance, string what = "") =>
        Assert.True((actual - expected).Length <= tolerance, $"{what}: expected {expected}, got {actual}");
}
