using Mastwright.Fields.Earth;

namespace Mastwright.Fields.Wires;

/// <summary>What lies below z = 0.</summary>
public abstract record Ground
{
    private Ground()
    {
    }

    /// <summary>Nothing: the wires hang in free space.</summary>
    public static Ground FreeSpace { get; } = new Empty();

    /// <summary>An infinite flat perfect conductor at z = 0; wires whose end has z = 0 are joined to it.</summary>
    public static Ground Perfect { get; } = new PerfectPlane();

    /// <summary>
    /// Real soil below z = 0, solved exactly. No wire is joined to it by touching z = 0: current enters the soil only through wires
    /// that lie in it.
    /// </summary>
    public static Ground Over(Soil soil) => new HalfSpace(soil);

    /// <summary>No ground at all.</summary>
    public sealed record Empty : Ground;

    /// <summary>A perfectly conducting plane at z = 0.</summary>
    public sealed record PerfectPlane : Ground;

    /// <summary>A half space of uniform soil below z = 0.</summary>
    /// <param name="Soil">The soil.</param>
    public sealed record HalfSpace(Soil Soil) : Ground;
}
