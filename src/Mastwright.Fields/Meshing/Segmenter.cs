using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>Cuts wires into segments: short near feeds, joints and free ends, growing towards the longest allowed in between.</summary>
internal static class Segmenter
{
    internal sealed record Result(ImmutableArray<Segment> Segments, ImmutableArray<Vec3> Nodes, SegmentEnd[] FeedEnds, SegmentEnd[] LoadEnds);

    // Beyond this even the list of segments is a burden.
    private const int MostSegments = 100_000;

    /// <summary>The refusal of a problem whose matrix has a given number of rows and columns.</summary>
    public static Finding TooMany(long rows, long columns) => ModelCheck.Error(
        "too-many-unknowns",
        $"This model has {columns} unknown currents and needs {(16.0 * rows * columns / 1e9).ToString("F1", CultureInfo.InvariantCulture)} GB of memory for its matrix.",
        columns.ToString(CultureInfo.InvariantCulture), "what the limit of unknowns allows", "Cut more coarsely, leave out wires that matter little, make equal parts exactly equal so that symmetry helps, or raise the limit.");

    public static Result Cut(WireModel model, List<double>[] cuts, double frequencyHz, MeshOptions options, List<Finding> findings)
    {
        var thickest = ThickestAtJoints(model, cuts);
        var fed = model.Feeds.Select(f => model.Wires[JointGraph.IndexOf(model, f.Wire)].PointAt(f.Position)).ToArray();
        double Share(Vec3 point) => fed.Any(f => (f - point).Length < 2 * JointGraph.ToleranceM) ? MeshOptions.FeedShare : MeshOptions.EndShare;
        var pieces = new List<(int Wire, double[] Fractions)>();
        long total = 0;
        for (var w = 0; w < model.Wires.Length; w++)
        {
            var wire = model.Wires[w];
            for (var c = 0; c + 1 < cuts[w].Count; c++)
            {
                var perWavelength = Vacuum.WavelengthM(frequencyHz) / options.SegmentsPerWavelength;
                if (model.Ground is Ground.HalfSpace half && wire.PointAt(0.5 * (cuts[w][c] + cuts[w][c + 1])).Z < 0)
                    perWavelength *= MeshOptions.SoilShare / half.Soil.RefractiveIndex(frequencyHz).Magnitude;
                var longestM = Math.Min(perWavelength, wire.LengthM / options.MinSegmentsPerWire) / options.Refinement;
                var fractions = CutPiece(wire, cuts[w][c], cuts[w][c + 1], longestM, thickest, Share, options);
                pieces.Add((w, fractions));
                total += fractions.Length - 1;
            }
        }

        if (total > MostSegments)
        {
            findings.Add(TooMany(total, total));
            return new([], [], [], []);
        }

        return Number(model, pieces);
    }

    private static double[] CutPiece(Wire wire, double from, double to, double longestM, Func<Vec3, double> thickest, Func<Vec3, double> share, MeshOptions options)
    {
        var lengthM = (to - from) * wire.LengthM;
        var floorFrom = MeshOptions.ShortestInRadii * thickest(wire.PointAt(from));
        var floorTo = MeshOptions.ShortestInRadii * thickest(wire.PointAt(to));
        double shareFrom = share(wire.PointAt(from)), shareTo = share(wire.PointAt(to));
        var floorM = MeshOptions.ShortestInRadii * Math.Max(wire.StartRadiusM, wire.EndRadiusM);
        longestM = Math.Max(longestM, floorM);
        double Size(double x)
        {
            if (options.Uniform)
                return longestM;
            var left = Math.Max(floorFrom, shareFrom * longestM) + (MeshOptions.Growth * x);
            var right = Math.Max(floorTo, shareTo * longestM) + (MeshOptions.Growth * (lengthM - x));
            return Math.Max(floorM, Math.Min(longestM, Math.Min(left, right)));
        }

        // Equal shares of the integral of 1/size, by a fine trapezoid sum.
        const int steps = 200;
        var cumulative = new double[steps + 1];
        for (var i = 0; i < steps; i++)
            cumulative[i + 1] = cumulative[i] + (lengthM / steps / Size(lengthM * (i + 0.5) / steps));
        var count = Math.Max(1, (int)Math.Ceiling(cumulative[steps] - 0.05));
        if (lengthM / count < floorM)
            count = Math.Max(1, (int)(lengthM / floorM));
        var fractions = new double[count + 1];
        fractions[0] = from;
        fractions[count] = to;
        var j = 0;
        for (var n = 1; n < count; n++)
        {
            var target = cumulative[steps] * n / count;
            while (cumulative[j + 1] < target)
                j++;
            var x = (j + ((target - cumulative[j]) / (cumulative[j + 1] - cumulative[j]))) / steps;
            fractions[n] = from + ((to - from) * x);
        }

        return fractions;
    }

