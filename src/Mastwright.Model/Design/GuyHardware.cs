using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The fittings of a guy, from the anchor's eye to the mast.</summary>
public sealed record GuyHardware
{
    /// <summary>Shackle at the anchor, catalogue name.</summary>
    [Field("shackle", "The shackle at the anchor and at the mast (see `mastwright list shackles`).", Required = true)]
    [CatalogueName("shackles")]
    public string Shackle { get; init; } = "";

    /// <summary>Inside length of the shackle as measured, m.</summary>
    [Field("shackle-length", "Length of the shackle as measured, from the pin to the inside of the bow.", Default = "that of the catalogue row")]
    [Quantity(QuantityKind.FineLength, 0.005, 0.5)]
    public double? ShackleLengthM { get; init; }

    /// <summary>Whether the shackle pins are secured.</summary>
    [Field("pins-secured", "Whether the shackle pins are wired or cottered.", Default = "yes", Why = "they must be; the inspection sheet asks for it")]
    public bool PinsSecured { get; init; } = true;

    /// <summary>Turnbuckle, catalogue name.</summary>
    [Field("turnbuckle", "The turnbuckle (see `mastwright list turnbuckles`).", Required = true)]
    [CatalogueName("turnbuckles")]
    public string Turnbuckle { get; init; } = "";

    /// <summary>Length of the closed turnbuckle as measured, m.</summary>
    [Field("turnbuckle-length", "Length of the turnbuckle as measured, turned fully in, between the bearing points of its ends.", Default = "that of the catalogue row")]
    [Quantity(QuantityKind.FineLength, 0.02, 2)]
    public double? TurnbuckleLengthM { get; init; }

    /// <summary>How far the turnbuckle is open at the set tension.</summary>
    [Field("turnbuckle-open", "How far the turnbuckle is open at the set tension, 0 closed to 1 open.", Default = "0.7", Why = "made up with most of its travel left to tighten")]
    [Quantity(QuantityKind.Ratio, 0, 1)]
    public double TurnbuckleOpen { get; init; } = 0.7;

    /// <summary>Whether it is locked.</summary>
    [Field("turnbuckle-locked", "Whether the turnbuckle is locked against unwinding.", Default = "yes", Why = "it must be; the inspection sheet asks for it")]
    public bool TurnbuckleLocked { get; init; } = true;

    /// <summary>How the strand is ended.</summary>
    [Field("end-fitting", "How the strand is ended.", Default = "wrapped-grip", Why = "the usual end of stiff strand")]
    public StrandEnd EndFitting { get; init; } = StrandEnd.WrappedGrip;

    /// <summary>Clips, when clips are used.</summary>
    [Field("clips", "How many U-bolt clips on each end, for the end fitting clips.", Default = "3", Why = "three or more on stiff strand; common practice, no source")]
    [Quantity(QuantityKind.Count, 1, 12)]
    public int Clips { get; init; } = 3;

    /// <summary>Torque the clips were drawn to, N·m; null when not recorded.</summary>
    [Field("clip-torque", "Torque the nuts of the clips are drawn to.", Default = "that of the table for this size")]
    [Quantity(QuantityKind.Moment, 0.5, 2000)]
    public double? ClipTorqueNm { get; init; }

    /// <summary>Whether a shackle is pulled from the side.</summary>
    [Field("side-loaded", "Whether a shackle is pulled from the side, across its bow.", Default = "no", Why = "pulled from bow to pin, as it must be")]
    public bool SideLoaded { get; init; }

    /// <summary>Metal of the fittings.</summary>
    [Field("metal", "The surface of shackles and turnbuckle.", Default = "galvanised", Why = "like the strand's own zinc")]
    public FittingMetal Metal { get; init; } = FittingMetal.Galvanised;

    /// <summary>The plate on the mast; null when not described.</summary>
    [Field("lug", "The plate on the mast that the guy's shackle takes hold of.", Default = "not described; the section's maker answers for it")]
    public LugSpec? Lug { get; init; }

    /// <summary>Whether a clip backs up a wrapped grip at the top.</summary>
    [Field("back-up-clip", "Whether a clip backs up the wrapped grip at the top, against ice unwrapping it.", Default = "no", Why = "the file does not say")]
    public bool BackUpClip { get; init; }

    /// <summary>Thimbles.</summary>
    [Field("thimbles", "The thimbles in the eyes.", Default = "heavy", Why = "the pattern for permanent guys")]
    public ThimblePattern Thimbles { get; init; } = ThimblePattern.Heavy;
}

/// <summary>Surfaces of fittings.</summary>
public enum FittingMetal
{
    /// <summary>Galvanised.</summary>
    [Word("galvanised", "hot-dip galvanised steel")]
    Galvanised,

    /// <summary>Stainless.</summary>
    [Word("stainless", "stainless steel")]
    Stainless,

    /// <summary>Bronze.</summary>
    [Word("bronze", "bronze or brass")]
    Bronze,
}

/// <summary>Ends of strand.</summary>
public enum StrandEnd
{
    /// <summary>Wrapped grip.</summary>
    [Word("wrapped-grip", "a one-piece preformed grip wrapped around the strand")]
    WrappedGrip,

    /// <summary>Clips.</summary>
    [Word("clips", "U-bolt clips")]
    Clips,

    /// <summary>Swaged.</summary>
    [Word("swaged", "a sleeve swaged at the works")]
    Swaged,

    /// <summary>Socket.</summary>
    [Word("socket", "a poured or wedge socket")]
    Socket,
}

/// <summary>Patterns of thimble.</summary>
public enum ThimblePattern
{
    /// <summary>Heavy.</summary>
    [Word("heavy", "heavy pattern")]
    Heavy,

    /// <summary>Light.</summary>
    [Word("light", "light pattern")]
    Light,

    /// <summary>None.</summary>
    [Word("none", "no thimbles")]
    None,
}
