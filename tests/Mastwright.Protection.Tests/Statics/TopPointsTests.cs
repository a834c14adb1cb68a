using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>Whiskers, leg ends and stepped shafts.</summary>
public class TopPointsTests
{
    private static readonly AirState Air = AirState.Reference;

    // The rod on the axis is solved here by charge simulation and there by boundary elements, which share only the linear solver.
    [Fact]
    public void A_rod_on_the_axis_agrees_with_the_axisymmetric_engine()
    {
        var mast = new MastOutline(18, 0.05, 0.3, 0.8, 0.005);
        var here = TopPoints.Solve(mast, [TopPoints.Whiskers(3, 0.5, 0.08, 0.05, 0.002, 0)], Air, 1, []).Single(p => p.Part == "rod");
        var there = StaticStudy.Solve(mast, Air, 1, [], 2)!.Places[0];
        Assert.Equal(1, here.Enhancement.Value / there.Enhancement.Value, 0.06);
    }

    // Symmetry: whiskers all round fare alike, so more of them only shield each other.
    [Fact]
    public void More_whiskers_shield_each_other_and_a_ring_shields_them()
    {
        var mast = new MastOutline(18, 0.05);
        double Onset(MastOutline m, int n) => TopPoints.Solve(m, [TopPoints.Whiskers(n, 18, 0.08, 0.4, 0.002, 0.8)], Air, 1, []).Single(p => p.Part == "whiskers").OnsetField.Value;
        Assert.True(Onset(mast, 12) > Onset(mast, 3));
        Assert.True(Onset(mast with { Ring = new(1.4, 0.05, 18.2) }, 6) > Onset(mast, 6));
    }

    [Fact]
    public void Leg_ends_spray_before_a_round_shaft_of_the_same_girth()
    {
        var legs = TopPoints.Solve(new MastOutline(17.1, 0.12, 0.3), [TopPoints.LegEnds(3, 18, 0.9, 0.173, 0.012)], Air, 0.93, Weather.Usual);
        var shaft = StaticStudy.Solve(new MastOutline(18, 0.12, 0.3), Air, 0.93, Weather.Usual)!;
        Assert.True(legs[0].OnsetField.Value < 0.6 * shaft.Places[0].OnsetField.Value);
        Assert.Equal(18, legs[0].HeightM, 0.1);
        Assert.All(legs[0].Checks, c => Assert.Equal(StaticStudy.Caution, c.Caution));
    }

    [Fact]
    public void A_stepped_shaft_lies_between_the_two_plain_ones()
    {
        var thin = StaticStudy.Solve(new MastOutline(18, 0.03), Air, 1, [])!;
        var thick = StaticStudy.Solve(new MastOutline(18, 0.06), Air, 1, [])!;
        var stepped = StaticStudy.Solve(new MastOutline(18, 0.03) { Below = [new(9, 0.06)] }, Air, 1, [])!;
        Assert.InRange(stepped.CapacitanceF.Value, thin.CapacitanceF.Value, thick.CapacitanceF.Value);
        Assert.Equal(1, stepped.Places[0].Enhancement.Value / thin.Places[0].Enhancement.Value, 0.06);
        var wider = StaticStudy.Solve(new MastOutline(18, 0.06) { Below = [new(9, 0.03)] }, Air, 1, [])!;
        Assert.InRange(wider.CapacitanceF.Value, thin.CapacitanceF.Value, thick.CapacitanceF.Value);
        Assert.Contains((new MastOutline(18, 0.03) { Below = [new(17.99, 0.06)] }).Faults(), f => f.Code == "mast-step");
    }

    // The bundle rule (Maruvada, from memory) beside a solution done outside: NumPy 2-D charge simulation, 24 line charges in each of n cylinders at one potential;
    // greatest normal field over the mean round one cylinder.
    [Theory]
    [InlineData(3, 0.012, 0.17, 1.13743)]
    [InlineData(3, 0.010, 0.29, 1.06813)]
    [InlineData(4, 0.016, 0.21, 1.22385)]
    [InlineData(2, 0.020, 0.20, 1.09502)]
    public void Legs_follow_the_field_of_cylinders_at_one_potential(int legs, double radius, double circle, double over)
    {
        const double charge = 1e-7;
        var mean = charge / legs / (2 * Math.PI * Vacuum.PermittivityFPerM * radius);
        Assert.Equal(over, RfCorona.Legs("legs", 6, legs, radius, circle, charge, Air, 1).GradientVPerM.Value / mean, 0.006 * over);
    }

    // A thin wire at 1000 V, 10 m over a plane: q = 2π·ε0·U/ln(2h/a), so that E = U/(a·ln(2h/a)) (any electrostatics text).
    [Fact]
    public void Charge_of_a_wire_over_a_plane_gives_its_gradient()
    {
        const double a = 0.002, h = 10, u = 1000;
        var q = 2 * Math.PI * 8.8541878128e-12 * u / Math.Log(2 * h / a);
        var surface = RfCorona.Wire("wire", h, a, q, Air, 1);
        Assert.Equal(u / (a * Math.Log(2 * h / a)), surface.GradientVPerM.Value, 1e-6);
        Assert.Equal(0.9 * CoronaOnset.GradientVPerM(a, double.PositiveInfinity, Air, 1).Value, surface.OnsetVPerM.Value, 1e-6);
        Assert.Equal(RfCorona.Caution, RfCorona.Check(surface, "x").Caution);
    }

    // A mast with a ring at 10 kV by charge simulation in three dimensions, which shares only the linear solver with the boundary elements behind Top: from the
    // gradient that one finds on the shaft a metre below the top, the other must find the voltage again, and what the ring sees. The tube of the ring is thin, so that
    // the gradient is even round it, as line charges have it.
    [Fact]
    public void From_the_gradient_on_the_shaft_the_voltage_of_the_top_is_found_again()
    {
        const double volts = 10e3, atM = 19;
        var ring = new CoronaRing(0.6, 0.006, 20);
        var mast = new MastOutline(20, 0.05, 0.4, Ring: ring);
        var field = WireElectrostatics.Solve([new WireConductor("mast", mast.AxisWires(roundTop: true)), new WireConductor("ring", Wire.LevelRing(new(0, 0, 20), 0.3, 0.003, 48))], segmentM: 0.2)
            .With([ConductorState.At(volts), ConductorState.At(volts)], 0);
        var points = Enumerable.Range(0, field.Basis.Points.Length).Where(i => field.Basis.Points[i].Body == 0);
        var below = points.MinBy(i => Math.Abs(field.Basis.Points[i].Position.Z - atM));
        var shaft = Trail.Given("gradient", "E", Math.Abs(field.SurfaceFieldVPerM[below]), QuantityKind.ElectricField, Source.DesignFile);

        var places = RfCorona.Top(mast, Air, 1, shaft, field.Basis.Points[below].Position.Z);

        Assert.Equal(["top", "ring"], places.Select(s => s.Part));
        Assert.Equal(1, places[0].GradientVPerM.Inputs.Single(i => i.Symbol == "Ut").Value / volts, 0.03);
        Assert.Equal(1, places[1].GradientVPerM.Value / Math.Abs(field.Strongest(1).FieldVPerM), 0.06);
    }
}
