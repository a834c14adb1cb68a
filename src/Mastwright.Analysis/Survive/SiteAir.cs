using Mastwright.Model.Design;
using Mastwright.Protection.Gaps;

namespace Mastwright.Analysis.Survive;

/// <summary>The thinnest and the densest air of a site.</summary>
internal static class SiteAir
{
    /// <summary>The hottest day: corona and sparks come first.</summary>
    public static AirState Thin(Station station) => new(station.Site.ElevationM, station.Site.HottestK, station.Protection.HumidityKgPerM3);

    /// <summary>The coldest day: the gap fires last.</summary>
    public static AirState Dense(Station station) => new(station.Site.ElevationM, station.Site.ColdestK, station.Protection.HumidityKgPerM3);
}
