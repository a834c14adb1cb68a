using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>What the wind methods say about a site they cannot use or should be asked about.</summary>
internal static class WindFindings
{
    /// <summary>Speeds a builder may mean, m/s; outside it is nearly surely a slip of the unit.</summary>
    private const double SlowestMps = 10;

    private const double FastestMps = 110;

    /// <summary>Findings that every speed-based method shares.</summary>
    public static IEnumerable<Finding> Common(WindSite site, IWindMethod method)
    {
        if (!(site.SpeedMps is >= SlowestMps and <= FastestMps))
        {
            yield return new(
                "wind-speed", Severity.Error, "The basic wind speed is not one that any map shows.", null,
                Text(site.SpeedMps) + " m/s", "10 to 110 m/s (22 to 246 mph)", "Look the speed up in the map of the chosen standard and mind its unit.");
        }

        if (!method.Exposures.Contains(site.Exposure, StringComparer.OrdinalIgnoreCase))
        {
            yield return new(
                "wind-exposure", Severity.Error, $"{method.Name} does not know this exposure.", null,
                site.Exposure, string.Join(", ", method.Exposures), "Choose the exposure that fits the land upwind; in doubt the more open one.");
        }

        if (!(site.TopographicFactor is >= 0.8 and <= 4))
        {
            yield return new(
                "wind-topography", Severity.Error, "The topographic factor is out of reach.", null,
                Text(site.TopographicFactor), "0.8 to 4", "Use 1 on level ground, or describe the hill.");
        }

        if (!(site.GroundElevationM is >= -450 and <= 6000))
        {
            yield return new(
                "wind-elevation", Severity.Error, "The height of the ground above the sea is out of reach.", null,
                Text(site.GroundElevationM) + " m", "-450 to 6000 m", "Give the height of the site above the sea.");
        }
    }

    /// <summary>A finding for a hill that a method does not read.</summary>
    public static IEnumerable<Finding> HillNotRead(WindSite site, IWindMethod method)
    {
        if (site.Hill is not null)
        {
            yield return new(
                "wind-hill", Severity.Error, $"{method.Name} does not compute the effect of a hill here.", null,
                site.Hill.Kind.ToString(), "a topographic factor", "Give the factor itself, or choose an ASCE 7 method.");
        }
    }

    /// <summary>Stops a calculation that was asked for in spite of errors: a fault of the calling code.</summary>
    public static void DemandSound(ImmutableArray<Finding> findings)
    {
        if (findings.FirstOrDefault(f => f.Severity == Severity.Error) is { } error)
        {
            throw new ArgumentException($"{error.Message} Examine the site before asking for loads.");
        }
    }

    private static string Text(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
