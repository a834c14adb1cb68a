using System.Collections.Immutable;
using Mastwright.Numerics;

namespace Mastwright.Fields.Electrostatics;

/// <summary>One source of the charge simulation: a line charge along a stretch of wire, or a point charge at the centre of a half-ball end.</summary>
internal readonly record struct WireSource(int Body, Vec3 Start, Vec3 End, double RadiusM, bool IsTip, Vec3 Outward)
{
    /// <summary>Point at which the potential is matched: the middle of the axis (distances get the radius added in square), or the tip itself.</summary>
    public Vec3 Match => IsTip ? Start + (RadiusM * Outward) : 0.5 * (Start + End);
}

/// <summary>Divides wires into line charges, finer towards the ends of fine wires, with a point charge in each free end of those.</summary>
internal static class WireMesh
{
    public static ImmutableArray<WireSource> Build(IReadOnlyList<WireConductor> conductors, double segmentM, double refinement)
    {
        var sources = ImmutableArray.CreateBuilder<WireSource>();
        for (var b = 0; b < conductors.Count; b++)
        {
            foreach (var wire in conductors[b].Wires)
                Divide(b, wire, conductors[b], segmentM, refinement, sources);
        }

        return sources.ToImmutable();
    }

    private static void Divide(int body, Wire wire, WireConductor conductor, double segmentM, double refinement, ImmutableArray<WireSource>.Builder sources)
    {
        var unit = (wire.End - wire.Start).Unit();
        var freeStart = IsFree(wire.Start, wire, conductor);
        var freeEnd = IsFree(wire.End, wire, conductor);
        // The half-ball ends belong to the wire's length: their centres lie one radius inside.
        var start = wire.Fine && freeStart ? wire.Start + (wire.RadiusM * unit) : wire.Start;
        var end = wire.Fine && freeEnd ? wire.End - (wire.RadiusM * unit) : wire.End;
        var length = (end - start).Length;
        var s = 0.0;
        foreach (var size in Sizes(length, wire, freeStart, freeEnd, segmentM, refinement))
        {
            sources.Add(new(body, start + (s * unit), start + ((s + size) * unit), wire.RadiusM, false, unit));
            s += size;
        }

        if (!wire.Fine)
            return;
        if (freeStart)
            sources.Add(new(body, start, start, wire.RadiusM, true, -unit));
        if (freeEnd)
            sources.Add(new(body, end, end, wire.RadiusM, true, unit));
    }

    private static List<double> Sizes(double length, Wire wire, bool freeStart, bool freeEnd, double segmentM, double refinement)
    {
        var largest = Math.Min(segmentM, length / 3) / refinement;
        if (!wire.Fine)
        {
            var n = (int)Math.Ceiling(length / largest);
            return [.. Enumerable.Repeat(length / n, n)];
        }

        var growth = 1 + (0.6 / refinement);
        double First(bool free) => (free ? 1 : 4) * wire.RadiusM;
        List<double> left = [];
        List<double> right = [];
        var (nextLeft, nextRight) = (Math.Min(First(freeStart), largest), Math.Min(First(freeEnd), largest));
        for (var rest = length; rest > 0;)
        {
            var fromLeft = nextLeft <= nextRight;
            var size = fromLeft ? nextLeft : nextRight;
            if (size > 0.6 * rest)
            {
                left.Add(rest);
                break;
            }

            (fromLeft ? left : right).Add(size);
            rest -= size;
            if (fromLeft)
                nextLeft = Math.Min(largest, nextLeft * growth);
            else
                nextRight = Math.Min(largest, nextRight * growth);
        }

        right.Reverse();
        return [.. left, .. right];
    }

    private static bool IsFree(Vec3 end, Wire wire, WireConductor conductor)
    {
        if (Math.Abs(end.Z) < wire.RadiusM)
            return false; // it stands on the plane
        foreach (var other in conductor.Wires)
        {
            if (!ReferenceEquals(other, wire) && ((other.Start - end).Length < wire.RadiusM || (other.End - end).Length < wire.RadiusM))
                return false;
        }

        return true;
    }
}
