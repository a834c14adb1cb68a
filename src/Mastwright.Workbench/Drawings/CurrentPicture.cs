using System.Collections.Immutable;
using Mastwright.Analysis.Results;

namespace Mastwright.Workbench.Drawings;

/// <summary>Currents of one mast on one band, for colouring its wires.</summary>
/// <param name="Words">Whose they are.</param>
/// <param name="Wires">The wires with more than one point.</param>
/// <param name="Amps">The largest current, A RMS.</param>
public sealed record CurrentPicture(string Words, ImmutableArray<WireProfile> Wires, double Amps)
{
    // Below a hundredth of the largest everything looks alike.
    private const double FloorDb = 40;

    /// <summary>The currents of a band.</summary>
    public static CurrentPicture Of(string mast, BandResult band)
    {
        var wires = band.Currents.Where(w => w.AlongM.Length > 1).ToImmutableArray();
        return new($"current of mast {mast} on {band.Name}, RMS", wires, wires.Select(w => w.AmpsRms.Max()).DefaultIfEmpty(0).Max());
    }

    /// <summary>How far up the shades a current lies, 0 to 1: by decibels below the largest.</summary>
    public double ShareOf(double amps) => Amps <= 0 || amps <= 0 ? 0 : Math.Clamp(1 + (20 * Math.Log10(amps / Amps) / FloorDb), 0, 1);
}
