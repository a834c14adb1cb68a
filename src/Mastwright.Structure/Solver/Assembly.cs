using Mastwright.Numerics;
using Mastwright.Numerics.Banded;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>
/// Out-of-balance forces and tangent of the whole mast. Unknowns run node by node from the foot: three
/// displacements, three further rotations. Each node talks only to its neighbours, so the tangent is a band.
/// Owns its workspace: one assembly, one thread.
/// </summary>
internal sealed class Assembly
{
    /// <summary>Sub-diagonals of all matrices: two neighbouring nodes of six unknowns.</summary>
    public const int HalfBandwidth = 11;

    private readonly MastMesh _mesh;
    private readonly double[] _blocks = new double[54];

    public Assembly(MastMesh mesh, bool holdTwist)
    {
        _mesh = mesh;
        Size = 6 * mesh.NodeCount;
        Gradient = new double[Size];
        Tangent = new(Size, HalfBandwidth);
        Cables = new CableState[mesh.Guys.Length];
        Normals = new double[mesh.Elements.Length];
        Ends = new BeamElement.Response[mesh.Elements.Length];
        Held = mesh.Mast.Foot switch
        {
            FootFixity.BuiltIn => [0, 1, 2, 3, 4, 5],
            FootFixity.PivotTwistHeld => [0, 1, 2, 5],
            _ => holdTwist ? [0, 1, 2, 5] : [0, 1, 2],
        };
    }

    public int Size { get; }

    /// <summary>Unknowns that are held at nothing.</summary>
    public int[] Held { get; }

    /// <summary>First derivative of the potential: minus the out-of-balance forces; at held unknowns, the reactions.</summary>
    public double[] Gradient { get; }

    /// <summary>Second derivative of the potential at the last evaluation with tangent.</summary>
    public SymmetricBand Tangent { get; private set; }

    /// <summary>The factored tangent, held unknowns replaced by ones on the diagonal; null when it could not be factored.</summary>
    public BandLdl? Factored { get; private set; }

    /// <summary>Whether the factored tangent is safely away from singular.</summary>
    public bool IsRegular => Factored is { } f && f.SmallestPivotRatio > 1e-13;

    /// <summary>State of each guy.</summary>
    public CableState[] Cables { get; }

    /// <summary>Normal force in each element.</summary>
    public double[] Normals { get; }

    /// <summary>Element forces on the nodes.</summary>
    public BeamElement.Response[] Ends { get; }

    /// <summary>Whether the last evaluation could solve every guy.</summary>
    public bool CablesConverged { get; private set; }

    public void Evaluate(MastState state, PlacedLoad load, bool withTangent)
    {
        Array.Clear(Gradient);
        if (withTangent)
        {
            Tangent = new(Size, HalfBandwidth);
            Factored = null;
        }

        for (var e = 0; e < _mesh.Elements.Length; e++)
        {
            var pose = PoseOf(state, e);
            var r = withTangent
                ? _mesh.Elements[e].Tangent(pose, load.WarmingK, _blocks)
                : _mesh.Elements[e].Gradient(pose, load.WarmingK);
            Normals[e] = r.NormalN;
            Ends[e] = r;
            Add(6 * e, -r.Chord);
            Add((6 * e) + 3, r.First);
            Add((6 * e) + 6, r.Chord);
            Add((6 * e) + 9, r.Second);
            if (withTangent)
            {
                Scatter(Tangent, e);
            }
        }

        Span<double> cells = stackalloc double[9];
        for (var i = 0; i < _mesh.NodeCount; i++)
        {
            var along = state.T[i].Along;
            Add(6 * i, -load.ForceN[i]);
            Add((6 * i) + 3, -along.Cross(load.LeverNm[i]) - load.MomentNm[i]);
            if (withTangent)
            {
                cells.Clear();
                new Block3(cells).AddTurnHessian(-1, load.LeverNm[i], along);
                AddLower(Tangent, cells, (6 * i) + 3);
            }
        }

        CablesConverged = true;
        for (var g = 0; g < _mesh.Guys.Length; g++)
        {
            if (load.Present[g])
            {
                AddGuy(g, state, load, withTangent);
            }
        }
    }

    /// <summary>Size of the out-of-balance: forces, and moments over a tenth of the height, largest of all nodes.</summary>
    public double ResidualN()
    {
        var arm = 0.1 * _mesh.HeightM;
        var largest = 0.0;
        for (var i = 0; i < Size; i++)
        {
            if (Array.IndexOf(Held, i) >= 0)
            {
                continue;
            }

            var value = Math.Abs(Gradient[i]);
            largest = Math.Max(largest, i % 6 < 3 ? value : value / arm);
            if (double.IsNaN(value))
            {
                return double.PositiveInfinity;
            }
        }

        return largest;
    }

    /// <summary>Puts ones in place of the held unknowns and factors the tangent.</summary>
    public void HoldAndFactor()
    {
        Hold(Tangent, 1);
        Factored = BandLdl.TryFactor(Tangent, out _);
    }

