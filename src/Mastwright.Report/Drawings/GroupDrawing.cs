using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Groups;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The feed of a group as a tree from the transmitter at the left to the masts at the right.</summary>
public static class GroupDrawing
{
    private const double Row = 27;
    private const double Left = 14;
    private const double Top = 20;

    /// <summary>The drawing.</summary>
    /// <param name="name">Name of the group.</param>
    /// <param name="feed">Its feed.</param>
    /// <param name="masts">Names of the masts, in the feed's order.</param>
    /// <param name="units">The reader's units.</param>
    public static Figure Of(string name, GroupFeed feed, IReadOnlyList<string> masts, UnitSystem units)
    {
        var tree = new Tree(feed.Network);
        var step = Math.Min(34, (170 - (2 * Left) - 12) / Math.Max(1.0, tree.Depth));
        var d = new Drawing(170, Top + (tree.Rows * Row) + 6, "Feed of group " + name);
        (double X, double Y) At(string node) => (Left + (tree.Column[node] * step), Top + (tree.Line[node] * Row));

        // Several things to ground on one node stand side by side.
        var used = new Dictionary<string, int>();
        foreach (var part in feed.Network.Parts)
        {
            switch (part)
            {
                case AcSource:
                    var (tx, ty) = At("line");
                    CircuitSymbols.Transmitter(d, (tx - 6, ty), (tx - 6, ty + 16));
                    d.Line(tx - 6, ty, tx, ty, Pen.Plain);
                    CircuitSymbols.Ground(d, tx - 6, ty + 16);
                    break;
                case MultiportLoad:
                    for (var k = 0; k < masts.Count; k++)
                    {
                        var (x, y) = At(GroupProblem.MastNode(k));
                        CircuitSymbols.Antenna(d, x, y, masts[k]);
                    }

                    break;
                default:
                    if (Tree.Ends(part) is var (a, b))
                    {
                        if (a == Network.Ground || b == Network.Ground)
                        {
                            var node = a == Network.Ground ? b : a;
                            used[node] = used.GetValueOrDefault(node) + 1;
                            Shunt(d, part, feed, At(node), used[node] - 1, tree.Column[node] == 0 || tree.IsEnd(node), units);
                        }
                        else if (tree.IsBranch(a, b))
                        {
                            Series(d, part, feed, At(a), At(b), units);
                        }
                        else
                        {
                            Across(d, part, feed, At(a), At(b), units);
                        }
                    }

                    break;
            }
        }

        return new Figure($"{name}: {feed.Title}, the first switch position. Beside each part its value, the peak voltage across it and the RMS current through it at full power; screens of the lines are earthed.", d.ToSvg());
    }

    private static void Series(Drawing d, Part part, GroupFeed feed, (double X, double Y) a, (double X, double Y) b, UnitSystem units)
    {
        if (b.X < a.X)
        {
            (a, b) = (b, a);
        }

        // Down or up first, then across: the part sits on the level piece. Parts between nodes of one column stand upright.
        if (b.X - a.X < 1)
        {
            Symbol(d, part, a, b);
            Words(d, part, feed, a.X + 5, ((a.Y + b.Y) / 2) - 2, Hold.Start, units);
            return;
        }

        d.Line(a.X, a.Y, a.X, b.Y, Pen.Plain);
        Symbol(d, part, (a.X, b.Y), b);
        if (part is not Resistor { ResistanceOhm: 0 })
        {
            Words(d, part, feed, (a.X + b.X) / 2, b.Y - 11.5, Hold.Middle, units);
        }
    }

    // What closes a loop runs below the level of the farther node, clear of the branch that sits on it.
    private static void Across(Drawing d, Part part, GroupFeed feed, (double X, double Y) a, (double X, double Y) b, UnitSystem units)
    {
        if (b.X < a.X)
        {
            (a, b) = (b, a);
        }

        var (x, y) = (a.X + 4, b.Y + 8);
        d.Line(a.X, a.Y, x, a.Y, Pen.Plain).Line(x, a.Y, x, y, Pen.Plain).Line(b.X, y, b.X, b.Y, Pen.Plain).Circle(x, a.Y, 0.6, new Pen(0.1), "#000").Circle(b.X, b.Y, 0.6, new Pen(0.1), "#000");
        Symbol(d, part, (x, y), (b.X, y));
        Words(d, part, feed, (x + b.X) / 2, y + 4, Hold.Middle, units);
    }

