using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Numerics;

namespace Mastwright.Workbench.Drawings;

/// <summary>Currents of one mast on one band, for colouring its wires.</summary>
/// <param name="Words">Whose they are.</param>
/// <param name="Wires">The wires with more than one point.</param>
/// <param name="Amps">The largest current, A RMS.</param>
public sealed record CurrentPicture(string Words, ImmutableArray<WireProfile> Wires, double Amps)
{
    /// <summary>How many shades there are.</summary>
    public const int Shades = 5;

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

    /// <summary>The least share of the largest current that has a shade: a factor of two and a half lies between them, for guys carry far less than the mast.</summary>
    public static double LeastOf(int shade) => shade == 0 ? 0 : Math.Pow(10, FloorDb / 20 * (((double)shade / Shades) - 1));

    /// <summary>How thick a shade is drawn: never the colour alone.</summary>
    public static double WidthOf(int shade) => 1.5 + (1.3 * shade);

    /// <summary>The wires cut where their shade changes.</summary>
    public IEnumerable<(int Shade, Vec3 From, Vec3 To)> Pieces()
    {
        foreach (var wire in Wires)
        {
            Vec3 At(int i) => wire.FromM + (wire.AlongM[i] / Math.Max(wire.AlongM[^1], 1e-9) * (wire.ToM - wire.FromM));
            int Shade(int i) => Math.Min(Shades - 1, (int)(ShareOf((wire.AmpsRms[i] + wire.AmpsRms[i + 1]) / 2) * Shades));
            var from = 0;
            for (var i = 1; i < wire.AlongM.Length; i++)
            {
                if (i == wire.AlongM.Length - 1 || Shade(i) != Shade(from))
                {
                    yield return (Shade(from), At(from), At(i));
                    from = i;
                }
            }
        }
    }
}
