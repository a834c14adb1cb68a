using System.Collections.Immutable;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>
/// How the unknown currents make up the end currents of the segments. The end current of segment s at end e, counted along the
/// segment's tangent, is the sum over its terms of Weight · x[Unknown].
/// </summary>
internal sealed class BasisSet
{
    private readonly BasisTerm[][] _terms;

    private BasisSet(BasisTerm[][] terms, int count)
    {
        _terms = terms;
        Count = count;
    }

    /// <summary>Number of unknowns.</summary>
    public int Count { get; }

    /// <summary>The unknowns that carry current at a segment end.</summary>
    public ReadOnlySpan<BasisTerm> At(SegmentEnd end) => _terms[(2 * end.Segment) + end.End];

    /// <summary>+1 when the tangent points out of the joint at this end, −1 when it points into it.</summary>
    public static int OutwardSign(int end) => end == 0 ? 1 : -1;

    /// <summary>Triangles at every node: each branch paired with the first, or with the image where the node is on the ground.</summary>
    public static BasisSet Build(ImmutableArray<Segment> segments, ImmutableArray<Vec3> nodes, Ground ground)
    {
        var branches = new List<SegmentEnd>[nodes.Length];
        for (var i = 0; i < branches.Length; i++)
            branches[i] = [];
        for (var s = 0; s < segments.Length; s++)
        {
            branches[segments[s].StartNode].Add(new(s, 0));
            branches[segments[s].EndNode].Add(new(s, 1));
        }

        var terms = new List<BasisTerm>[2 * segments.Length];
        for (var i = 0; i < terms.Length; i++)
            terms[i] = [];
        var count = 0;
        for (var n = 0; n < nodes.Length; n++)
        {
            var grounded = JointGraph.IsGrounded(nodes[n], ground);
            var first = grounded ? 0 : 1;
            for (var b = first; b < branches[n].Count; b++)
            {
                var branch = branches[n][b];
                terms[(2 * branch.Segment) + branch.End].Add(new(count, OutwardSign(branch.End)));
                if (!grounded)
                {
                    var reference = branches[n][0];
                    terms[(2 * reference.Segment) + reference.End].Add(new(count, -OutwardSign(reference.End)));
                }

                count++;
            }
        }

        return new([.. terms.Select(t => t.ToArray())], count);
    }
}

/// <summary>One unknown's part in a segment's end current.</summary>
internal readonly record struct BasisTerm(int Unknown, int Weight);
