using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>Metals that touch, the air they touch in, and ropes in the sun.</summary>
public sealed record MetalsSpec
{
    /// <summary>The air.</summary>
    [Field("environment", "The air the station stands in.", Default = "rural", Why = "inland, no works near; salt and smoke eat metal many times faster")]
    public AirQuality Environment { get; init; } = AirQuality.Rural;

    /// <summary>Pairs the user describes.</summary>
    [Field("contacts", "Pairs of metals that touch, besides those known from the design.", Default = "those known from the design only")]
    public ImmutableArray<ContactSpec> Contacts { get; init; } = [];

    /// <summary>What lies between guy fittings and mast.</summary>
    [Field("guy-joint", "What keeps water out, or the metals apart, where guy fittings meet the mast.", Default = "not stated; a pair that would suffer is shown as a caution")]
    public BetweenMetals? GuyJoint { get; init; }

    /// <summary>What lies between base lead and mast.</summary>
    [Field("lead-joint", "The same where the copper lead of the network meets the mast.", Default = "not stated; a pair that would suffer is shown as a caution")]
    public BetweenMetals? LeadJoint { get; init; }

    /// <summary>Metal of the plate on the footing, catalogue name.</summary>
    [Field("base-plate", "Metal of the plate between base insulator and footing (see `mastwright list metals`).", Default = "zinc coat", Why = "a galvanised steel plate")]
    [CatalogueName("metals")]
    public string BasePlate { get; init; } = "zinc coat";

    /// <summary>What lies between plate and concrete.</summary>
    [Field("base-plate-barrier", "What lies between that plate and the concrete.", Default = "none", Why = "the file does not say")]
    public BetweenMetals BasePlateBarrier { get; init; } = BetweenMetals.None;

    /// <summary>Metal of the clamps on the radials, catalogue name.</summary>
    [Field("radial-clamps", "Metal of the clamps, lugs or bus that hold the radials (see `mastwright list metals`).", Default = "not stated; the radials are taken to be brazed to their like")]
    [CatalogueName("metals")]
    public string? RadialClamps { get; init; }

    /// <summary>What lies between radials and clamps.</summary>
    [Field("radial-joint", "What keeps water out, or the metals apart, where the radials meet those clamps.", Default = "not stated; a pair that would suffer is shown as a caution")]
    public BetweenMetals? RadialJoint { get; init; }

    /// <summary>Metal of screws in the mast, catalogue name.</summary>
    [Field("mast-screws", "Metal of screws that sit in threads of the mast itself (see `mastwright list metals`).", Default = "none; sections are bolted through")]
    [CatalogueName("metals")]
    public string? MastScrews { get; init; }

    /// <summary>What is in those threads.</summary>
    [Field("screw-joint", "What is in those threads.", Default = "not stated; a pair that would suffer is shown as a caution")]
    public BetweenMetals? ScrewJoint { get; init; }

    /// <summary>Whether ropes have a jacket.</summary>
    [Field("rope-jacketed", "Whether ropes have a jacket that keeps the sun off their core.", Default = "yes", Why = "the catalogue's ropes are jacketed")]
    public bool RopeJacketed { get; init; } = true;

    /// <summary>Years the ropes have been in the sun.</summary>
    [Field("rope-years", "Years the ropes have been in the sun.", Default = "0", Why = "new")]
    [Quantity(QuantityKind.Count, 0, 60)]
    public int RopeYears { get; init; }
}

/// <summary>The air metals stand in.</summary>
public enum AirQuality
{
    /// <summary>By the sea.</summary>
    [Word("marine", "by the sea: salt in the air")]
    Marine,

    /// <summary>Near works and roads.</summary>
    [Word("industrial", "works, smoke or salted roads near")]
    Industrial,

    /// <summary>Inland.</summary>
    [Word("rural", "inland, clean air")]
    Rural,
}

/// <summary>One touching pair.</summary>
public sealed record ContactSpec
{
    /// <summary>Where.</summary>
    [Field("where", "Where it is.", Required = true)]
    public string Where { get; init; } = "";

    /// <summary>One metal.</summary>
    [Field("first", "One metal (see `mastwright list metals`): the screw, the one above, the one in concrete.", Required = true)]
    [CatalogueName("metals")]
    public string First { get; init; } = "copper";

    /// <summary>The other.</summary>
    [Field("second", "The other metal.", Required = true)]
    [CatalogueName("metals")]
    public string Second { get; init; } = "copper";

    /// <summary>How they meet.</summary>
    [Field("joint", "How they meet.", Default = "clamped", Why = "the common joint")]
    public Joint Joint { get; init; } = Joint.Clamped;

    /// <summary>Where the joint lives.</summary>
    [Field("place", "Where the joint lives; it sets how far the metals may lie apart.", Default = "outdoors", Why = "most of a mast stands in the rain")]
    public JointPlace Place { get; init; } = JointPlace.Outdoors;

    /// <summary>What lies between.</summary>
    [Field("barrier", "What lies between.", Default = "none", Why = "the file does not say")]
    public BetweenMetals Barrier { get; init; } = BetweenMetals.None;

    /// <summary>Area of the first over that of the second.</summary>
    [Field("area-ratio", "Wetted area of the first over that of the second.", Default = "not stated")]
    [Quantity(QuantityKind.Ratio, 1e-4, 1e4)]
    public double? AreaRatio { get; init; }
}

/// <summary>Where a joint lives.</summary>
public enum JointPlace
{
    /// <summary>Outdoors.</summary>
    [Word("outdoors", "in rain, salt or high humidity: at most 0.15 V apart")]
    Outdoors,

    /// <summary>Under cover.</summary>
    [Word("sheltered", "in a closed box or shed without heating: at most 0.25 V apart")]
    Sheltered,

    /// <summary>Indoors.</summary>
    [Word("heated-room", "in a dry, heated room: at most 0.50 V apart")]
    HeatedRoom,
}

/// <summary>How two metals meet.</summary>
public enum Joint
{
    /// <summary>Clamped.</summary>
    [Word("clamped", "bolted or clamped faces")]
    Clamped,

    /// <summary>Thread.</summary>
    [Word("thread", "a screw of the first in a thread of the second")]
    Thread,

    /// <summary>Run-off.</summary>
    [Word("above", "rain runs from the first onto the second")]
    Above,

    /// <summary>In soil.</summary>
    [Word("in-soil", "joined by a wire and both in the same soil")]
    InSoil,

    /// <summary>In concrete.</summary>
    [Word("in-concrete", "the first stands in or on wet concrete")]
    InConcrete,
}

/// <summary>What lies between two metals.</summary>
public enum BetweenMetals
{
    /// <summary>Nothing.</summary>
    [Word("none", "nothing")]
    None,

    /// <summary>Compound and seal.</summary>
    [Word("sealed", "joint compound and a seal against water")]
    Sealed,

    /// <summary>Transition metal.</summary>
    [Word("transition-metal", "a plate or washer of a metal between the two")]
    TransitionMetal,

    /// <summary>Insulation.</summary>
    [Word("insulated", "an insulating board, sleeve or coat: no metallic contact")]
    Insulated,

    /// <summary>Anti-seize.</summary>
    [Word("anti-seize", "anti-seize compound in a thread")]
    AntiSeize,
}
