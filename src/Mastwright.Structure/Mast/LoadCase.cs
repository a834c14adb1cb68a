using Mastwright.Numerics;

namespace Mastwright.Structure.Mast;

/// <summary>Everything that acts on a mast at once, besides the weight of its own parts.</summary>
/// <param name="Name">Shown in results, e.g. <c>"wind 210°, no ice"</c>.</param>
/// <param name="TemperatureK">Temperature of mast and guys.</param>
/// <param name="DeadLoadFactor">Factor on all own weights: mast, lumped weights and guys.</param>
public sealed record LoadCase(string Name, double TemperatureK = 288.15, double DeadLoadFactor = 1)
{
    /// <summary>Loads spread along the mast; several add up.</summary>
    public IReadOnlyList<LineLoad> MastLoads { get; init; } = [];

    /// <summary>Loads on guys besides their weight: wind and ice. A guy not named carries only its weight; entries of one name add up.</summary>
    public IReadOnlyList<GuyLoad> GuyLoads { get; init; } = [];

    /// <summary>Forces and moments at points of the axis.</summary>
    public IReadOnlyList<PointLoad> PointLoads { get; init; } = [];

    /// <summary>Guys taken out of this case: lost or not yet rigged.</summary>
    public IReadOnlyList<string> AbsentGuys { get; init; } = [];
}

/// <summary>A load along the mast, linear between stated heights and nothing outside them. Two points at one height make a step.</summary>
/// <param name="Points">Heights not falling; at least two.</param>
public sealed record LineLoad(IReadOnlyList<LineLoadPoint> Points)
{
    /// <summary>The same load per metre from one height to another.</summary>
    public static LineLoad Uniform(double bottomM, double topM, Vec3 loadNPerM) => new([new(bottomM, loadNPerM), new(topM, loadNPerM)]);
}

/// <summary>A point of a line load.</summary>
/// <param name="HeightM">Height above the foot.</param>
/// <param name="LoadNPerM">Load per metre of height, fixed in direction.</param>
public readonly record struct LineLoadPoint(double HeightM, Vec3 LoadNPerM);

/// <summary>A load on one guy.</summary>
/// <param name="GuyName">Which guy.</param>
/// <param name="LoadNPerM">Load per unstressed metre, fixed in direction, in addition to the guy's own weight.</param>
public readonly record struct GuyLoad(string GuyName, Vec3 LoadNPerM);

/// <summary>A force and a moment on the mast axis, fixed in direction.</summary>
/// <param name="HeightM">Height above the foot.</param>
/// <param name="ForceN">Force.</param>
/// <param name="MomentNm">Moment, right-handed.</param>
public readonly record struct PointLoad(double HeightM, Vec3 ForceN, Vec3 MomentNm = default);
