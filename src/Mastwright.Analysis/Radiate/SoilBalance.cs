using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Numerics;

namespace Mastwright.Analysis.Radiate;

/// <summary>The balance of power of a single mast on buried radials, every part by an integral of its own.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="Power">The parts; null where the sum was left out.</param>
/// <param name="SkyWave">Share of the power fed that becomes the sky wave.</param>
/// <param name="LeftOut">Why there is none.</param>
public sealed record SoilBalance(string Mast, string Band, SoilPower? Power, double SkyWave, string? LeftOut)
{
    /// <summary>Above this many segments the sum would take longer than everything else together.</summary>
    public const int MostSegments = 900;

    // Hood and rim stand this much beyond the farthest wire.
    private const double Beyond = 1.25;

    /// <summary>The balance; null where it is not for this station.</summary>
    internal static SoilBalance? Of(Station station, Band band, WireSolution overSoil, CancellationToken cancellation)
    {
        if (station.Masts.Length > 1 || station.Masts[0] is not { } mast || mast.Radials.Lay == RadialLay.Elevated)
        {
            return null;
        }

        var plan = RadialPlan.Of(station, mast).Radials;
        if (overSoil.Mesh.Segments.Length > MostSegments || plan.Any(r => Math.Abs(r.LengthM - plan[0].LengthM) > 0.01) || mast.Radials.Screen is not null)
        {
            return new(mast.Name, band.Title, null, 0, $"Every part of the power by an integral of its own is worked out for equal radials without a sheet and up to {MostSegments} segments (here {overSoil.Mesh.Segments.Length}); above, heat in the soil is what the other parts leave.");
        }

        var radius = mast.Radials.WireDiameterM / 2;
        var depth = Math.Max(Math.Max(mast.Radials.DepthM, EarthScreens.ShallowestM), 2 * radius);
        var foot = new Vec3(mast.EastM, mast.NorthM, 0);
        var reach = Beyond * overSoil.Mesh.Nodes.Max(n => (n - foot).Length);
        var driven = overSoil.DrivePower(1, 0);
        var stub = overSoil.Mesh.Model.Wires.Single(w => w.Name == $"stub of {mast.Name}").StartRadiusM;
        var power = SoilPowerBalance.Of(driven, new(foot, plan[0].AzimuthRad, plan.Length, plan[0].LengthM, depth, radius, stub), reach, cancellation);
        return new(mast.Name, band.Title, power, FarField.Of(driven).RadiatedPowerW, null);
    }
}
