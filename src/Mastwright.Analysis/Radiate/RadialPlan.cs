using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Numerics;

namespace Mastwright.Analysis.Radiate;

/// <summary>One radial of a mast as it is solved.</summary>
/// <param name="AzimuthRad">Direction, counter-clockwise from east.</param>
/// <param name="LengthM">Length, m.</param>
public readonly record struct PlannedRadial(double AzimuthRad, double LengthM);

/// <summary>
/// Where the radials of a mast run: evenly spread, midway between the guys, cut short where the design says so and halfway to a
/// neighbouring mast.
/// </summary>
/// <param name="Radials">The radials.</param>
/// <param name="Remark">How this differs from the design, or null.</param>
public sealed record RadialPlan(ImmutableArray<PlannedRadial> Radials, string? Remark)
{
    // Up to this share more or fewer radials for a layout that repeats from guy to guy.
    private const double LargestRounding = 0.05;

    // Radials of neighbours end this far from the line halfway between the masts.
    private const double HalfwayGapM = 0.15;

    /// <summary>The radials of a mast.</summary>
    /// <param name="station">The station, for the neighbours.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="count">How many; the design's number when left out.</param>
    /// <param name="lengthM">How long; the design's lengths when left out.</param>
    public static RadialPlan Of(Station station, Mast mast, int? count = null, double? lengthM = null)
    {
        var asked = count ?? mast.Radials.Count;
        var n = Rounded(asked, mast.Anchors.Length);
        var first = FirstAzimuth(mast, n);
        var radials = ImmutableArray.CreateBuilder<PlannedRadial>(n);
        var shortened = false;
        for (var i = 0; i < n; i++)
        {
            var azimuth = first + (2 * Math.PI * i / n);
            var length = lengthM ?? mast.Radials.LengthTowards(Bearing(azimuth));
            var room = Room(station, mast, azimuth);
            shortened |= room < length;
            radials.Add(new(azimuth, Math.Min(length, room)));
        }

        string?[] remarks =
        [
            n == asked ? null : $"mast {mast.Name} is solved with {n} radials instead of {asked}, so that its layout repeats from guy to guy",
            shortened ? $"radials of mast {mast.Name} that would cross those of a neighbour end just before the line halfway between them; bond them to a wire there" : null,
        ];
        var said = string.Join("; ", remarks.OfType<string>());
        return new(radials.ToImmutable(), said.Length > 0 ? said : null);
    }

    /// <summary>The nearest number of radials that the number of guys divides, when it is near enough; else the number itself.</summary>
    public static int Rounded(int count, int guys)
    {
        if (guys < 2)
            return count;
        var n = Math.Max(1, (int)Math.Round((double)count / guys)) * guys;
        return Math.Abs(n - count) <= LargestRounding * count ? n : count;
    }

    /// <summary>Compass bearing of a direction counted from east towards north, 0 to 2π.</summary>
    public static double Bearing(double azimuthRad)
    {
        var b = (Math.PI / 2) - azimuthRad;
        return b - (2 * Math.PI * Math.Floor(b / (2 * Math.PI)));
    }

    // Midway between guys where the numbers allow; else turned to where the nearest radial stays farthest from any guy.
    private static double FirstAzimuth(Mast mast, int count)
    {
        if (mast.Anchors.IsEmpty)
        {
            return 0;
        }

        var first = (Math.PI / 2) - mast.Anchors[0].BearingRad;
        var step = 2 * Math.PI / count;
        if (count % mast.Anchors.Length == 0)
        {
            return first + (step / 2);
        }

        double Nearest(double azimuth) => mast.Anchors.Min(a => Math.Abs(Math.IEEERemainder((Math.PI / 2) - a.BearingRad - azimuth, step)));
        return Enumerable.Range(0, 24).Select(i => first + (step * i / 24)).MaxBy(Nearest);
    }

    private static double Room(Station station, Mast mast, double azimuthRad)
    {
        var (sin, cos) = Math.SinCos(azimuthRad);
        var room = double.PositiveInfinity;
        foreach (var other in station.Masts.Where(m => m.Name != mast.Name))
        {
            var between = new Vec3(other.EastM - mast.EastM, other.NorthM - mast.NorthM, 0);
            var along = ((cos * between.X) + (sin * between.Y)) / between.Length;
            if (along > 1e-6)
            {
                room = Math.Min(room, ((between.Length / 2) - HalfwayGapM) / along);
            }
        }

        return room;
    }
}
