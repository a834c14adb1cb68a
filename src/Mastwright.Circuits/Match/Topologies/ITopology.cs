namespace Mastwright.Circuits.Match.Topologies;

/// <summary>One way of matching. A new one is a new file and one line in <see cref="TopologyList"/>.</summary>
public interface ITopology
{
    /// <summary>Stable name, e.g. <c>"l-shunt-at-line"</c>.</summary>
    string Id { get; }

    /// <summary>The topology in plain words.</summary>
    string Title { get; }

    /// <summary>Every set of values with which this topology matches the load; empty when it cannot.</summary>
    IEnumerable<Ladder> Synthesise(MatchProblem problem);
}
