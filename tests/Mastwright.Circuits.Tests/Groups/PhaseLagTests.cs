using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Groups;

public class PhaseLagTests
{
    // Reference page 2.2: R1 50, R2 30 (standard broadcast phasing-unit formulas, computed apart in Python).
    [Theory]
    [InlineData(60, 15.853846091, 27.400851474, -44.721359550)]
    [InlineData(90, 38.729833462, 38.729833462, -38.729833462)]
    [InlineData(120, 73.588873009, 62.041867626, -44.721359550)]
    [InlineData(135, 104.772255751, 84.772255751, -54.772255751)]
    public void T(double degrees, double x1, double x2, double x3)
    {
        var t = PhaseLag.T(50, 30, degrees * Math.PI / 180);
        Near.Relative(x1, t.X1, 1e-10);
        Near.Relative(x2, t.X2, 1e-10);
        Near.Relative(x3, t.X3, 1e-10);
    }

    [Theory]
    [InlineData(60, -54.742824376, -94.614265298, 33.541019662)]
    [InlineData(90, -38.729833462, -38.729833462, 38.729833462)]
    [InlineData(120, -24.177221889, -20.383516402, 33.541019662)]
    public void Pi(double degrees, double x1, double x2, double x3)
    {
        var p = PhaseLag.Pi(50, 30, degrees * Math.PI / 180);
        Near.Relative(x1, p.X1, 1e-10);
        Near.Relative(x2, p.X2, 1e-10);
        Near.Relative(x3, p.X3, 1e-10);
    }
}
