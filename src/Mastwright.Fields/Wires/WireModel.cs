using System.Collections.Immutable;

namespace Mastwright.Fields.Wires;

/// <summary>
/// An antenna as the solver sees it: straight round wires, feeds and lumped loads over a ground. Immutable; the
/// <c>With…</c> methods return an enlarged copy, so a model is written as one chain starting from <see cref="Over"/>.
/// </summary>
/// <param name="Ground">What lies below z = 0.</param>
/// <param name="Wires">The wires, each with a unique name.</param>
/// <param name="Feeds">Feed terminals, in the order of the port matrices.</param>
/// <param name="Loads">Lumped loads.</param>
public sealed record WireModel(
    Ground Ground,
    ImmutableArray<Wire> Wires,
    ImmutableArray<Feed> Feeds,
    ImmutableArray<LumpedLoad> Loads)
{
    /// <summary>An empty model over a ground.</summary>
    public static WireModel Over(Ground ground) => new(ground, [], [], []);

    /// <summary>The model with more wires.</summary>
    public WireModel With(params ReadOnlySpan<Wire> wires) => this with { Wires = [.. Wires, .. wires] };

    /// <summary>The model with one more feed.</summary>
    public WireModel WithFeed(string name, string wire, double position = 0) =>
        this with { Feeds = Feeds.Add(new(name, wire, position)) };

    /// <summary>The model with one more lumped load.</summary>
    public WireModel WithLoad(string name, string wire, double position, LoadElement element) =>
        this with { Loads = Loads.Add(new(name, wire, position, element)) };
}
