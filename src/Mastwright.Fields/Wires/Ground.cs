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

    /// <summary>No ground at all.</summary>
    public sealed record Empty : Ground;

    /// <summary>A perfectly conducting plane at z = 0.</summary>
    public sealed record PerfectPlane : Ground;
}
