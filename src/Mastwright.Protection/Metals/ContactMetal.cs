using Mastwright.Model.Trails;

namespace Mastwright.Protection.Metals;

/// <summary>The family a metal belongs to, as far as contact matters.</summary>
public enum MetalFamily
{
    /// <summary>Bare carbon steel or cast iron.</summary>
    Steel,

    /// <summary>Zinc or a zinc coat (galvanised steel).</summary>
    Zinc,

    /// <summary>Aluminium and its alloys.</summary>
    Aluminium,

    /// <summary>Stainless steel.</summary>
    Stainless,

    /// <summary>Copper, brass, bronze.</summary>
    Copper,

    /// <summary>Tin or a tin coat (tinned copper counts as tin while the coat lasts).</summary>
    Tin,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>A metal in contact with others.</summary>
/// <param name="Name">Name.</param>
/// <param name="Family">Family.</param>
/// <param name="AnodicIndexV">Anodic index, volts to gold, positive: the larger, the sooner it is eaten.</param>
/// <param name="Source">Where the index comes from.</param>
public sealed record ContactMetal(string Name, MetalFamily Family, double AnodicIndexV, Source Source)
{
    /// <summary>The family that goes with the catalogue's word for it; <see cref="MetalFamily.Other"/> when unknown.</summary>
    /// <param name="word">E.g. <c>"steel"</c>, <c>"aluminium"</c>, <c>"brass"</c>, <c>"zinc"</c>.</param>
    public static MetalFamily FamilyOf(string word) => word.Trim().ToLowerInvariant() switch
    {
        "steel" or "iron" => MetalFamily.Steel,
        "zinc" or "galvanised" or "galvanized" => MetalFamily.Zinc,
        "aluminium" or "aluminum" => MetalFamily.Aluminium,
        "stainless" => MetalFamily.Stainless,
        "copper" or "brass" or "bronze" => MetalFamily.Copper,
        "tin" => MetalFamily.Tin,
        _ => MetalFamily.Other,
    };
}

/// <summary>Where the contact lives.</summary>
public enum ContactEnvironment
{
    /// <summary>Outdoors, humid or salt air: at most 0.15 V between anodic indices.</summary>
    Harsh,

    /// <summary>Indoors without control of temperature and humidity: at most 0.25 V.</summary>
    Indoor,

    /// <summary>Indoors, controlled: at most 0.50 V.</summary>
    Controlled,

    /// <summary>In soil or standing water, both metals wetted by the same water: treated as harsh.</summary>
    Buried,
}

/// <summary>How two metals meet.</summary>
public enum JointKind
{
    /// <summary>Bolted or clamped faces.</summary>
    Clamped,

    /// <summary>A screw of the first metal in a thread of the second.</summary>
    Thread,

    /// <summary>The first hangs above the second, and rain runs from it onto the second.</summary>
    RunoffAbove,

    /// <summary>Joined by a wire, not touching, both in the same soil.</summary>
    BondedThroughSoil,

    /// <summary>The first metal cast into or standing on wet concrete or mortar; the second is ignored.</summary>
    InConcrete,
}

/// <summary>What keeps the water or the current out.</summary>
public enum JointBarrier
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Joint compound and a seal against water.</summary>
    CompoundAndSeal,

    /// <summary>A plate or washer of a metal between the two (stainless between copper and zinc, tinned or bimetal between copper and aluminium).</summary>
    TransitionMetal,

    /// <summary>An insulating board, sleeve or bitumen coat of at least 12 mm or two coats: no metallic contact.</summary>
    Insulation,

    /// <summary>Anti-seize compound in a thread.</summary>
    AntiSeize,
}

/// <summary>One touching pair.</summary>
/// <param name="Where">Where it is, e.g. <c>"radial clamp"</c>; unique.</param>
/// <param name="First">One metal; see <see cref="JointKind"/> for its role.</param>
/// <param name="Second">The other.</param>
/// <param name="Environment">Where it lives.</param>
/// <param name="Joint">How they meet.</param>
/// <param name="Barrier">What lies between.</param>
/// <param name="FirstAreaOverSecond">Wetted area of the first metal over the second's; null when unknown.</param>
public sealed record MetalContact(
    string Where, ContactMetal First, ContactMetal Second, ContactEnvironment Environment, JointKind Joint, JointBarrier Barrier = JointBarrier.None, double? FirstAreaOverSecond = null);

/// <summary>A synthetic rope in the open.</summary>
/// <param name="Where">Where it is.</param>
/// <param name="Fibre">Fibre, e.g. <c>"aramid"</c>, <c>"polyester"</c>.</param>
/// <param name="Jacketed">Whether a jacket keeps the sun off the core.</param>
/// <param name="YearsInUse">Years in the sun so far.</param>
public sealed record RopeInSun(string Where, string Fibre, bool Jacketed, double YearsInUse = 0);
