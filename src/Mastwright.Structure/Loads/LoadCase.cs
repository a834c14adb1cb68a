using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Loads;

/// <summary>A level wind, by the azimuth it comes from.</summary>
/// <param name="FromAzimuthRad">Where the wind comes from, clockwise from north, rad.</param>
public readonly record struct WindDirection(double FromAzimuthRad)
{
    /// <summary>Unit vector along which the air moves; x east, y north, z up.</summary>
    public Vec3 Towards => new(-Math.Sin(FromAzimuthRad), -Math.Cos(FromAzimuthRad), 0);

    /// <summary>Evenly spaced directions starting with a north wind.</summary>
    /// <param name="count">How many, at least 1.</param>
    public static IEnumerable<WindDirection> Around(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return Enumerable.Range(0, count).Select(i => new WindDirection(2 * Math.PI * i / count));
    }
}

/// <summary>Ice by a method at a site.</summary>
/// <param name="Method">The method.</param>
/// <param name="Site">The ice, in the method's terms.</param>
public sealed record IceCase(IIceMethod Method, IceSite Site);

/// <summary>Wind from one direction, with or without ice.</summary>
/// <param name="Method">Wind method.</param>
/// <param name="Wind">The wind, in the method's terms; with ice it is reduced by the ice method, so give the bare wind.</param>
/// <param name="Direction">Where it comes from.</param>
/// <param name="Ice">Ice at the same time; null for none.</param>
public sealed record LoadCase(IWindMethod Method, WindSite Wind, WindDirection Direction, IceCase? Ice = null)
{
    /// <summary>Pressure at a height, with ice already reduced, and that pressure times the gust factor: what is left to multiply by drag and width.</summary>
    internal (Trail Pressure, Trail Total) PressureAt(double heightM, BodyKind body)
    {
        var reduced = Ice?.Method.Reduce(Ice.Site, Wind);
        var site = reduced?.Site ?? Wind;
        var p = Method.Pressure(site, Math.Max(0, heightM), body);
        if (reduced is not null)
        {
            var share = reduced.PressureFactor;
            p = Trail.Computed("velocity pressure with ice", "pi", p.Value * share.Value, QuantityKind.Pressure, "pi = p·k", share.Source, p, share);
        }

        var g = Method.GustFactor(site);
        return (p, Trail.Computed("gust pressure", "pG", p.Value * g.Value, QuantityKind.Pressure, "pG = p·G", p.Source, p, g));
    }
}

/// <summary>A force per length, constant over a piece, with its trail.</summary>
/// <param name="NPerM">The vector; x east, y north, z up.</param>
/// <param name="Magnitude">Trail of its length.</param>
public sealed record LineLoad(Vec3 NPerM, Trail Magnitude);

/// <summary>A force at a point, with its trail.</summary>
/// <param name="N">The vector; x east, y north, z up.</param>
/// <param name="Magnitude">Trail of its length.</param>
public sealed record PointLoad(Vec3 N, Trail Magnitude);
