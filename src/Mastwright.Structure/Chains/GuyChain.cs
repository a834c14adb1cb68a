using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Chains;

/// <summary>A guy as a chain of real pieces.</summary>
/// <param name="Name">Which guy, e.g. <c>"mast A, level 2, north"</c>; goes into the names of its checks.</param>
/// <param name="Pieces">Pieces in the order anchor to mast.</param>
public sealed record GuyChain(string Name, ImmutableArray<ChainPiece> Pieces);

/// <summary>What is asked of a chain, from the analysis of the mast.</summary>
/// <param name="GreatestTensionN">Greatest tension in any case, N.</param>
/// <param name="GoverningCase">The case it comes from, in words.</param>
/// <param name="SetTensionN">Tension at the anchor as set, N.</param>
/// <param name="ColdestTensionN">Tension in still air at the lowest temperature, N.</param>
/// <param name="HottestTensionN">Tension in still air at the highest temperature, N.</param>
/// <param name="LengthM">Unstretched length from the eye of the anchor to the attachment on the mast, m.</param>
public sealed record ChainDemand(
    double GreatestTensionN, string GoverningCase, double SetTensionN, double ColdestTensionN, double HottestTensionN, double LengthM)
{
    /// <summary>Whether ice or heavy snow may fall here.</summary>
    public bool IcingCountry { get; init; }
}

/// <summary>Factors and limits that a chain is judged by; change them with <c>with</c>.</summary>
public sealed record ChainFactors
{
    /// <summary>Breaking strength over greatest tension that is asked of every piece.</summary>
    public double Safety { get; init; } = 2.0;

    /// <summary>Where <see cref="Safety"/> comes from.</summary>
    public Source SafetySource { get; init; } = Source.FromMemory("ANSI/TIA-222-F: guys at service load, factor 2.0", "1996");

    /// <summary>Least share of breaking strength as set tension.</summary>
    public double LeastSetShare { get; init; } = 0.08;

    /// <summary>Greatest share of breaking strength as set tension.</summary>
    public double GreatestSetShare { get; init; } = 0.15;

    /// <summary>Lasting stretch of new strand that the turnbuckle must still be able to take up, as a share of length.</summary>
    public double BeddingStretch { get; init; } = 0.0005;

    /// <summary>Difference of anodic index above which metals in contact are flagged, V: 0.25 in ordinary outdoor air, 0.15 near the sea.</summary>
    public double AnodicLimitV { get; init; } = 0.25;

    /// <summary>How far a clip's torque may be off, as a share.</summary>
    public double ClipTorqueTolerance { get; init; } = 0.15;
}

/// <summary>One piece with the tension it can be trusted with.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Position">Its place in the chain, 0 at the anchor.</param>
/// <param name="Breaking">Strength at which it breaks.</param>
/// <param name="Capacity">Breaking strength over the factor of safety.</param>
public sealed record PieceCapacity(ChainPiece Piece, int Position, Trail Breaking, Trail Capacity);

/// <summary>The even cable that stands for a chain in the analysis of the mast.</summary>
/// <param name="AxialStiffness">EA of all strands in a row; hardware counts as stiff.</param>
/// <param name="MassPerLength">Mass of everything between eye and lug, spread over the length.</param>
public sealed record EquivalentCable(Trail AxialStiffness, Trail MassPerLength);

/// <summary>What was found about a chain.</summary>
/// <param name="Capacities">Every piece that carries the tension, in order.</param>
/// <param name="Weakest">The weakest of them; the strand when a fitting is just as strong. Null when the chain has no such piece.</param>
/// <param name="ClearLength">Unstretched strand length between end fittings; null when it cannot be found.</param>
/// <param name="Checks">Strength, set tension and turnbuckle travel.</param>
/// <param name="Findings">What is wrong with the make-up of the chain.</param>
public sealed record ChainReport(
    ImmutableArray<PieceCapacity> Capacities, PieceCapacity? Weakest, Trail? ClearLength, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings);
