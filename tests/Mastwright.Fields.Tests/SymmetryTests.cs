using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Sector by sector gives what the whole matrix gives.</summary>
public class SymmetryTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void Symmetry_is_found_and_changes_nothing(int radials)
    {
        var model = Screen(radials, Ground.Over(new("average", 13, 0.005))).WithFeed("inside a radial", "radial 1", 0.4);
        var mesh = WireMesh.Build(model, FrequencyHz).Mesh!;
        Assert.Equal(1, RotationSymmetry.Find(mesh)?.Order ?? 1);
        model = model with { Feeds = [model.Feeds[0]] };
        mesh = WireMesh.Build(model, FrequencyHz).Mesh!;
        Assert.Equal(radials, RotationSymmetry.Find(mesh)!.Order);
        Compare(mesh);
    }

    [Fact]
    public void Feeds_away_from_the_axis_use_every_mode()
    {
        var model = Screen(5, Ground.Perfect);
        for (var i = 0; i < 5; i++)
            model = model.WithFeed($"port {i}", $"radial {i}", 0.5);
        var mesh = WireMesh.Build(model, FrequencyHz).Mesh!;
        Assert.Equal(5, RotationSymmetry.Find(mesh)!.Order);
        Compare(mesh);
    }

    [Fact]
    public void Four_equal_masts_in_a_square_are_one_sector()
    {
        var model = WireModel.Over(Ground.Perfect);
        for (var i = 0; i < 4; i++)
        {
            var (s, c) = Math.SinCos(i * Math.PI / 2);
            model = model.With(new Wire($"mast {i}", new(15 * c, 15 * s, 0), new(15 * c, 15 * s, 20), 0.05)).WithFeed($"base {i}", $"mast {i}");
        }

        var mesh = WireMesh.Build(model, FrequencyHz, new(Refinement: 2)).Mesh!;
        Assert.Equal(4, RotationSymmetry.Find(mesh)!.Order);
        Compare(mesh);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Congruent_pairs_share_what_each_would_give_afresh(bool soil)
    {
        // Two masts that no turn maps onto each other, radials of uneven length, a guy: pairs are shared all the same.
        var ground = soil ? Ground.Over(new("average", 13, 0.005)) : Ground.FreeSpace;
        var model = WireModel.Over(ground);
        foreach (var (name, x, count) in ((string, double, int)[])[("a", 0, 6), ("b", 37, 6)])
        {
            Vec3 foot = new(x, 0.3 * x, 0), hub = foot - new Vec3(0, 0, 0.05);
            model = model.With(new Wire($"mast {name}", foot, foot + new Vec3(0, 0, 15), 0.05), new Wire($"stub {name}", hub, foot, 0.01)).WithFeed($"base {name}", $"mast {name}");
            for (var i = 0; i < count; i++)
            {
                var (s, c) = Math.SinCos((2 * Math.PI * i / count) + 0.2);
                model = model.With(new Wire($"radial {name}{i}", hub, hub + ((i == 2 ? 5 : 9) * new Vec3(c, s, 0)), 0.001));
            }
        }

        model = model.With(new Wire("guy", new(0, 0, 12), new(8, 1, 1), 0.003));
        var mesh = WireMesh.Build(model, FrequencyHz).Mesh!;
        var interactions = new Interactions(mesh, FrequencyHz);
        for (var p = 0; p < mesh.Segments.Length; p++)
        {
            for (var q = p; q < mesh.Segments.Length; q++)
            {
                var (shared, afresh) = (interactions.Between(p, q), interactions.Direct(p, q));
                var size = afresh.M00.Magnitude + afresh.M11.Magnitude;
                Assert.InRange((shared.M00 - afresh.M00).Magnitude + (shared.M01 - afresh.M01).Magnitude + (shared.M10 - afresh.M10).Magnitude + (shared.M11 - afresh.M11).Magnitude, 0, 2e-4 * size);
            }
        }
    }

    [Fact]
    public void Unequal_loads_break_the_symmetry()
    {
        var model = Screen(4, Ground.Perfect);
        for (var i = 0; i < 4; i++)
            model = model.WithLoad($"coil {i}", $"radial {i}", 0.5, new LoadElement.Coil(i == 2 ? 2e-6 : 1e-6, 200));
        Assert.Null(RotationSymmetry.Find(WireMesh.Build(model, FrequencyHz).Mesh!));
    }

    private static void Compare(WireMesh mesh)
    {
        var excitations = mesh.FeedEnds.Select(e => WireSolver.Excitation(mesh, e)).ToArray();
        var whole = new Complex[excitations.Length][];
        Assert.Null(WireSolver.SolveWhole(mesh, FrequencyHz, excitations, whole, TestContext.Current.CancellationToken));
        var sectors = excitations.Select(e => new Complex[e.Length]).ToArray();
        var symmetry = RotationSymmetry.Find(mesh)!;
        Assert.Null(SectorSystem.Fill(mesh, symmetry, FrequencyHz, TestContext.Current.CancellationToken).Solve(excitations, sectors, TestContext.Current.CancellationToken));
        for (var f = 0; f < excitations.Length; f++)
        {
            var size = whole[f].Max(v => v.Magnitude);
            for (var i = 0; i < whole[f].Length; i++)
                Assert.True((whole[f][i] - sectors[f][i]).Magnitude < 1e-5 * size, $"unknown {i}: {whole[f][i]} and {sectors[f][i]}");
        }
    }

    private static WireModel Screen(int radials, Ground ground)
    {
        var model = WireModel.Over(ground).With(new Wire("mast", new(0, 0, 2), new(0, 0, 20), 0.05)).WithFeed("base", "mast");
        for (var i = 0; i < radials; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / radials);
            model = model.With(new Wire($"radial {i}", new(0, 0, 2), new(18 * c, 18 * s, 1.5), 0.001, Conductor.Copper));
        }

        return model;
    }
}
