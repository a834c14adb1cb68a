using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The lightning the station is held against, and the straps it takes through the base gap.</summary>
public sealed record LightningSpec
{
    /// <summary>Protection level.</summary>
    [Field("level", "Protection level of IEC 62305-1 whose greatest currents are followed.", Default = "i", Why = "the severest level: about 99 of 100 flashes are weaker")]
    public StrikeLevel Level { get; init; } = StrikeLevel.I;

    /// <summary>A stroke of the user's own.</summary>
    [Field("stroke", "A stroke of your own, followed besides those of the level.", Default = "none")]
    public OwnStroke? Stroke { get; init; }

    /// <summary>Length of strap in the gap's path, m.</summary>
    [Field("strap-length", "Length of all strap in the gap's path, from the mast through the gap to the earth plate.", Default = "0.5 m", Why = "gap beside the insulator, short straps; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.02, 30)]
    public double StrapLengthM { get; init; } = 0.5;

    /// <summary>Width of the strap, m.</summary>
    [Field("strap-width", "Width of that strap.", Default = "50 mm", Why = "2 in copper strap; common practice, no source")]
    [Quantity(QuantityKind.FineLength, 0.001, 1)]
    public double StrapWidthM { get; init; } = 0.05;

    /// <summary>Thickness of the strap, m.</summary>
    [Field("strap-thickness", "Thickness of that strap.", Default = "1 mm", Why = "sheet copper; common practice, no source")]
    [Quantity(QuantityKind.FineLength, 1e-5, 0.1)]
    public double StrapThicknessM { get; init; } = 0.001;

    /// <summary>Metal of the strap.</summary>
    [Field("strap-metal", "Metal of that strap.", Default = "copper", Why = "the usual strap")]
    public StrapMetal StrapMetal { get; init; } = StrapMetal.Copper;

    /// <summary>Statistical lag of the gap, s.</summary>
    [Field("statistical-lag", "Time the gap may wait for a first electron; a gap shut away from daylight waits longer.", Default = "0 s", Why = "the gap sees daylight")]
    [Quantity(QuantityKind.Time, 0, 1e-4)]
    public double StatisticalLagS { get; init; }

    /// <summary>Formative lag of the gap, s.</summary>
    [Field("formative-lag", "Time the spark takes to form once there is an electron, as ∫(u − Us)dt = Us·lag has it.", Default = "100 ns", Why = "a few millimetres then fire within 500 ns at a fifth over the static voltage; common practice, no source")]
    [Quantity(QuantityKind.Time, 1e-9, 1e-5)]
    public double FormativeLagS { get; init; } = 100e-9;

    /// <summary>Distance from the base to the nearest other metal, m.</summary>
    [Field("metal-distance", "Distance from the mast's foot and its straps to the nearest metal that is not bonded to them, for side flash.", Default = "not stated")]
    [Quantity(QuantityKind.Length, 0.01, 1000)]
    public double? MetalDistanceM { get; init; }
}

/// <summary>A stroke i = (I/k)·(t/τ1)ⁿ/(1 + (t/τ1)ⁿ)·exp(−t/τ2); k is worked out so that the crest is I.</summary>
public sealed record OwnStroke
{
    /// <summary>Crest, A.</summary>
    [Field("crest", "Crest of the current.", Required = true)]
    [Quantity(QuantityKind.PeakCurrent, 100, 1e6)]
    public double CrestA { get; init; } = 30e3;

    /// <summary>Front constant, s.</summary>
    [Field("front", "Time constant τ1 of the front: 19 µs, 1.82 µs and 0.454 µs in the standard's first positive, first negative and subsequent stroke.", Default = "1.82 µs", Why = "first negative stroke of IEC 62305-1")]
    [Quantity(QuantityKind.Time, 1e-8, 1e-3)]
    public double FrontS { get; init; } = 1.82e-6;

    /// <summary>Tail constant, s.</summary>
    [Field("tail", "Time constant τ2 of the tail: 485 µs, 285 µs and 143 µs in the standard's strokes.", Default = "285 µs", Why = "first negative stroke of IEC 62305-1")]
    [Quantity(QuantityKind.Time, 1e-6, 1e-1)]
    public double TailS { get; init; } = 285e-6;
}

/// <summary>Protection levels.</summary>
public enum StrikeLevel
{
    /// <summary>I.</summary>
    [Word("i", "200 kA first positive, 100 kA first negative, 50 kA subsequent stroke")]
    I,

    /// <summary>II.</summary>
    [Word("ii", "three quarters of level i")]
    II,

    /// <summary>III.</summary>
    [Word("iii", "half of level i")]
    III,

    /// <summary>IV.</summary>
    [Word("iv", "currents of level iii, with a larger rolling sphere")]
    IV,
}

/// <summary>Metals of straps and radials.</summary>
public enum StrapMetal
{
    /// <summary>Copper.</summary>
    [Word("copper", "copper")]
    Copper,

    /// <summary>Aluminium.</summary>
    [Word("aluminium", "aluminium")]
    Aluminium,

    /// <summary>Steel.</summary>
    [Word("steel", "mild or galvanised steel")]
    Steel,

    /// <summary>Stainless.</summary>
    [Word("stainless", "stainless steel")]
    Stainless,
}
