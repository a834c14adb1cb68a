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
    private const double SameSteepness = 1e-9;
    private readonly BasisTerm[][] _terms;

    private BasisSet(BasisTerm[][] terms, BasisFunction[] functions)
    {
        _terms = terms;
        Functions = functions;
    }

    /// <summary>What each unknown is: the branch it flows out into and the one it comes from.</summary>
    public BasisFunction[] Functions { get; }

    /// <summary>Number of unknowns.</summary>
    public int Count => Functions.Length;

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
        var functions = new List<BasisFunction>();
        for (var n = 0; n < nodes.Length; n++)
        {
            var grounded = JointGraph.IsGrounded(nodes[n], ground);

            // The steepest branch is the one the others pair with: on a mast that keeps equal radials and guys alike. Of equally steep ones it is
            // the first, whatever the last digits say: they differ from guy to guy.
            double Steepness(SegmentEnd b) => Math.Abs(segments[b.Segment].Tangent.Z);
            var steepest = branches[n].Select(Steepness).DefaultIfEmpty().Max();
            var reference = branches[n].FirstOrDefault(b => Steepness(b) > steepest - SameSteepness);
            foreach (var branch in branches[n].Where(b => grounded || b != reference))
            {
                terms[(2 * branch.Segment) + branch.End].Add(new(functions.Count, OutwardSign(branch.End)));
                if (!grounded)
                    terms[(2 * reference.Segment) + reference.End].Add(new(functions.Count, -OutwardSign(reference.End)));
                functions.Add(new(branch, grounded ? null : reference));
            }
        }

        return new([.. terms.Select(t => t.ToArray())], [.. functions]);
    }
}

/// <summary>One unknown's part in a segment's end current.</summary>
internal readonly record struct BasisTerm(int Unknown, int Weight);

/// <summary>One triangle: out of a node into <paramref name="Into"/>, from <paramref name="From"/> or, when null, from the image.</summary>
internal readonly record struct BasisFunction(SegmentEnd Into, SegmentEnd? From);
