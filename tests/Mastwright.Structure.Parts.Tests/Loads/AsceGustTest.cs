using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Parts.Tests.Loads;

/// <summary>The gust factor of a flexible structure.</summary>
public class AsceGustTest
{
    private static Trail Frequency(double hz) => Trail.Given("lowest frequency", "n1", hz, QuantityKind.VibrationFrequency, Source.DesignFile);

    private static double Named(Trail t, string symbol) => t.Inputs.Single(i => i.Symbol == symbol).Value;

    /// <summary>
    /// Worked example of the commentary of ASCE 7-05, table C6-13 (from memory): a building 600 ft high and 100 ft wide and deep in exposure B at 90 mph,
    /// 0.2 Hz and 1 % damping, with the terrain constants that stood until 2016: Iz 0.201, Q² 0.616, Vz 107.95 ft/s, R² 0.813, G 1.062. The example goes on with its
    /// rounded steps (1.0615 by them), so G is held to one unit of its last digit.
    /// </summary>
    [Fact]
    public void The_worked_example_of_the_commentary()
    {
        var factor = AsceGust.Flexible(new WindSite(90 * 0.44704, "B"), 600 * 0.3048, 100 * 0.3048, Frequency(0.2), 2016);

        Assert.Equal(0.201, Named(factor, "Iz"), 0.0005);
        Assert.Equal(107.95 * 0.3048, Named(factor, "Vz"), 0.005 * 0.3048);
        Assert.Equal(0.616, Math.Pow(Named(factor, "Q"), 2), 0.0005);
        Assert.Equal(0.813, Math.Pow(Named(factor, "R"), 2), 0.0005);
        Assert.Equal(1.062, factor.Value, 0.001);
    }

    /// <summary>
    /// A 3-second gust is 1.52 times the mean of an hour in open country (Durst's curve, from memory), whichever edition tells it: at 33 ft in exposure C
    /// the mean speed is the basic speed over that, within 2 %. The mean speed rises with height by the power of the edition's own table.
    /// </summary>
    [Theory]
    [InlineData(2016)]
    [InlineData(2022)]
    public void The_mean_of_an_hour_is_the_gust_over_that_of_Durst(int edition)
    {
        double Mean(string exposure, double heightFt) => Named(AsceGust.Flexible(new WindSite(40, exposure), heightFt / 0.6 * 0.3048, 0.3, Frequency(0.5), edition), "Vz");

        Assert.InRange(40 / Mean("C", 33), 0.98 * 1.52, 1.02 * 1.52);
        Assert.True(Mean("B", 33) < Mean("C", 33) && Mean("C", 33) < Mean("D", 33));

        // At the gradient height of exposure C in the 2022 edition, 2460 ft, the ground is forgotten: exposures C and D tell the same speed there within 5 %.
        Assert.InRange(Mean("D", 2460) / Mean("C", 2460), 0.95, 1.05);
    }

    /// <summary>A stiff structure has no resonance left: the factor is that of a rigid one, 0.925·(1 + 1.7·gQ·Iz·Q)/(1 + 1.7·gv·Iz) (ASCE 7 equation 26.11-6); a slower one takes more.</summary>
    [Theory]
    [InlineData(2016, "B")]
    [InlineData(2022, "C")]
    public void A_quick_mast_takes_the_rigid_factor_and_a_slower_one_more(int edition, string exposure)
    {
        Trail Of(double hz) => AsceGust.Flexible(new WindSite(40, exposure), 25, 0.3, Frequency(hz), edition);

        var quick = Of(5000);
        var (iz, q) = (Named(quick, "Iz"), Named(quick, "Q"));
        Assert.Equal(0.925 * (1 + (1.7 * 3.4 * iz * q)) / (1 + (1.7 * 3.4 * iz)), quick.Value, 1e-3);
        Assert.True(Of(0.2).Value > Of(0.5).Value && Of(0.5).Value > Of(2).Value && Of(2).Value > quick.Value);
        Assert.Contains($"{edition}", quick.Range, StringComparison.Ordinal);
    }
}
