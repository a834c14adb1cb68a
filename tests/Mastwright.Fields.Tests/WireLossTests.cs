using System.Numerics;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Metal, loads, and closely spaced wires.</summary>
public class WireLossTests
{
    [Fact]
    public void Copper_wire_has_the_textbook_skin_resistance()
    {
        // Rs/(2πa)(1 + δ/2a) for a ≫ δ, and 1/(σπa²) + jωμ/8π for a ≪ δ (Ramo, Whinnery, Van Duzer, from memory).
        const double a = 0.001;
        double delta = Conductor.Copper.SkinDepthM(3.6e6), surface = 1 / (5.8e7 * delta);
        Near(surface / (2 * Math.PI * a) * (1 + (delta / (2 * a))), Conductor.Copper.InternalImpedancePerM(a, 3.6e6).Real, 1e-3);
        var slow = Conductor.Copper.InternalImpedancePerM(a, 50);
        Near(1 / (5.8e7 * Math.PI * a * a), slow.Real, 1e-4);
        Near(2 * Math.PI * 50 * Vacuum.PermeabilityHPerM / (8 * Math.PI), slow.Imaginary, 1e-3);
    }

    [Fact]
    public void Steel_loses_more_than_copper_by_the_root_of_permeability_over_conductivity()
    {
        var ratio = Conductor.Steel.InternalImpedancePerM(0.003, 3.6e6).Real / Conductor.Copper.InternalImpedancePerM(0.003, 3.6e6).Real;
        Near(Math.Sqrt(100 * 5.8e7 / 6e6), ratio, 0.01);
    }

    [Fact]
    public void Load_at_the_base_adds_to_the_feed_impedance()
    {
        var bare = Solve(OverGround(0.8, 500)).FeedImpedance();
        var added = new Complex(3, 120);
        var loaded = Solve(OverGround(0.8, 500).WithLoad("base coil", "mast", 0, new LoadElement.Fixed(added))).FeedImpedance();
        Near(bare + added, loaded, 1e-9);
    }

    [Fact]
    public void Loss_in_a_load_is_current_squared_times_resistance()
    {
        var driven = Solve(OverGround(0.8, 500).WithLoad("coil", "mast", 0.5, new LoadElement.SeriesRlc(4, 10e-6))).DrivePower(500);
        var loss = Assert.Single(driven.LossByPart());
        Assert.Equal("coil", loss.Part);
        Near(4 * Math.Pow(driven.LoadCurrent(0).Magnitude, 2), loss.PowerW, 1e-9);
    }

    [Theory]
    [InlineData(0.02, 0.1)]
    [InlineData(0.05, 0.1)]
    [InlineData(0.05, 0.08)]
    [InlineData(0.02, 0.2)]
    public void Shorted_two_wire_line_has_its_textbook_reactance(double spacingM, double lengthWavelengths)
    {
        // Z = jZ0 tan kl, Z0 = (η0/π) acosh(D/2a): transmission-line theory; the closing bars, short here, add about their own length.
        const double a = 0.001;
        var length = lengthWavelengths * Wavelength;
        var model = WireModel.Over(Ground.FreeSpace)
            .With(
                new Wire("bar", new(0, 0, 0), new(spacingM, 0, 0), a),
                new Wire("left", new(0, 0, 0), new(0, 0, length), a),
                new Wire("right", new(spacingM, 0, 0), new(spacingM, 0, length), a),
                new Wire("short", new(0, 0, length), new(spacingM, 0, length), a))
            .WithFeed("gap", "bar", 0.5);
        var z = Solve(model, new(new Meshing.MeshOptions(60, 4))).FeedImpedance();
        var expected = Vacuum.WaveImpedanceOhm / Math.PI * Math.Acosh(spacingM / (2 * a)) * Math.Tan(2 * Math.PI * lengthWavelengths);
        Near(expected, z.Imaginary, 0.02);
    }

    [Theory]
    [InlineData(3, 0.1)]
    [InlineData(3, 0.18)]
    [InlineData(2.3, 0.18)]
    public void Jackets_slow_a_two_wire_line_as_its_capacitance_says(double permittivity, double lengthWavelengths)
    {
        // L = (μ0/π) acosh(D/2a), 1/C = (1/πε0)[acosh(D/2a) + (1/εr − 1) ln(b/a)]: transmission-line theory, jackets thin against D.
        const double a = 0.001, thickness = 0.001, spacing = 0.03;
        var length = lengthWavelengths * Wavelength;
        var jacket = new Jacket(thickness, permittivity);
        var model = WireModel.Over(Ground.FreeSpace)
            .With(
                new Wire("bar", new(0, 0, 0), new(spacing, 0, 0), a),
                new Wire("left", new(0, 0, 0), new(0, 0, length), a) { Jacket = jacket },
                new Wire("right", new(spacing, 0, 0), new(spacing, 0, length), a) { Jacket = jacket },
                new Wire("short", new(0, 0, length), new(spacing, 0, length), a))
            .WithFeed("gap", "bar", 0.5);
        double bare = Math.Acosh(spacing / (2 * a)), jacketed = bare + (((1 / permittivity) - 1) * Math.Log(1 + (thickness / a)));
        var slowness = Math.Sqrt(bare / jacketed);
        var expected = Vacuum.WaveImpedanceOhm / Math.PI * Math.Sqrt(bare * jacketed) * Math.Tan(2 * Math.PI * lengthWavelengths * slowness);
        var z = Solve(model, new(new Meshing.MeshOptions(60, 4))).FeedImpedance();
        Near(expected, z.Imaginary, 0.02);
        Assert.True(slowness > 1.05);
    }

    [Fact]
    public void Lossy_jacket_keeps_the_power_balance()
    {
        var model = OverGround(1.2, 3000);
        model = model with { Wires = [model.Wires[0] with { Jacket = new Jacket(0.02, 4, 0.3) }] };
        var driven = Solve(model).DrivePower(100);
        Assert.True(driven.LossPowerW > 0.1);
        Near(100, driven.LossPowerW + Results.FarField.Of(driven).RadiatedPowerW, 1e-3);
    }

    [Fact]
    public void Kirchhoff_holds_where_wires_meet()
    {
        var driven = Solve(RadiationTests.GuyedMast()).DriveVoltages(100);
        var mast = driven.CurrentsOn("mast");
        var atJoint = mast.Where(c => Math.Abs(c.AlongM - 10) < 1e-6).ToArray();
        Assert.Equal(2, atJoint.Length);
        var guys = Enumerable.Range(0, 3).Select(g => driven.CurrentsOn($"guy {g} 10 0")[0].Current).Aggregate(Complex.Add);
        Near(atJoint[0].Current - atJoint[1].Current, guys, 1e-9);
    }

    [Fact]
    public void Equal_guys_carry_equal_currents()
    {
        var driven = Solve(RadiationTests.GuyedMast()).DriveVoltages(100);
        Near(driven.CurrentsOn("guy 0 10 0")[0].Current, driven.CurrentsOn("guy 1 10 0")[0].Current, 1e-5);
    }
}
