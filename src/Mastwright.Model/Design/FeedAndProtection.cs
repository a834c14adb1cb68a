using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The base gap and what stands behind it.</summary>
public sealed record ProtectionSpec
{
    /// <summary>Shape of the gap's electrodes.</summary>
    [Field("electrodes", "Shape of the base gap's electrodes.", Default = "rounded", Why = "rounded nuts or domed bolts, the usual home-made gap")]
    public Electrodes Electrodes { get; init; } = Electrodes.Rounded;

    /// <summary>Diameter of the electrodes' rounding, m.</summary>
    [Field("electrode-diameter", "Diameter of the electrodes, or of their rounding.", Default = "20 mm", Why = "a 3/4 in domed nut")]
    [Quantity(QuantityKind.FineLength, 0.001, 1)]
    public double ElectrodeDiameterM { get; init; } = 0.02;

    /// <summary>The setting, when the builder has chosen one, m.</summary>
    [Field("gap", "The gap you have set; leave it out to have it computed.", Default = "computed")]
    [Quantity(QuantityKind.FineLength, 1e-4, 0.5)]
    public double? GapM { get; init; }

    /// <summary>Tolerance of the setting, m.</summary>
    [Field("gap-tolerance", "How closely the gap can be set and will stay.", Default = "0.2 mm", Why = "a feeler gauge and a lock nut; common practice, no source")]
    [Quantity(QuantityKind.FineLength, 0, 0.01)]
    public double GapToleranceM { get; init; } = 0.2e-3;

