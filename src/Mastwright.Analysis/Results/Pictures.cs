using System.Collections.Immutable;
using Mastwright.Numerics;

namespace Mastwright.Analysis.Results;

/// <summary>Movement of one point of the mast's axis under a load case.</summary>
/// <param name="HeightM">Height above the mast's foot before loading, m.</param>
/// <param name="MoveM">Movement: x east, y north, z up, m.</param>
public sealed record AxisMove(double HeightM, Vec3 MoveM);

/// <summary>One guy under a load case.</summary>
/// <param name="Level">Number of its level, from 1.</param>
/// <param name="Anchor">Its anchor.</param>
/// <param name="TensionN">Larger of its two end tensions, N.</param>
/// <param name="AnchorTensionN">Tension at the anchor, where a gauge would read it, N.</param>
/// <param name="BreakingN">Breaking strength of its strand, N.</param>
public sealed record GuyInCase(int Level, string Anchor, double TensionN, double AnchorTensionN, double BreakingN)
{
    /// <summary>Tension over breaking strength.</summary>
    public double ShareOfBreaking => TensionN / BreakingN;
}

/// <summary>Two cuts through a gain pattern, earth loss at the base included, dBi.</summary>
/// <param name="BearingRad">Compass bearing of the upright cut.</param>
/// <param name="ElevationRad">Elevation of the level cut.</param>
/// <param name="UprightDbi">From the horizon at the bearing over the zenith to the horizon behind, evenly spaced over 180°.</param>
/// <param name="LevelDbi">Round the compass from north through east, evenly spaced, the first not repeated.</param>
public sealed record PatternCuts(double BearingRad, double ElevationRad, ImmutableArray<double> UprightDbi, ImmutableArray<double> LevelDbi);

/// <summary>The current along one wire.</summary>
/// <param name="Wire">The wire.</param>
/// <param name="AlongM">Distances from its start, m.</param>
/// <param name="AmpsRms">RMS current there, A.</param>
/// <param name="FromM">Where the wire starts: x east, y north, z up, m.</param>
/// <param name="ToM">Where it ends.</param>
public sealed record WireProfile(string Wire, ImmutableArray<double> AlongM, ImmutableArray<double> AmpsRms, Vec3 FromM, Vec3 ToM);

/// <summary>What is known once the structure is solved, before any field is.</summary>
/// <param name="Station">The design.</param>
/// <param name="Fingerprint">Its fingerprint.</param>
/// <param name="Stands">How each mast stands, in the order of the design.</param>
/// <param name="Checks">The checks of the site and the structure.</param>
public sealed record StandStage(Model.Design.Station Station, string Fingerprint, ImmutableArray<StandResult> Stands, ImmutableArray<Model.Trails.Check> Checks)
{
    /// <summary>Whether only a few wind directions were looked at so far.</summary>
    public bool FirstLook { get; init; }
}
