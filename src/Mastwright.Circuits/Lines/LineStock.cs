using System.Collections.Immutable;

namespace Mastwright.Circuits.Lines;

/// <summary>Kinds of line a builder usually has, with typical figures (common practice, no source: use the maker's where known).</summary>
public static class LineStock
{
    /// <summary>50 Ω coax with solid polyethylene, 10 mm.</summary>
    public static LineType Coax50 { get; } = LineType.FromSpotLoss("50 Ω coax", 50, 0.66, 2.0, 10e6);

    /// <summary>75 Ω coax with foam, 10 mm.</summary>
    public static LineType Coax75 { get; } = LineType.FromSpotLoss("75 Ω coax", 75, 0.82, 1.5, 10e6);

    /// <summary>Two 50 Ω cables in parallel.</summary>
    public static LineType Pair25 { get; } = LineType.FromSpotLoss("two 50 Ω coaxes in parallel", 25, 0.66, 2.0, 10e6);

    /// <summary>Two 75 Ω cables in parallel.</summary>
    public static LineType Pair37 { get; } = LineType.FromSpotLoss("two 75 Ω coaxes in parallel", 37.5, 0.82, 1.5, 10e6);

    /// <summary>Thin 93 Ω coax with air spacing.</summary>
    public static LineType Coax93 { get; } = LineType.FromSpotLoss("93 Ω coax", 93, 0.85, 2.8, 10e6);

    /// <summary>All of them.</summary>
    public static ImmutableArray<LineType> Usual { get; } = [Coax50, Coax75, Pair25, Pair37, Coax93];

    /// <summary>A line without loss of any impedance, solid dielectric.</summary>
    public static LineType Ideal(double ohm) => new(FormattableString.Invariant($"{ohm:0.#} Ω line"), ohm, 0.66);
}
