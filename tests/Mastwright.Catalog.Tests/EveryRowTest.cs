using System.Reflection;
using Mastwright.Model.Trails;

namespace Mastwright.Catalog.Tests;

public class EveryRowTest
{
    public static TheoryData<string> Shelves() =>
        [.. typeof(Catalogue).GetProperties().Where(p => p.PropertyType.IsGenericType).Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Shelves))]
    public void Row_names_its_source_and_its_standing(string shelf) =>
        Assert.All(PartsOf(shelf), part =>
        {
            Assert.NotEqual("", part.Source.Title);
            Assert.Equal(part.Info.Mark == RowMark.FromMemory, part.Source.Kind == SourceKind.FromMemory);
            Assert.Equal(part.Info.NeedsMakerData, part.Source.Kind == SourceKind.Assumed);
            Assert.False(part.Info.NeedsMakerData && part.Info.Note.Length == 0);
        });

    [Theory]
    [MemberData(nameof(Shelves))]
    public void Row_holds_finite_numbers_that_are_not_negative(string shelf) =>
        Assert.All(PartsOf(shelf), part =>
        {
            foreach (var property in part.GetType().GetProperties().Where(p => p.GetValue(part) is double && p.Name != nameof(Rope.ExpansionPerK)))
            {
                Assert.InRange((double)property.GetValue(part)!, 0, 1e12);
            }
        });

    [Fact]
    public void Metals_named_by_other_shelves_exist()
    {
        var parts = Catalogue.Default;
        Assert.All(
            parts.Tubes.All.Select(t => t.Metal).Concat(parts.Lattices.All.Select(l => l.Metal)).Concat(parts.Wires.All.Select(w => w.Metal)).Distinct(),
            name => Assert.True(parts.Metals.Find(name).Found, name));
    }

    [Fact]
    public void Lattice_mass_is_that_of_its_own_pieces_and_a_little_for_joints()
    {
        Assert.All(Catalogue.Default.Lattices.All, l =>
        {
            static double Area(double d, double t) => Math.PI / 4 * (d * d - (t > 0 ? (d - 2 * t) * (d - 2 * t) : 0));
            var diagonals = l.Pattern == BracePattern.Cross ? 2 : 1;
            var diagonal = diagonals * Math.Sqrt(l.FaceWidthM * l.FaceWidthM + l.PanelHeightM * l.PanelHeightM) * Area(l.DiagonalDiameterM, l.DiagonalWallM);
            var horizontal = l.FaceWidthM * Area(l.HorizontalDiameterM, l.HorizontalWallM);
            var perMetre = l.Legs * (Area(l.LegDiameterM, l.LegWallM) + (diagonal + horizontal) / l.PanelHeightM);
            var mass = perMetre * Catalogue.Default.Metals[l.Metal].DensityKgPerM3;
            Assert.InRange(l.MassPerLengthKgPerM / mass, 1.0, 1.06);
        });
    }

    [Fact]
    public void Unknown_unit_or_mark_in_a_table_is_refused_with_its_place()
    {
        var unit = Assert.Throws<FormatException>(() => DataFile.Parse("x.csv", "name,size_furlong\na,1\n", r => r.Text("name")));
        Assert.Contains("size_furlong", unit.Message);
        var mark = Assert.Throws<FormatException>(() => DataFile.Parse("x.csv", "name,source,edition,mark,note\na,b,,certain,\n", r => r.Info()));
        Assert.Contains("x.csv, line 2", mark.Message);
    }

    private static IEnumerable<Part> PartsOf(string shelf)
    {
        var value = typeof(Catalogue).GetProperty(shelf)!.GetValue(Catalogue.Default)!;
        var all = (System.Collections.IEnumerable)value.GetType().GetProperty("All", BindingFlags.Public | BindingFlags.Instance)!.GetValue(value)!;
        return all.Cast<Part>();
    }
}
