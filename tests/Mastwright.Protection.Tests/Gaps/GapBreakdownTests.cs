using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Tests.Gaps;

/// <summary>Spark voltages against IEC 60052, the AIEE sphere table and the trade's rule of thumb.</summary>
public class GapBreakdownTests
{
    private static GapElectrodes Balls(double diameterCm) => new(GapShape.BallToBall, diameterCm / 100);

    // IEC 60052:2002 table 2 (kV peak), a few rows typed once more by hand (from memory of the standard).
    [Theory]
    [InlineData(2, 0.5, 17.4)]
    [InlineData(2, 1.0, 30.7)]
    [InlineData(5, 0.2, 8.0)]
    [InlineData(5, 1.0, 32.0)]
    [InlineData(5, 2.0, 57.5)]
    [InlineData(6.25, 1.0, 31.9)]
    [InlineData(6.25, 3.0, 79.5)]
    [InlineData(10, 1.0, 31.7)]
    [InlineData(10, 5.0, 123)]
    public void Table_rows_come_back_at_reference_air(double diameterCm, double spacingCm, double kv) =>
        Assert.Equal(kv * 1000, GapBreakdown.PeakVolts(Balls(diameterCm), spacingCm / 100, AirState.Reference).Value, 1e-3 * kv * 1000);

    // The streamer criterion knows nothing of the table, so the whole table up to half a diameter is an outside check of it: IEC 60052, itself uncertain by 3 %.
    // IEC 60052 (from memory): over spacing and density the table's voltage times k(δ); humidity held where its own factor is 1 (h/δ = 8.5 g/m³).
    [Theory]
    [InlineData(5, 0.5, 17.4, 0.90, 0.91)]
    [InlineData(5, 1.0, 32.0, 0.80, 0.82)]
    [InlineData(10, 2.0, 59.0, 0.70, 0.72)]
    [InlineData(10, 1.0, 31.7, 1.10, 1.09)]
    [InlineData(6.25, 1.5, 45.5, 0.95, 0.95)]
    [InlineData(2, 0.3, 11.2, 1.05, 1.05)]
    public void Table_over_spacing_and_density(double diameterCm, double spacingCm, double kv, double density, double k)
    {
        var air = new AirState(0, AirState.ReferenceTemperatureK, density * AirState.ReferenceHumidityKgPerM3, density * AirState.ReferencePressurePa);
        Assert.Equal(1, GapBreakdown.PeakVolts(new(GapShape.BallToBall, diameterCm / 100), spacingCm / 100, air).Value / (1000 * kv * k), 1e-3);
    }

    [Fact]
    public void Streamer_criterion_follows_the_whole_sphere_table()
    {
        foreach (var row in SparkTables.SphereRows)
        {
            for (var i = 0; i < row.SpacingM.Length; i++)
            {
                if (row.SpacingM[i] > 0.5 * row.DiameterM)
                    continue;
                var u = StreamerCriterion.InceptionVolts(row.DiameterM / 2, row.SpacingM[i], false, 1);
                Assert.InRange(u / row.PeakV[i], 0.945, 1.055);
            }
        }
    }

    // Uniform field: Kuffel, Zaengl, Kuffel 24.22 d + 6.08 sqrt(d) (from memory); very large balls at short spacing are nearly uniform.
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    public void Streamer_criterion_meets_the_uniform_field_formula(double cm)
    {
        var u = StreamerCriterion.InceptionVolts(50, cm / 100, false, 1);
        Assert.InRange(u / GapBreakdown.UniformFieldPeakVolts(cm / 100, AirState.Reference).Value, 0.98, 1.06);
    }

    // AIEE sphere table at 25 °C, 760 mmHg: spacing (cm) of 5 cm and 10 cm spheres for a peak voltage, as reprinted.
    [Theory]
    [InlineData(5, 0.44, 15)]
    [InlineData(5, 0.94, 30)]
    [InlineData(5, 1.71, 50)]
    [InlineData(10, 0.46, 15)]
    [InlineData(10, 1.29, 40)]
    [InlineData(10, 2.84, 80)]
    public void Aiee_sphere_table_agrees_within_four_percent(double diameterCm, double spacingCm, double kv)
    {
        var air = AirState.Reference with { TemperatureK = 298.15 };
        Assert.InRange(GapBreakdown.PeakVolts(Balls(diameterCm), spacingCm / 100, air).Value / (kv * 1000), 0.96, 1.04);
    }

