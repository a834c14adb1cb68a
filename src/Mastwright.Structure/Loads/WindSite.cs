using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>What the wind blows against; some methods treat kinds differently.</summary>
public enum BodyKind
{
    /// <summary>A round tube mast.</summary>
    Tube,

    /// <summary>A triangular or square lattice mast.</summary>
    Lattice,

    /// <summary>A guy or another cable.</summary>
    Cable,
}

/// <summary>Shape of a hill that speeds the wind up (ASCE 7 topographic factor).</summary>
public enum HillKind
{
    /// <summary>A long ridge, or a valley with a negative height.</summary>
    Ridge,

    /// <summary>A step in the land.</summary>
    Escarpment,

    /// <summary>A round hill.</summary>
    RoundHill,
}

/// <summary>A hill upwind of, under or downwind of the mast.</summary>
/// <param name="Kind">Its shape.</param>
/// <param name="HeightM">Height H of the hill above the land upwind.</param>
/// <param name="HalfLengthM">Lh: upwind distance from the crest to half the height.</param>
/// <param name="FromCrestM">Distance of the mast from the crest; positive downwind, negative upwind.</param>
public sealed record Hill(HillKind Kind, double HeightM, double HalfLengthM, double FromCrestM);

/// <summary>The wind at a site, in the terms of the method that will read it.</summary>
/// <param name="SpeedMps">Basic wind speed as the method defines it: 3-second gust at 10 m for ASCE 7, 10-minute mean at 10 m for EN 1991-1-4.</param>
/// <param name="Exposure">Exposure <c>"B"</c>, <c>"C"</c>, <c>"D"</c> (ASCE 7) or terrain category <c>"0"</c>, <c>"I"</c> to <c>"IV"</c> (EN 1991-1-4); not read by a stated pressure.</param>
public sealed record WindSite(double SpeedMps, string Exposure)
{
    /// <summary>Height of the ground above the sea, m (ASCE 7: air density factor Ke).</summary>
    public double GroundElevationM { get; init; }

    /// <summary>Topographic factor: Kzt of ASCE 7, or the orography factor co of EN 1991-1-4. Not read by ASCE 7 when <see cref="Hill"/> is given.</summary>
    public double TopographicFactor { get; init; } = 1;

    /// <summary>A hill from which ASCE 7 computes Kzt at each height; null on level ground.</summary>
    public Hill? Hill { get; init; }

    /// <summary>Wind directionality factor Kd put in the place of the method's own; null to use that.</summary>
    public double? Directionality { get; init; }

    /// <summary>Gust (or structural) factor put in the place of the method's own; null to use that.</summary>
    public double? GustFactor { get; init; }

    /// <summary>Gust factor worked out for this structure, with its grounds; read when <see cref="GustFactor"/> is null.</summary>
    public Trail? GustTrail { get; init; }

    /// <summary>Air density for EN 1991-1-4, kg/m³; its recommended value by default.</summary>
    public double AirDensityKgPerM3 { get; init; } = Air.DensityKgPerM3;

    /// <summary>Velocity pressure stated outright, Pa; read only by the method <c>"stated pressure"</c>.</summary>
    public double? StatedPressurePa { get; init; }

    /// <summary>Where the figures come from; the design file by default.</summary>
    public Source Source { get; init; } = Source.DesignFile;
}
