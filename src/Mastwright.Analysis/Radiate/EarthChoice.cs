using Mastwright.Model.Design;

namespace Mastwright.Analysis.Radiate;

/// <summary>Which earth the verdict rests on.</summary>
internal static class EarthChoice
{
    /// <summary>Whether the currents are solved over the real soil: asked for, or elevated radials, for which there is no quick estimate.</summary>
    public static bool IsExact(Station station) => station.Site.Earth == EarthModel.Exact || station.Masts.Any(m => m.Radials.Lay == RadialLay.Elevated);
}
