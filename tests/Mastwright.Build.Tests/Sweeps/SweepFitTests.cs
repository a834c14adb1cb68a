using System.Numerics;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Fit;
using Mastwright.Build.Tests.Reference;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Sweeps;

public class SweepFitTests
{
    private static readonly double[] Mhz = [.. Enumerable.Range(0, 61).Select(i => 3.2 + (i * 0.015))];

    private static readonly FitParameter[] Parameters =
    [
        new("loss resistance", "Rl", QuantityKind.Resistance, 5, 0, 60),
        new("stray capacitance in pF", "Cs", QuantityKind.Ratio, 20, 0, 200),
        new("effective height", "he", QuantityKind.Length, 20, 15, 25),
    ];

    // A stand-in for a field solution: series loss, a line-like radiator, a capacitance across it. The same in the reference script.
    private static IReadOnlyList<Complex> Antenna(IReadOnlyList<double> p, IReadOnlyList<double> hz) => [.. hz.Select(f =>
    {
        var kh = 2 * Math.PI * f * p[2] / 299792458.0;
        var z = new Complex(p[0] + (36 * kh * kh / 2.467), -300 / Math.Tan(kh));
        return 1 / ((1 / z) + new Complex(0, 2 * Math.PI * f * p[1] * 1e-12));
    })];

