using System.Collections.Immutable;
using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Match;

/// <summary>A matching network as a chain of sections from the line to the load.</summary>
/// <param name="Sections">The sections, the one at the line first.</param>
public sealed record Ladder(ImmutableArray<LadderSection> Sections)
{
    /// <summary>Name of the transmitter part.</summary>
    public const string Transmitter = "TX";

    /// <summary>Name of the load part.</summary>
    public const string Antenna = "ANT";

    /// <summary>Name of the base insulator's capacitance.</summary>
    public const string BaseInsulator = "CB";

    /// <summary>The node at the line.</summary>
    public const string LineNode = "line";

    /// <summary>The node the load hangs on.</summary>
    public string LoadNode => NodeAfter(Sections.Length);

    /// <summary>The reference name of a section, e.g. <c>L1</c>, numbered from the line.</summary>
    public string NameOf(int section)
    {
        var letter = Sections[section].Letter;
        return letter + Sections.Take(section + 1).Count(s => s.Letter == letter);
    }

    /// <summary>The node on the load's side of the first <paramref name="sections"/> sections.</summary>
    public string NodeAfter(int sections)
    {
        var before = Sections.Take(sections).Count(s => s.IsSeries);
        return before == 0 ? LineNode : before == Sections.Count(s => s.IsSeries) ? "load" : $"n{before}";
    }

    /// <summary>The ladder between a transmitter and the load of a problem.</summary>
    public Network Build(MatchProblem problem)
    {
        var parts = new List<Part> { AcSource.Transmitter(Transmitter, LineNode, Network.Ground, problem.PowerW, problem.LineOhm) };
        for (var i = 0; i < Sections.Length; i++)
            parts.AddRange(Sections[i].Build(NameOf(i), NodeAfter(i), NodeAfter(i + 1), problem.Quality));
        if (problem.BaseShuntF > 0)
            parts.Add(new Capacitor(BaseInsulator, LoadNode, Network.Ground, problem.BaseShuntF, problem.BaseShuntLoss));
        parts.Add(new MultiportLoad(Antenna, [(LoadNode, Network.Ground)], problem.Load));
        return new Network(parts);
    }
}