    /// <summary>Rise of the base voltage when the match drifts.</summary>
    [Field("mismatch", "Rise of the base voltage when the match drifts.", Default = "1.2", Why = "about √1.5, for an SWR of 1.5; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1, 5)]
    public double Mismatch { get; init; } = 1.2;

    /// <summary>Margin of the gap above the working peak.</summary>
    [Field("working-margin", "Spark voltage over the highest working peak.", Default = "1.3", Why = "common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double WorkingMargin { get; init; } = 1.3;

    /// <summary>Margin of the weakest part above the gap.</summary>
    [Field("part-margin", "Strength of the weakest part over the firing voltage.", Default = "1.2", Why = "common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double PartMargin { get; init; } = 1.2;

    /// <summary>What rain leaves of the gap's strength.</summary>
    [Field("wet-factor", "What rain and dirt leave of the gap's dry strength.", Default = "0.85", Why = "an open gap without drip hood; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0.1, 1)]
    public double WetFactor { get; init; } = 0.85;

    /// <summary>Firing voltage on a lightning front over the static one; null to have it worked out.</summary>
    [Field("impulse-ratio", "Firing voltage on a standard lightning front over the static spark voltage.", Default = "worked out from the lags of the gap on a standard 1.2 µs front: 1.5 at 100 ns")]
    [Quantity(QuantityKind.Ratio, 1, 5)]
    public double? ImpulseRatio { get; init; }

    /// <summary>Water vapour in the air, kg/m³.</summary>
    [Field("humidity", "Water vapour in the air at the gap.", Default = "8.5 g/m³", Why = "the reference humidity of the spark tables")]
    [Quantity(QuantityKind.Density, 0, 0.04)]
    public double HumidityKgPerM3 { get; init; } = 0.0085;

    /// <summary>Parts behind the gap.</summary>
    [Field("parts", "Parts behind the gap and the peak voltage each withstands.", Default = "the base insulator's flashover only", Why = "the file names no capacitor, coil or relay")]
    public ImmutableArray<WeakPart> Parts { get; init; } = [];
}

/// <summary>Shapes of gap electrodes.</summary>
public enum Electrodes
{
    /// <summary>Two balls.</summary>
    [Word("balls", "two balls, one earthed")]
    Balls,

    /// <summary>Ball and plate.</summary>
    [Word("ball-to-plate", "a ball over a plate")]
    BallToPlate,

    /// <summary>Rounded bolts or nuts.</summary>
    [Word("rounded", "domed nuts or bolts rounded by hand")]
    Rounded,

    /// <summary>A rounded bolt or nut over a plate.</summary>
    [Word("rounded-to-plate", "a domed nut or bolt over a flat plate")]
    RoundedToPlate,

    /// <summary>Rods with square or pointed ends.</summary>
    [Word("rods", "rods with square or pointed ends")]
    Rods,
}

/// <summary>A part behind the gap.</summary>
public sealed record WeakPart
{
    /// <summary>What it is.</summary>
    [Field("name", "What it is.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Peak voltage it withstands, V.</summary>
    [Field("withstand", "Peak voltage it withstands, from its maker or a test.", Required = true)]
    [Quantity(QuantityKind.PeakVoltage, 10, 1e6)]
    public double WithstandPeakV { get; init; }

    /// <summary>Which kind of part it is; null when the file does not say.</summary>
    [Field("kind", "What kind of part it is, so that a strike's voltage on the like part of the network is held against it.", Default = "taken from its name where the name says it")]
    public PartKind? Kind { get; init; }
}

/// <summary>Kinds of parts behind the gap.</summary>
public enum PartKind
{
    /// <summary>A capacitor of the network.</summary>
    [Word("capacitor", "a capacitor of the network")]
    Capacitor,

    /// <summary>A coil of the network.</summary>
    [Word("coil", "a coil of the network")]
    Coil,

    /// <summary>A relay.</summary>
    [Word("relay", "a relay at the base; open, it sees the whole base voltage")]
    Relay,

    /// <summary>A cable.</summary>
    [Word("cable", "a cable behind the network, conductor to shield")]
    Cable,

    /// <summary>Anything across the base.</summary>
    [Word("across-base", "an insulator, feed-through, choke or meter that lies across the base")]
    AcrossBase,
}

/// <summary>Factors and limits the checks hold the design to.</summary>
public sealed record Limits
{
    /// <summary>Breaking strength over largest guy tension.</summary>
    [Field("guy-factor", "Breaking strength of a guy over its largest tension.", Default = "2", Why = "two on breaking strength, the old rule for service winds, asked of strength-level winds too: stricter than the 0.6 of ANSI/TIA-222 (a factor of 1.67, from memory); local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double GuyFactor { get; init; } = 2;

    /// <summary>Rated compression over largest compression of the base insulator.</summary>
    [Field("insulator-factor", "Rated compression of the base insulator over its largest load.", Default = "3", Why = "ceramic is brittle; common practice, no source; the maker's figure governs")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double InsulatorFactor { get; init; } = 3;

    /// <summary>Anchor rating over largest pull.</summary>
    [Field("anchor-factor", "Rated pull of an anchor over its largest pull.", Default = "2", Why = "soil is uncertain; common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double AnchorFactor { get; init; } = 2;

    /// <summary>Factor on wind and ice loads; null for that of the method.</summary>
    [Field("wind-load-factor", "Factor on wind and ice loads.", Default = "that of the method: 1 for ASCE 7 (its speeds are at strength level), 1.5 for EN 1991-1-4 (EN 1990), 1 for a stated pressure")]
    [Quantity(QuantityKind.Ratio, 0.1, 5)]
    public double? WindLoadFactor { get; init; }

    /// <summary>Lowest stability factor.</summary>
    [Field("stability-factor", "Load factor the mast must carry beyond the design loads before it becomes unstable.", Default = "1.5", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double StabilityFactor { get; init; } = 1.5;

    /// <summary>Largest tilt of the mast under the design wind, rad.</summary>
    [Field("tilt", "Largest tilt or sway angle of the mast's top under the design wind.", Default = "4 °", Why = "guyed-mast practice; common practice, no source")]
    [Quantity(QuantityKind.Angle, 0.001, 0.8)]
    public double TiltRad { get; init; } = 4 * Math.PI / 180;

    /// <summary>Which member rules; null for those that go with the wind method.</summary>
    [Field("members", "Which rules members of the mast are held to.", Default = "those of the wind method: resistance factors with ASCE 7, Eurocodes with EN 1991-1-4, allowable strength with a stated pressure")]
    public MemberFormat? Members { get; init; }

    /// <summary>Factors on the strength of members; null for the rules' own.</summary>
    [Field("member-factors", "Factors on the nominal strength of members, in the place of the rules' own.", Default = "the rules' own")]
    public MemberFactors? MemberFactors { get; init; }

    /// <summary>Factors of safety of soil and concrete.</summary>
    [Field("ground-factors", "Factors of safety of soil, concrete and anchors.", Default = "all of their own defaults")]
    public GroundSafety? GroundFactors { get; init; }

    /// <summary>Radiation efficiency below which a band is flagged.</summary>
    [Field("efficiency", "Radiation efficiency you want at least on every band.", Default = "30 %", Why = "about 5 dB below perfect ground; your choice")]
    [Quantity(QuantityKind.Ratio, 0.001, 1)]
    public double Efficiency { get; init; } = 0.3;
}
