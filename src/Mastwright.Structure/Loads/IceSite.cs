using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>The ice at a site, in the terms of the method that will read it.</summary>
public sealed record IceSite
{
    /// <summary>Nominal radial thickness, m: the map value at 10 m of ASCE 7, or the thickness itself for stated ice.</summary>
    public double NominalThicknessM { get; init; }

    /// <summary>Importance factor on thickness, Ii of ASCE 7 (1 for an ordinary structure).</summary>
    public double ImportanceFactor { get; init; } = 1;

    /// <summary>Topographic factor Kzt of ASCE 7.</summary>
    public double TopographicFactor { get; init; } = 1;

    /// <summary>Gust speed that goes with the ice, m/s: the concurrent 3-second gust of ASCE 7; null where the method reduces the pressure instead.</summary>
    public double? ConcurrentWindMps { get; init; }

    /// <summary>Share of the wind pressure that acts together with stated ice; common practice takes a quarter to a half.</summary>
    public double PressureShare { get; init; } = 0.5;

    /// <summary>Glaze class 1 to 5 of ISO 12494.</summary>
    public int GlazeClass { get; init; }

    /// <summary>Density of the ice, kg/m³; solid glaze by default.</summary>
    public double DensityKgPerM3 { get; init; } = 900;

    /// <summary>Where the figures come from; the design file by default.</summary>
    public Source Source { get; init; } = Source.DesignFile;
}