    /// <summary>Clears rows and columns of the held unknowns of a matrix and puts a number on their diagonal.</summary>
    public void Hold(SymmetricBand matrix, double diagonal)
    {
        foreach (var h in Held)
        {
            for (var j = Math.Max(0, h - 11); j < h; j++)
            {
                matrix[h, j] = 0;
            }

            for (var i = h + 1; i < Math.Min(Size, h + 12); i++)
            {
                matrix[i, h] = 0;
            }

            matrix[h, h] = diagonal;
        }
    }

    public BeamElement.Pose PoseOf(MastState state, int element) => new(
        new Vec3(0, 0, _mesh.Elements[element].LengthM), state.U[element + 1] - state.U[element], state.T[element], state.T[element + 1]);

    /// <summary>From the anchor of a guy to its attachment.</summary>
    public Vec3 ChordOf(MastState state, int guy)
    {
        var g = _mesh.Guys[guy];
        return _mesh.RestPosition(g.Node) + state.U[g.Node] + state.T[g.Node].Carry(g.Arm) - g.AnchorM;
    }

    private void AddGuy(int index, MastState state, PlacedLoad load, bool withTangent)
    {
        var g = _mesh.Guys[index];
        var cable = GuyLine.Solve(g.Guy, ChordOf(state, index), g.UnstressedLengthM, load.Gravity, load.GuyLoadNPerM[index], load.WarmingK);
        Cables[index] = cable;
        CablesConverged &= cable.Converged;
        var n = 6 * g.Node;
        var arm = state.T[g.Node].Carry(g.Arm);
        Add(n, -cable.EndPullN);
        Add(n + 3, -arm.Cross(cable.EndPullN));
        if (!withTangent)
        {
            return;
        }

        // The attachment moves by u + w×a, so K acts on both parts; besides, the arm turns under the pull.
        Span<double> uu = stackalloc double[9];
        new Block3(uu).Add(1, cable.Stiffness);
        AddLower(Tangent, uu, n);
        if (g.Arm == Vec3.Zero)
        {
            return;
        }

        Span<double> wu = stackalloc double[9];
        Span<double> ww = stackalloc double[9];
        for (var c = 0; c < 3; c++)
        {
            var axis = new Vec3(c == 0 ? 1 : 0, c == 1 ? 1 : 0, c == 2 ? 1 : 0);
            var column = arm.Cross(cable.Stiffness * axis);
            Put(wu, c, column);
            Put(ww, c, arm.Cross(cable.Stiffness * axis.Cross(arm)));
        }

        new Block3(ww).AddTurnHessian(-1, cable.EndPullN, arm);
        AddBlock(Tangent, wu, n + 3, n);
        AddLower(Tangent, ww, n + 3);
    }

    private static void Put(Span<double> block, int column, Vec3 v)
    {
        block[column] = v.X;
        block[3 + column] = v.Y;
        block[6 + column] = v.Z;
    }

    private void Add(int at, Vec3 v)
    {
        Gradient[at] += v.X;
        Gradient[at + 1] += v.Y;
        Gradient[at + 2] += v.Z;
    }

    /// <summary>The geometric stiffness of the mast at a state: what its normal forces add to the tangent. Held unknowns are cleared.</summary>
    public SymmetricBand GeometricStiffness(MastState state, double warmingK)
    {
        var matrix = new SymmetricBand(Size, HalfBandwidth);
        for (var e = 0; e < _mesh.Elements.Length; e++)
        {
            _mesh.Elements[e].Geometric(PoseOf(state, e), warmingK, _blocks);
            Scatter(matrix, e);
        }

        Hold(matrix, 0);
        return matrix;
    }

    // The element's blocks, with the chord the difference of the two displacements.
    private void Scatter(SymmetricBand matrix, int element)
    {
        var dd = _blocks.AsSpan(0, 9);
        var d1 = _blocks.AsSpan(9, 9);
        var d2 = _blocks.AsSpan(18, 9);
        int u1 = 6 * element, w1 = u1 + 3, u2 = u1 + 6, w2 = u1 + 9;
        AddLower(matrix, dd, u1);
        AddLower(matrix, dd, u2);
        AddBlock(matrix, dd, u2, u1, -1);
        AddTransposed(matrix, d1, w1, u1, -1);
        AddTransposed(matrix, d2, w2, u1, -1);
        AddBlock(matrix, d1, u2, w1);
        AddTransposed(matrix, d2, w2, u2);
        AddLower(matrix, _blocks.AsSpan(27, 9), w1);
        AddTransposed(matrix, _blocks.AsSpan(36, 9), w2, w1);
        AddLower(matrix, _blocks.AsSpan(45, 9), w2);
    }

    private static void AddLower(SymmetricBand matrix, ReadOnlySpan<double> block, int at)
    {
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                matrix[at + i, at + j] += block[(3 * i) + j];
            }
        }
    }

    private static void AddBlock(SymmetricBand matrix, ReadOnlySpan<double> block, int row, int column, double sign = 1)
    {
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                matrix[row + i, column + j] += sign * block[(3 * i) + j];
            }
        }
    }

    private static void AddTransposed(SymmetricBand matrix, ReadOnlySpan<double> block, int row, int column, double sign = 1)
    {
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                matrix[row + i, column + j] += sign * block[(3 * j) + i];
            }
        }
    }
}
