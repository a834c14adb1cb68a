using System.Numerics;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Kernels.HalfSpace;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Solving;

/// <summary>The interaction of any two segments of a mesh at one frequency, ground included.</summary>
internal sealed class Interactions
{
    /// <summary>Interpolation error allowed in the half-space kernels, as a share of the kernel.</summary>
    public const double KernelTolerance = 3e-5;

    private readonly Filament[] _filaments;
    private readonly bool _mirrored;
    private readonly HalfSpaceKernels? _soil;
    private readonly double _k;
    private readonly CongruentPairs _congruent;
    private readonly Func<int, int, PairBlock> _direct;

    public Interactions(WireMesh mesh, double frequencyHz)
    {
        _filaments = [.. mesh.Segments.Select(s => Filament.Of(s))];
        _mirrored = mesh.Model.Ground is Ground.PerfectPlane;
        _soil = mesh.Model.Ground is Ground.HalfSpace half
            ? new HalfSpaceKernels(half.Soil.ComplexPermittivity(frequencyHz), Vacuum.WaveNumber(frequencyHz), ModelReach.Of(mesh.Nodes), KernelTolerance)
            : null;
        _k = Vacuum.WaveNumber(frequencyHz);
        _congruent = CongruentPairs.Of(mesh);
        _direct = Direct;
    }

    /// <summary>Volts per ampere between the end currents of segments p and q, ends 00, 01, 10, 11.</summary>
    public PairBlock Between(int p, int q) => _congruent.Get(p, q, _direct);

    /// <summary>The same, computed afresh whatever other pairs have told.</summary>
    internal PairBlock Direct(int p, int q)
    {
        if (_soil is not null)
            return SoilPair.Reaction(_soil, _filaments[p], _filaments[q]);
        var block = Free(_filaments[p], _filaments[q], _k);
        if (_mirrored)
            block.Subtract(Free(_filaments[p], _filaments[q].Mirrored, _k));
        return block;
    }

    // Vector and scalar potential of free space together.
    private static PairBlock Free(in Filament p, in Filament q, double k)
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
}
