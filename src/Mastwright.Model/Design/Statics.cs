using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>What drains static from the masts, and how quiet they shall be.</summary>
public sealed record StaticsSpec
{
    /// <summary>The drain resistor, Ω.</summary>
    [Field("drain-resistor", "Resistor across the base that drains static.", Default = "none")]
    [Quantity(QuantityKind.Resistance, 100, 1e9)]
    public double? DrainOhm { get; init; }

    /// <summary>The drain choke, H.</summary>
    [Field("drain-choke", "Choke across the base that drains static.", Default = "none")]
    [Quantity(QuantityKind.Inductance, 1e-6, 1)]
    public double? ChokeH { get; init; }

    /// <summary>Quality of the choke.</summary>
    [Field("choke-q", "Quality of that choke on the bands.", Default = "100", Why = "an air-wound or large-pitch choke; measure it")]
    [Quantity(QuantityKind.Ratio, 1, 2000)]
    public double ChokeQ { get; init; } = 100;

    /// <summary>Share of the power that a drain may cost.</summary>
    [Field("drain-loss", "Share of the power that a drain may cost on any band.", Default = "0.5 %", Why = "not missed, and cool enough for ordinary resistors; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1e-5, 0.2)]
    public double DrainLossShare { get; init; } = 0.005;

    /// <summary>Static voltage that may stand on a drained mast, V.</summary>
    [Field("static-voltage", "Static voltage that may stand on a drained mast in the worst weather.", Default = "500 V", Why = "far below the gap, and no hard jolt; common practice, no source")]
    [Quantity(QuantityKind.PeakVoltage, 1, 20e3)]
    public double AllowedV { get; init; } = 500;

    /// <summary>Surface of mast and rods.</summary>
    [Field("surface", "Surface of mast top, rods and rings.", Default = "weathered", Why = "drawn or galvanised and outdoors for a year")]
    public SurfaceState Surface { get; init; } = SurfaceState.Weathered;

    /// <summary>The atmospheric field up to which the mast shall not spray, V/m.</summary>
    [Field("quiet-field", "Atmospheric field up to which the top shall not spray and hiss.", Default = "1000 V/m", Why = "under cloud; common practice, no source")]
    [Quantity(QuantityKind.ElectricField, 50, 20e3)]
    public double QuietFieldVPerM { get; init; } = 1000;

    /// <summary>Wind that carries the charge away, m/s.</summary>
    [Field("storm-wind", "Wind at the top when a storm field stands over the mast; it carries the sprayed charge away and so sets the current.", Default = "10 m/s", Why = "a fresh breeze; common practice, no source")]
    [Quantity(QuantityKind.Speed, 0, 60)]
    public double StormWindMPerS { get; init; } = 10;
}

/// <summary>States of a surface.</summary>
public enum SurfaceState
{
    /// <summary>Polished.</summary>
    [Word("polished", "polished metal, roughness factor 1")]
    Polished,

    /// <summary>Weathered.</summary>
    [Word("weathered", "weathered tube or rod, 0.93")]
    Weathered,

    /// <summary>Stranded.</summary>
    [Word("stranded", "strand, 0.82")]
    Stranded,

    /// <summary>Wet.</summary>
    [Word("wet", "rain drops on it, 0.5")]
    Wet,
}

/// <summary>What stands on the mast's top.</summary>
public sealed record TopFitting
{
    /// <summary>Length of the rod or whip, m.</summary>
    [Field("rod-length", "Length of a rod or whip above the top.", Default = "0 m", Why = "none stated")]
    [Quantity(QuantityKind.Length, 0, 30)]
    public double RodLengthM { get; init; }

    /// <summary>Diameter of the rod, m.</summary>
    [Field("rod-diameter", "Diameter of the rod and its rounded tip.", Default = "12 mm", Why = "a common rod; it counts only with a rod-length")]
    [Quantity(QuantityKind.FineLength, 0.001, 0.2)]
    public double RodDiameterM { get; init; } = 0.012;

    /// <summary>Number of whiskers.</summary>
    [Field("whiskers", "Number of thin rods or brushes spread round the top, e.g. an aerial's elements or a discharger.", Default = "0", Why = "none stated")]
    [Quantity(QuantityKind.Count, 0, 24)]
    public int Whiskers { get; init; }

    /// <summary>Length of a whisker, m.</summary>
    [Field("whisker-length", "Length of each.", Default = "0.6 m", Why = "it counts only with whiskers")]
    [Quantity(QuantityKind.Length, 0.05, 10)]
    public double WhiskerLengthM { get; init; } = 0.6;

    /// <summary>Diameter of a whisker, m.</summary>
    [Field("whisker-diameter", "Diameter of each, with a rounded tip.", Default = "3 mm", Why = "it counts only with whiskers")]
    [Quantity(QuantityKind.FineLength, 0.0005, 0.05)]
    public double WhiskerDiameterM { get; init; } = 0.003;

    /// <summary>Slope of a whisker above level, rad.</summary>
    [Field("whisker-slope", "How steeply each rises above level; negative slopes down.", Default = "45 °", Why = "halfway between level and upright; it counts only with whiskers")]
    [Quantity(QuantityKind.Angle, -1.5, 1.5)]
    public double WhiskerSlopeRad { get; init; } = Math.PI / 4;

    /// <summary>Diameter of a ring, m.</summary>
    [Field("ring-diameter", "Diameter of the centre line of a ring round the top, bonded to it.", Default = "no ring")]
    [Quantity(QuantityKind.Length, 0.1, 6)]
    public double? RingDiameterM { get; init; }

    /// <summary>Diameter of the ring's tube, m.</summary>
    [Field("ring-tube", "Diameter of the ring's tube.", Default = "22 mm", Why = "common copper tube; it counts only with a ring-diameter")]
    [Quantity(QuantityKind.FineLength, 0.005, 0.3)]
    public double RingTubeM { get; init; } = 0.022;
}
