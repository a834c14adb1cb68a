using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Tune;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

public sealed class FeedPredictionTests
{
    private static readonly Lazy<FeedPrediction> Band160 = new(() =>
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"))).Station!;
        var (prediction, findings) = FeedPrediction.Of(station, 0, 1.8e6, 2.0e6, null, TestContext.Current.CancellationToken);
        Assert.Empty(findings);
        return prediction!;
    });

    /// <summary>The rational function and the interpolated earth loss against the exact solution of the station's own analysis.</summary>
    [Fact]
    public void With_the_designs_own_inputs_it_is_the_band_result()
    {
        var band = Examples.Result("lattice-22m").Masts[0].Bands[0];
        var prediction = Band160.Value;

        var feed = prediction.FeedOhm(prediction.Design, [band.FrequencyHz])[0];

        Assert.Equal(band.EarthLossOhm.Value, prediction.EarthLossOhm(prediction.Design.ConductivitySPerM, prediction.Design.RelativePermittivity, band.FrequencyHz), 0.005 * band.EarthLossOhm.Value);
        Assert.True((feed - band.FeedOhm).Magnitude < 0.01 * band.FeedOhm.Magnitude, $"{feed} and {band.FeedOhm}");
    }

    /// <summary>By hand: an earth resistance adds to the resistance as it is, a capacitance adds its susceptance as it is.</summary>
    [Fact]
    public void Earth_resistance_and_strays_enter_as_circuit_theory_says()
    {
        var prediction = Band160.Value;
        const double hz = 1.9e6;
        var bare = prediction.Design with { EarthLossOhm = 0, StrayF = 0 };

        var z = prediction.FeedOhm(bare, [hz])[0];
        var lossy = prediction.FeedOhm(bare with { EarthLossOhm = 7 }, [hz])[0];
        var loaded = prediction.FeedOhm(bare with { StrayF = 100e-12 }, [hz])[0];

        Assert.Equal(7, (lossy - z).Real, 1e-9);
        Assert.Equal(2 * Math.PI * hz * 100e-12, ((1 / loaded) - (1 / z)).Imaginary, 1e-12);
    }

    /// <summary>Held against a mast built 1.05 times as large in every length and radius, its insulators' capacitances too, and solved by itself at the same frequency.</summary>
    [Fact]
    public void A_larger_mast_is_predicted_as_it_is_solved()
    {
        const double k = 1.05;
        var prediction = Band160.Value;
        var bare = prediction.Design with { EarthLossOhm = 0, StrayF = 0 };
        var model = WireModels.Of(Examples.Result("lattice-22m").Station);
        var large = model with
        {
            Wires = [.. model.Wires.Select(w => w with { Start = k * w.Start, End = k * w.End, StartRadiusM = k * w.StartRadiusM, EndRadiusM = k * w.EndRadiusM })],
            Loads = [.. model.Loads.Select(l => l with { Element = Larger(l.Element) })],
        };
        static LoadElement Larger(LoadElement element) => element switch
        {
            LoadElement.ParallelRlc { InductanceH: null } insulator => insulator with { CapacitanceF = k * insulator.CapacitanceF },
            LoadElement.SeriesRlc { InductanceH: 0, CapacitanceF: { } c } insulator => insulator with { CapacitanceF = k * c },
            _ => throw new InvalidOperationException($"An example with {element} is not scaled here."),
        };

        var solved = WireSolver.Solve(large, 1.85e6, null, TestContext.Current.CancellationToken).Require().FeedImpedance(0);
        var predicted = prediction.FeedOhm(bare with { HeightFactor = k }, [1.85e6])[0];

        Assert.True((predicted - solved).Magnitude < 0.003 * solved.Magnitude, $"{predicted} and {solved}");
        Assert.True((prediction.FeedOhm(bare, [1.85e6])[0] - solved).Magnitude > 0.03 * solved.Magnitude);
    }

    [Fact]
    public void Better_soil_loses_less()
    {
        var prediction = Band160.Value;

        Assert.True(prediction.EarthLossOhm(0.03, 30, 1.9e6) < prediction.EarthLossOhm(0.003, 13, 1.9e6));
        Assert.True(Complex.IsFinite(prediction.MastOhm(prediction.Design, 1.8e6)));
    }
}
