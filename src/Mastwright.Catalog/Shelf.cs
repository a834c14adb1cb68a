using System.Collections.Immutable;

namespace Mastwright.Catalog;

/// <summary>All parts of one kind, in the order of their data file.</summary>
/// <typeparam name="T">Kind of part.</typeparam>
public sealed class Shelf<T>
    where T : Part
{
    private readonly ImmutableDictionary<string, T> _byKey;

    internal Shelf(string kind, ImmutableArray<T> all)
    {
        Kind = kind;
        All = all;
        // A name used twice is a fault of the data file, and the duplicate key stops it here.
        _byKey = all.ToImmutableDictionary(p => NearNames.Key(p.Name));
    }

    /// <summary>What stands here, in the trade's plural, e.g. <c>"guy strand"</c>.</summary>
    public string Kind { get; }

    /// <summary>Every part.</summary>
    public ImmutableArray<T> All { get; }

    /// <summary>Finds a part by name; case, spaces, hyphens and underscores do not matter.</summary>
    public Lookup<T> Find(string name)
    {
        var part = _byKey.GetValueOrDefault(NearNames.Key(name));
        return new(name, part, part is null ? NearNames.To(name, All.Select(p => p.Name)) : []);
    }

    /// <summary>The part of a name that is known to be here.</summary>
    /// <exception cref="KeyNotFoundException">There is no such part: a fault of the calling code. For a user's name use <see cref="Find"/>.</exception>
    public T this[string name] =>
        Find(name).Part ?? throw new KeyNotFoundException($"No {Kind} is named '{name}'.");
}
