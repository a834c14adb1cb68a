using System.Collections.Immutable;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Fields.Electrostatics;

/// <summary>
/// Boundary-element electrostatics of conductors of revolution, over an earth plane at z = 0 or in free space. Unknown is the surface field σ/ε₀,
/// constant on each element; the potential is matched at the middle of every element. The surface gradient is therefore the unknown itself.
/// </summary>
public static class AxisymmetricElectrostatics
{
    /// <summary>
    /// Solves a set of bodies.
    /// </summary>
    /// <param name="bodies">The conductors, at least one; none may touch another or cross the plane.</param>
    /// <param name="overGround">True for an earth plane at z = 0 (bodies at z ≥ 0); false for free space.</param>
    /// <param name="refinement">1 for about half a percent; the error falls with the square of it.</param>
    /// <param name="cancellation">Cancels between rows.</param>
    public static ElectrostaticBasis Solve(
        IReadOnlyList<AxisymmetricBody> bodies, bool overGround = true, double refinement = 1, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfZero(bodies.Count);
        var mesh = MeridianMesh.Build(bodies, refinement);
        var n = mesh.Length;
        var kernels = mesh.Select(e => new RingKernel(e)).ToArray();
        var r = new double[n];
        var z = new double[n];
        for (var i = 0; i < n; i++)
            (r[i], z[i]) = mesh[i].Curve.Point(mesh[i].Middle);

        var matrix = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var j = 0; j < n; j++)
            {
                // The image of an element in the plane, seen from a point, is the element seen from the point's own image.
                var image = overGround ? kernels[j].Potential(r[i], -z[i], false) : 0;
                matrix[i, j] = kernels[j].Potential(r[i], z[i], i == j) - image;
            }
        }

        // One column for a volt on each body, and one for an upward field of 1 V/m, whose potential is −z.
        var columns = Matrix<double>.Build.Dense(n, bodies.Count + 1, (i, b) => b == bodies.Count ? z[i] : mesh[i].Body == b ? 1 : 0);
        var solved = matrix.LU().Solve(columns);
        return Assemble(bodies, mesh, kernels, solved);
    }

    private static ElectrostaticBasis Assemble(
        IReadOnlyList<AxisymmetricBody> bodies, ImmutableArray<MeridianElement> mesh, RingKernel[] kernels, Matrix<double> solved)
    {
        var count = bodies.Count;
        var capacitance = new double[count, count];
        var perField = new double[count];
        for (var i = 0; i < mesh.Length; i++)
        {
            var scale = Vacuum.PermittivityFPerM * kernels[i].AreaM2;
            for (var b = 0; b < count; b++)
                capacitance[mesh[i].Body, b] += scale * solved[i, b];
            perField[mesh[i].Body] += scale * solved[i, count];
        }

        var points = ImmutableArray.CreateBuilder<SurfacePoint>();
        var rows = new List<double[]>();
        for (var i = 0; i < mesh.Length; i++)
        {
            points.Add(PointAt(mesh[i], mesh[i].Middle));
            rows.Add(solved.Row(i).ToArray());
            if (OnAxis(mesh, i) is { } tip)
            {
                points.Add(PointAt(mesh[i], tip.End));
                rows.Add([.. Enumerable.Range(0, count + 1).Select(c => solved[i, c] + (tip.Weight * (solved[i, c] - solved[tip.Neighbour, c])))]);
            }
        }

        var perVolt = Enumerable.Range(0, count).Select(b => rows.Select(row => row[b]).ToArray()).ToArray();
        return new([.. bodies.Select(b => b.Name)], points.ToImmutable(), perVolt, [.. rows.Select(row => row[count])], capacitance, perField, mesh.Length);
    }

    // Near the axis of a smooth cap the field is even in the arc length s: a + b s², carried from the first two middles to s = 0.
    private static (double End, int Neighbour, double Weight)? OnAxis(ImmutableArray<MeridianElement> mesh, int i)
    {
        foreach (var (end, neighbour) in new[] { (mesh[i].T0, i + 1), (mesh[i].T1, i - 1) })
        {
            var touches = Math.Abs(mesh[i].Curve.Point(end).R) < 1e-12 + (1e-9 * mesh[i].LengthM);
            if (!touches || neighbour < 0 || neighbour >= mesh.Length || mesh[neighbour].Curve != mesh[i].Curve)
                continue;
            var s1 = 0.5 * mesh[i].LengthM;
            var s2 = mesh[i].LengthM + (0.5 * mesh[neighbour].LengthM);
            return (end, neighbour, s1 * s1 / ((s2 * s2) - (s1 * s1)));
        }

        return null;
    }

    private static SurfacePoint PointAt(MeridianElement element, double t)
    {
        var (r, z) = element.Curve.Point(t);
        var (a, b) = (element.Curve.MeridianRadiusM(t), element.Curve.AzimuthRadiusM(t));
        return new(element.Body, new Vec3(r, 0, z), Math.Min(a, b), Math.Max(a, b));
    }
}
