using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Tests;

/// <summary>Factors are typed here once more by hand: NIST SP 811 appendix B (exact inch, pound, pound-force), ASTM B258 for wire gauges.</summary>
public class QuantityTextTests
{
    [Theory]
    [InlineData("72 ft", QuantityKind.Length, 72 * 0.3048)]
    [InlineData("72ft", QuantityKind.Length, 72 * 0.3048)]
    [InlineData("22 m", QuantityKind.Length, 22)]
    [InlineData("5 ft 6 in", QuantityKind.Length, 66 * 0.0254)]
    [InlineData("5' 6\"", QuantityKind.Length, 66 * 0.0254)]
    [InlineData("-3 ft", QuantityKind.Length, -3 * 0.3048)]
    [InlineData("-5 ft 6 in", QuantityKind.Length, -66 * 0.0254)]
    [InlineData("3/16 in", QuantityKind.FineLength, 3 / 16.0 * 0.0254)]
    [InlineData("1-1/2 in", QuantityKind.FineLength, 1.5 * 0.0254)]
    [InlineData("1 1/2 in", QuantityKind.FineLength, 1.5 * 0.0254)]
    [InlineData("1.5e-3 m", QuantityKind.FineLength, 0.0015)]
    [InlineData("1500 W", QuantityKind.Power, 1500)]
    [InlineData("1.5 kW", QuantityKind.Power, 1500)]
    [InlineData("90 mph", QuantityKind.Speed, 90 * 0.44704)]
    [InlineData("-20 °C", QuantityKind.Temperature, 253.15)]
    [InlineData("-20 C", QuantityKind.Temperature, 253.15)]
    [InlineData("14 F", QuantityKind.Temperature, 263.15)]
    [InlineData("10 %", QuantityKind.Ratio, 0.10)]
    [InlineData("0.85", QuantityKind.Ratio, 0.85)]
    [InlineData("665 lbf", QuantityKind.Force, 665 * 4.4482216152605)]
    [InlineData("665 lb", QuantityKind.Force, 665 * 4.4482216152605)]
    [InlineData("11 lb", QuantityKind.Mass, 11 * 0.45359237)]
    [InlineData("25 psf", QuantityKind.Pressure, 25 * 47.88025898)]
    [InlineData("35 ksi", QuantityKind.Stress, 35 * 6894757.293)]
    [InlineData("56 pcf", QuantityKind.Density, 56 * 16.01846337)]
    [InlineData("1.85 MHz", QuantityKind.Frequency, 1.85e6)]
    [InlineData("12 uH", QuantityKind.Inductance, 12e-6)]
    [InlineData("300 pF", QuantityKind.Capacitance, 300e-12)]
    [InlineData("50 ohm", QuantityKind.Resistance, 50)]
    [InlineData("120 °", QuantityKind.Angle, 2.0943951023931953)]
    [InlineData("120 deg", QuantityKind.Angle, 2.0943951023931953)]
    [InlineData("0.005 S/m", QuantityKind.Conductivity, 0.005)]
    [InlineData("0.2 m2", QuantityKind.Area, 0.2)]
    [InlineData("900 kg/m³", QuantityKind.Density, 900)]
    [InlineData("0", QuantityKind.Length, 0)]
    [InlineData("60", QuantityKind.Count, 60)]
    public void Reads_quantities_as_people_write_them(string text, QuantityKind kind, double expectedSi)
    {
        var reading = QuantityText.Read(text, kind);

        Assert.Null(reading.Problem);
        Assert.Equal(expectedSi, reading.ValueSi, Math.Abs(expectedSi) * 1e-8 + 1e-30);
    }

    [Theory]
    [InlineData("10 AWG", 2.588e-3)] // ASTM B258 table: 0.1019 in
    [InlineData("#14", 1.628e-3)] // 0.0641 in
    [InlineData("AWG 12", 2.053e-3)] // 0.0808 in
    public void Reads_wire_gauges(string text, double expectedM) =>
        Assert.Equal(expectedM, QuantityText.Read(text, QuantityKind.FineLength).ValueSi, 0.5e-6);

    [Theory]
    [InlineData("72", QuantityKind.Length)]
    [InlineData("72 kg", QuantityKind.Length)]
    [InlineData("72 furlongs", QuantityKind.Length)]
    [InlineData("tall", QuantityKind.Length)]
    [InlineData("", QuantityKind.Length)]
    [InlineData("NaN m", QuantityKind.Length)]
    [InlineData(".nan", QuantityKind.Length)]
    [InlineData("∞ m", QuantityKind.Length)]
    [InlineData("1e999 m", QuantityKind.Length)]
    [InlineData("3/0 in", QuantityKind.FineLength)]
    [InlineData("1 m 2 s", QuantityKind.Length)]
    [InlineData("10 W 5 W", QuantityKind.Power)]
    [InlineData("0", QuantityKind.Temperature)]
    [InlineData("1,5 m", QuantityKind.Length)]
    public void Refuses_what_is_no_such_quantity_with_a_reason_and_a_way_out(string text, QuantityKind kind)
    {
        var reading = QuantityText.Read(text, kind);

        Assert.False(reading.Ok);
        Assert.False(string.IsNullOrWhiteSpace(reading.Problem));
        Assert.False(string.IsNullOrWhiteSpace(reading.WayOut));
    }

    [Fact]
    public void Says_which_dimension_was_written_and_which_is_wanted()
    {
        var reading = QuantityText.Read("5 kg", QuantityKind.Speed);

        Assert.Contains("a mass", reading.Problem);
        Assert.Contains("a speed", reading.Problem);
    }

    [Fact]
    public void What_is_shown_reads_back_to_the_shown_digits()
    {
        foreach (var kind in Enum.GetValues<QuantityKind>().Where(k => UnitTable.For(k).Count > 0))
        {
            foreach (var system in Enum.GetValues<UnitSystem>())
            {
                foreach (var value in new[] { 300.0, 1.2345, 0.0123, 98765 })
                {
                    var shown = QuantityFormat.Show(value, kind, system, digits: 12);
                    var back = QuantityText.Read(shown, kind);
                    Assert.True(back.Ok, $"{kind} {shown}: {back.Problem}");
                    // Twelve digits of a temperature on a shifted scale are twelve digits of some hundred kelvin,
                    // and twelve of a gauge number are fewer of its exponential.
                    var scale = kind == QuantityKind.Temperature ? value + 500 : 10 * value;
                    Assert.Equal(value, back.ValueSi, scale * 1e-9);
                }
            }
        }
    }
}
