using System.Collections.Immutable;
using Mastwright.Fields.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Analysis.Radiate;

/// <summary>Fields at a place beside a mast, RMS at full power.</summary>
/// <param name="DistanceM">Level distance from the mast's axis, m.</param>
/// <param name="HeightM">Height above ground, m.</param>
/// <param name="ElectricVPerM">Electric field, V/m.</param>
/// <param name="MagneticAPerM">Magnetic field, A/m.</param>
public readonly record struct FieldAt(double DistanceM, double HeightM, double ElectricVPerM, double MagneticAPerM);

/// <summary>Fields around one mast on one band.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band, with its power.</param>
/// <param name="BetweenGuys">Rows of distances at each height, midway between two guys.</param>
/// <param name="AlongGuy">The same under a guy.</param>
/// <param name="Map">An upright sheet midway between two guys, distances rising, heights rising within; empty when not asked for.</param>
public sealed record MastNearField(string Mast, Band Band, ImmutableArray<FieldAt> BetweenGuys, ImmutableArray<FieldAt> AlongGuy, ImmutableArray<FieldAt> Map);

/// <summary>Electric and magnetic fields near the masts over the real soil.</summary>
public static class NearFieldRun
{
    /// <summary>Heights of the rows, m.</summary>
    public static ImmutableArray<double> HeightsM { get; } = [0.5, 1, 2];

    /// <summary>Distances of the rows, m.</summary>
    public static ImmutableArray<double> DistancesM { get; } = [1, 1.5, 2, 3, 5, 7, 10, 15, 20, 30, 50];

    /// <summary>Distances across the map.</summary>
    public const int MapColumns = 24;

    /// <summary>Heights up the map.</summary>
    public const int MapRows = 16;

    /// <summary>Every mast on every band; the map for its first band.</summary>
    public static (ImmutableArray<MastNearField> Fields, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = SoilModels.Of(station);
        var findings = new List<Finding>(soil.Findings);
        var fields = ImmutableArray.CreateBuilder<MastNearField>();
        foreach (var (band, b) in station.Bands.Select((band, b) => (band, b)))
        {
            progress?.Report(new AnalysisStep($"Fields on {band.Title}", (double)b / station.Bands.Length));
            var solved = SoilSolver.Solve(soil.Model, band.FrequencyHz, cancellation);
            findings.AddRange(solved.Findings);
            if (solved.Solution is { } solution)
            {
                fields.AddRange(station.Masts.Select((mast, feed) => Of(mast, band, solution.DrivePower(band.PowerW, feed), b == 0, cancellation)));
            }
        }

        return (fields.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }

    private static MastNearField Of(Mast mast, Band band, DrivenWires driven, bool map, CancellationToken cancellation)
    {
        var guy = mast.Anchors.IsEmpty ? 0 : mast.Anchors[0].BearingRad;
        var between = guy + (Math.PI / Math.Max(1, mast.Anchors.Length));
        var rows = HeightsM.SelectMany(h => DistancesM.Select(d => (d, h))).ToList();
        var reach = 1.5 * mast.TopM;
        var sheet = map
            ? Enumerable.Range(0, MapColumns).SelectMany(x => Enumerable.Range(0, MapRows).Select(y => ((x + 0.5) * reach / MapColumns, (y + 0.5) * 1.2 * mast.TopM / MapRows))).ToList()
            : [];
        return new(mast.Name, band, At(driven, mast, between, rows, cancellation), At(driven, mast, guy, rows, cancellation), At(driven, mast, between, sheet, cancellation));
    }

    private static ImmutableArray<FieldAt> At(DrivenWires driven, Mast mast, double bearingRad, List<(double DistanceM, double HeightM)> places, CancellationToken cancellation)
    {
        if (places.Count == 0)
        {
            return [];
        }

        var (sin, cos) = Math.SinCos(bearingRad);
        var samples = Fields.Results.NearField.At(driven, [.. places.Select(p => new Vec3(mast.EastM + (p.DistanceM * sin), mast.NorthM + (p.DistanceM * cos), p.HeightM))], cancellation);
        return [.. places.Zip(samples, (p, s) => new FieldAt(p.DistanceM, p.HeightM, s.Electric.Magnitude, s.Magnetic.Magnitude))];
    }
}
