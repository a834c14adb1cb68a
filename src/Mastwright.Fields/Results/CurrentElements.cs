using System.Numerics;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;

namespace Mastwright.Fields.Results;

/// <summary>Short current elements I·dl that stand for a driven model (and its image) in radiation integrals.</summary>
internal sealed class CurrentElements
{
    private const int PointsPerSegment = 2;

    private CurrentElements(Vec3[] positions, Complex[] momentX, Complex[] momentY, Complex[] momentZ)
    {
        Positions = positions;
        MomentX = momentX;
        MomentY = momentY;
        MomentZ = momentZ;
    }

    public Vec3[] Positions { get; }

    public Complex[] MomentX { get; }

    public Complex[] MomentY { get; }

    public Complex[] MomentZ { get; }

    public static CurrentElements Of(WireMesh mesh, DrivenWires driven)
    {
        var mirrored = mesh.Model.Ground is Ground.PerfectPlane;
        var rule = GaussRule.Of(PointsPerSegment);
        var count = mesh.Segments.Length * PointsPerSegment * (mirrored ? 2 : 1);
        var positions = new Vec3[count];
        Complex[] x = new Complex[count], y = new Complex[count], z = new Complex[count];
        var e = 0;
        for (var s = 0; s < mesh.Segments.Length; s++)
        {
            var segment = mesh.Segments[s];
            var (a, b) = driven.EndCurrents(s);
            for (var g = 0; g < PointsPerSegment; g++)
            {
                var t = rule.Nodes[g];
                var moment = ((1 - t) * a + (t * b)) * (segment.LengthM * rule.Weights[g]);
                var at = segment.Start + (t * segment.LengthM * segment.Tangent);
                (positions[e], x[e], y[e], z[e]) = (at, segment.Tangent.X * moment, segment.Tangent.Y * moment, segment.Tangent.Z * moment);
                e++;
                if (mirrored)
                {
                    (positions[e], x[e], y[e], z[e]) = (new(at.X, at.Y, -at.Z), -x[e - 1], -y[e - 1], z[e - 1]);
                    e++;
                }
            }
        }

        return new(positions, x, y, z);
    }
}
