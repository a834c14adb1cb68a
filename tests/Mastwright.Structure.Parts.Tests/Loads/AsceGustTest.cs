using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Parts.Tests.Loads;

/// <summary>
/// The gust factor of a flexible structure. The worked figures were computed by hand from the formulas of ASCE 7-16 section 26.11.5
/// (constants of table 26.11-1 from memory), step by step in the comment.
/// </summary>
public class AsceGustTest
{
    private static Trail Frequency(double hz) => Trail.Given("lowest frequency", "n1", hz, QuantityKind.VibrationFrequency, Source.DesignFile);

    /// <summary>
    /// Exposure C, h = 100 ft, B = 1 ft, V = 90 mph, n1 = 0.5 Hz, damping 1 %: z = 60 ft, Iz = 0.2·(33/60)^(1/6) = 0.18103,
    /// Lz = 500·(60/33)^0.2 = 563.50 ft, Q = √(1/(1 + 0.63·(101/563.50)^0.63)) = 0.90785, Vz = 0.65·(60/33)^(1/6.5)·(88/60)·90 = 94.066 ft/s,
    /// N1 = 2.9952; the limits below leave room for the rounding of a pocket calculator.
    /// </summary>
    [Fact]
    public void A_slow_mast_by_hand()
    {
        var site = new WindSite(90 * 0.44704, "C");
        var factor = AsceGust.Flexible(site, 100 * 0.3048, 0.3048, Frequency(0.5));

        static double Named(Trail t, string symbol) => t.Inputs.Single(i => i.Symbol == symbol).Value;
        Assert.Equal(0.18103, Named(factor, "Iz"), 2e-4);
        Assert.Equal(0.9079, Named(factor, "Q"), 5e-4);
        var (n1, eh, eb, el) = (0.5 * 563.50 / 94.066, 4.6 * 0.5 * 100 / 94.066, 4.6 * 0.5 / 94.066, 15.4 * 0.5 / 94.066);
        static double Rl(double e) => (1 / e) - ((1 - Math.Exp(-2 * e)) / (2 * e * e));
        var r = Math.Sqrt(7.47 * n1 / Math.Pow(1 + (10.3 * n1), 5.0 / 3) * Rl(eh) * Rl(eb) * (0.53 + (0.47 * Rl(el))) / 0.01);
        Assert.Equal(r, Named(factor, "R"), 2e-3);
        var gr = Math.Sqrt(2 * Math.Log(1800)) + (0.577 / Math.Sqrt(2 * Math.Log(1800)));
        var expected = 0.925 * (1 + (1.7 * 0.18103 * Math.Sqrt((3.4 * 3.4 * 0.9079 * 0.9079) + (gr * gr * r * r)))) / (1 + (1.7 * 3.4 * 0.18103));
        Assert.Equal(expected, factor.Value, 2e-3);
    }

    /// <summary>A stiff structure has no resonance left: the factor tends to that of a rigid one, 0.925·(1 + 1.7·gQ·Iz·Q)/(1 + 1.7·gv·Iz), or 0.85.</summary>
    [Fact]
    public void A_quick_mast_tends_to_the_rigid_factor_and_a_slower_one_takes_more()
    {
        var site = new WindSite(40, "C");
        double Of(double hz) => AsceGust.Flexible(site, 25, 0.3, Frequency(hz)).Value;

        Assert.InRange(Of(500), 0.85, 0.91);
        Assert.True(Of(0.2) > Of(0.5) && Of(0.5) > Of(2) && Of(2) >= Of(500));
    }
}
