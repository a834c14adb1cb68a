using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Wires;
using Mastwright.Numerics.Dense;

namespace Mastwright.Fields.Solving;

/// <summary>
/// Fills the Galerkin matrix of the mixed-potential equation
/// Z_mn = (jωμ/4π)∫∫ f_m·f_n G + (1/jω4πε)∫∫ f′_m f′_n G, plus wire loss and lumped loads.
/// Only pairs p ≤ q are integrated and the transpose added, so the matrix is symmetric to the last bit.
/// </summary>
internal static class ImpedanceMatrix
{
    public static ComplexMatrix Fill(WireMesh mesh, double frequencyHz, CancellationToken cancellation, IProgress<double>? progress = null)
    {
        var n = mesh.UnknownCount;
        var sum = new Complex[(long)n * n];
        var interactions = new Interactions(mesh, frequencyHz);
        var steps = new Steps(progress, mesh.Segments.Length);
        var rowLocks = new Lock[n];
        for (var i = 0; i < n; i++)
            rowLocks[i] = new();
        Parallel.For(0, mesh.Segments.Length, new ParallelOptions { CancellationToken = cancellation }, () => new Complex[2 * n], (p, _, rows) =>
        {
            Array.Clear(rows);
            for (var q = p; q < mesh.Segments.Length; q++)
                AddPair(mesh.Basis, rows, n, q, interactions.Between(p, q), q == p ? 0.5 : 1.0);
            for (var end = 0; end < 2; end++)
            {
                foreach (var term in mesh.Basis.At(new(p, end)))
                {
                    var row = sum.AsSpan(term.Unknown * n, n);
                    var source = rows.AsSpan(end * n, n);
                    lock (rowLocks[term.Unknown])
                        for (var j = 0; j < n; j++)
                            row[j] += term.Weight * source[j];
                }
            }

            steps.Next();
            return rows;
        }, static _ => { });
        Symmetrise(sum, n);
        foreach (var (row, column, value) in LocalTerms(mesh, frequencyHz))
            sum[(row * n) + column] += value;

        // Symmetric, so its rows are its columns.
        var matrix = new ComplexMatrix(n, n);
        for (var j = 0; j < n; j++)
            matrix.SetColumn(j, sum.AsSpan(j * n, n));
        return matrix;
    }

    /// <summary>Adds one pair's voltages to the two rows of end voltages of its first segment.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void AddPair(BasisSet basis, Span<Complex> rows, int n, int q, in PairBlock block, double weight)
    {
        foreach (var term in basis.At(new(q, 0)))
        {
            rows[term.Unknown] += weight * term.Weight * block.M00;
            rows[n + term.Unknown] += weight * term.Weight * block.M10;
        }

        foreach (var term in basis.At(new(q, 1)))
        {
            rows[term.Unknown] += weight * term.Weight * block.M01;
            rows[n + term.Unknown] += weight * term.Weight * block.M11;
        }
    }

    /// <summary>The internal impedance of the metal, the jackets and the lumped loads, as single matrix entries.</summary>
    internal static IEnumerable<(int Row, int Column, Complex Value)> LocalTerms(WireMesh mesh, double frequencyHz)
    {
        for (var s = 0; s < mesh.Segments.Length; s++)
        {
            var segment = mesh.Segments[s];
            var wire = mesh.Model.Wires[segment.Wire];
            var metal = wire.Metal.InternalImpedancePerM(segment.RadiusM, frequencyHz) * segment.LengthM;
            var jacket = wire.Jacket?.RadialImpedanceOhmM(segment.RadiusM, Outside(mesh, segment, frequencyHz), frequencyHz) / segment.LengthM ?? 0;
            if (metal == 0 && jacket == 0)
                continue;
            for (var a = 0; a < 2; a++)
            {
                for (var b = 0; b < 2; b++)
                {
                    // ∫ N_a N_b ds for the metal, ∫ N_a′ N_b′ ds for the charge in the jacket.
                    var z = a == b ? (metal / 3) + jacket : (metal / 6) - jacket;
                    foreach (var entry in Products(mesh.Basis, new(s, a), new(s, b), z))
                        yield return entry;
                }
            }
        }

        for (var l = 0; l < mesh.LoadEnds.Length; l++)
        {
            foreach (var entry in Products(mesh.Basis, mesh.LoadEnds[l], mesh.LoadEnds[l], mesh.Model.Loads[l].Element.ImpedanceOhm(frequencyHz)))
                yield return entry;
        }
    }

    private static Complex Outside(WireMesh mesh, in Segment segment, double frequencyHz) =>
        mesh.Model.Ground is Ground.HalfSpace half && segment.Centre.Z < 0 ? half.Soil.ComplexPermittivity(frequencyHz) : 1;

    private static List<(int Row, int Column, Complex Value)> Products(BasisSet basis, SegmentEnd a, SegmentEnd b, Complex z)
    {
        var entries = new List<(int, int, Complex)>();
        foreach (var m in basis.At(a))
            foreach (var t in basis.At(b))
                entries.Add((m.Unknown, t.Unknown, m.Weight * t.Weight * z));
        return entries;
    }

    private static void Symmetrise(Complex[] half, int n)
    {
        for (var i = 0; i < n; i++)
        {
            half[(i * n) + i] *= 2;
            for (var j = i + 1; j < n; j++)
            {
                var sum = half[(i * n) + j] + half[(j * n) + i];
                half[(i * n) + j] = sum;
                half[(j * n) + i] = sum;
            }
        }
    }
}
