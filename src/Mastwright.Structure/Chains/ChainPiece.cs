namespace Mastwright.Structure.Chains;

/// <summary>One real piece of a guy, in the order anchor to mast.</summary>
/// <param name="Name">What it is, as the builder knows it.</param>
/// <param name="BreakingN">Strength at which it breaks, N; for an end fitting see <see cref="EndFitting"/>.</param>
public abstract record ChainPiece(string Name, double BreakingN)
{
    /// <summary>Length it takes up between the pieces on either side, m; strand and turnbuckle tell their own.</summary>
    public double LengthM { get; init; }

    /// <summary>Mass, kg; strand gives its mass per length instead.</summary>
    public double MassKg { get; init; }

    /// <summary>Working load its maker or standard gives, N; null when none is given.</summary>
    public double? WorkingLoadN { get; init; }

    /// <summary>Name of the metal of its surface, e.g. <c>"zinc coat"</c>; null when it is no metal or not known.</summary>
    public string? Metal { get; init; }

    /// <summary>Anodic index of that metal, V to gold; null when not known.</summary>
    public double? AnodicIndexV { get; init; }
}

/// <summary>The eye at the anchor, where the chain begins.</summary>
public sealed record AnchorEye(string Name, double BreakingN) : ChainPiece(Name, BreakingN);

/// <summary>The attachment on the mast, where the chain ends.</summary>
public sealed record MastAttachment(string Name, double BreakingN) : ChainPiece(Name, BreakingN);

/// <summary>A shackle.</summary>
public sealed record ShacklePiece(string Name, double BreakingN) : ChainPiece(Name, BreakingN)
{
    /// <summary>Whether the pin cannot turn out: wired, or bolt with nut and cotter.</summary>
    public bool PinSecured { get; init; }

    /// <summary>Whether it is pulled from the side, across its bow, instead of bow to pin.</summary>
    public bool SideLoaded { get; init; }
}

/// <summary>A turnbuckle.</summary>
/// <param name="Name">What it is.</param>
/// <param name="BreakingN">Breaking strength, N.</param>
/// <param name="TakeUpM">Length between fully open and fully closed.</param>
public sealed record TurnbucklePiece(string Name, double BreakingN, double TakeUpM) : ChainPiece(Name, BreakingN)
{
    /// <summary>How far it is open when the guy has its set tension: 1 fully open, 0 fully closed.</summary>
    public double OpenShare { get; init; } = 0.5;

    /// <summary>Length between pins when fully closed, m.</summary>
    public double ClosedLengthM { get; init; }

    /// <summary>Whether it is locked against unwinding by wire or lock nuts.</summary>
    public bool Locked { get; init; }

    /// <summary>Whether either end is an open hook.</summary>
    public bool HasHook { get; init; }
}

/// <summary>A thimble in an eye of strand.</summary>
/// <param name="Name">What it is.</param>
/// <param name="StrandM">Strand diameter its groove fits.</param>
/// <param name="Heavy">Whether it is of the heavy pattern.</param>
public sealed record ThimblePiece(string Name, double StrandM, bool Heavy) : ChainPiece(Name, double.PositiveInfinity);

/// <summary>How a strand is ended.</summary>
public enum EndFittingKind
{
    /// <summary>One-piece preformed grip wrapped around the strand.</summary>
    WrappedGrip,

    /// <summary>U-bolt clips.</summary>
    Clips,

    /// <summary>Swaged at the works.</summary>
    Swaged,

    /// <summary>Socket filled with zinc or resin, or a wedge socket made for the strand.</summary>
    Socket,
}

/// <summary>The fitting that ends a strand. It holds a share of the strand's strength.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Kind">How it holds.</param>
/// <param name="StrandM">Strand diameter it is made for.</param>
/// <param name="Efficiency">Share of the strand's breaking strength that it holds.</param>
public sealed record EndFitting(string Name, EndFittingKind Kind, double StrandM, double Efficiency) : ChainPiece(Name, double.PositiveInfinity)
{
    /// <summary>Clips fitted; 0 when none.</summary>
    public int Clips { get; init; }

    /// <summary>Clips that the rule asks for on this strand.</summary>
    public int ClipsNeeded { get; init; }

    /// <summary>Torque the nuts were drawn to, N·m; null when not recorded.</summary>
    public double? ClipTorqueNm { get; init; }

    /// <summary>Torque that the rule asks for, N·m.</summary>
    public double ClipTorqueNeededNm { get; init; }

    /// <summary>Whether a clip behind a wrapped grip keeps it from unwrapping.</summary>
    public bool BackUpClip { get; init; }
}

/// <summary>A length of strand or rope.</summary>
/// <param name="Name">What it is.</param>
/// <param name="BreakingN">Breaking strength, N.</param>
/// <param name="DiameterM">Diameter.</param>
/// <param name="AxialStiffnessN">EA, N.</param>
public sealed record StrandPiece(string Name, double BreakingN, double DiameterM, double AxialStiffnessN) : ChainPiece(Name, BreakingN)
{
    /// <summary>Unstretched length between its fittings, m; null for the one piece that takes the rest.</summary>
    public double? FixedLengthM { get; init; }

    /// <summary>Mass per length, kg/m.</summary>
    public double MassKgPerM { get; init; }
}

/// <summary>An insulator in the guy.</summary>
/// <param name="Name">What it is.</param>
/// <param name="BreakingN">Rated strength, N.</param>
/// <param name="StrandLoops">Whether strand loops through it (porcelain egg), so that no thimble is wanted there.</param>
public sealed record InsulatorPiece(string Name, double BreakingN, bool StrandLoops) : ChainPiece(Name, BreakingN);
