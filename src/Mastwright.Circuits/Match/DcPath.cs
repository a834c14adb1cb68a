using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Match;

/// <summary>Follows metal through a network.</summary>
public static class DcPath
{
    /// <summary>
    /// Whether direct current finds a way from a node to ground through coils, resistors, closed contacts and lines.
    /// The antenna and the transmitter do not count: neither is sure to be there when the air is charged.
    /// </summary>
    public static bool Exists(Network network, string node)
    {
        var reached = new HashSet<string> { node };
        var grew = true;
        while (grew && !reached.Contains(Network.Ground))
        {
            grew = false;
            foreach (var (a, b) in network.Parts.SelectMany(Metal))
                if (reached.Contains(a) != reached.Contains(b))
                    grew |= reached.Add(a) | reached.Add(b);
        }

        return reached.Contains(Network.Ground);
    }

    private static IEnumerable<(string A, string B)> Metal(Part part) => part switch
    {
        Inductor l => [(l.A, l.B)],
        Resistor r => [(r.A, r.B)],
        Switch { Closed: true } s => [(s.A, s.B)],
        Line t => [(t.Near.Hot, t.Far.Hot), (t.Near.Return, t.Far.Return)],
        _ => [],
    };
}
