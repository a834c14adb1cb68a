using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Cables;

/// <summary>
/// Against an independent solution of Irvine's equations (Cable Structures, 1981, ch. 1) by general-purpose root
/// finding, one of them also by a boundary-value solver, and against the isolated-cable benchmark of the literature.
/// </summary>
public class CatenaryReferenceTests
{
    [Theory]
    [InlineData(10, 15, 18.01323, 1.766, 3.73e6, 1671.471, 2491.324, 2523.136, 3000.086, 3026.554, 0.01320)]
    [InlineData(12, 14, 18.424247, 1.766, 3.73e6, 1960.455, 2270.951, 2303.488, 3000.100, 3024.804, 0.01620)]
    [InlineData(18, 28, 33.259816, 1.766, 3.73e6, 1635.594, 2514.968, 2573.705, 3000.039, 3049.447, 0.04369)]
    [InlineData(18, 28, 33.40, 1.766, 3.73e6, 60.084, 66.142, 125.126, 89.358, 138.804, 1.18914)]
    [InlineData(30, 40, 50.10, 4.0, 6.5e6, 322.519, 334.773, 535.173, 464.857, 624.843, 1.39489)]
    public void Inclined_guys_under_weight(double l, double h, double length, double w, double ea, double across, double bottom, double top, double tBottom, double tTop, double sag)
    {
        var c = ElasticCatenary.Solve(new(l, 0, h), length, ea, new(0, 0, -w));
        Assert.True(c.Converged);
        Near.Absolute(across, c.StartPullN.X, 6e-4, "H");
        Near.Absolute(bottom, c.StartPullN.Z, 6e-4, "V bottom");
        Near.Absolute(-top, c.EndPullN.Z, 6e-4, "V top");
        Near.Absolute(tBottom, c.StartTensionN, 6e-4, "T bottom");
        Near.Absolute(tTop, c.EndTensionN, 6e-4, "T top");
        Near.Absolute(sag, c.SagM(), 6e-6, "sag");
    }

    [Theory]
    [InlineData(10, 15, 18.01323, 1.766, 3.73e6, 63605.799, 95157.092, 142901.459, 206340.1)]
    [InlineData(12, 14, 18.424247, 1.766, 3.73e6, 85403.991, 99446.421, 116183.068, 201423.7)]
    [InlineData(18, 28, 33.259816, 1.766, 3.73e6, 32492.239, 50400.549, 78489.256, 110890.6)]
    [InlineData(18, 28, 33.40, 1.766, 3.73e6, 146.506, 217.582, 334.091, 477.2)]
    [InlineData(30, 40, 50.10, 4.0, 6.5e6, 926.806, 1207.414, 1602.315, 2518.2)]
    public void Tangent_stiffness(double l, double h, double length, double w, double ea, double hh, double hv, double vv, double along)
    {
        var k = ElasticCatenary.Solve(new(l, 0, h), length, ea, new(0, 0, -w)).Stiffness;
        Near.Relative(hh, k.XX, 1e-5, "HH");
        Near.Relative(hv, k.XZ, 1e-5, "HV");
        Near.Relative(vv, k.ZZ, 1e-5, "VV");
        Near.Relative(along, k.Along(new Vec3(l, 0, h).Unit()), 2e-4, "along the chord");
        Assert.Equal(0, k.XY, 1e-9);
    }

