using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Cables;

public class CatenaryPropertyTests
{
    public static TheoryData<double, double, double> Grid()
    {
        var data = new TheoryData<double, double, double>();
        foreach (var slack in new[] { 0.99, 0.998, 0.9999, 1.0, 1.0001, 1.002, 1.02, 1.2, 3 })
        {
            foreach (var angle in new[] { -89.99, -60, -10, 0, 5, 45, 80, 89.9, 90 })
            {
                data.Add(slack, angle, 1.8);
            }
        }

        return data;
    }

    /// <summary>The equations hold again when put to the textbook form, and a slow nested bisection agrees.</summary>
    [Theory]
    [MemberData(nameof(Grid))]
    public void Taut_to_slack_at_every_slope_agrees_with_nested_bisection(double slack, double angleDeg, double w)
    {
        const double C = 20, Ea = 3.7e6;
        double l = C * Math.Cos(angleDeg * Math.PI / 180), h = C * Math.Sin(angleDeg * Math.PI / 180);
        var c = ElasticCatenary.Solve(new(l, 0, h), slack * C, Ea, new(0, 0, -w));
        Assert.True(c.Converged, $"{c.Iterations} iterations");
        Near.Absolute(new Vec3(l, 0, h), c.PointAt(slack * C), 1e-7, "closure");
        if (l < 1e-3)
        {
            return;
        }

        var (across, up) = PlainCatenary.Solve(l, h, slack * C, w, Ea);
        Near.Relative(across, c.StartPullN.X, 1e-6, "H");
        Near.Absolute(up, -c.EndPullN.Z, 1e-6 * Math.Max(Math.Abs(up), across), "V");
    }

    [Theory]
    [MemberData(nameof(Grid))]
    public void Stiffness_is_the_derivative_of_the_force(double slack, double angleDeg, double w)
    {
        const double C = 20, Ea = 3.7e6, Step = 1e-5;
        double l = C * Math.Cos(angleDeg * Math.PI / 180), h = C * Math.Sin(angleDeg * Math.PI / 180);
        if (Math.Abs(l) < 0.05)
        {
            return;
        }

        var q = new Vec3(0.7, -1.1, -w);
        var chord = new Vec3(0.6 * l, 0.8 * l, h);
        Vec3 Force(Vec3 at) => -ElasticCatenary.Solve(at, slack * C, Ea, q).EndPullN;
        var k = ElasticCatenary.Solve(chord, slack * C, Ea, q).Stiffness;
        foreach (var axis in new[] { new Vec3(1, 0, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 1) })
        {
            var numeric = (Force(chord + (Step * axis)) - Force(chord - (Step * axis))) / (2 * Step);
            Assert.True((numeric - (k * axis)).Length < 1e-4 * (k * axis).Length, $"{numeric} and {k * axis}");
        }
    }

    [Fact]
    public void Turning_everything_turns_the_answer()
    {
        var chord = new Vec3(7, -3, 14);
        var q = new Vec3(2, 1, -1.5);
        var a = ElasticCatenary.Solve(chord, 15.95, 3.7e6, q);
        var b = ElasticCatenary.Solve(Turn(chord), 15.95, 3.7e6, Turn(q));
        Near.Absolute(Turn(a.EndPullN), b.EndPullN, 1e-7);
        Near.Absolute(Turn(a.Stiffness * new Vec3(1, 2, 3)), b.Stiffness * Turn(new(1, 2, 3)), 1e-3);

        static Vec3 Turn(Vec3 v)
        {
            var axis = new Vec3(1, 2, -1).Unit();
            const double A = 1.1;
            return (Math.Cos(A) * v) + (Math.Sin(A) * axis.Cross(v)) + ((1 - Math.Cos(A)) * axis.Dot(v) * axis);
        }
    }

    [Fact]
    public void Without_load_a_taut_cable_is_a_spring()
    {
        var c = ElasticCatenary.Solve(new(3, 0, 4), 4.99, 1e6, Vec3.Zero);
        Near.Relative(1e6 * 0.01 / 4.99, c.StartTensionN, 1e-7);
        Near.Relative(1e6 / 4.99, c.Stiffness.Along(new(0.6, 0, 0.8)), 1e-6);
        Near.Relative(c.StartTensionN / 5, c.Stiffness.Along(new(0, 1, 0)), 1e-6);
    }

    [Fact]
    public void Without_load_a_slack_cable_pulls_nothing()
    {
        var c = ElasticCatenary.Solve(new(3, 0, 4), 5.2, 1e6, Vec3.Zero);
        Assert.True(c.Converged);
        Assert.True(c.LargestTensionN < 1e-5);
    }
}
