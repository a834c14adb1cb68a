using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>Where the station stands and what the place does to it.</summary>
public sealed record Site
{
    private const double Freezing = 273.15;

    /// <summary>Ground level above the sea, m.</summary>
    [Field("elevation", "Height of the ground above the sea; thins the air for wind and sparks.", Default = "0 m", Why = "sea level, the densest air: safe for wind, not for sparks")]
    [Quantity(QuantityKind.Length, -430, 6000)]
    public double ElevationM { get; init; }

    /// <summary>Wind.</summary>
    [Field("wind", "The design wind.", Required = true)]
    public Wind Wind { get; init; } = new();

    /// <summary>Ice.</summary>
    [Field("ice", "Radial ice on everything, with the wind that blows meanwhile.", Default = "no ice", Why = "the file names no ice; look up your region's ice map")]
    public Ice Ice { get; init; } = new();

    /// <summary>Temperature when guys are tensioned, K.</summary>
    [Field("tensioning-temperature", "Air temperature on the day the guys are tensioned.", Default = "15 °C", Why = "a mild day; common practice, no source")]
    [Quantity(QuantityKind.Temperature, Freezing - 40, Freezing + 50)]
    public double TensioningTemperatureK { get; init; } = Freezing + 15;

    /// <summary>Temperature of the strand when it is measured and cut, K.</summary>
    [Field("cutting-temperature", "Temperature of the strand when it is measured and cut.", Default = "the tensioning temperature")]
    [Quantity(QuantityKind.Temperature, Freezing - 40, Freezing + 60)]
    public double? CuttingTemperatureK { get; init; }

    /// <summary>Coldest temperature, K.</summary>
    [Field("coldest", "Coldest temperature of steel and air.", Default = "-25 °C", Why = "a cold temperate winter; common practice, no source")]
    [Quantity(QuantityKind.Temperature, Freezing - 75, Freezing + 30)]
    public double ColdestK { get; init; } = Freezing - 25;

    /// <summary>Hottest temperature, K.</summary>
    [Field("hottest", "Hottest temperature of steel in the sun.", Default = "45 °C", Why = "steel in summer sun; common practice, no source")]
    [Quantity(QuantityKind.Temperature, Freezing - 10, Freezing + 80)]
    public double HottestK { get; init; } = Freezing + 45;

    /// <summary>Soil as a conductor: catalogue name.</summary>
    [Field("soil", "The soil as a conductor: a catalogue class (see `mastwright list soils`).", Default = "medium dry ground", Why = "ITU-R class for medium dry ground; measure yours, it matters")]
    [CatalogueName("soils")]
    public string Soil { get; init; } = "medium dry ground";

    /// <summary>Measured conductivity, S/m; overrides the class.</summary>
    [Field("conductivity", "Measured soil conductivity, instead of the class.", Default = "that of the soil class")]
    [Quantity(QuantityKind.Conductivity, 1e-6, 10)]
    public double? ConductivitySPerM { get; init; }

    /// <summary>Measured relative permittivity; overrides the class.</summary>
    [Field("permittivity", "Measured relative permittivity of the soil, instead of the class.", Default = "that of the soil class")]
    [Quantity(QuantityKind.Ratio, 1, 100)]
    public double? RelativePermittivity { get; init; }

    /// <summary>How the soil changes with frequency.</summary>
    [Field("soil-frequency", "How conductivity and permittivity of the soil change with frequency; with any model but constant the conductivity given is that at low frequency, as four rods measure it.", Default = "constant", Why = "the classes of ITU-R P.527 hold over the short-wave bands")]
    public SoilFrequency SoilFrequency { get; init; }

    /// <summary>How the earth enters the verdict.</summary>
    [Field("earth", "How the earth enters the verdict; the studies of radiation solve the exact half space in any case.", Default = "estimate", Why = "instant; elevated radials are always solved exactly")]
    public EarthModel Earth { get; init; }

