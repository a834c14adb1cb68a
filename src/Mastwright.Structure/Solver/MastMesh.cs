using Mastwright.Numerics;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>A guy as the assembly sees it.</summary>
internal sealed record MeshGuy(Guy Guy, int Node, Vec3 Arm, Vec3 AnchorM, double UnstressedLengthM);

/// <summary>The mast cut into elements, with nodes wherever something happens. Shared by all cases, read-only once made.</summary>
internal sealed class MastMesh
{
    /// <summary>Below this distance two heights are one.</summary>
    private const double MergeM = 1e-6;

    private MastMesh(GuyedMast mast, double[] heights, BeamElement[] elements, MastSegment[] segments, MeshGuy[] guys)
    {
        Mast = mast;
        Heights = heights;
        Elements = elements;
        Segments = segments;
        Guys = guys;
    }

    public GuyedMast Mast { get; }

    public double[] Heights { get; }

    public BeamElement[] Elements { get; }

    /// <summary>The segment of each element.</summary>
    public MastSegment[] Segments { get; }

    public MeshGuy[] Guys { get; }

    public int NodeCount => Heights.Length;

    public double HeightM => Heights[^1];

    /// <param name="mast">A mast already found valid.</param>
    /// <param name="pointHeights">Heights of point loads of all the cases to come.</param>
    /// <param name="options">How fine.</param>
    /// <param name="lengths">Unstressed guy lengths, in the order of the guys.</param>
    public static MastMesh Create(GuyedMast mast, IEnumerable<double> pointHeights, SolverOptions options, IReadOnlyList<double> lengths)
    {
        var wanted = mast.Segments.SelectMany(s => new[] { s.BottomM, s.TopM })
            .Concat(mast.Guys.Select(g => g.AttachmentHeightM))
            .Concat(mast.Weights.Select(w => w.HeightM))
            .Concat(pointHeights)
            .Concat(options.ExtraNodeHeightsM.Where(h => h > 0 && h < mast.HeightM))
            .Order();
        var keys = new List<double>();
        foreach (var h in wanted)
        {
            if (keys.Count == 0 || h - keys[^1] > MergeM)
            {
                keys.Add(h);
            }
        }

        var supports = mast.Guys.Select(g => g.AttachmentHeightM).Append(0).Append(mast.HeightM).Order().Distinct().ToArray();
        var heights = new List<double> { keys[0] };
        for (var k = 1; k < keys.Count; k++)
        {
            double a = keys[k - 1], b = keys[k];
            var longest = options.LongestElementM ?? Math.Min(mast.HeightM / 40, SpanAround(supports, 0.5 * (a + b)) / 4);
            var parts = Math.Max(1, (int)Math.Ceiling(((b - a) / longest) - 1e-9));
            for (var i = 1; i <= parts; i++)
            {
                heights.Add(i == parts ? b : a + ((b - a) * i / parts));
            }
        }

        var count = heights.Count - 1;
        var elements = new BeamElement[count];
        var segments = new MastSegment[count];
        for (var e = 0; e < count; e++)
        {
            var middle = 0.5 * (heights[e] + heights[e + 1]);
            var s = mast.Segments.First(x => middle >= x.BottomM && middle <= x.TopM);
            segments[e] = s;
            elements[e] = new(heights[e + 1] - heights[e], s.AxialStiffnessN, s.BendingStiffnessNm2, s.TorsionalStiffnessNm2, s.ShearStiffnessN, s.ThermalExpansionPerK);
        }

        var nodes = heights.ToArray();
        var guys = mast.Guys
            .Select((g, i) => new MeshGuy(g, NearestNode(nodes, g.AttachmentHeightM), g.Arm(mast.FootM), g.AnchorM, lengths[i]))
            .ToArray();
        return new(mast, nodes, elements, segments, guys);
    }

    public int NearestNode(double heightM) => NearestNode(Heights, heightM);

    public Vec3 RestPosition(int node) => Mast.AxisPoint(Heights[node]);

    private static double SpanAround(double[] supports, double height)
    {
        for (var i = 1; i < supports.Length; i++)
        {
            if (height <= supports[i])
            {
                return Math.Max(supports[i] - supports[i - 1], MergeM);
            }
        }

        return supports[^1];
    }

    private static int NearestNode(double[] heights, double heightM)
    {
        var i = Array.BinarySearch(heights, heightM);
        if (i >= 0)
        {
            return i;
        }

        i = Math.Clamp(~i, 1, heights.Length - 1);
        return heightM - heights[i - 1] < heights[i] - heightM ? i - 1 : i;
    }
}

/// <summary>Where every section of the mast is.</summary>
internal sealed class MastState
{
    public MastState(int nodes)
    {
        U = new Vec3[nodes];
        T = new Triad[nodes];
        Array.Fill(T, Triad.Plumb);
    }

    private MastState(Vec3[] u, Triad[] t)
    {
        U = u;
        T = t;
    }

    /// <summary>Displacements.</summary>
    public Vec3[] U { get; }

    /// <summary>Section axes.</summary>
    public Triad[] T { get; }

    public MastState Copy() => new([.. U], [.. T]);

    /// <summary>The state after a share of a Newton step.</summary>
    public MastState Moved(ReadOnlySpan<double> step, double share)
    {
        var next = Copy();
        for (var i = 0; i < U.Length; i++)
        {
            var s = step.Slice(6 * i, 6);
            next.U[i] += share * new Vec3(s[0], s[1], s[2]);
            next.T[i] = T[i].Turned(share * new Vec3(s[3], s[4], s[5]));
        }

        return next;
    }
}
