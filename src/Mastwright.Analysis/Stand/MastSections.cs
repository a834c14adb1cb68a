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
public sealed record MastRun(
    string Name, double BottomM, double TopM, SectionProperties Properties, MastShape Shape, MemberMetal Metal,
    RoundSection? Tube, LatticeSection? Lattice, double MassKgPerM, double ExpansionPerK, bool Welded);

/// <summary>Turns the sections of a design into runs of mast with their properties.</summary>
public static class MastSections
{
    /// <summary>The runs from the foot up.</summary>
    public static IReadOnlyList<MastRun> Of(Mast mast)
    {
        var runs = new List<MastRun>();
        var at = 0.0;
        foreach (var section in mast.Sections)
        {
            runs.Add(Run(section, at, runs.Count + 1));
            at += section.LengthM;
        }

        return runs;
    }

    private static MastRun Run(Section section, double bottomM, int number)
    {
        var top = bottomM + section.LengthM;
        if (section.Tube is { } tube)
        {
            var round = new RoundSection(tube.DiameterM, tube.WallM);
            var metal = Metal(tube.Metal);
            var properties = round.Properties(metal);
            return new MastRun($"run {number}", bottomM, top, properties, new TubeShape(tube.DiameterM), metal, round, null,
                properties.MassPerLength.Value, Catalogue.Default.Metals[tube.Metal].ExpansionPerK, tube.Welded);
        }

        var row = Catalogue.Default.Lattices[section.Lattice!];
        var lattice = new LatticeSection(
            row.Legs, row.FaceWidthM, row.PanelHeightM, new RoundSection(row.LegDiameterM, row.LegWallM), new RoundSection(row.DiagonalDiameterM, row.DiagonalWallM),
            row.HorizontalDiameterM > 0 ? new RoundSection(row.HorizontalDiameterM, row.HorizontalWallM) : null,
            row.Pattern == BracePattern.Cross ? Bracing.Cross : Bracing.Zigzag, Metal(row.Metal), row.Welded);
        return new MastRun($"run {number}", bottomM, top, lattice.Properties(), lattice.Shape(), lattice.Metal, null, lattice,
            row.MassPerLengthKgPerM, Catalogue.Default.Metals[row.Metal].ExpansionPerK, false);
    }

    private static MemberMetal Metal(string name)
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