    // Largest radius of any wire that has a node at a point.
    private static Func<Vec3, double> ThickestAtJoints(WireModel model, List<double>[] cuts)
    {
        var radii = new NodeTable();
        var largest = new List<double>();
        for (var w = 0; w < model.Wires.Length; w++)
        {
            foreach (var cut in cuts[w])
            {
                var node = radii.IndexOf(model.Wires[w].PointAt(cut));
                while (largest.Count <= node)
                    largest.Add(0);
                largest[node] = Math.Max(largest[node], model.Wires[w].RadiusAt(cut));
            }
        }

        return point => largest[radii.IndexOf(point)];
    }

    private static Result Number(WireModel model, List<(int Wire, double[] Fractions)> pieces)
    {
        var nodes = new NodeTable();
        var segments = ImmutableArray.CreateBuilder<Segment>();
        foreach (var (w, fractions) in pieces)
        {
            var wire = model.Wires[w];
            var tangent = (wire.End - wire.Start).Unit();
            for (var i = 0; i + 1 < fractions.Length; i++)
            {
                Vec3 start = wire.PointAt(fractions[i]), end = wire.PointAt(fractions[i + 1]);
                segments.Add(new(
                    w, start, tangent, (fractions[i + 1] - fractions[i]) * wire.LengthM, wire.RadiusAt(0.5 * (fractions[i] + fractions[i + 1])),
                    fractions[i] * wire.LengthM, nodes.IndexOf(start), nodes.IndexOf(end)));
            }
        }

        var all = segments.ToImmutable();
        return new(
            all,
            [.. nodes.Points],
            [.. model.Feeds.Select(f => EndAt(model, all, f.Wire, f.Position))],
            [.. model.Loads.Select(l => EndAt(model, all, l.Wire, l.Position))]);
    }

    // The start of the segment that begins at a place on a wire; at the wire's far end, the end of its last segment.
    private static SegmentEnd EndAt(WireModel model, ImmutableArray<Segment> segments, string wire, double position)
    {
        var w = JointGraph.IndexOf(model, wire);
        var alongM = position * model.Wires[w].LengthM;
        var best = new SegmentEnd(-1, 0);
        var bestM = double.MaxValue;
        for (var s = 0; s < segments.Length; s++)
        {
            if (segments[s].Wire != w)
                continue;
            var offM = Math.Abs(segments[s].StartAlongM - alongM);
            if (offM < bestM)
                (best, bestM) = (new(s, 0), offM);
            offM = Math.Abs(segments[s].StartAlongM + segments[s].LengthM - alongM);
            if (offM < bestM - JointGraph.ToleranceM)
                (best, bestM) = (new(s, 1), offM);
        }

        // An interior node belongs to two segments; the gap is put at the start of the second, so that current counts along the wire.
        if (best.End == 1 && best.Segment + 1 < segments.Length && segments[best.Segment + 1].Wire == w)
            best = new(best.Segment + 1, 0);
        return best;
    }
}
