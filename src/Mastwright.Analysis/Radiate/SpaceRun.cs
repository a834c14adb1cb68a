using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;

namespace Mastwright.Analysis.Radiate;

/// <summary>The gain of one mast in every direction above the ground.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="Dbi">Gain, dBi, earth loss included: rows from the horizon to the zenith, evenly spaced over 90°; columns round the compass from north through east, evenly spaced, the first not repeated.</param>
/// <param name="OverSoil">Whether the wave over the real soil is in it, not only the loss at the base.</param>
public sealed record SpacePattern(string Mast, string Band, ImmutableArray<ImmutableArray<double>> Dbi, bool OverSoil)
{
    /// <summary>The strongest, dBi.</summary>
    public double MostDbi => Dbi.Max(row => row.Max());
}

/// <summary>Solves one mast on one band once more and looks at its gain in every direction, as the band's two cuts do in two planes.</summary>
public static class SpaceRun
{
    private const int Rows = 31;
    private const int Columns = 72;

    // A null is shown no deeper than this.
    private const double FloorDbi = -40;

    /// <summary>The gain in every direction.</summary>
    /// <param name="result">The station's result.</param>
    /// <param name="mast">Index of the mast.</param>
    /// <param name="band">Index of the band.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The pattern; null when the currents cannot be solved.</returns>
    public static SpacePattern? Of(StationResult result, int mast, int band, CancellationToken cancellation = default)
    {
        var station = result.Station;
        var (m, b) = (station.Masts[mast], station.Bands[band]);
        var overSoil = EarthChoice.IsExact(station);
        var solution = overSoil
            ? SoilSolver.Solve(SoilModels.Of(station).Model, b.FrequencyHz, cancellation).Solution
            : WireSolver.Solve(WireModels.Of(station), b.FrequencyHz, null, cancellation).Solution;
        if (solution is null)
        {
            return null;
        }

        // Over the perfect plane the earth's loss is a resistance at the base.
        var lossless = solution.FeedImpedance(mast).Real;
        var share = overSoil ? 1 : lossless / (lossless + result.Masts[mast].Bands[band].EarthLossOhm.Value);
        var far = FarField.Of(solution.DrivePower(1, mast));
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<double>>(Rows);
        for (var e = 0; e < Rows; e++)
        {
            cancellation.ThrowIfCancellationRequested();
            var theta = (Math.PI / 2) - (Math.PI / 2 * e / (Rows - 1));
            rows.Add([.. Enumerable.Range(0, Columns).Select(a => Math.Max(FloorDbi, 10 * Math.Log10(Math.Max(share * far.Gain(theta, (Math.PI / 2) - (2 * Math.PI * a / Columns)), 1e-9))))]);
        }

        return new SpacePattern(m.Name, b.Title, rows.ToImmutable(), overSoil);
    }
}
