using System.Collections.Immutable;
using System.Globalization;
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

    // Beyond this the sector of one radial is no longer all of them: its share of the heat would be off by as much.
    private const double LargestUnevenness = 0.05;

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
        var driven = overSoil.DrivePower(1, 0);
        if (Reason(station, mast, plan, driven) is { } reason)
        {
            return new(mast.Name, band.Title, null, 0, $"Every part of the power by an integral of its own is left out: {reason}. Heat in the soil is then what the other parts leave.");
        }

        var radius = mast.Radials.WireDiameterM / 2;
        var depth = Math.Max(Math.Max(mast.Radials.DepthM, EarthScreens.ShallowestM), 2 * radius);
        var foot = new Vec3(mast.EastM, mast.NorthM, 0);
        var reach = Beyond * overSoil.Mesh.Nodes.Max(n => (n - foot).Length);
        var stub = overSoil.Mesh.Model.Wires.Single(w => w.Name == $"stub of {mast.Name}").StartRadiusM;
        var power = SoilPowerBalance.Of(driven, new(foot, plan[0].AzimuthRad, plan.Length, plan[0].LengthM, depth, radius, stub), reach, cancellation);
        return new(mast.Name, band.Title, power, FarField.Of(driven).RadiatedPowerW, null);
    }

    // The sector of one radial stands for all of the soil, so all of them must be alike in length and in what they carry, and nothing else may stand in the soil.
    private static string? Reason(Station station, Mast mast, ImmutableArray<PlannedRadial> plan, DrivenWires driven)
    {
        if (driven.Mesh.Segments.Length > MostSegments)
        {
            return $"it is worked out up to {MostSegments} segments, and here there are {driven.Mesh.Segments.Length}";
        }

        if (mast.Radials.Screen is not null)
        {
            return "it is worked out for radials without a sheet";
        }

        if (plan.Any(r => Math.Abs(r.LengthM - plan[0].LengthM) > 0.01))
        {
            return "it is worked out for radials of one length, and here they differ";
        }

        if (!station.NearbyMetal.IsEmpty)
        {
            return "metal stands nearby, and the sector of one radial, which stands for all of the soil, says nothing about the soil round it";
        }

        var uneven = Unevenness(mast, plan.Length, driven);
        return uneven <= LargestUnevenness ? null : string.Create(CultureInfo.InvariantCulture,
            $"the radials do not share the current evenly (the square of one is up to {100 * uneven:0} % off their mean, allowed {100 * LargestUnevenness:0} %), because guys or top wires favour some of them, and the sector of one radial stands for all of the soil");
    }

    /// <summary>Largest departure of the square of a radial's current, where it begins, from the mean of all: the heat round it goes with that square.</summary>
    private static double Unevenness(Mast mast, int count, DrivenWires driven)
    {
        double[] squares = [.. Enumerable.Range(1, count).Select(i => Math.Pow(driven.CurrentsOn($"radial {i} of {mast.Name}")[0].Current.Magnitude, 2))];
        var mean = squares.Average();
        return squares.Max(s => Math.Abs((s / mean) - 1));
    }
}
