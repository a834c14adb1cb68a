using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Lightning;

/// <summary>Lightning protection level of IEC 62305-1: I is the severest.</summary>
public enum LightningLevel
{
    /// <summary>Level I.</summary>
    I,

    /// <summary>Level II.</summary>
    II,

    /// <summary>Level III.</summary>
    III,

    /// <summary>Level IV; same greatest currents as level III.</summary>
    IV,
}

/// <summary>Which stroke of a flash.</summary>
public enum StrokeKind
{
    /// <summary>First positive stroke, 10/350 µs.</summary>
    FirstPositive,

    /// <summary>First negative stroke, 1/200 µs.</summary>
    FirstNegative,

    /// <summary>Subsequent stroke, 0.25/100 µs: the steepest.</summary>
    Subsequent,
}

/// <summary>The greatest lightning currents of IEC 62305-1:2010, tables 3, 4 and B.1.</summary>
public static class LightningCurrents
{
    /// <summary>Where the figures come from.</summary>
    public static Source Source { get; } = Source.FromMemory("IEC 62305-1, Protection against lightning, general principles, tables 3, 4 and B.1", "2010");

    /// <summary>Current of a stroke at a level.</summary>
    public static HeidlerStroke Of(LightningLevel level, StrokeKind kind)
    {
        var share = level switch
        {
            LightningLevel.I => 1.0,
            LightningLevel.II => 0.75,
            _ => 0.5,
        };
        return kind switch
        {
            StrokeKind.FirstPositive => new($"first positive stroke, level {level}", 200e3 * share, 0.93, 19e-6, 485e-6),
            StrokeKind.FirstNegative => new($"first negative stroke, level {level}", 100e3 * share, 0.986, 1.82e-6, 285e-6),
            _ => new($"subsequent stroke, level {level}", 50e3 * share, 0.993, 0.454e-6, 143e-6),
        };
    }

    /// <summary>Every stroke of a level.</summary>
    public static ImmutableArray<HeidlerStroke> All(LightningLevel level) => [.. Enum.GetValues<StrokeKind>().Select(k => Of(level, k))];

    /// <summary>Radius of the rolling sphere at a level in metres (table 4).</summary>
    public static Trail RollingSphereM(LightningLevel level) => Trail.Given("rolling-sphere radius", "r", level switch
    {
        LightningLevel.I => 20,
        LightningLevel.II => 30,
        LightningLevel.III => 45,
        _ => 60,
    }, QuantityKind.Length, Source);

    /// <summary>Specific energy W/R of the first positive stroke that conductors are heated with, in J/Ω (table 3).</summary>
    public static Trail SpecificEnergy(LightningLevel level) => Trail.Given("specific energy", "W/R", level switch
    {
        LightningLevel.I => 10e6,
        LightningLevel.II => 5.6e6,
        _ => 2.5e6,
    }, QuantityKind.SpecificEnergy, Source);
}
