using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Analysis.Survive;

/// <summary>The base gap of a mast, held between its bands' working voltage and the weakest part behind it.</summary>
internal static class GapRun
{
    /// <summary>What is asked of the gap.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="bands">Its bands.</param>
    /// <param name="inGroups">What it has across its base in groups.</param>
    public static GapRequest Request(Station station, Mast mast, IReadOnlyList<BandResult> bands, IEnumerable<GapBand> inGroups)
    {
        var spec = station.Protection;
        var insulator = Catalogue.Default.BaseInsulators[mast.Base.Insulator];
        return new GapRequest(
            ElectrodesOf(spec),
            SiteAir.Thin(station),
            SiteAir.Dense(station),
            [
                .. bands.Select(b => new GapBand(b.Name, b.FrequencyHz, b.BasePeakV, station.Bands.First(x => x.Title == b.Name).ModulationPeak)),
                .. inGroups,
            ],
            [
                new GapProtected($"base insulator {insulator.Name}", insulator.Given("impulse flashover", "Vi", insulator.ImpulseV, QuantityKind.PeakVoltage), StrengthKind.Impulse, FallsWithAirDensity: true),
                .. spec.Parts.Select(p => new GapProtected(p.Name,
                    Trail.Given($"withstand of {p.Name}", "Vw", p.WithstandPeakV, QuantityKind.PeakVoltage, Source.DesignFile), StrengthKind.AlternatingCrest)),
            ],
            spec.Mismatch, spec.WorkingMargin, spec.PartMargin, spec.WetFactor, spec.ImpulseRatio, spec.GapToleranceM)
        {
            FormativeLagS = station.Lightning.FormativeLagS,
            StatisticalLagS = station.Lightning.StatisticalLagS,
        };
    }

    /// <summary>Base peak voltages of a mast in every switch position of its groups, with the modulation of the band nearest in frequency.</summary>
    public static ImmutableArray<GapBand> PeaksInGroups(Station station, Mast mast, IEnumerable<GroupResult> groups) =>
    [
        .. groups.Select(g => (Result: g, Group: station.Groups.First(x => x.Name == g.Name))).SelectMany(g => g.Result.Directions.SelectMany(d => d.Drives.Where(v => v.Mast == mast.Name)
            .Select(v => new GapBand($"{g.Group.Name}, {d.Name}", g.Group.FrequencyHz, v.BasePeakV, GroupRun.BandOf(station, g.Group)?.ModulationPeak ?? 1)))),
    ];

    /// <summary>The electrodes of the design.</summary>
    public static GapElectrodes ElectrodesOf(ProtectionSpec spec) => new(
        spec.Electrodes switch
        {
            Electrodes.Balls => GapShape.BallToBall,
            Electrodes.BallToPlate => GapShape.BallToPlate,
            Electrodes.RoundedToPlate => GapShape.RoundedNutToPlate,
            Electrodes.Rods => GapShape.Rods,
            _ => GapShape.RoundedNuts,
        },
        spec.ElectrodeDiameterM);

    /// <summary>The spacing a strike finds: the one set, else the one proposed, else the smallest that holds off; null when nothing can be said.</summary>
    public static double? SpacingM(Station station, GapAnswer answer) => station.Protection.GapM ?? answer switch
    {
        GapSetting s => s.SpacingM.Value,
        NoGapFits n => n.WindowLowM.Value,
        _ => null,
    };

    /// <summary>Checks of a gap that the builder has set already.</summary>
    public static ImmutableArray<Check> OfSetGap(GapRequest request, GapAnswer answer, string mast, double gapM)
    {
        var (working, weakest) = answer switch
        {
            GapSetting s => (s.WorkingPeakV, s.WeakestStrengthV),
            NoGapFits n => (n.WorkingPeakV, n.WeakestStrengthV),
            _ => (null, null),
        };
        return working is null || weakest is null
            ? []
            :
            [
                Check.AtLeast($"survive.gap.set-holds[{mast}]", Trade.Survive, "The gap as set holds off the working voltage", GapWindow.HoldOffAt(request, gapM), working, "highest working peak", "Open the gap.", GapAnswer.Caution),
                Check.AtMost($"survive.gap.set-protects[{mast}]", Trade.Survive, "The gap as set fires before the weakest part", GapWindow.FiringAt(request, gapM), weakest, "lightning front, densest air", "Close the gap, or use a stronger part.", GapAnswer.Caution),
            ];
    }
}
