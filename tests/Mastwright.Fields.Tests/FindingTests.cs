using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Fields.Tests;

/// <summary>Every bad model is refused with a message that names the wire.</summary>
public class FindingTests
{
    private static readonly Wire Mast = new("mast", Vec3.Zero, new(0, 0, 20), 0.05);

    public static TheoryData<string, string> Bad => new()
    {
        { "wire-zero-length", "dot" },
        { "wires-cross", "crossing" },
        { "wires-touch", "brushing" },
        { "wires-overlap", "double" },
        { "wire-too-fat", "barrel" },
        { "wire-under-ground", "root" },
        { "wire-in-ground-plane", "strip" },
        { "wire-touches-ground", "dangling" },
        { "wire-shorter-than-radius", "coin" },
        { "wire-radius", "line" },
        { "wire-not-finite", "nowhere" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Bad_wire_is_refused_by_name(string code, string name)
    {
        var wire = name switch
        {
            "dot" => new Wire(name, new(3, 0, 3), new(3, 0, 3), 0.01),
            "crossing" => new Wire(name, new(-5, 0, 10), new(5, 0, 10), 0.01),
            "brushing" => new Wire(name, new(-5, 0.02, 10), new(5, 0.02, 10), 0.01),
            "double" => new Wire(name, Vec3.Zero, new(0, 0, 5), 0.01),
            "barrel" => new Wire(name, new(20, 0, 0), new(20, 0, 50), 12),
            "root" => new Wire(name, Vec3.Zero, new(10, 0, -1), 0.01),
            "strip" => new Wire(name, new(5, 0, 0), new(10, 0, 0), 0.01),
            "dangling" => new Wire(name, new(5, 0, 10), new(10, 0, 0.005), 0.01),
            "coin" => new Wire(name, new(5, 0, 1), new(5, 0, 1.04), 0.05),
            "line" => new Wire(name, new(5, 0, 1), new(5, 0, 2), 0),
            _ => new Wire(name, new(5, 0, 1), new(5, double.NaN, 2), 0.01),
        };
        var result = WireSolver.Solve(WireModel.Over(Ground.Perfect).With(Mast, wire).WithFeed("base", "mast"), 3.6e6);
        Assert.Null(result.Solution);
        var finding = Assert.Single(result.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(code, finding.Code);
        Assert.Contains($"\"{name}\"", finding.Message);
        Assert.NotNull(finding.WayOut);
    }

    [Fact]
    public void An_end_on_another_wire_is_a_joint()
    {
        var model = WireModel.Over(Ground.Perfect).With(Mast, new Wire("arm", new(0, 0, 12), new(6, 0, 12), 0.005)).WithFeed("base", "mast");
        var driven = WireSolver.Solve(model, 3.6e6).Require().DriveVoltages(1);
        Assert.True(driven.CurrentsOn("arm")[0].Current.Magnitude > 1e-6);
    }

    [Fact]
    public void Too_many_unknowns_are_refused_before_memory_is_taken()
    {
        var result = WireSolver.Solve(
            WireModel.Over(Ground.Perfect).With(Mast).WithFeed("base", "mast"), 3.6e6, new(new MeshOptions(MinSegmentsPerWire: 100, MaxUnknowns: 50)));
        Assert.Equal("too-many-unknowns", Assert.Single(result.Findings).Code);
    }

    [Fact]
    public void Feed_at_a_free_end_is_refused()
    {
        var result = WireSolver.Solve(WireModel.Over(Ground.Perfect).With(Mast).WithFeed("tip", "mast", 1), 3.6e6);
        Assert.Equal("feed-at-free-end", Assert.Single(result.Findings).Code);
    }

    [Fact]
    public void Trap_exactly_on_resonance_is_told_not_thrown()
    {
        var trap = new LoadElement.ParallelRlc(null, 1e-6, 1e-10);
        var model = WireModel.Over(Ground.Perfect).With(Mast).WithFeed("base", "mast").WithLoad("trap", "mast", 0.5, trap);
        var result = WireSolver.Solve(model with { Loads = [model.Loads[0] with { Element = new LoadElement.Fixed(double.PositiveInfinity) }] }, 3.6e6);
        Assert.Equal("no-solution", Assert.Single(result.Findings).Code);
        Assert.NotNull(WireSolver.Solve(model, 3.6e6).Solution);
    }

    [Fact]
    public void Everything_wrong_is_told_at_once()
    {
        var result = WireSolver.Solve(
            WireModel.Over(Ground.Perfect).With(Mast, Mast, new Wire("x", new(1, 1, 1), new(1, 1, 1), 0)).WithFeed("base", "mist").WithLoad("coil", "mast", 1.5, new LoadElement.Fixed(1)), 3.6e6);
        Assert.Null(result.Solution);
        Assert.True(result.Findings.Length >= 5);
    }
}
