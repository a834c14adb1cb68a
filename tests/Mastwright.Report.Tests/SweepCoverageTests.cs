using System.Numerics;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Sweeps;
using Mastwright.Report.Tune;

namespace Mastwright.Report.Tests;

/// <summary>Whether the stated confidence is true: sweeps made from known inputs of a whole station, seen through a cable, with seeded noise.</summary>
public class SweepCoverageTests
{
    private const int Sweeps = 80;
    private const double ReflectionNoise = 0.003;

    /// <summary>
    /// Of 240 intervals of 95 %, 228 ± 3.4 should hold the truth were they independent; three of one sweep are not, so three times their spread is allowed, √3 wider.
    /// Intervals that are too wide hold the truth always, so that count cannot find them: the errors divided by their stated standard errors can. The mean of their
    /// squares over 80 sweeps is χ²/80 with 80 degrees of freedom, mean 1 and standard deviation √(2/80) = 0.158; three of these are allowed to either side.
    /// </summary>
    [Fact]
    public void Intervals_of_95_per_cent_hold_the_truth_95_times_in_a_hundred()
    {
        var station = Stations.Input("lattice-22m").Station;
        var (prediction, _) = FeedPrediction.Of(station, 0, 1.8e6, 2.0e6, null, TestContext.Current.CancellationToken);
        var truth = prediction!.Design with { EarthLossOhm = 6.5, StrayF = prediction.Design.StrayF + 25e-12, HeightFactor = 1.012 };
        double[] hz = [.. Enumerable.Range(0, 41).Select(i => 1.8e6 + (i * 5000))];
        var cable = new Cable(50, 25, 0.66, 0.021, 10e6);
        var clean = prediction.FeedOhm(truth, hz);
        var expected = new Dictionary<string, double> { ["Rg"] = 6.5, ["C"] = truth.StrayF, ["k"] = 1.012 };
        var held = expected.Keys.ToDictionary(k => k, _ => 0);
        var squares = expected.Keys.ToDictionary(k => k, _ => 0.0);
        for (var seed = 1; seed <= Sweeps; seed++)
        {
            var random = new Random(seed);
            double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            var points = hz.Zip(clean, (f, z) =>
            {
                var seen = cable.SeenThrough(z, f);
                var reflection = ((seen - 50) / (seen + 50)) + (ReflectionNoise * new Complex(Normal(), Normal()));
                return new SweepPoint(f, 50 * (1 + reflection) / (1 - reflection));
            });
            var moved = ReferencePlane.ToAntenna(new ImpedanceSweep("made up", 50, [.. points]), [cable]).Value!;
            var (fit, _) = SweepFitInputs.Fit(moved, prediction, SweepFitInputs.Usual, TestContext.Current.CancellationToken);
            foreach (var p in fit.Value!.Parameters)
            {
                held[p.Parameter.Symbol] += expected[p.Parameter.Symbol] >= p.Low && expected[p.Parameter.Symbol] <= p.High ? 1 : 0;
                squares[p.Parameter.Symbol] += Math.Pow((p.Value.Value - expected[p.Parameter.Symbol]) / p.StandardError, 2) / Sweeps;
            }
        }

        var share = held.Values.Sum() / (3.0 * Sweeps);
        TestContext.Current.TestOutputHelper?.WriteLine($"{100 * share:0.0} % of the intervals hold the truth: {string.Join(", ", held.Select(h => $"{h.Key} {h.Value} of {Sweeps}, mean square {squares[h.Key]:0.00}"))}");
        Assert.InRange(share, 0.95 - (3 * Math.Sqrt(3) * 0.0141), 1);
        Assert.All(held.Values, h => Assert.InRange(h, 66, Sweeps));
        Assert.All(squares.Values, s => Assert.InRange(s, 1 - (3 * Math.Sqrt(2.0 / Sweeps)), 1 + (3 * Math.Sqrt(2.0 / Sweeps))));
    }
}
