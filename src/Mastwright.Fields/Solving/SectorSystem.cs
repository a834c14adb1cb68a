using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Numerics.Dense;

namespace Mastwright.Fields.Solving;

/// <summary>
/// The equations of a rotationally symmetric mesh, split by the discrete Fourier transform over the sectors: with C_k the block
/// between a sector and the one k further round, mode ν has the matrix Σ C_k exp(j2πνk/N), and only mode 0 meets the axis.
/// Only the rows of the axis and of one sector are ever filled, and only the modes that a feed excites are factorised.
/// </summary>
internal sealed class SectorSystem
{
    private readonly RotationSymmetry _symmetry;
    private readonly Complex[][] _axisRows;
    private readonly Complex[][] _sectorRows;

    private SectorSystem(RotationSymmetry symmetry, Complex[][] axisRows, Complex[][] sectorRows)
    {
        _symmetry = symmetry;
        _axisRows = axisRows;
        _sectorRows = sectorRows;
    }

    private int AxisCount => _symmetry.Axis.Length;

    private int SectorCount => _symmetry.Sectors[0].Length;

    /// <summary>Fills the rows of the axis and of the first sector.</summary>
    public static SectorSystem Fill(WireMesh mesh, RotationSymmetry symmetry, double frequencyHz, CancellationToken cancellation, IProgress<double>? progress = null)
    {
        var n = mesh.UnknownCount;
        var wanted = new int[n];
        Array.Fill(wanted, -1);
        var rowUnknowns = symmetry.Axis.Concat(symmetry.Sectors[0]).ToArray();
        for (var i = 0; i < rowUnknowns.Length; i++)
            wanted[rowUnknowns[i]] = i;
        var rows = rowUnknowns.Select(_ => new Complex[n]).ToArray();
        var locks = rowUnknowns.Select(_ => new Lock()).ToArray();
        var interactions = new Interactions(mesh, frequencyHz);
        var segments = rowUnknowns.SelectMany(u => Ends(mesh.Basis.Functions[u])).Select(e => e.Segment).Distinct().ToArray();
        var steps = new Steps(progress, segments.Length);
        Parallel.For(0, segments.Length, new ParallelOptions { CancellationToken = cancellation }, () => new Complex[2 * n], (i, _, scratch) =>
        {
            Array.Clear(scratch);
            for (var q = 0; q < mesh.Segments.Length; q++)
                ImpedanceMatrix.AddPair(mesh.Basis, scratch, n, q, interactions.Between(segments[i], q), 1);
            for (var end = 0; end < 2; end++)
            {
                foreach (var term in mesh.Basis.At(new(segments[i], end)))
                {
                    var row = wanted[term.Unknown];
                    if (row < 0)
                        continue;
                    lock (locks[row])
                        for (var j = 0; j < n; j++)
                            rows[row][j] += term.Weight * scratch[(end * n) + j];
                }
            }

            steps.Next();
            return scratch;
        }, static _ => { });
        foreach (var (row, column, value) in ImpedanceMatrix.LocalTerms(mesh, frequencyHz))
            if (wanted[row] >= 0)
                rows[wanted[row]][column] += value;
        return new(symmetry, rows[..symmetry.Axis.Length], rows[symmetry.Axis.Length..]);
    }

    /// <summary>Solves for several right sides; the first failing factorisation is returned instead.</summary>
    public LuOutcome? Solve(Complex[][] rightSides, Complex[][] solutions, CancellationToken cancellation)
    {
        var order = _symmetry.Order;
        for (var mode = 0; mode < order; mode++)
        {
            var transformed = rightSides.Select(b => Transform(b, mode)).ToArray();
            if (transformed.All(t => t.All(v => v.Magnitude < 1e-13)))
                continue;
            var outcome = ComplexLu.Factor(ModeMatrix(mode), new(Overwrite: true), cancellation);
            if (!outcome.TryGet(out var factor))
                return outcome;
            for (var i = 0; i < rightSides.Length; i++)
                if (transformed[i].Any(v => v.Magnitude >= 1e-13))
                    Spread(factor.Solve(transformed[i]), mode, solutions[i]);
        }

        return null;
    }

    // The right side in one mode: axis part (mode 0 only), then Σ b_s exp(−j2πνs/N)/√N.
    private Complex[] Transform(Complex[] full, int mode)
    {
        var axis = mode == 0 ? AxisCount : 0;
        var result = new Complex[axis + SectorCount];
        for (var i = 0; i < axis; i++)
            result[i] = full[_symmetry.Axis[i]];
        for (var s = 0; s < _symmetry.Order; s++)
        {
            var turn = Turn(-mode * s) / Math.Sqrt(_symmetry.Order);
            for (var i = 0; i < SectorCount; i++)
                result[axis + i] += turn * full[_symmetry.Sectors[s][i]];
        }

        return result;
    }

    private void Spread(Complex[] part, int mode, Complex[] full)
    {
        var axis = mode == 0 ? AxisCount : 0;
        for (var i = 0; i < axis; i++)
            full[_symmetry.Axis[i]] += part[i];
        for (var s = 0; s < _symmetry.Order; s++)
        {
            var turn = Turn(mode * s) / Math.Sqrt(_symmetry.Order);
            for (var i = 0; i < SectorCount; i++)
                full[_symmetry.Sectors[s][i]] += turn * part[axis + i];
        }
    }

    private ComplexMatrix ModeMatrix(int mode)
    {
        var axis = mode == 0 ? AxisCount : 0;
        var size = axis + SectorCount;
        var matrix = new ComplexMatrix(size, size);
        var root = Math.Sqrt(_symmetry.Order);
        for (var i = 0; i < axis; i++)
        {
            for (var j = 0; j < axis; j++)
                matrix[i, j] = _axisRows[i][_symmetry.Axis[j]];

            // The sector's row and the axis's row hold the same number twice; their mean keeps the matrix symmetric.
            for (var j = 0; j < SectorCount; j++)
            {
                var shared = root * 0.5 * (_axisRows[i][_symmetry.Sectors[0][j]] + _sectorRows[j][_symmetry.Axis[i]]);
                matrix[i, axis + j] = shared;
                matrix[axis + j, i] = shared;
            }
        }

        for (var k = 0; k < _symmetry.Order; k++)
        {
            var turn = Turn(mode * k);
            for (var j = 0; j < SectorCount; j++)
            {
                var column = _symmetry.Sectors[k][j];
                for (var i = 0; i < SectorCount; i++)
                    matrix[axis + i, axis + j] += turn * _sectorRows[i][column];
            }
        }

        return matrix;
    }

    private Complex Turn(int steps) => Complex.FromPolarCoordinates(1, 2 * Math.PI * (steps % _symmetry.Order) / _symmetry.Order);

    private static IEnumerable<SegmentEnd> Ends(BasisFunction function)
    {
        yield return function.Into;
        if (function.From is { } from)
            yield return from;
    }
}
