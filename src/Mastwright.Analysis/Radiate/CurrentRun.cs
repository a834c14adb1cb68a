using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>Currents along every wire of the station while one mast transmits on a band.</summary>
/// <param name="Mast">The mast that transmits.</param>
/// <param name="Band">The band, with its power.</param>
/// <param name="BaseRms">Current into its base, A RMS.</param>
/// <param name="Wires">Every wire with the current along it.</param>
public sealed record BandCurrents(string Mast, Band Band, double BaseRms, ImmutableArray<WireProfile> Wires);

/// <summary>Currents along every wire, radials included, over the real soil.</summary>
public static class CurrentRun
{
    /// <summary>Every mast on every band.</summary>
    public static (ImmutableArray<BandCurrents> Bands, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = SoilModels.Of(station);
        var findings = new List<Finding>(soil.Findings);
        var bands = ImmutableArray.CreateBuilder<BandCurrents>();
        foreach (var (band, b) in station.Bands.Select((band, b) => (band, b)))
        {
            progress?.Report(new AnalysisStep($"Solving {band.Title} over the soil", (double)b / station.Bands.Length));
            var solved = SoilSolver.Solve(soil.Model, band.FrequencyHz, cancellation);
            findings.AddRange(solved.Findings);
            if (solved.Solution is { } solution)
            {
                bands.AddRange(station.Masts.Select((mast, feed) =>
                {
                    var driven = solution.DrivePower(band.PowerW, feed);
                    return new BandCurrents(mast.Name, band, driven.FeedCurrents[feed].Magnitude, Patterns.Currents(driven, 1));
                }));
            }
        }

        return (bands.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }
}
