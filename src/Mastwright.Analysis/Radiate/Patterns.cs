using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Results;

namespace Mastwright.Analysis.Radiate;

/// <summary>Cuts through patterns and profiles of currents, for drawing.</summary>
internal static class Patterns
{
    private const int UprightSteps = 90;
    private const int LevelSteps = 72;

    // A null of a pattern is drawn no deeper than this.
    private const double FloorDb = -60;

    /// <summary>Two cuts.</summary>
    /// <param name="far">The far field; its azimuth counts from east through north.</param>
    /// <param name="azimuthRad">Azimuth of the upright cut, from east through north.</param>
    /// <param name="elevationRad">Elevation of the level cut.</param>
    /// <param name="share">Share of the power the earth leaves.</param>
    public static PatternCuts Cuts(FarField far, double azimuthRad, double elevationRad, double share)
    {
        double Dbi(double elevation, double azimuth) => Math.Max(FloorDb, 10 * Math.Log10(Math.Max(share * far.Gain((Math.PI / 2) - elevation, azimuth), 1e-9)));
        double Upright(double angle) => angle <= Math.PI / 2 ? Dbi(angle, azimuthRad) : Dbi(Math.PI - angle, azimuthRad + Math.PI);
        return new PatternCuts(
            Compass(azimuthRad), elevationRad,
            [.. Enumerable.Range(0, UprightSteps + 1).Select(i => Upright(Math.PI * i / UprightSteps))],
            [.. Enumerable.Range(0, LevelSteps).Select(i => Dbi(elevationRad, Compass(2 * Math.PI * i / LevelSteps)))]);
    }

    /// <summary>The current along every wire, scaled.</summary>
    public static ImmutableArray<WireProfile> Currents(DrivenWires driven, double scale) =>
    [
        .. driven.Mesh.Model.Wires.Select(w =>
        {
            var along = driven.CurrentsOn(w.Name);
            return new WireProfile(w.Name, [.. along.Select(c => c.AlongM)], [.. along.Select(c => scale * c.Current.Magnitude)], w.Start, w.End);
        }),
    ];

    // From east through north to north through east, and back: the same turn both ways.
    private static double Compass(double rad)
    {
        var turned = ((Math.PI / 2) - rad) % (2 * Math.PI);
        return turned < 0 ? turned + (2 * Math.PI) : turned;
    }
}
