using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;

namespace Mastwright.Report.Book;

/// <summary>Shapes of patterns and of currents as the results hold them, for drawing.</summary>
internal static class Patterns
{
    /// <summary>Decibels below the strongest of a cut.</summary>
    public static IReadOnlyList<double> Below(IReadOnlyList<double> dbi)
    {
        var most = dbi.Max();
        return [.. dbi.Select(d => Math.Max(-60, d - most))];
    }

    /// <summary>Size of the current along a mast over its largest, by height above ground, m.</summary>
    public static IReadOnlyList<(double HeightM, double Share)> Current(string mast, BandResult band)
    {
        var wires = band.Currents.Where(w => w.Wire == WireModels.LeadOf(mast) || w.Wire.StartsWith($"mast {mast}, run ", StringComparison.Ordinal)).Where(w => Math.Abs(w.ToM.Z - w.FromM.Z) > 0);
        var points = wires.SelectMany(w => w.AlongM.Zip(w.AmpsRms, (along, amps) => (HeightM: w.FromM.Z + (along * (w.ToM - w.FromM).Unit().Z), amps))).OrderBy(p => p.HeightM).ToList();
        var most = points.Max(p => p.amps);
        return [.. points.Select(p => (p.HeightM, p.amps / most))];
    }
}
