using System.Numerics;
using Mastwright.Analysis.Tune;
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

    /// <summary>Similarity of Maxwell's equations: a mast k times as large at f is the mast as drawn at k·f.</summary>
    [Fact]
    public void A_larger_mast_is_the_same_mast_at_a_higher_frequency()
    {
        var prediction = Band160.Value;
        var bare = prediction.Design with { EarthLossOhm = 0, StrayF = 0 };

        var larger = prediction.FeedOhm(bare with { HeightFactor = 1.05 }, [1.85e6])[0];

        Assert.True((larger - prediction.FeedOhm(bare, [1.05 * 1.85e6])[0]).Magnitude < 1e-9);
        Assert.True(larger.Imaginary > prediction.FeedOhm(bare, [1.85e6])[0].Imaginary);
    }

    [Fact]
    public void Better_soil_loses_less()
    {
        var prediction = Band160.Value;

        Assert.True(prediction.EarthLossOhm(0.03, 30, 1.9e6) < prediction.EarthLossOhm(0.003, 13, 1.9e6));
        Assert.True(Complex.IsFinite(prediction.MastOhm(prediction.Design, 1.8e6)));
    }
}
