using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Loads;
using SolverCase = Mastwright.Structure.Mast.LoadCase;
using SolverLineLoad = Mastwright.Structure.Mast.LineLoad;
using SolverPointLoad = Mastwright.Structure.Mast.PointLoad;
using WindCase = Mastwright.Structure.Loads.LoadCase;

namespace Mastwright.Analysis.Stand;

/// <summary>The mean wind of one direction and the cases with the gust on one stretch each.</summary>
/// <param name="Name">The direction in words.</param>
/// <param name="Mean">Mean wind everywhere.</param>
/// <param name="Patches">The same with the gust part on one stretch.</param>
internal sealed record PatchedDirection(string Name, SolverCase Mean, IReadOnlyList<SolverCase> Patches);

/// <summary>Load cases of the patch loads of EN 1993-3-1.</summary>
public sealed partial class LoadCases
{
    /// <summary>Mean wind and patches from all round.</summary>
    internal static IReadOnlyList<PatchedDirection> Patched(Station station, StandModel model, int directions, IReadOnlyList<(double LowM, double HighM)> patches)
    {
        var cases = new LoadCases(station, model);
        return [.. WindDirection.Around(directions).Select(d =>
        {
            var degrees = (d.FromAzimuthRad * 180 / Math.PI).ToString("F0", CultureInfo.InvariantCulture);
            var name = $"gust patches, hottest, from {degrees}°";
            return new PatchedDirection(name, cases.Patch(name + ", mean", d, null), [.. patches.Select((p, i) => cases.Patch($"{name}, patch {i + 1}", d, p))]);
        })];
    }

    private SolverCase Patch(string name, WindDirection direction, (double LowM, double HighM)? patch)
    {
        var windy = new WindCase(method, wind, direction);
        var loads = new List<SolverLineLoad>();
        foreach (var run in model.Runs)
        {
            Vec3 Full(double h) => MastLoads.Wind(windy, run.Shape, Ground(h), AlongAt(h)).NPerM;
            loads.Add(Along(run, h => MeanShare(h) * Full(h)));
            if (patch is { } p && Math.Min(p.HighM, run.TopM) - Math.Max(p.LowM, run.BottomM) > 1e-6)
            {
                loads.Add(Along(run with { BottomM = Math.Max(p.LowM, run.BottomM), TopM = Math.Min(p.HighM, run.TopM) }, h => (1 - MeanShare(h)) * Full(h)));
            }
        }

        double Share(double h) => patch is { } p && h >= p.LowM - 1e-9 && h <= p.HighM + 1e-9 ? 1 : MeanShare(h);
        return new SolverCase(name, station.Site.HottestK)
        {
            MastLoads = loads,
            GuyLoads = [.. model.Guys.Select(g => new Structure.Mast.GuyLoad(g.Guy.Name, factor * Share(g.Guy.AttachmentHeightM) * CableLoads.Wind(windy, g.Guy.AnchorM, High(g), g.Strand.DiameterM).NPerM))],
            PointLoads = [.. Bodies().Select(b => OnBody(windy, b.HeightM, b.Body, b.ReachM)).Select(l => new SolverPointLoad(l.HeightM, Share(l.HeightM) * l.ForceN, Share(l.HeightM) * l.MomentNm)), .. Overhang(null)],
        };
    }

    // Mean over peak pressure, 1/(1 + 7·Iv), out of the very trail of the pressure.
    private double MeanShare(double aboveFootM)
    {
        static Trail? Turbulence(Trail t) => t.Symbol == "Iv" ? t : t.Inputs.Select(Turbulence).FirstOrDefault(x => x is not null);
        return Turbulence(method.Pressure(wind, Ground(aboveFootM), BodyKind.Lattice)) is { } iv ? 1 / (1 + (7 * iv.Value)) : 1;
    }
}
