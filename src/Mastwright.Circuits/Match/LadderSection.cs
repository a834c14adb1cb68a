using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>
/// One section of a matching ladder, read from the line to the load. A series section carries the path on to a new
/// node; a shunt section hangs from the path to ground.
/// </summary>
public abstract record LadderSection
{
    private protected LadderSection()
    {
    }

    /// <summary>What a builder calls it, e.g. <c>"series coil"</c>.</summary>
    public abstract string Title { get; }

    /// <summary>Letter of its reference name on the schematic: L, C, W (line), S (stub), T.</summary>
    public abstract string Letter { get; }

    /// <summary>Whether the path runs through it to a new node.</summary>
    public abstract bool IsSeries { get; }

    /// <summary>The value a builder adjusts, SI: henries, farads, metres, or a tap fraction.</summary>
    public abstract double Value { get; }

    /// <summary>What <see cref="Value"/> measures.</summary>
    public abstract QuantityKind ValueKind { get; }

    /// <summary>Where the value came from; null for a section made by hand.</summary>
    public Trail? Why { get; init; }

    /// <summary>How many parts a builder has to get for it.</summary>
    public virtual int PartCount => 1;

    /// <summary>The same section with another value; its trail is dropped, because the value no longer comes from it.</summary>
    public abstract LadderSection WithValue(double value);

    /// <summary>The parts that make the section.</summary>
    internal abstract IEnumerable<Part> Build(string name, string left, string right, PartQuality quality);
}
