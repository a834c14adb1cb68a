using System.Numerics;
using Mastwright.Fields.Results;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Groups driven with demanded currents, against the pattern formula of 47 CFR 73.150 with sinusoidal currents.</summary>
public class GroupTests
{
    [Theory]
    [InlineData(new[] { 0.0, 0.25 }, new[] { 0.0, -90.0 }, new[] { 1.0, 1.0 })]
    [InlineData(new[] { 0.0, 0.5 }, new[] { 0.0, 180.0 }, new[] { 1.0, 0.8 })]
    [InlineData(new[] { 0.0, 0.2, 0.4 }, new[] { 0.0, -120.0, -240.0 }, new[] { 1.0, 1.8, 0.9 })]
    public void Pattern_is_the_sum_over_the_elements(double[] places, double[] phasesDeg, double[] magnitudes)
    {
        var model = WireModel.Over(Ground.Perfect);
        for (var i = 0; i < places.Length; i++)
        {
            Vec3 foot = new(places[i] * Wavelength, 0, 0);
            model = model.With(new Wire($"mast {i}", foot, foot + new Vec3(0, 0, 0.25 * Wavelength), 1e-9)).WithFeed($"base {i}", $"mast {i}");
        }

        var ratios = magnitudes.Select((m, i) => Complex.FromPolarCoordinates(m, phasesDeg[i] * Math.PI / 180)).ToArray();
        var driven = Solve(model).DriveRatios(ratios, 1000);
        Near(1000, driven.InputPowerW, 1e-9);
        Near(ratios[1] / ratios[0], driven.FeedCurrents[1] / driven.FeedCurrents[0], 1e-9);
        var far = FarField.Of(driven);

        double Formula(double elevation, double azimuth)
        {
            // f(θ)·|Σ F_i exp j(S_i cos θ cos(φ_i − φ) + ψ_i)|, all elements alike.
            var sum = Complex.Zero;
            for (var i = 0; i < places.Length; i++)
                sum += ratios[i] * Complex.FromPolarCoordinates(1, 2 * Math.PI * places[i] * Math.Cos(elevation) * Math.Cos(azimuth));
            return Math.Cos(Math.PI / 2 * Math.Sin(elevation)) / Math.Cos(elevation) * sum.Magnitude;
        }

        double peak = 0, peakFormula = 0;
        for (var az = 0; az < 360; az += 5)
        {
            peak = Math.Max(peak, Math.Sqrt(far.At(Math.PI / 2, az * Math.PI / 180).SquaredV2));
            peakFormula = Math.Max(peakFormula, Formula(0, az * Math.PI / 180));
        }

        foreach (var elevation in (double[])[0, 0.3, 0.7])
            for (var az = 0; az < 360; az += 15)
                Assert.Equal(Formula(elevation, az * Math.PI / 180) / peakFormula, Math.Sqrt(far.At((Math.PI / 2) - elevation, az * Math.PI / 180).SquaredV2) / peak, 0.02);
    }

    [Fact]
    public void Drive_impedances_follow_from_mutual_coupling()
    {
        // Z1 = Z11 + Z12·I2/I1, with the closed-form mutual impedance of two thin quarter waves a quarter wave apart.
        var driven = Solve(Pair(0.25, 0.25, 0.25, 1e-12), Uniform(32)).DriveRatios([1, new Complex(0, -1)], 100);
        Complex self = new(36.53951, 21.25756), mutual = new(20.37875, -14.16472);
        Near(self + (mutual * new Complex(0, -1)), driven.DriveImpedance(0), 0.06);
        Near(self + (mutual * new Complex(0, 1)), driven.DriveImpedance(1), 0.06);
        Assert.True(driven.DriveImpedance(1).Real > 2 * driven.DriveImpedance(0).Real);
    }
}
