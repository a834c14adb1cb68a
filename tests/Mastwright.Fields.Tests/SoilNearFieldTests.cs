using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Near fields over and in real soil.</summary>
public class SoilNearFieldTests
{
    private static readonly Soil Average = new("average", 13, 0.005);

    [Fact]
    public void Empty_soil_leaves_the_fields_of_free_space()
    {
        var model = BuriedWireTests.BuriedScreen(Ground.FreeSpace, 3);
        var free = Solve(model).DriveCurrents(1);
        var soil = Solve(model with { Ground = Ground.Over(new("nothing", 1 + 1e-6, 1e-10)) }).DriveCurrents(1);
        foreach (var point in (Vec3[])[new(4, 3, 2), new(15, -8, 1), new(-5, 6, -0.7), new(30, 2, 12)])
        {
            NearFieldSample a = NearField.At(free, point), b = NearField.At(soil, point);
            Near(a.Electric.Z, b.Electric.Z, 0.01);
            Near(a.Electric.Magnitude, b.Electric.Magnitude, 0.01);
            Near(a.Magnetic.Magnitude, b.Magnetic.Magnitude, 0.01);
        }
    }

    [Fact]
    public void Fields_meet_the_conditions_at_the_surface()
    {
        var n2 = Average.ComplexPermittivity(FrequencyHz);
        var driven = Solve(BuriedWireTests.BuriedScreen(Ground.Over(Average), 4)).DriveCurrents(1);
        foreach (var place in (Vec3[])[new(5, 3, 0), new(14, -9, 0), new(40, 22, 0)])
        {
            NearFieldSample above = NearField.At(driven, place + new Vec3(0, 0, 1e-3)), below = NearField.At(driven, place - new Vec3(0, 0, 1e-3));
            Near(above.Electric.X, below.Electric.X, 0.02);
            Near(above.Electric.Y, below.Electric.Y, 0.02);
            Near(above.Electric.Z / n2, below.Electric.Z, 0.02);
            Near(above.Magnetic.Magnitude, below.Magnetic.Magnitude, 0.02);
        }
    }

    [Theory]
    [InlineData(4)]
    [InlineData(30)]
    public void Exact_field_at_ten_wavelengths_is_Nortons_ground_wave(int radials)
    {
        // Sommerfeld's exact surface field over Norton's factor at 10 wavelengths: 0.4584/0.4459 for this soil (computed in Python).
        var driven = Solve(BuriedWireTests.BuriedScreen(Ground.Over(Average), radials, 20, 34)).DrivePower(1000);
        var distance = 10 * Wavelength;
        var exact = NearField.At(driven, new(distance * Math.Cos(0.02), distance * Math.Sin(0.02), 0.01)).Electric.Z.Magnitude;
        var norton = GroundWave.FieldVPerM(FarField.Of(driven), Average, FrequencyHz, 1000, 0.02, distance);
        Near(0.4583767 / 0.44588, exact / norton, 0.005);
    }

    [Fact]
    public void Power_through_a_box_around_the_station_is_the_power_fed()
    {
        // Poynting's theorem: what flows out through the surface into the soil and through a closed hood above it, plus the heat in
        // wires in the air, is the input. Elevated radials, so that nothing is buried inside.
        var driven = Solve(SoilTests.ElevatedMast(Ground.Over(Average))).DrivePower(1000);
        const double radius = 60;
        var points = new List<Vec3>();
        var normals = new List<Vec3>();
        var hood = Kernels.GaussRule.Of(24);
        const int azimuths = 16;
        for (var i = 0; i < hood.Nodes.Length; i++)
        {
            for (var j = 0; j < azimuths; j++)
            {
                var (s, c) = Math.SinCos(2 * Math.PI * (j + 0.5) / azimuths);
                double cosT = hood.Nodes[i], sinT = Math.Sqrt(1 - (cosT * cosT));
                Vec3 outward = new(sinT * c, sinT * s, cosT);
                points.Add(radius * outward);
                normals.Add(2 * Math.PI / azimuths * hood.Weights[i] * radius * radius * outward);
            }
        }

        // The floor, ring by ring, finer below the radials.
        double[] rings = [0, 5, 10, 15, 18, 20, 22, 25, 32, 45, radius];
        var across = Kernels.GaussRule.Of(4);
        for (var r = 0; r + 1 < rings.Length; r++)
        {
            for (var g = 0; g < across.Nodes.Length; g++)
            {
                var rho = rings[r] + ((rings[r + 1] - rings[r]) * across.Nodes[g]);
                for (var j = 0; j < azimuths * 4; j++)
                {
                    var (s, c) = Math.SinCos(2 * Math.PI * (j + 0.5) / (azimuths * 4));
                    points.Add(new(rho * c, rho * s, 0));
                    normals.Add(-2 * Math.PI / (azimuths * 4) * across.Weights[g] * (rings[r + 1] - rings[r]) * rho * Vec3.Up);
                }
            }
        }

        var fields = NearField.At(driven, points, TestContext.Current.CancellationToken);
        var power = driven.LossPowerW;
        for (var i = 0; i < points.Count; i++)
        {
            var (e, h) = (fields[i].Electric, fields[i].Magnetic);
            Complex px = (e.Y * Complex.Conjugate(h.Z)) - (e.Z * Complex.Conjugate(h.Y));
            Complex py = (e.Z * Complex.Conjugate(h.X)) - (e.X * Complex.Conjugate(h.Z));
            Complex pz = (e.X * Complex.Conjugate(h.Y)) - (e.Y * Complex.Conjugate(h.X));
            power += (px.Real * normals[i].X) + (py.Real * normals[i].Y) + (pz.Real * normals[i].Z);
        }

        Near(driven.InputPowerW, power, 0.01);
    }
}
