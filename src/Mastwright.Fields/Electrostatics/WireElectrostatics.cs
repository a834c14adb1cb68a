using System.Collections.Immutable;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Fields.Electrostatics;

/// <summary>
/// Three-dimensional electrostatics of thin round conductors by charge simulation: line charges on the axes, point charges in the half-ball ends of
/// fine wires, the potential matched on the surface (Singer, Steinbigler and Weiss 1974 in form). For masts with guys, whiskers and rods that no axis
/// of symmetry holds. Over an earth plane at z = 0 or in free space.
/// </summary>
public static class WireElectrostatics
{
    private const int Around = 8;

    /// <summary>
    /// Solves a set of conductors.
    /// </summary>
    /// <param name="conductors">The conductors, at least one; wires much longer than thick, none crossing the plane.</param>
    /// <param name="overGround">True for an earth plane at z = 0.</param>
    /// <param name="segmentM">Longest line charge in metres; null takes a fifteenth of the greatest extent.</param>
    /// <param name="refinement">Divides every size.</param>
    /// <param name="cancellation">Cancels between rows.</param>
    public static ElectrostaticBasis Solve(
        IReadOnlyList<WireConductor> conductors, bool overGround = true, double? segmentM = null, double refinement = 1, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfZero(conductors.Count);
        var extent = conductors.SelectMany(c => c.Wires).Max(w => w.LengthM);
        var mesh = WireMesh.Build(conductors, segmentM ?? extent / 15, refinement);
        var n = mesh.Length;
        var matrix = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var at = mesh[i].Match;
            var radius = mesh[i].IsTip ? 0 : mesh[i].RadiusM;
            for (var j = 0; j < n; j++)
                matrix[i, j] = Potential(mesh[j], at, radius) - (overGround ? Potential(mesh[j], Mirror(at), 0) : 0);
        }

        var count = conductors.Count;
        var columns = Matrix<double>.Build.Dense(n, count + 1, (i, b) => b == count ? mesh[i].Match.Z : mesh[i].Body == b ? 1 : 0);
        var solved = matrix.LU().Solve(columns);
        return Assemble(conductors, mesh, solved, overGround);
    }

    private static ElectrostaticBasis Assemble(IReadOnlyList<WireConductor> conductors, ImmutableArray<WireSource> mesh, Matrix<double> solved, bool overGround)
    {
        var count = conductors.Count;
        var capacitance = new double[count, count];
        var perField = new double[count];
        for (var i = 0; i < mesh.Length; i++)
        {
            var scale = Vacuum.PermittivityFPerM * (mesh[i].IsTip ? 1 : (mesh[i].End - mesh[i].Start).Length);
            for (var b = 0; b < count; b++)
                capacitance[mesh[i].Body, b] += scale * solved[i, b];
            perField[mesh[i].Body] += scale * solved[i, count];
        }

        var points = ImmutableArray.CreateBuilder<SurfacePoint>();
        var rows = new List<double[]>();
        foreach (var source in mesh)
        {
            var normals = source.IsTip ? [source.Outward] : Normals(source.Outward);
            foreach (var normal in normals)
            {
                var at = (source.IsTip ? source.Start : source.Match) + (source.RadiusM * normal);
                points.Add(new(source.Body, at, source.RadiusM, source.IsTip ? source.RadiusM : double.PositiveInfinity));
                rows.Add(NormalField(mesh, solved, at, normal, overGround));
            }
        }

        var perVolt = Enumerable.Range(0, count).Select(b => rows.Select(row => row[b]).ToArray()).ToArray();
        return new([.. conductors.Select(c => c.Name)], points.ToImmutable(), perVolt, [.. rows.Select(row => row[count])], capacitance, perField, mesh.Length);
    }

    private static double[] NormalField(ImmutableArray<WireSource> mesh, Matrix<double> solved, Vec3 at, Vec3 normal, bool overGround)
    {
        var row = new double[solved.ColumnCount];
        row[^1] = normal.Z; // the external field itself
        for (var j = 0; j < mesh.Length; j++)
        {
            var e = Field(mesh[j], at).Dot(normal);
            if (overGround)
                e -= Field(mesh[j], Mirror(at)).Dot(Mirror(normal));
            for (var c = 0; c < row.Length; c++)
                row[c] += e * solved[j, c];
        }

        return row;
    }

    private static double Potential(WireSource source, Vec3 at, double radius) => source.IsTip
        ? LineCharge.PointPotential(source.Start, at, radius)
        : LineCharge.Potential(source.Start, source.End, at, radius);

    private static Vec3 Field(WireSource source, Vec3 at) => source.IsTip
        ? LineCharge.PointField(source.Start, at)
        : LineCharge.Field(source.Start, source.End, at);

    // Seen from a point, the image of a source in the plane is the source seen from the mirrored point, with the vertical turned over.
    private static Vec3 Mirror(Vec3 v) => v with { Z = -v.Z };

    private static Vec3[] Normals(Vec3 axis)
    {
        var side = Math.Abs(axis.Z) < 0.9 ? Vec3.Up.Cross(axis).Unit() : new Vec3(1, 0, 0).Cross(axis).Unit();
        var other = axis.Cross(side);
        return [.. Enumerable.Range(0, Around).Select(k =>
        {
            var (s, c) = Math.SinCos(2 * Math.PI * k / Around);
            return (c * side) + (s * other);
        })];
    }
}
