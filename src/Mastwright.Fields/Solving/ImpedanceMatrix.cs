using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Kernels.HalfSpace;
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
    /// <summary>Interpolation error allowed in the half-space kernels, as a share of the kernel.</summary>
    private const double KernelTolerance = 3e-5;

    public static ComplexMatrix Fill(WireMesh mesh, double frequencyHz, CancellationToken cancellation)
    {
        var n = mesh.UnknownCount;
        var sum = new Complex[(long)n * n];
        var segments = mesh.Segments;
        var filaments = segments.Select(s => new Filament(s.Start, s.Tangent, s.LengthM, s.RadiusM)).ToArray();
        var mirrored = mesh.Model.Ground is Ground.PerfectPlane;
        var soil = mesh.Model.Ground is Ground.HalfSpace half ? KernelsFor(mesh, half.Soil, frequencyHz) : null;
        var k = Vacuum.WaveNumber(frequencyHz);
        var rowLocks = new Lock[n];
        for (var i = 0; i < n; i++)
            rowLocks[i] = new();
        var options = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, segments.Length, options, () => new Complex[2 * n], (p, _, rows) =>
        {
            Array.Clear(rows);
            for (var q = p; q < segments.Length; q++)
            {
                var weight = q == p ? 0.5 : 1.0;
                AddPair(mesh.Basis, rows, n, q, Interaction(filaments[p], filaments[q], k), weight);
                if (mirrored)
                    AddPair(mesh.Basis, rows, n, q, Interaction(filaments[p], filaments[q].Mirrored, k), -weight);
                if (soil is not null)
                    AddPair(mesh.Basis, rows, n, q, SoilPair.Reaction(soil, filaments[p], filaments[q]), weight);
            }

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

            return rows;
        }, static _ => { });
        Symmetrise(sum, n);
        AddWireLoss(mesh, sum, frequencyHz);
        AddLoads(mesh, sum, frequencyHz);

        // Symmetric, so its rows are its columns.
        var matrix = new ComplexMatrix(n, n);
        for (var j = 0; j < n; j++)
            matrix.SetColumn(j, sum.AsSpan(j * n, n));
        return matrix;
    }

    /// <summary>Half-space kernels that reach over the whole mesh.</summary>
    internal static HalfSpaceKernels KernelsFor(WireMesh mesh, Soil soil, double frequencyHz)
    {
        double west = double.MaxValue, east = double.MinValue, south = double.MaxValue, north = double.MinValue, high = 0;
        foreach (var node in mesh.Nodes)
        {
            (west, east) = (Math.Min(west, node.X), Math.Max(east, node.X));
            (south, north) = (Math.Min(south, node.Y), Math.Max(north, node.Y));
            high = Math.Max(high, node.Z);
        }

        var reachM = Math.Sqrt(((east - west) * (east - west)) + ((north - south) * (north - south)));
        return new(soil, frequencyHz, reachM, high, KernelTolerance);
    }

    /// <summary>Volts per ampere between end currents of two filaments: vector and scalar potential together, ends 00, 01, 10, 11.</summary>
    internal static PairBlock Interaction(in Filament p, in Filament q, double k)
    {
        var block = PairIntegrals.Compute(p, q, k);
        var vector = new Complex(0, k * Vacuum.WaveImpedanceOhm / (4 * Math.PI) * p.Tangent.Dot(q.Tangent));
        var charge = new Complex(0, -Vacuum.WaveImpedanceOhm / (4 * Math.PI * k)) * block.Total / (p.LengthM * q.LengthM);
        return new()
        {
            M00 = (vector * block.M00) + charge,
            M01 = (vector * block.M01) - charge,
            M10 = (vector * block.M10) - charge,
            M11 = (vector * block.M11) + charge,
        };
    }

    private static void AddPair(BasisSet basis, Complex[] rows, int n, int q, in PairBlock block, double weight)
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

    private static void AddWireLoss(WireMesh mesh, Complex[] matrix, double frequencyHz)
    {
        var n = mesh.UnknownCount;
        for (var s = 0; s < mesh.Segments.Length; s++)
        {
            var segment = mesh.Segments[s];
            var metal = mesh.Model.Wires[segment.Wire].Metal;
            if (metal.IsPerfect)
                continue;
            var z = metal.InternalImpedancePerM(segment.RadiusM, frequencyHz) * segment.LengthM;
            for (var a = 0; a < 2; a++)
                for (var b = 0; b < 2; b++)
                    foreach (var m in mesh.Basis.At(new(s, a)))
                        foreach (var t in mesh.Basis.At(new(s, b)))
                            matrix[(m.Unknown * n) + t.Unknown] += m.Weight * t.Weight * z * (a == b ? 1.0 / 3 : 1.0 / 6);
        }
    }

    private static void AddLoads(WireMesh mesh, Complex[] matrix, double frequencyHz)
    {
        var n = mesh.UnknownCount;
        for (var l = 0; l < mesh.LoadEnds.Length; l++)
        {
            var z = mesh.Model.Loads[l].Element.ImpedanceOhm(frequencyHz);
            var terms = mesh.Basis.At(mesh.LoadEnds[l]);
            foreach (var m in terms)
                foreach (var t in terms)
                    matrix[(m.Unknown * n) + t.Unknown] += m.Weight * t.Weight * z;
        }
    }
}