    // AIEE needle gap, 25 °C, 760 mmHg, as reprinted.
    [Theory]
    [InlineData(0.42, 5)]
    [InlineData(1.30, 15)]
    [InlineData(5.20, 50)]
    [InlineData(15.5, 100)]
    public void Needle_rows_come_back(double spacingCm, double kv)
    {
        var air = AirState.Reference with { TemperatureK = 298.15 };
        Assert.Equal(kv * 1000, GapBreakdown.PeakVolts(new(GapShape.Rods, 0), spacingCm / 100, air).Value, kv * 5);
    }

    // common practice, no source: a rounded gap of 3/16 in fires near 15 kV.
    [Theory]
    [InlineData(GapShape.RoundedNutToPlate, 0.5)]
    [InlineData(GapShape.RoundedNutToPlate, 0.75)]
    [InlineData(GapShape.RoundedNuts, 0.75)]
    public void Three_sixteenths_rounded_gap_fires_near_15_kV(GapShape shape, double diameterIn)
    {
        var u = GapBreakdown.PeakVolts(new(shape, diameterIn * 0.0254), 3.0 / 16 * 0.0254, AirState.Reference).Value;
        Assert.InRange(u, 14e3, 16.5e3);
    }

    [Theory]
    [InlineData(GapShape.BallToBall, 0.02)]
    [InlineData(GapShape.BallToBall, 0.035)]
    [InlineData(GapShape.BallToPlate, 0.02)]
    [InlineData(GapShape.Rods, 0.0)]
    public void A_wider_gap_never_holds_less(GapShape shape, double diameterM)
    {
        var last = 0.0;
        for (var mm = 0.3; mm < 14; mm *= 1.07)
        {
            var u = GapBreakdown.PeakVolts(new(shape, diameterM), mm / 1000, AirState.Reference).Value;
            Assert.True(u > 0.985 * last, $"{mm:0.00} mm: {u:0} after {last:0}"); // table and criterion meet within 5 %, dips at the seam stay below 1.5 %
            last = u;
        }
    }

    // ISO 2533 and IEC 60052: density at elevation (values computed outside, see reference column delta to 20 °C).
    [Theory]
    [InlineData(0, 1.017352)]
    [InlineData(1000, 0.923210)]
    [InlineData(2000, 0.835882)]
    [InlineData(3000, 0.755018)]
    public void Density_follows_the_standard_atmosphere(double elevationM, double delta) =>
        Assert.Equal(delta, new AirState(elevationM, AirState.StandardTemperatureK(elevationM)).RelativeDensity().Value, 1e-5);

    // IEC 60052 density table (one reprint); between the entries the factor stays between them.
    [Theory]
    [InlineData(0.70, 0.72)]
    [InlineData(0.85, 0.86)]
    [InlineData(0.90, 0.91)]
    [InlineData(1.00, 1.00)]
    [InlineData(1.10, 1.09)]
    public void Density_factor_follows_the_table(double delta, double k)
    {
        var air = AirState.Reference with { PressurePa = delta * AirState.ReferencePressurePa };
        Assert.Equal(k, air.DensityFactor().Value, 1e-9);
    }

    // Peek 1929 as quoted: 5 cm spheres, 40 kHz: 3.65 kV at 1 mm, 28 kV at 1 cm, against 4.95 and 31.8 at 60 Hz.
    [Fact]
    public void Radio_frequency_lowers_the_gap_as_peek_measured()
    {
        Assert.Equal(3.65 / 4.95, GapBreakdown.RadioFrequencyFactor(1e-3).Value, 1e-9);
        Assert.Equal(28 / 31.8, GapBreakdown.RadioFrequencyFactor(1e-2).Value, 1e-9);
        Assert.NotNull(GapBreakdown.RadioFrequencyFactor(2e-2).OutOfRange);
    }

    [Fact]
    public void Outside_its_range_the_number_says_so()
    {
        Assert.NotEmpty(GapBreakdown.PeakVolts(Balls(2), 0.014, AirState.Reference).RangeWarnings());
        Assert.NotEmpty(GapBreakdown.PeakVolts(new(GapShape.Rods, 0), 0.002, AirState.Reference).RangeWarnings());
        Assert.NotEmpty(GapBreakdown.PeakVolts(Balls(5), 0.01, new AirState(5500, 320)).RangeWarnings());
        Assert.Empty(GapBreakdown.PeakVolts(Balls(5), 0.01, AirState.Reference).RangeWarnings());
    }
}
