using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Build.Tension;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Workbench.Parts;

/// <summary>What one guy should read in still air at one temperature.</summary>
/// <param name="Mast">Its mast.</param>
/// <param name="Level">Number of its level.</param>
/// <param name="Anchor">Its anchor.</param>
/// <param name="Strand">Its strand.</param>
/// <param name="Targets">The readings; null when it cannot hang so.</param>
internal sealed record GuyTarget(string Mast, int Level, string Anchor, string Strand, TensionTargets? Targets);

/// <summary>Tension targets of every guy from the solved still-air cases.</summary>
internal static class GuyTargets
{
    private static readonly Source Equilibrium = Source.Derived("docs/theory/structure-mast.md");

    /// <summary>The still-air cases without ice, with their temperature.</summary>
    public static IReadOnlyList<(string Case, double TemperatureK)> Days(Station station) =>
    [
        ("still air, tensioning day", station.Site.TensioningTemperatureK), ("still air, coldest", station.Site.ColdestK), ("still air, hottest", station.Site.HottestK),
    ];

    /// <summary>Every guy of a mast in one case.</summary>
    public static ImmutableArray<GuyTarget> Of(Station station, Mast mast, StandResult stand, string caseName)
    {
        if (stand.Cases.FirstOrDefault(c => c.Name == caseName) is not { } shown)
        {
            return [];
        }

        var temperature = Trail.Given("temperature", "t", Days(station).First(d => d.Case == caseName).TemperatureK, QuantityKind.Temperature, Source.DesignFile);
        return
        [
            .. shown.Guys.Select(g =>
            {
                var level = mast.Guys[g.Level - 1];
                var anchor = mast.Anchors.First(a => a.Name == g.Anchor);
                var tension = Trail.Computed($"tension at the anchor, level {g.Level} to {g.Anchor}", "Ta", g.AnchorTensionN, QuantityKind.Force, "equilibrium of mast and guys in still air", Equilibrium, temperature);
                return new GuyTarget(mast.Name, g.Level, g.Anchor, level.Strand, TensionTargets.For(SpanOf(level, g.Level, anchor), tension).Value);
            }),
        ];
    }

    /// <summary>A guy between its pins.</summary>
    public static GuySpan SpanOf(GuyLevel level, int number, Anchor anchor)
    {
        var strand = StandModel.StrandOf(level.Strand);
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
        var (span, rise) = (Math.Max(0.1, anchor.DistanceM - level.AttachmentRadiusM), level.HeightM - anchor.RiseM);
        var chord = double.Hypot(span, rise);
        var at = level.InsulatorsAtM.IsEmpty ? [0.0] : level.InsulatorsAtM;
        return new GuySpan($"level {number} to {anchor.Name}", span, rise, strand.MassKgPerM * GuySpan.Gravity, strand.AreaM2 * strand.ModulusPa,
            [.. at.Where(d => d <= chord).Select(d => new LumpedMass(1 - (d / chord), insulator.MassKg))]);
    }
}
