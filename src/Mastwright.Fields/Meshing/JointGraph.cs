using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>
/// Finds where wires meet: ends that coincide, ends that land on another wire, ends on the ground; and where they do not but get
/// in each other's way.
/// </summary>
internal static class JointGraph
{
    /// <summary>Points closer than this are the same point, metres.</summary>
    public const double ToleranceM = 1e-6;

    // Cosine of the angle below which two wires leaving one joint count as lying on each other (about 0.6 degrees).
    private const double OverlapCosine = 0.99995;

    public static bool IsGrounded(Vec3 point, Ground ground) => ground is Ground.PerfectPlane && Math.Abs(point.Z) < ToleranceM;

    /// <summary>For every wire, the fractions (0 and 1 included, ascending) at which it must have a node.</summary>
    public static List<double>[] Build(WireModel model, List<Finding> findings)
    {
        var wires = model.Wires;
        var cuts = new List<double>[wires.Length];
        for (var i = 0; i < cuts.Length; i++)
            cuts[i] = [0, 1];
        for (var i = 0; i < wires.Length; i++)
            for (var j = i + 1; j < wires.Length; j++)
                Join(wires[i], wires[j], cuts[i], cuts[j], findings);
        foreach (var place in model.Feeds.Select(f => (f.Wire, f.Position)).Concat(model.Loads.Select(l => (l.Wire, l.Position))))
        {
            var w = IndexOf(model, place.Wire);
            cuts[w].Add(place.Position);
        }

        if (model.Ground is Ground.HalfSpace)
            for (var i = 0; i < wires.Length; i++)
                CutAtSurface(wires[i], cuts[i]);
        for (var i = 0; i < cuts.Length; i++)
            cuts[i] = Distinct(cuts[i], wires[i].LengthM);
        return cuts;
    }

    public static int IndexOf(WireModel model, string wire)
    {
        for (var i = 0; i < model.Wires.Length; i++)
            if (model.Wires[i].Name == wire)
                return i;
        throw new InvalidOperationException($"Wire {wire} was checked to exist.");
    }

    // No segment may lie in both media.
    private static void CutAtSurface(Wire wire, List<double> cuts)
    {
        if (wire.Start.Z * wire.End.Z < 0)
            cuts.Add(wire.Start.Z / (wire.Start.Z - wire.End.Z));
    }

    private static List<double> Distinct(List<double> cuts, double lengthM)
    {
        cuts.Sort();
        var kept = new List<double> { 0 };
        foreach (var cut in cuts)
            if ((cut - kept[^1]) * lengthM > ToleranceM)
                kept.Add(cut);
        if ((1 - kept[^1]) * lengthM <= ToleranceM && kept.Count > 1)
            kept[^1] = 1;
        return kept;
    }

    private static void Join(Wire a, Wire b, List<double> cutsA, List<double> cutsB, List<Finding> findings)
    {
        var closest = Closest(a, b);
        var clearM = Math.Max(a.StartRadiusM, a.EndRadiusM) + Math.Max(b.StartRadiusM, b.EndRadiusM);
        if (closest.DistanceM > clearM || (closest.DistanceM > ToleranceM && closest.DistanceM > Breadth(a, b, closest.S, closest.T)))
            return;
        if (SharedEnd(a, b) is { } shared)
        {
            if (shared.OutA.Dot(shared.OutB) > OverlapCosine)
                findings.Add(ModelCheck.Error("wires-overlap", $"Wires \"{a.Name}\" and \"{b.Name}\" leave one joint in the same direction and lie on each other.", null, null, "Remove one of them or spread them apart."));
            return;
        }

        var endOfA = AtEnd(closest.S, a.LengthM);
        var endOfB = AtEnd(closest.T, b.LengthM);
        if (closest.DistanceM < ToleranceM && (endOfA || endOfB))
        {
            cutsA.Add(closest.S);
            cutsB.Add(closest.T);
            return;
        }

        var code = closest.DistanceM < ToleranceM ? "wires-cross" : "wires-touch";
        var how = closest.DistanceM < ToleranceM ? "cross without a joint" : "come closer than their radii without a joint";
        var at = a.PointAt(closest.S);
        findings.Add(ModelCheck.Error(
            code, $"Wires \"{a.Name}\" and \"{b.Name}\" {how} near ({ModelCheck.Text(at.X)}, {ModelCheck.Text(at.Y)}, {ModelCheck.Text(at.Z)}) m.",
            $"{ModelCheck.Text(closest.DistanceM)} m apart", $"0 m with an end there, or more than {ModelCheck.Text(clearM)} m",
            "End one of them at the crossing to join them, or move them apart."));
    }

    // How far both wires reach towards each other: beyond its flat end a wire has no breadth along its own axis.
    private static double Breadth(Wire a, Wire b, double s, double t)
    {
        var between = (b.PointAt(t) - a.PointAt(s)).Unit();
        return (a.RadiusAt(s) * between.Cross((a.End - a.Start).Unit()).Length) + (b.RadiusAt(t) * between.Cross((b.End - b.Start).Unit()).Length);
    }

    private static bool AtEnd(double fraction, double lengthM) => fraction * lengthM < ToleranceM || (1 - fraction) * lengthM < ToleranceM;

    private static (Vec3 OutA, Vec3 OutB)? SharedEnd(Wire a, Wire b)
    {
        var ta = (a.End - a.Start).Unit();
        var tb = (b.End - b.Start).Unit();
        if ((a.Start - b.Start).Length < ToleranceM)
            return (ta, tb);
        if ((a.Start - b.End).Length < ToleranceM)
            return (ta, -tb);
        if ((a.End - b.Start).Length < ToleranceM)
            return (-ta, tb);
        return (a.End - b.End).Length < ToleranceM ? (-ta, -tb) : null;
    }

    // Closest points of two straight segments as fractions of their lengths (Ericson, Real-Time Collision Detection, 5.1.9, from memory).
    internal static (double S, double T, double DistanceM) Closest(Wire a, Wire b) => ClosestOf(a.Start, a.End - a.Start, b.Start, b.End - b.Start);

    internal static (double S, double T, double DistanceM) ClosestOf(Vec3 startA, Vec3 d1, Vec3 startB, Vec3 d2)
    {
        var r = startA - startB;
        double aa = d1.Dot(d1), ee = d2.Dot(d2), f = d2.Dot(r), c = d1.Dot(r), bb = d1.Dot(d2);
        var denominator = (aa * ee) - (bb * bb);
        var s = denominator > 1e-12 * aa * ee ? Math.Clamp(((bb * f) - (c * ee)) / denominator, 0, 1) : 0;
        var t = ((bb * s) + f) / ee;
        if (t < 0)
        {
            t = 0;
            s = Math.Clamp(-c / aa, 0, 1);
        }
        else if (t > 1)
        {
            t = 1;
            s = Math.Clamp((bb - c) / aa, 0, 1);
        }

        return (s, t, (startA + (s * d1) - startB - (t * d2)).Length);
    }
}