    [Theory]
    [InlineData(10, 15, 18.01323, 960, 0, 1, 1772.890, 54.829, 2643.452, -1772.890, 54.980, -2675.263)]
    [InlineData(10, 15, 18.01323, 960, 1, 0, 1776.524, 0, 2580.474, -1713.271, 0, -2654.455)]
    [InlineData(10, 15, 18.01323, 960, -1, 0, 1668.218, 0, 2554.870, -1731.471, 0, -2544.512)]
    [InlineData(18, 28, 33.259816, 1080, 0, 1, 1964.066, 113.790, 3025.912, -1964.066, 114.306, -3084.649)]
    public void Guys_in_wind(double l, double h, double length, double pressure, double ex, double ey, double ax, double ay, double az, double mx, double my, double mz)
    {
        var chord = new Vec3(l, 0, h);
        var q = new Vec3(0, 0, -1.766) + ReferenceMasts.WindOnGuy(chord, new(ex, ey, 0), pressure * 0.00635);
        var c = ElasticCatenary.Solve(chord, length, 3.73e6, q);
        Near.Absolute(new Vec3(ax, ay, az), c.StartPullN, 1.2e-3, "on anchor");
        Near.Absolute(new Vec3(mx, my, mz), c.EndPullN, 1.2e-3, "on mast");
        Near.Absolute(length * q, c.StartPullN + c.EndPullN, 1e-9, "balance");
    }

    /// <summary>
    /// Isolated cable with one point load: O'Brien and Francis, J. Struct. Div. ASCE 90 (1964); Jayaraman and Knudson,
    /// Computers and Structures 14 (1981): catenary elements move the loaded point by -5.626 m and -0.859 m (from memory).
    /// Lengths are fitted so that the unloaded point lies at x 121.92 m with the printed sag of 29.276 m.
    /// </summary>
    [Fact]
    public void Isolated_cable_with_a_point_load()
    {
        const double Span = 304.8, W = 46.12, Left = 125.84701, Right = 186.85526;
        const double Ea = 131.0e9 * 548.4e-6;
        var before = Rest(new(121.92, 0, -29.276), 0);
        Near.Absolute(121.92, before.X, 1e-4, "x");
        Near.Absolute(-29.276, before.Z, 1e-4, "sag");
        var after = Rest(before, 35586);
        Near.Absolute(-5.626, after.Z - before.Z, 6e-4, "down");
        Near.Absolute(-0.859, after.X - before.X, 6e-4, "sideways");
        Near.Absolute(-5.6256, after.Z - before.Z, 1e-4, "down, independent solve");
        Near.Absolute(-0.8594, after.X - before.X, 1e-4, "sideways, independent solve");

        Vec3 Rest(Vec3 guess, double p)
        {
            // A damped Newton with the cables' own tangents: it arrives only if these are right.
            var at = guess;
            for (var i = 0; i < 100; i++)
            {
                var a = ElasticCatenary.Solve(at, Left, Ea, new(0, 0, -W));
                var b = ElasticCatenary.Solve(at - new Vec3(Span, 0, 0), Right, Ea, new(0, 0, -W));
                var off = a.EndPullN + b.EndPullN - new Vec3(0, 0, p);
                var k = a.Stiffness + b.Stiffness;
                var det = (k.XX * k.ZZ) - (k.XZ * k.XZ);
                var move = new Vec3(((k.ZZ * off.X) - (k.XZ * off.Z)) / det, 0, ((k.XX * off.Z) - (k.XZ * off.X)) / det);
                at += Math.Min(1, 2 / Math.Max(move.Length, 1e-12)) * move;
                if (move.Length < 1e-11)
                {
                    return at;
                }
            }

            throw new InvalidOperationException("no rest");
        }
    }

    [Theory]
    [InlineData(10, 15, 18.013230)]
    [InlineData(12, 14, 18.424247)]
    [InlineData(18, 28, 33.259816)]
    public void Unstressed_length_for_a_wanted_tension(double l, double h, double expected)
    {
        var length = ElasticCatenary.UnstressedLength(new(l, 0, h), 3000, 3.73e6, new(0, 0, -1.766));
        Near.Absolute(expected, length!.Value, 1e-6);
    }

    [Fact]
    public void No_length_gives_less_pull_than_the_weight() =>
        Assert.Null(ElasticCatenary.UnstressedLength(new(30, 0, 1), 5, 3.73e6, new(0, 0, -10)));
}
