using Mastwright.Fields.Meshing;
using Mastwright.Numerics;

namespace Mastwright.Fields.Solving;

/// <summary>
/// A mesh that a turn by 2π/N about a vertical axis maps onto itself: unknowns on the axis, and N equal sectors whose unknowns
/// follow each other round.
/// </summary>
/// <param name="Order">N, at least 2.</param>
/// <param name="Axis">Unknowns that the turn leaves where they are.</param>
/// <param name="Sectors">Unknowns of each sector; entry i of sector s + 1 is entry i of sector s turned once.</param>
internal sealed record RotationSymmetry(int Order, int[] Axis, int[][] Sectors)
{
    private const double ToleranceM = 1e-5;
    private const int LargestOrder = 720;

    /// <summary>The highest symmetry of a mesh, or null when it has none.</summary>
    public static RotationSymmetry? Find(WireMesh mesh)
    {
        double x = 0, y = 0, length = 0;
        foreach (var s in mesh.Segments)
        {
            x += s.LengthM * s.Centre.X;
            y += s.LengthM * s.Centre.Y;
            length += s.LengthM;
        }

        Vec3 axis = new(x / length, y / length, 0);
        var nodes = new NodeTable();
        foreach (var node in mesh.Nodes)
            nodes.IndexOf(node);
        var aside = mesh.Segments.Count(s => !OnAxis(s, axis));
        if (aside == 0)
            return null;
        for (var order = Math.Min(aside, LargestOrder); order >= 2; order--)
            if (aside % order == 0 && Turned(mesh, axis, nodes, order) is { } map)
                return Sorted(mesh, map, order);
        return null;
    }

    // Where the turn sends each unknown, or null when it does not map the mesh onto itself.
    private static int[]? Turned(WireMesh mesh, Vec3 axis, NodeTable nodes, int order)
    {
        var (sin, cos) = Math.SinCos(2 * Math.PI / order);
        var nodeMap = new int[mesh.Nodes.Length];
        for (var n = 0; n < nodeMap.Length; n++)
        {
            var d = mesh.Nodes[n] - axis;
            nodeMap[n] = nodes.Find(axis + new Vec3((cos * d.X) - (sin * d.Y), (sin * d.X) + (cos * d.Y), d.Z), ToleranceM);
            if (nodeMap[n] < 0)
                return null;
        }

        var byNodes = new Dictionary<(int, int), int>();
        for (var s = 0; s < mesh.Segments.Length; s++)
            if (!byNodes.TryAdd((mesh.Segments[s].StartNode, mesh.Segments[s].EndNode), s))
                return null;
        var segmentMap = new int[mesh.Segments.Length];
        for (var s = 0; s < segmentMap.Length; s++)
        {
            var segment = mesh.Segments[s];
            if (!byNodes.TryGetValue((nodeMap[segment.StartNode], nodeMap[segment.EndNode]), out segmentMap[s]) || !Alike(mesh, s, segmentMap[s]))
                return null;
        }

        return LoadsMatch(mesh, segmentMap) ? UnknownMap(mesh.Basis, segmentMap) : null;
    }

    private static int[]? UnknownMap(BasisSet basis, int[] segmentMap)
    {
        var byBranch = new Dictionary<SegmentEnd, int>();
        for (var u = 0; u < basis.Count; u++)
            byBranch[basis.Functions[u].Into] = u;
        var map = new int[basis.Count];
        for (var u = 0; u < map.Length; u++)
        {
            var f = basis.Functions[u];
            if (!byBranch.TryGetValue(Send(f.Into, segmentMap), out var target))
                return null;
            SegmentEnd? from = f.From is { } end ? Send(end, segmentMap) : null;
            if (basis.Functions[target].From != from)
                return null;
            map[u] = target;
        }

        return map;
    }

    private static RotationSymmetry? Sorted(WireMesh mesh, int[] map, int order)
    {
        var axis = Enumerable.Range(0, map.Length).Where(u => map[u] == u).ToArray();
        var sectors = new List<int>[order];
        for (var s = 0; s < order; s++)
            sectors[s] = [];
        var seen = new bool[map.Length];
        for (var u = 0; u < map.Length; u++)
        {
            if (seen[u] || map[u] == u)
                continue;
            var at = u;
            for (var s = 0; s < order; s++)
            {
                if (seen[at])
                    return null;
                seen[at] = true;
                sectors[s].Add(at);
                at = map[at];
            }

            if (at != u)
                return null;
        }

        return mesh.UnknownCount == axis.Length + (order * sectors[0].Count) ? new(order, axis, [.. sectors.Select(s => s.ToArray())]) : null;
    }

    private static SegmentEnd Send(SegmentEnd end, int[] segmentMap) => new(segmentMap[end.Segment], end.End);

    private static bool Alike(WireMesh mesh, int a, int b)
    {
        Segment first = mesh.Segments[a], second = mesh.Segments[b];
        return Math.Abs(first.RadiusM - second.RadiusM) <= 1e-9 * first.RadiusM
            && mesh.Model.Wires[first.Wire].Metal == mesh.Model.Wires[second.Wire].Metal
            && mesh.Model.Wires[first.Wire].Jacket == mesh.Model.Wires[second.Wire].Jacket;
    }

    private static bool LoadsMatch(WireMesh mesh, int[] segmentMap)
    {
        for (var l = 0; l < mesh.LoadEnds.Length; l++)
        {
            var target = Send(mesh.LoadEnds[l], segmentMap);
            var element = mesh.Model.Loads[l].Element;
            if (!mesh.LoadEnds.Where((end, i) => end == target && mesh.Model.Loads[i].Element == element).Any())
                return false;
        }

        return true;
    }

    private static bool OnAxis(Segment s, Vec3 axis) => Aside(s.Start, axis) < ToleranceM && Aside(s.End, axis) < ToleranceM;

    private static double Aside(Vec3 p, Vec3 axis) => Math.Sqrt(((p.X - axis.X) * (p.X - axis.X)) + ((p.Y - axis.Y) * (p.Y - axis.Y)));
}