    /// <summary>Soil as a support: catalogue name.</summary>
    [Field("ground", "The soil as a support: a presumptive class (see `mastwright list grounds`).", Default = "clay", Why = "weakest presumptive class of the building code; only a soil test knows")]
    [CatalogueName("grounds")]
    public string Ground { get; init; } = "clay";

    /// <summary>Whether the soil was tested.</summary>
    [Field("ground-tested", "Whether the soil was tested and is at least as good as the class.", Default = "no", Why = "presumptive values only; only a soil test knows")]
    public bool GroundTested { get; init; }

    /// <summary>Depth that frost reaches, m.</summary>
    [Field("frost-depth", "Depth that frost reaches.", Default = "not stated; no frost check")]
    [Quantity(QuantityKind.Length, 0, 5)]
    public double? FrostDepthM { get; init; }

    /// <summary>Distance from the nearest mast foot to the nearest power line, m.</summary>
    [Field("power-line-distance", "Distance from the nearest mast foot to the nearest overhead power line.", Default = "not stated")]
    [Quantity(QuantityKind.Length, 0, 100e3)]
    public double? PowerLineDistanceM { get; init; }

    /// <summary>Bearing from the nearest mast foot, rad.</summary>
    [Field("power-line-bearing", "Compass bearing from the nearest mast foot to the nearest point of the power line; it is drawn as a straight line square to it.", Default = "not stated; drawn all round")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double? PowerLineBearingRad { get; init; }

    /// <summary>Distance from the nearest mast foot to the nearest place where people are, m.</summary>
    [Field("people-distance", "Distance from the nearest mast foot to the nearest house, path or place where people stay.", Default = "not stated")]
    [Quantity(QuantityKind.Length, 0, 100e3)]
    public double? PeopleDistanceM { get; init; }

    /// <summary>Bearing from the nearest mast foot, rad.</summary>
    [Field("people-bearing", "Compass bearing from the nearest mast foot to the place where people are.", Default = "not stated; drawn all round")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double? PeopleBearingRad { get; init; }

    /// <summary>Distance from the nearest mast foot to the boundary, m.</summary>
    [Field("boundary-distance", "Distance from the nearest mast foot to the boundary of your land.", Default = "not stated")]
    [Quantity(QuantityKind.Length, 0, 100e3)]
    public double? BoundaryDistanceM { get; init; }

    /// <summary>Bearing from the nearest mast foot, rad.</summary>
    [Field("boundary-bearing", "Compass bearing from the nearest mast foot to the nearest point of the boundary; that side is drawn as a straight line square to it.", Default = "not stated; drawn all round")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double? BoundaryBearingRad { get; init; }
}

/// <summary>The design wind.</summary>
public sealed record Wind
{
    /// <summary>How speed becomes pressure.</summary>
    [Field("method", "The published method that turns speed into pressure.", Default = "asce-7-22", Why = "the file names no method")]
    public WindMethod Method { get; init; } = WindMethod.Asce7_22;

    /// <summary>Basic wind speed, m/s, as the method defines it.</summary>
    [Field("speed", "Basic wind speed as the method defines it (ASCE 7: 3 s gust at 10 m; EN 1991-1-4: 10 min mean).", Default = "not stated; needed unless the method is stated-pressure")]
    [Quantity(QuantityKind.Speed, 0, 120)]
    public double? SpeedMPerS { get; init; }

    /// <summary>Stated pressure, Pa.</summary>
    [Field("pressure", "Wind pressure, uniform over height, for the method stated-pressure.", Default = "not stated; needed for stated-pressure")]
    [Quantity(QuantityKind.Pressure, 0, 10e3)]
    public double? PressurePa { get; init; }

    /// <summary>Roughness of the country around.</summary>
    [Field("exposure", "The country the wind comes over.", Default = "open", Why = "open country; houses and woods would shelter, water would not")]
    public Exposure Exposure { get; init; } = Exposure.Open;

    /// <summary>Topographic factor.</summary>
    [Field("topography", "Factor for a hill or ridge: Kzt of ASCE 7, or the orography factor co of EN 1991-1-4 (on speed).", Default = "1", Why = "level ground; on a hilltop it is far from safe")]
    [Quantity(QuantityKind.Ratio, 0.8, 4)]
    public double Topography { get; init; } = 1;

    /// <summary>Gust factor; null for the method's.</summary>
    [Field("gust-factor", "Gust factor in the place of the method's own: G of ASCE 7, cscd of EN 1991-1-4.", Default = "the method's; for a slow mast under ASCE 7 that of a flexible structure")]
    [Quantity(QuantityKind.Ratio, 0.5, 3)]
    public double? GustFactor { get; init; }
}

/// <summary>Methods for wind pressure.</summary>
public enum WindMethod
{
    /// <summary>ASCE 7-16.</summary>
    [Word("asce-7-16", "ASCE/SEI 7-16, velocity pressure of chapter 26")]
    Asce7_16,

    /// <summary>ASCE 7-22.</summary>
    [Word("asce-7-22", "ASCE/SEI 7-22, velocity pressure of chapter 26")]
    Asce7_22,

    /// <summary>EN 1991-1-4.</summary>
    [Word("en-1991-1-4", "EN 1991-1-4:2005, peak velocity pressure")]
    En1991,

    /// <summary>A pressure stated by the user.</summary>
    [Word("stated-pressure", "a pressure you state, uniform over the height")]
    StatedPressure,
}

/// <summary>Roughness of the country.</summary>
public enum Exposure
{
    /// <summary>Sea or lake.</summary>
    [Word("water", "open water upwind: ASCE exposure D, EN category 0")]
    Water,

    /// <summary>Open country.</summary>
    [Word("open", "fields with scattered obstacles: ASCE exposure C, EN category II")]
    Open,

    /// <summary>Suburb or wood.</summary>
    [Word("suburban", "suburb, village or wood: ASCE exposure B, EN category III")]
    Suburban,
}

/// <summary>Radial ice.</summary>
public sealed record Ice
{
    private readonly double thicknessM;

    /// <summary>Radial thickness, m; that of the glaze class when only a class is given.</summary>
    [Field("thickness", "Radial thickness of glaze at 10 m.", Default = "0 mm", Why = "the file names no ice; look up your region's ice map")]
    [Quantity(QuantityKind.FineLength, 0, 0.2)]
    public double ThicknessM
    {
        get => thicknessM > 0 ? thicknessM : 0.010 * (GlazeClass ?? 0);
        init => thicknessM = value;
    }

    /// <summary>Glaze class of ISO 12494, 1 to 5; null when the thickness is stated.</summary>
    [Field("glaze-class", "Glaze class of ISO 12494 in the place of a thickness: 1 to 5 for 10 to 50 mm; the class also sets the share of the wind.", Default = "none: thickness and wind-speed are taken as stated")]
    [Quantity(QuantityKind.Count, 1, 5)]
    public int? GlazeClass { get; init; }

    /// <summary>Concurrent wind speed, m/s.</summary>
    [Field("wind-speed", "Wind speed that blows while the ice is on.", Default = "18 m/s", Why = "a common concurrent gust (40 mph) on ice maps; from memory: ASCE 7 chapter 10")]
    [Quantity(QuantityKind.Speed, 0, 80)]
    public double WindSpeedMPerS { get; init; } = 18;

    /// <summary>Density of the ice, kg/m³.</summary>
    [Field("density", "Density of the ice.", Default = "900 kg/m³", Why = "glaze; ASCE 7 asks for at least 56 pcf")]
    [Quantity(QuantityKind.Density, 100, 920)]
    public double DensityKgPerM3 { get; init; } = 900;
}