    private static ImpedanceSweep Measured(int seed, double noiseOhm, Func<int, Complex>? wild = null)
    {
        var random = new Random(seed);
        var truth = Antenna([14, 45, 20.6], [.. Mhz.Select(m => m * 1e6)]);
        double Noise() => noiseOhm * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5);
        return new("sweep", 50, [.. Mhz.Select((m, i) => new SweepPoint(m * 1e6, truth[i] + new Complex(Noise(), Noise()) + (wild?.Invoke(i) ?? 0)))]);
    }

    private static SweepFitResult Fit(ImpedanceSweep sweep, FitOptions? options = null)
    {
        var reading = SweepFit.Fit(sweep, Antenna, Parameters, options);
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings));
        return reading.Value!;
    }

    [Fact]
    public void Values_and_errors_agree_with_SciPy()
    {
        var sweep = Measured(5, 1);
        var y = sweep.Points.Select(p => p.ImpedanceOhm.Real).Concat(sweep.Points.Select(p => p.ImpedanceOhm.Imaginary)).ToArray();
        var outside = SciPy.Run("least_squares.py", new { how = "plain", x = Mhz, y, start = new[] { 5, 20, 20 } });
        var ours = Fit(sweep, new(FitPlane.Impedance, ResistOutliers: false));
        for (var i = 0; i < 3; i++)
        {
            var expected = outside.GetProperty("p")[i].GetDouble();
            var error = Math.Sqrt(outside.GetProperty("cov")[i][i].GetDouble());
            Assert.Equal(expected, ours.Parameters[i].Value.Value, 1e-3 * error);
            Assert.Equal(error, ours.Parameters[i].StandardError, 1e-3 * error);
        }
    }

    [Fact]
    public void The_soft_loss_is_least_where_SciPy_finds_it_least()
    {
        var sweep = Measured(6, 0.5, i => i % 10 == 4 ? new Complex(60, 80) : 0);
        var ours = Fit(sweep, new(FitPlane.Impedance));
        var y = sweep.Points.Select(p => p.ImpedanceOhm.Real).Concat(sweep.Points.Select(p => p.ImpedanceOhm.Imaginary)).ToArray();
        var outside = SciPy.Run("least_squares.py", new { how = "soft", x = Mhz, y, start = new[] { 14, 45, 20.6 }, scale = ours.SoftScale!.Value });
        for (var i = 0; i < 3; i++) Assert.Equal(outside.GetProperty("p")[i].GetDouble(), ours.Parameters[i].Value.Value, 1e-2 * ours.Parameters[i].StandardError);
    }

    [Fact]
    public void Bounds_hold_the_truth_about_as_often_as_they_say()
    {
        double[] truth = [14, 45, 20.6];
        var held = 0;
        const int runs = 100;
        for (var seed = 0; seed < runs; seed++)
        {
            var fit = Fit(Measured(100 + seed, 1.5), new(FitPlane.Impedance, ResistOutliers: false));
            for (var i = 0; i < 3; i++) held += fit.Parameters[i].Low <= truth[i] && truth[i] <= fit.Parameters[i].High ? 1 : 0;
        }
        // 95 % of 300, whose own scatter is 3.8; the three of one run go together, so six of those are allowed either way.
        Assert.InRange(held, 262, 300);
    }

    [Theory]
    [InlineData(FitPlane.Reflection)]
    [InlineData(FitPlane.Impedance)]
    public void Wild_points_neither_bend_the_fit_nor_go_unnoticed(FitPlane plane)
    {
        var sweep = Measured(6, 0.5, i => i % 10 == 4 ? new Complex(60, 80) : 0);
        var robust = Fit(sweep, new(plane));
        var plain = Fit(sweep, new(plane, ResistOutliers: false));
        Assert.Equal(14, robust.Parameters[0].Value.Value, 0.5);
        Assert.Equal(20.6, robust.Parameters[2].Value.Value, 0.05);
        Assert.True(Math.Abs(plain.Parameters[0].Value.Value - 14) > 4 * Math.Abs(robust.Parameters[0].Value.Value - 14));
        Assert.Equal(sweep.Points.Where((_, i) => i % 10 == 4).Select(p => p.FrequencyHz), robust.OutliersHz);
    }

    [Fact]
    public void A_perfect_sweep_is_met_exactly()
    {
        var fit = Fit(Measured(7, 0));
        Assert.Equal(14, fit.Parameters[0].Value.Value, 1e-5);
        Assert.Equal(45, fit.Parameters[1].Value.Value, 1e-4);
        Assert.Equal(20.6, fit.Parameters[2].Value.Value, 1e-6);
        Assert.True(fit.RmsAfter.Value < 1e-7);
        Assert.True(fit.RmsBefore.Value > 0.1);
        Assert.Equal(61, fit.Fitted.Points.Length);
    }

    [Fact]
    public void An_input_the_sweep_says_nothing_about_is_named()
    {
        FitParameter[] with = [.. Parameters, new("soil permittivity", "er", QuantityKind.Ratio, 10, 1, 80)];
        var reading = SweepFit.Fit(Measured(8, 1), Antenna, with);
        Assert.Contains(reading.Findings, f => f.Code == "fit-undetermined" && f.Place!.Path == "soil permittivity");
        Assert.True(double.IsPositiveInfinity(reading.Value!.Parameters[3].StandardError));
    }

    [Fact]
    public void Two_inputs_that_do_the_same_are_named()
    {
        IReadOnlyList<Complex> Twice(IReadOnlyList<double> p, IReadOnlyList<double> hz) => [.. Antenna([p[0], 45, p[2]], hz).Select((z, i) => z + (p[1] * (1 + (1e-9 * hz[i]))))];
        FitParameter[] parameters = [Parameters[0], new("lead resistance", "R2", QuantityKind.Resistance, 1, 0, 60), Parameters[2]];
        var reading = SweepFit.Fit(Measured(9, 1), Twice, parameters);
        Assert.Contains(reading.Findings, f => f.Code is "fit-alike" or "fit-undetermined");
    }

    [Fact]
    public void A_limit_reached_is_said_and_shown_on_the_number()
    {
        FitParameter[] tight = [Parameters[0] with { Upper = 9 }, Parameters[1], Parameters[2]];
        var reading = SweepFit.Fit(Measured(10, 0.5), Antenna, tight);
        Assert.Contains(reading.Findings, f => f.Code == "fit-at-limit");
        Assert.True(reading.Value!.Parameters[0].AtLimit);
        Assert.NotNull(reading.Value.Parameters[0].Value.OutOfRange);
    }

    [Fact]
    public void What_cannot_be_fitted_is_refused()
    {
        Assert.Equal("fit-limits", Assert.Single(SweepFit.Fit(Measured(1, 0), Antenna, [Parameters[0] with { Start = 99 }]).Errors).Code);
        var one = Measured(1, 0);
        Assert.Equal("fit-too-few", Assert.Single(SweepFit.Fit(one with { Points = [one.Points[0]] }, Antenna, Parameters).Errors).Code);
    }
}
