using System.Numerics;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Touchstone;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Sweeps;

/// <summary>Grammar of the open network-parameter text format: version 1 and 2.0 texts of the specification, from memory.</summary>
public class TouchstoneReaderTests
{
    private static Reading<TouchstoneFile> Read(string text, string name = "a.s1p", double? expected = null) =>
        TouchstoneReader.Read(text, new(name, expected));

    private static NetworkData Data(string text, string name = "a.s1p")
    {
        var reading = Read(text, name);
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings));
        return reading.Value!.Data;
    }

    private static void Near(Complex expected, Complex actual, double tolerance = 1e-12) =>
        Assert.True((expected - actual).Magnitude <= tolerance * Math.Max(1, expected.Magnitude), $"expected {expected}, got {actual}");

    [Fact]
    public void Without_an_option_line_the_defaults_hold()
    {
        var data = Data("1.0 0.5 90\n2.0 0.25 180\n");
        Assert.Equal(1e9, data.Points[0].FrequencyHz);
        Assert.Equal(50, data.ReferenceOhm[0]);
        Near(new(0, 0.5), data.Points[0].Matrix[0]);
        Near(new(-0.25, 0), data.Points[1].Matrix[0]);
    }

    [Theory]
    [InlineData("# Hz S RI R 50", 1)]
    [InlineData("# khz s ri r 50", 1e3)]
    [InlineData("#MHZ RI S R 50", 1e6)]
    [InlineData("# R 50 S GHz RI", 1e9)]
    public void Option_fields_come_in_any_order_and_case(string option, double unit)
    {
        var data = Data(option + "\n3.5 0.1 -0.2\n4 0 0");
        Assert.Equal(3.5 * unit, data.Points[0].FrequencyHz);
        Near(new(0.1, -0.2), data.Points[0].Matrix[0]);
    }

    [Fact]
    public void Zero_decibels_is_everything_back()
    {
        var data = Data("# MHz S DB R 50\n1 0 0\n2 -20 180\n");
        Near(1, data.Points[0].Matrix[0]);
        Near(-0.1, data.Points[1].Matrix[0]);
    }

    [Fact]
    public void Comments_tabs_carriage_returns_and_lower_case_exponents_are_read()
    {
        var data = Data("! head\r\n#\tMHz\tS\tRI\tR\t50\r\n\r\n1.0e0\t5e-1\t-2.5e-1 ! at line end\r\n  ! alone\r\n2.0\t0\t0\r\n");
        Assert.Equal(2, data.Points.Length);
        Near(new(0.5, -0.25), data.Points[0].Matrix[0]);
    }

    [Fact]
    public void Negative_magnitude_points_the_other_way() => Near(-0.5, Data("# MHz S MA R 50\n1 -0.5 0\n2 0 0\n").Points[0].Matrix[0]);

    [Fact]
    public void Version_1_impedances_are_relative_to_the_reference_and_version_2_ones_are_not()
    {
        Near(new(75, 37.5), Data("# MHz Z RI R 75\n1 1 0.5\n2 1 0\n").Points[0].Matrix[0]);
        Near(new(1.0 / 75, 0), Data("# MHz Y RI R 75\n1 1 0\n2 1 0\n").Points[0].Matrix[0]);
        var two = "[Version] 2.0\n# MHz Z RI R 75\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n1 75 37.5\n2 75 0\n[End]\n";
        Near(new(75, 37.5), Data(two).Points[0].Matrix[0]);
    }

    [Fact]
    public void Version_1_impedances_without_a_reference_say_what_was_taken()
    {
        var reading = Read("# MHz Z RI\n1 1 0\n2 1 0\n");
        Assert.Contains(reading.Findings, f => f.Code == "reference-assumed" && f.Severity == Severity.Warning);
        Near(50, reading.Value!.Data.Points[0].Matrix[0]);
    }

    [Fact]
    public void Version_1_hybrid_parameters_scale_only_their_diagonal()
    {
        var h = Data("# MHz H RI R 50\n1  2 0  3 0  4 0  5 0\n2  2 0  3 0  4 0  5 0\n", "a.s2p").Points[0].Matrix;
        Assert.Equal([100.0, 4.0, 3.0, 0.1], h.Select(v => v.Real));
        var g = Data("# MHz G RI R 50\n1  2 0  3 0  4 0  5 0\n2  2 0  3 0  4 0  5 0\n", "a.s2p").Points[0].Matrix;
        Assert.Equal([0.04, 4.0, 3.0, 250.0], g.Select(v => v.Real));
    }

    [Fact]
    public void Two_port_lines_run_down_the_first_column_first()
    {
        var m = Data("# MHz S RI R 50\n1 0.11 0 0.21 0 0.12 0 0.22 0\n2 0 0 0 0 0 0 0 0\n", "a.s2p").Points[0].Matrix;
        Assert.Equal([0.11, 0.12, 0.21, 0.22], m.Select(v => v.Real));
    }

    [Theory]
    [InlineData("21_12", new[] { 0.1, 0.3, 0.2, 0.4 })]
    [InlineData("12_21", new[] { 0.1, 0.2, 0.3, 0.4 })]
    public void Version_2_names_the_order_of_a_two_port(string order, double[] rowByRow)
    {
        var text = $"[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] {order}\n[Number of Frequencies] 1\n[Reference] 50\n 75\n[Network Data]\n1 .1 0 .2 0 .3 0 .4 0\n[End]\n";
        var data = Data(text, "a.ts");
        Assert.Equal(rowByRow, data.Points[0].Matrix.Select(v => v.Real));
        Assert.Equal([50.0, 75.0], data.ReferenceOhm);
    }

    [Theory]
    [InlineData("Lower", "1 .1 0\n.2 0 .3 0\n.4 0 .5 0 .6 0", new[] { .1, .2, .4, .2, .3, .5, .4, .5, .6 })]
    [InlineData("Upper", "1 .1 0 .2 0 .4 0\n.3 0 .5 0\n.6 0", new[] { .1, .2, .4, .2, .3, .5, .4, .5, .6 })]
    public void Half_a_symmetric_matrix_is_filled_up(string format, string rows, double[] full)
    {
        var text = $"[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 3\n[Number of Frequencies] 1\n[Matrix Format] {format}\n[Network Data]\n{rows}\n[End]\n";
        Assert.Equal(full, Data(text, "a.ts").Points[0].Matrix.Select(v => v.Real));
    }

    [Fact]
    public void Many_ports_run_row_by_row_over_several_lines()
    {
        var rows = string.Join('\n', Enumerable.Range(1, 5).Select(i => (i == 1 ? "1 " : "") + string.Join(' ', Enumerable.Range(1, 4).Select(j => $"0.{i}{j} 0")) + $"\n0.{i}5 0"));
        var data = Data("# MHz S RI R 50\n" + rows + "\n" + rows.Replace("1 0.11", "2 0.11", StringComparison.Ordinal) + "\n", "a.s5p");
        Assert.Equal(5, data.Ports);
        Assert.Equal(0.45, data.Points[0].Matrix[(3 * 5) + 4].Real);
        Assert.Equal(2e6, data.Points[1].FrequencyHz);
    }

    [Fact]
    public void A_step_back_after_a_two_port_starts_the_noise_data()
    {
        var data = Data("# GHz S MA R 50\n1 .1 0 .2 0 .3 0 .4 0\n2 .1 0 .2 0 .3 0 .4 0\n! noise\n1 0.7 .6 45 .5\n2 0.8 .5 50 .4\n", "a.s2p");
        Assert.Equal(2, data.Points.Length);
        Assert.Equal(2, data.Noise.Length);
        Assert.Equal(25, data.Noise[0].NoiseResistanceOhm, 12);
    }

    [Fact]
    public void Several_references_on_the_option_line_make_it_version_1_1()
    {
        var file = Read("# MHz S RI R 50 75\n1 .1 0 .2 0 .3 0 .4 0\n2 .1 0 .2 0 .3 0 .4 0\n", "a.s2p").Value!;
        Assert.Equal("1.1", file.Header.Version);
        Assert.Equal([50.0, 75.0], file.Data.ReferenceOhm);
    }

    [Theory]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0.4 0\n3 0.3", 4, 1)]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0.4 0\n3 0.3 1.2e", 4, 7)]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0.4 0\n3", 4, 1)]
    public void A_half_written_file_keeps_what_is_whole(string text, int line, int column)
    {
        var reading = Read(text);
        Assert.Equal(2, reading.Value!.Data.Points.Length);
        var finding = Assert.Single(reading.Findings, f => f.Code == "half-written");
        Assert.Equal((line, column), (finding.Place!.Line, finding.Place.Column));
    }

    [Fact]
    public void Unsorted_frequencies_are_put_in_order_and_said()
    {
        var reading = Read("# MHz S RI R 50\n3 0.3 0\n1 0.1 0\n2 0.2 0\n");
        Assert.Equal([1e6, 2e6, 3e6], reading.Value!.Data.Points.Select(p => p.FrequencyHz));
        Assert.Equal(3, Assert.Single(reading.Findings, f => f.Code == "frequency-unsorted").Place!.Line);
    }

    [Theory]
    [InlineData("# MHz S RI R 50\n1 0.5 zero\n2 0 0\n", "number-bad", 2, 7)]
    [InlineData("# MHz S RI R 50\n1 0,5 0\n2 0 0\n", "number-bad", 2, 3)]
    [InlineData("# MHz S RI R 50 foo\n1 0.5 0\n", "option-unknown", 1, 17)]
    [InlineData("# MHz S RI R 0\n1 0.5 0\n", "reference-bad", 1, 14)]
    [InlineData("# MHz S RI R\n1 0.5 0\n", "reference-missing", 1, 12)]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0.5 0 1 1\n3 0 0\n", "set-size", 3, 1)]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0.4\n3 0 0\n", "set-size", 3, 1)]
    [InlineData("# MHz H RI R 50\n1 0.5 0\n2 0.5 0\n", "hybrid-ports", 2, 1)]
    [InlineData("# MHz S RI R 50\n! nothing\n", "no-data", 1, 1)]
    [InlineData("", "file-empty", 1, 1)]
    [InlineData("[Version] 3.0\n# MHz S RI R 50\n1 0 0\n", "version-unknown", 1, 1)]
    [InlineData("# MHz S RI R 50\n[Version] 2.0\n1 0 0\n", "version-late", 2, 1)]
    [InlineData("[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] two\n", "count-bad", 3, 1)]
    [InlineData("[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Number of Frequencies] 1\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]", "keyword-missing", 7, 1)]
    [InlineData("[Version] 2.0\n# MHz S RI R 50\n[Mixed-Mode Order] D1,2\n", "mixed-mode", 3, 1)]
    public void A_fault_is_named_with_its_place(string text, string code, int line, int column)
    {
        var reading = Read(text);
        Assert.False(reading.IsUsable);
        var finding = reading.Errors.First(f => f.Code == code);
        Assert.Equal((line, column), (finding.Place!.Line, finding.Place.Column == 0 ? 1 : finding.Place.Column));
        Assert.False(string.IsNullOrEmpty(finding.WayOut));
    }

    [Theory]
    [InlineData("# MHz S RI R 75\n1 0 0\n2 0 0\n", "reference-differs")]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n2 0 0\n# MHz S MA R 50\n", "option-after-data")]
    [InlineData("# MHz S RI R 50\n# MHz S MA R 50\n1 0.5 0\n2 0 0\n", "option-repeated")]
    [InlineData("# MHz S RI R 50\n1 0.5 0\n1 0.6 0\n2 0 0\n", "frequency-repeated")]
    [InlineData("# MHz S RI R 50\n1 40 30\n2 0 0\n", "reflection-above-one")]
    [InlineData("# MHz S RI R 50\n1 0 0 0 0 0 0 0 0\n2 0 0 0 0 0 0 0 0\n", "ports-differ")]
    public void A_doubtful_file_is_read_with_a_warning(string text, string code)
    {
        var reading = Read(text, expected: 50);
        Assert.True(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code && f.Severity == Severity.Warning);
    }

    [Fact]
    public void Version_2_counts_are_compared_with_the_data()
    {
        var reading = Read("[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 1\n[Number of Frequencies] 3\n[Begin Information]\n[Anything] here\nfree words\n[End Information]\n[Network Data]\n1 0 0\n2 0 0\n[End]\n");
        Assert.Equal(2, reading.Value!.Data.Points.Length);
        Assert.Contains(reading.Findings, f => f.Code == "frequency-count");
        Assert.DoesNotContain(reading.Findings, f => f.Code == "keyword-unknown");
    }
}