    // To ground left of the node, clear of the branches that run down from it; right of it at the transmitter and at an end.
    private static void Shunt(Drawing d, Part part, GroupFeed feed, (double X, double Y) at, int beside, bool right, UnitSystem units)
    {
        var x = right ? at.X + 6 + (beside * 9) : at.X - 6 - (beside * 9);
        d.Line(at.X, at.Y, x, at.Y, Pen.Plain).Circle(x, at.Y, 0.6, new Pen(0.1), "#000");
        Symbol(d, part, (x, at.Y), (x, at.Y + 15));
        CircuitSymbols.Ground(d, x, at.Y + 15);
        Words(d, part, feed, right ? x + 4.5 : x - 4.5, at.Y + 6.5, right ? Hold.Start : Hold.End, units);
    }

    private static void Symbol(Drawing d, Part part, (double X, double Y) a, (double X, double Y) b)
    {
        switch (part)
        {
            case Inductor:
                CircuitSymbols.Coil(d, a, b);
                break;
            case Capacitor:
                CircuitSymbols.Capacitor(d, a, b);
                break;
            case Line:
                CircuitSymbols.Line(d, a, b);
                break;
            case Resistor { ResistanceOhm: > 0 }:
                CircuitSymbols.Resistor(d, a, b);
                break;
            default:
                d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
                break;
        }
    }

    private static void Words(Drawing d, Part part, GroupFeed feed, double x, double y, Hold hold, UnitSystem units)
    {
        var state = feed.Solution.Part(part.Name);
        var value = part switch
        {
            Inductor l => QuantityFormat.Show(l.InductanceH, QuantityKind.Inductance, units, 3),
            Capacitor c => QuantityFormat.Show(c.CapacitanceF, QuantityKind.Capacitance, units, 3),
            Line t => QuantityFormat.Show(t.LengthM, QuantityKind.Length, units, 4),
            Resistor r => QuantityFormat.Show(r.ResistanceOhm, QuantityKind.Resistance, units, 3),
            _ => "",
        };
        string[] lines = [$"{part.Name}  {value}", .. CircuitSymbols.Stress(state.PeakVoltage.Value, state.HighestCurrent.Value, state.DissipationW, units).Take(2)];
        for (var i = 0; i < lines.Length; i++)
        {
            d.Text(x, y + (i * 2.7), lines[i], 2, hold, bold: i == 0);
        }
    }

    // Nodes by their distance from the transmitter; leaves take a row each, other nodes stand where their first child does.
    private sealed class Tree
    {
        private readonly Dictionary<string, string> parents = [];

        public Tree(Network network)
        {
            var joined = network.Parts.Select(Ends).OfType<(string A, string B)>().Where(e => e.A != Network.Ground && e.B != Network.Ground).ToList();
            Column["line"] = 0;
            var queue = new Queue<string>(["line"]);
            var children = new Dictionary<string, List<string>>();
            while (queue.TryDequeue(out var node))
            {
                children[node] = [];
                foreach (var next in joined.Where(e => e.A == node || e.B == node).Select(e => e.A == node ? e.B : e.A).Distinct())
                {
                    if (Column.TryAdd(next, Column[node] + 1))
                    {
                        parents[next] = node;
                        children[node].Add(next);
                        queue.Enqueue(next);
                    }
                }
            }

            Place("line", children);
            Depth = Column.Values.Max();
        }

        public Dictionary<string, int> Column { get; } = [];

        public Dictionary<string, double> Line { get; } = [];

        public int Depth { get; }

        public int Rows { get; private set; }

        public bool IsBranch(string a, string b) => parents.GetValueOrDefault(b) == a || parents.GetValueOrDefault(a) == b;

        public bool IsEnd(string node) => !parents.ContainsValue(node);

        public static (string A, string B)? Ends(Part part) => part switch
        {
            Inductor l => (l.A, l.B),
            Capacitor c => (c.A, c.B),
            Resistor r => (r.A, r.B),
            Circuits.Ac.Line t => (t.Near.Hot, t.Far.Hot),
            _ => null,
        };

        private void Place(string node, Dictionary<string, List<string>> children)
        {
            if (children[node].Count == 0)
            {
                Line[node] = Rows++;
                return;
            }

            foreach (var child in children[node])
            {
                Place(child, children);
            }

            Line[node] = Line[children[node][0]];
        }
    }
}
