using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>Numbers points, treating those within the tolerance as one.</summary>
internal sealed class NodeTable
{
    private const double CellM = 1e-3;
    private readonly Dictionary<(long, long, long), List<int>> _cells = [];

    /// <summary>The points, in the order of their numbers.</summary>
    public List<Vec3> Points { get; } = [];

    /// <summary>The number of a point, a new one when it is new.</summary>
    public int IndexOf(Vec3 point)
    {
        var known = Find(point, 2 * JointGraph.ToleranceM);
        if (known >= 0)
            return known;
        Points.Add(point);
        var cell = Cell(point);
        if (!_cells.TryGetValue(cell, out var own))
            _cells[cell] = own = [];
        own.Add(Points.Count - 1);
        return Points.Count - 1;
    }

    /// <summary>The number of a known point within a tolerance below 1 mm, or −1.</summary>
    public int Find(Vec3 point, double toleranceM)
    {
        var (cx, cy, cz) = Cell(point);
        for (var i = cx - 1; i <= cx + 1; i++)
            for (var j = cy - 1; j <= cy + 1; j++)
                for (var k = cz - 1; k <= cz + 1; k++)
                    if (_cells.TryGetValue((i, j, k), out var list))
                        foreach (var n in list)
                            if ((Points[n] - point).Length < toleranceM)
                                return n;
        return -1;
    }

    private static (long X, long Y, long Z) Cell(Vec3 point) =>
        ((long)Math.Floor(point.X / CellM), (long)Math.Floor(point.Y / CellM), (long)Math.Floor(point.Z / CellM));
}
