using System.Globalization;
using System.Reflection;
using FsCheck.Xunit;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Tests;

public class DesignReaderTests
{
    internal const string Good = """
        mastwright: 1
        name: Test mast
        site:
          wind: { speed: 90 mph }
        masts:
          - name: A
            base: { insulator: post }
            sections:
              - length: 22 m
                lattice: tri
            anchors:
              - { name: N, bearing: 0 deg, distance: 12 m }
              - { name: SE, bearing: 120 deg, distance: 12 m }
              - { name: SW, bearing: 240 deg, distance: 12 m }
            guys:
              - { height: 11 m, strand: ehs }
              - { height: 21 m, strand: ehs, initial-tension: 12 %, anchors: [N, SE, SW] }
            radials: { count: 60, length: 20 m }
        bands:
          - { frequency: 1.85 MHz, power: 1500 W }
        """;

    private static DesignReading Read(string text) => DesignReader.Read(text, "test.yaml", _ => null);

    private static Finding Only(string text)
    {
        var reading = Read(text);
        Assert.Null(reading.Station);
        return Assert.Single(reading.Findings);
    }

    private static string With(string from, string to)
    {
        Assert.Contains(from, Good);
        return Good.Replace(from, to);
    }

    [Fact]
    public void Reads_a_good_file_and_shows_what_it_assumed()
    {
        var reading = Read(Good);

        Assert.Empty(reading.Findings);
        var mast = reading.Station!.Masts[0];
        Assert.Equal(22.4, mast.TopM, 9);
        Assert.Equal(0.12, mast.Guys[1].InitialTension.ShareOfStrength);
        Assert.Equal(90 * 0.44704, reading.Station.Site.Wind.SpeedMPerS!.Value, 9);
        Assert.Equal("160 m", reading.Station.Bands[0].Title);
        Assert.Contains(reading.Assumptions, a => a.Path == "site.coldest" && a.Value == "-25 °C");
        Assert.Equal("-13 °F", reading.Assumptions.Single(a => a.Path == "site.coldest").Shown(UnitSystem.Us));
        Assert.Equal("-25 °C", reading.Assumptions.Single(a => a.Path == "site.coldest").Shown(UnitSystem.Metric));
        Assert.Contains(reading.Assumptions, a => a.Path == "feed.coil-q" && a.Shown(UnitSystem.Us) == a.Value);
        Assert.Contains(reading.Assumptions, a => a.Path == "masts[0].base.height");
        Assert.All(reading.Assumptions, a => Assert.NotEmpty(a.Why));
    }

    [Fact]
    public void Gathers_every_finding_at_once_with_place_value_allowed_and_way_out()
    {
        var text = With("height: 11 m", "hieght: 11 m").Replace("wind: { speed: 90 mph }", "wind: { speed: 90 kg }")
            .Replace("length: 22 m", "length: -22 m").Replace("count: 60", "count: 2.5");

        var reading = Read(text);

        Assert.Null(reading.Station);
        Assert.Equal(["not-a-quantity", "out-of-range", "missing-field", "unknown-key", "not-whole"], reading.Findings.Select(f => f.Code));
        Assert.All(reading.Findings, f =>
        {
            Assert.Equal("test.yaml", f.Place!.File);
            Assert.True(f.Place.Line > 0 && f.Place.Column > 0);
            Assert.NotEmpty(f.Place.Path);
            Assert.NotEmpty(f.WayOut!);
        });
        var typo = reading.Findings.Single(f => f.Code == "unknown-key");
        Assert.Contains("Did you mean “height”?", typo.Message);
        Assert.Equal(16, typo.Place!.Line);
        Assert.Equal(11, typo.Place.Column);
    }

    [Theory]
    [InlineData("height: 21 m", "height: 30 m", "guy-above-mast")]
    [InlineData("height: 21 m", "height: 11.1 m", "guy-levels-together")]
    [InlineData("anchors: [N, SE, SW]", "anchors: [N, SE, SV]", "missing-anchor")]
    [InlineData("anchors: [N, SE, SW]", "anchors: [N, SE]", "guys-one-sided")]
    [InlineData("count: 60", "count: 1000", "out-of-range")]
    [InlineData("speed: 90 mph", "speed: .nan", "not-a-quantity")]
    [InlineData("speed: 90 mph", "speed: 90 mph, method: guess", "unknown-word")]
    [InlineData("speed: 90 mph", "exposure: open", "missing-wind")]
    [InlineData("lattice: tri", "lattice: tri\n        tube: { diameter: 50 mm, wall: 3 mm, metal: x }", "section-kind")]
    [InlineData("lattice: tri", "tube: { diameter: 50 mm, wall: 30 mm, metal: x }", "wall-too-thick")]
    [InlineData("initial-tension: 12 %", "initial-tension: 99 %", "out-of-range")]
    [InlineData("initial-tension: 12 %", "initial-tension: tight", "not-a-tension")]
    [InlineData("name: SE,", "name: N,", "name-twice", "missing-anchor")]
    [InlineData("name: Test mast", "name: ''", "empty-text")]
    [InlineData("{ name: N, bearing: 0 deg, distance: 12 m }", "{ name: N, bearing: 0 deg, distance: 12 m, rise: 15 m }", "anchor-above-attachment")]
    public void Refuses_each_mistake_by_name(string from, string to, params string[] codes)
    {
        var reading = Read(With(from, to));

        Assert.Null(reading.Station);
        Assert.Equal(codes.Order(), reading.Findings.Select(f => f.Code).Distinct().Order());
    }

