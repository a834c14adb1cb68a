using FsCheck.Xunit;
using Mastwright.Build.Sweeps.Csv;

namespace Mastwright.Build.Tests.Sweeps;

public class CsvSweepReaderTests
{
    private static Reading<CsvSweep> Read(string text, double? unit = null, double? reference = null) => CsvSweepReader.Read(text, new("s.csv", unit, reference));

    [Theory]
    [InlineData("Frequency (MHz),R,X\n3.5,40,-12\n3.6,42,3\n")]
    [InlineData("freq_khz;Rs;Xs\n3500;40;-12\n3600;42;3\n")]
    [InlineData("Frequency [Hz]\tRe(Z)\tIm(Z)\n3500000\t40\t-12\n3.6e6\t42\t3\n")]
    [InlineData("\uFEFFsweep of the mast, east\nZ0 = 50\n\nFreq/MHz, Resistance (ohm), Reactance (ohm)\n3.5, 40, -12\n3.6, 42, 3\n")]
    [InlineData("f (MHz);R;X\n3,5;40,0;-12,0\n3,6;42,0;3,0\n")]
    [InlineData("f (MHz),|Z|,phase (deg)\n3.5,41.761226035642203,-16.69924423399362\n3.6,42.107006542854599,4.085616779974877\n")]
    [InlineData("f (MHz),S11 real,S11 imag\n3.5,-0.09170305676855896,-0.1455604075691412\n3.6,-0.08580195916440458,0.03540658562492623\n")]
    public void Every_known_shape_of_table_gives_the_same_impedances(string text)
    {
        var sweep = Read(text).Value!.Impedance!;
        Assert.Equal(3.5e6, sweep.Points[0].FrequencyHz, 1e-3);
        Assert.Equal(40, sweep.Points[0].ImpedanceOhm.Real, 1e-9);
        Assert.Equal(-12, sweep.Points[0].ImpedanceOhm.Imaginary, 1e-9);
        Assert.Equal(42, sweep.Points[1].ImpedanceOhm.Real, 1e-9);
        Assert.Equal(3, sweep.Points[1].ImpedanceOhm.Imaginary, 1e-9);
    }

    [Theory]
    [InlineData("f (MHz),SWR\n7.0,2\n7.1,3\n", 2.0)]
    [InlineData("f (MHz),Return loss (dB)\n7.0,9.54242509439325\n7.1,6\n", 2.0)]
    [InlineData("f (MHz),S11 (dB)\n7.0,-9.54242509439325\n7.1,-6\n", 2.0)]
    [InlineData("f (MHz),|S11|\n7.0,0.3333333333333333\n7.1,0.5\n", 2.0)]
    public void Without_phase_only_the_standing_wave_ratio_remains(string text, double swr)
    {
        var sweep = Read(text).Value!;
        Assert.Null(sweep.Impedance);
        Assert.Equal(swr, sweep.Swr.Points[0].Swr, 1e-9);
    }

    [Fact]
    public void An_unsigned_reactance_is_not_taken_for_a_signed_one()
    {
        var reading = Read("f (MHz),R,|X|\n7.0,40,12\n7.1,40,3\n");
        Assert.Null(reading.Value!.Impedance);
        Assert.Contains(reading.Findings, f => f.Code == "reactance-unsigned");
    }

    [Fact]
    public void A_missing_unit_is_asked_for_and_can_be_given()
    {
        var text = "Frequency,R,X\n3.5,40,-12\n3.6,42,3\n";
        var finding = Assert.Single(Read(text).Errors);
        Assert.Equal("unit-missing", finding.Code);
        Assert.Equal((1, 1), (finding.Place!.Line, finding.Place.Column));
        Assert.Equal(3.5e6, Read(text, unit: 1e6).Value!.Impedance!.Points[0].FrequencyHz);
    }

    [Theory]
    [InlineData("a,b\n1,2\n", "heading-missing")]
    [InlineData("Frequency (MHz),temperature\n1,2\n", "columns-missing")]
    [InlineData("Frequency (MHz),R,X\n", "rows-unusable")]
    [InlineData("Frequency (MHz),R,X\na,b,c\n", "rows-unusable")]
    [InlineData("", "heading-missing")]
    public void An_unusable_table_says_why(string text, string code) => Assert.Contains(Read(text).Errors, f => f.Code == code);

    [Fact]
    public void A_half_written_table_keeps_its_whole_rows()
    {
        var reading = Read("Frequency (MHz),R,X\n3.5,40,-12\n3.6,42,3\n3.7,4");
        Assert.Equal(2, reading.Value!.Impedance!.Points.Length);
        var finding = Assert.Single(reading.Findings, f => f.Code == "half-written");
        Assert.Equal((4, 6), (finding.Place!.Line, finding.Place.Column));
    }

    [Fact]
    public void A_bad_row_is_left_out_with_its_place()
    {
        var reading = Read("Frequency (MHz),R,X\n3.5,40,-12\n3.6,---,3\n3.7,42,5\n3.8,42,5\n");
        Assert.Equal(3, reading.Value!.Impedance!.Points.Length);
        var finding = Assert.Single(reading.Findings, f => f.Code == "number-bad");
        Assert.Equal((3, 5, "R"), (finding.Place!.Line, finding.Place.Column, finding.Place.Path));
    }

    [Fact]
    public void Unsorted_and_repeated_frequencies_are_said_and_mended()
    {
        var reading = Read("Frequency (MHz),R,X\n3.7,40,-12\n3.6,42,3\n3.6,42,4\n");
        Assert.Equal([3.6e6, 3.7e6], reading.Value!.Impedance!.Points.Select(p => p.FrequencyHz));
        Assert.Contains(reading.Findings, f => f.Code == "frequency-unsorted" && f.Place!.Line == 3);
        Assert.Contains(reading.Findings, f => f.Code == "frequency-repeated");
    }

    [Fact]
    public void A_reference_in_the_text_wins_and_a_difference_is_said()
    {
        var reading = Read("# Z0 = 75 ohm\nf (MHz),S11 re,S11 im\n7,0,0\n7.1,0,0\n", reference: 50);
        Assert.Equal(75, reading.Value!.Impedance!.Points[0].ImpedanceOhm.Real, 1e-9);
        Assert.Contains(reading.Findings, f => f.Code == "reference-differs");
    }

    [Property]
    public bool No_text_whatever_makes_the_reader_throw(string? text, bool heading)
    {
        var reading = Read((heading ? "Frequency (MHz),R,X\n" : "") + text);
        return reading.IsUsable || reading.Errors.Any();
    }
}
