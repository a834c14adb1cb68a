using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Members;

namespace Mastwright.Analysis.Stand;

/// <summary>A run of mast as the structure sees it.</summary>
/// <param name="Name">Shown in results.</param>
/// <param name="BottomM">Lower end, height above the foot.</param>
/// <param name="TopM">Upper end, height above the foot.</param>
/// <param name="Properties">Stiffness and mass.</param>
/// <param name="Shape">What wind and ice meet.</param>
/// <param name="Metal">The metal.</param>
/// <param name="Tube">The tube, when it is one.</param>
/// <param name="Lattice">The lattice, when it is one.</param>
/// <param name="MassKgPerM">Mass per metre, joints included where the catalogue gives it.</param>
/// <param name="ExpansionPerK">Thermal expansion.</param>
/// <param name="Welded">Whether a tube has welds along its length.</param>
/// <param name="Section">Number of the design's section it comes from, from 0; the slices of a tapered tube share it.</param>
public sealed record MastRun(
    string Name, double BottomM, double TopM, SectionProperties Properties, MastShape Shape, MemberMetal Metal,
    RoundSection? Tube, LatticeSection? Lattice, double MassKgPerM, double ExpansionPerK, bool Welded, int Section);

/// <summary>Turns the sections of a design into runs of mast with their properties.</summary>
public static class MastSections
{
    private const int MostSlices = 12;
    private const double SliceM = 0.75;

    /// <summary>The runs from the foot up.</summary>
    public static IReadOnlyList<MastRun> Of(Mast mast)
    {
        var runs = new List<MastRun>();
        var at = 0.0;
        foreach (var (section, index) in mast.Sections.Select((s, i) => (s, i)))
        {
            runs.AddRange(Runs(section, at, index));
            at += section.LengthM;
        }

        return runs;
    }

    /// <summary>The pieces a section comes in: their length, m.</summary>
    public static double PieceM(Section section) => Math.Min(section.LengthM,
        section.PieceM ?? (section.Lattice is { } lattice ? Catalogue.Default.Lattices[lattice].SectionLengthM : section.LengthM));

    private static IEnumerable<MastRun> Runs(Section section, double bottomM, int index)
    {
        var name = $"run {index + 1}";
        if (section.Tube is not { } tube)
        {
            return [Lattice(section, name, bottomM, index)];
        }

        if (tube.TopDiameterM is not { } narrow || Math.Abs(narrow - tube.DiameterM) < 1e-9)
        {
            return [Tube(tube, tube.DiameterM, name, bottomM, bottomM + section.LengthM, index)];
        }

        var taper = new TaperedTube(tube.DiameterM, narrow, tube.WallM, section.LengthM);
        return taper.Slices(Math.Clamp((int)Math.Ceiling(section.LengthM / SliceM), 3, MostSlices), bottomM)
            .Select((s, i) => Tube(tube, s.Section.OuterDiameterM, $"{name}, slice {i + 1}", s.BottomM, s.TopM, index));
    }

    private static MastRun Tube(TubeSection tube, double diameterM, string name, double bottomM, double topM, int index)
    {
        var round = new RoundSection(diameterM, tube.WallM);
        var metal = Metal(tube.Metal);
        var properties = round.Properties(metal);
        return new MastRun(name, bottomM, topM, properties, new TubeShape(diameterM), metal, round, null,
            properties.MassPerLength.Value, Catalogue.Default.Metals[tube.Metal].ExpansionPerK, tube.Welded, index);
    }

    private static MastRun Lattice(Section section, string name, double bottomM, int index)
    {
        var top = bottomM + section.LengthM;
        var row = Catalogue.Default.Lattices[section.Lattice!];
        var lattice = new LatticeSection(
            row.Legs, row.FaceWidthM, row.PanelHeightM, new RoundSection(row.LegDiameterM, row.LegWallM), new RoundSection(row.DiagonalDiameterM, row.DiagonalWallM),
            row.HorizontalDiameterM > 0 ? new RoundSection(row.HorizontalDiameterM, row.HorizontalWallM) : null,
            row.Pattern == BracePattern.Cross ? Bracing.Cross : Bracing.Zigzag, Metal(row.Metal), row.Welded);
        return new MastRun(name, bottomM, top, lattice.Properties(), lattice.Shape(), lattice.Metal, null, lattice,
            row.MassPerLengthKgPerM, Catalogue.Default.Metals[row.Metal].ExpansionPerK, false, index);
    }

    /// <summary>The metal of a catalogue name with what members need of it.</summary>
    public static MemberMetal Metal(string name)
    {
        var row = Catalogue.Default.Metals[name];
        var family = row.Family switch { "steel" => MetalFamily.Steel, "stainless" => MetalFamily.Stainless, _ => MetalFamily.Aluminium };

        // A metal without a listed yield strength, or of a family without member rules, has no strength to rely on.
        var known = row.Family is "steel" or "stainless" or "aluminium";
        var yield = known ? row.YieldPa ?? 0 : 0;
        var ultimate = row.UltimatePa ?? yield;
        return new MemberMetal(row.Name, family, row.ModulusPa, yield, ultimate, row.DensityKgPerM3, row.Source)
        {
            WeldedYieldPa = row.WeldedYieldPa ?? yield,
            WeldedUltimatePa = row.WeldedUltimatePa ?? ultimate,
        };
    }
}