    [Fact]
    public void Refuses_two_masts_in_one_place()
    {
        var start = Good.IndexOf("  - name: A", StringComparison.Ordinal);
        var end = Good.IndexOf("bands:", StringComparison.Ordinal);
        var second = Good[start..end].Replace("name: A", "name: B");

        var finding = Only(Good.Insert(end, second));

        Assert.Equal("masts-in-one-place", finding.Code);
    }

    [Fact]
    public void Refuses_a_yaml_bomb_at_its_first_alias()
    {
        var finding = Only("a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n");

        Assert.Equal("yaml", finding.Code);
        Assert.Contains("anchors", finding.Message);
    }

    [Fact]
    public void Refuses_deep_nesting_and_a_file_of_fifty_megabytes()
    {
        Assert.Equal("yaml", Only(new string('[', 5000)).Code);
        var big = Only("name: " + new string('x', 50_000_000));
        Assert.Equal("file-too-large", big.Code);
        Assert.Contains("50,000,006", big.Value);
    }

    [Theory]
    [InlineData("", "empty-file")]
    [InlineData("just text", "not-a-design")]
    [InlineData("a: [", "yaml")]
    [InlineData("name: x", "no-version")]
    [InlineData("mastwright: one", "bad-version")]
    [InlineData("mastwright: 99", "newer-version")]
    public void Refuses_what_is_no_design_file(string text, string code) => Assert.Equal(code, Only(text).Code);

    [Fact]
    public void Older_files_are_lifted_step_by_step()
    {
        // The first format has no predecessor; the mechanism is shown with a step that a coming version would bring.
        var lift = new RenameSpeed();

        var reading = DesignReader.Read(With("speed: 90 mph", "gust: 90 mph"), "old.yaml", _ => null, [lift]);

        Assert.True(reading.Ok, string.Join("; ", reading.Findings.Select(f => f.Message)));
        Assert.Equal(90 * 0.44704, reading.Station!.Site.Wind.SpeedMPerS!.Value, 9);
    }

    private sealed class RenameSpeed : IDesignMigration
    {
        public int From => 1;

        public MapText Lift(MapText map) => map with { Entries = [.. map.Entries.Select(e => e with { Key = e.Key == "gust" ? "speed" : e.Key, Value = Inner(e.Value) })] };

        private TextNode Inner(TextNode node) => node is MapText m ? Lift(m) : node;
    }

    [Fact]
    public void Every_default_said_in_the_documentation_is_the_one_taken()
    {
        var shapes = AllShapes(RecordShape.Root).Distinct().ToList();
        Assert.True(shapes.Count > 10);
        foreach (var field in shapes.SelectMany(s => s.Fields).Where(f => f.Field.Why is not null && !f.IsList && f.Form != FieldForm.Record))
        {
            var taken = field.Property.GetValue(Activator.CreateInstance(field.Property.DeclaringType!));
            var said = field.Field.Default!;
            switch (field.Form)
            {
                case FieldForm.Quantity:
                    var si = QuantityText.Read(said, field.Quantity!.Kind);
                    Assert.True(si.Ok, field.Field.Key + ": " + si.Problem);
                    var value = Convert.ToDouble(taken, CultureInfo.InvariantCulture);
                    Assert.Equal(si.ValueSi, value, Math.Abs(value) * 1e-3);
                    break;
                case FieldForm.Word:
                    Assert.Equal(field.Words.Single(w => w.Word == said).Value, taken);
                    break;
                case FieldForm.YesNo:
                    Assert.Equal(said == "yes", taken);
                    break;
                case FieldForm.Tension:
                    Assert.Equal(InitialTension.Share(QuantityText.Read(said, QuantityKind.Ratio).ValueSi), taken);
                    break;
                default:
                    Assert.Equal(said, taken);
                    break;
            }
        }
    }

    [Property(MaxTest = 300)]
    public void No_text_whatever_makes_it_throw(string? noise, int at, int cut)
    {
        var place = Math.Abs(at % Good.Length);
        var length = Math.Min(Math.Abs(cut % 40), Good.Length - place);
        var text = Good.Remove(place, length).Insert(place, noise ?? "");

        var reading = Read(text);

        Assert.Equal(reading.Station is null, reading.Findings.Any(f => f.Severity == Severity.Error));
    }

    internal static IEnumerable<RecordShape> AllShapes(RecordShape shape) =>
        shape.Fields.Where(f => f.Form == FieldForm.Record).SelectMany(f => AllShapes(RecordShape.Of(f.ItemType))).Prepend(shape);

    [Fact]
    public void Every_public_type_of_the_design_is_immutable()
    {
        var settable = typeof(Station).Assembly.GetExportedTypes()
            .Where(t => t.Namespace == typeof(Station).Namespace)
            .SelectMany(t => t.GetProperties(BindingFlags.Instance | BindingFlags.Public))
            .Where(p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)))
            .Select(p => $"{p.DeclaringType!.Name}.{p.Name}");

        Assert.Empty(settable);
    }
}
