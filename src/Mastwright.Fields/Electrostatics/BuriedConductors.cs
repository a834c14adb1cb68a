using Mastwright.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Fields.Electrostatics;

/// <summary>
/// Bare wires and rods in uniform soil that all share one potential, solved by the same line charges as wires in air: leakage current takes the place
/// of charge, the surface at z = 0 mirrors with equal sign, and the resistance is ρ·ε₀/C.
/// </summary>
public sealed class BuriedConductors
{
    private readonly WireSource[] _mesh;
    private readonly double[] _leakage; // λ/ε₀ per volt, per source
    private readonly double[] _groupLeakage;

    private BuriedConductors(WireSource[] mesh, double[] leakage, double resistivityOhmM, int groups)
    {
        _mesh = mesh;
        _leakage = leakage;
        _groupLeakage = new double[groups];
        ResistivityOhmM = resistivityOhmM;
        for (var i = 0; i < mesh.Length; i++)
            _groupLeakage[mesh[i].Body] += leakage[i] * (mesh[i].End - mesh[i].Start).Length;
        ResistanceOhm = resistivityOhmM / _groupLeakage.Sum();
    }

    /// <summary>Resistivity of the soil in Ω·m.</summary>
    public double ResistivityOhmM { get; }

    /// <summary>Resistance to remote earth in ohms, low frequency.</summary>
    public double ResistanceOhm { get; }

    /// <summary>
    /// Resistance one group shows among the others, in ohms: the common potential over its own current. All groups in parallel give
    /// <see cref="ResistanceOhm"/>, so what they take from each other is counted.
    /// </summary>
    /// <param name="group">Number of the group, from 0.</param>
    public double GroupOhm(int group) => ResistivityOhmM / _groupLeakage[group];

    /// <summary>Solves a set of wires that are joined.</summary>
    /// <param name="wires">Wires at z ≤ 0, deeper than their radius, except that vertical rods may begin at the surface.</param>
    /// <param name="resistivityOhmM">Resistivity in Ω·m, positive.</param>
    /// <param name="segmentM">Longest line source in metres; null takes a tenth of the longest wire.</param>
    public static BuriedConductors Solve(IReadOnlyList<Wire> wires, double resistivityOhmM, double? segmentM = null) => SolveGroups([wires], resistivityOhmM, segmentM);

    /// <summary>Solves several electrodes that are bonded together, so that what each carries among the others can be asked.</summary>
    /// <param name="groups">The wires of each electrode.</param>
    /// <param name="resistivityOhmM">Resistivity in Ω·m, positive.</param>
    /// <param name="segmentM">Longest line source in metres; null takes a tenth of the longest wire.</param>
    public static BuriedConductors SolveGroups(IReadOnlyList<IReadOnlyList<Wire>> groups, double resistivityOhmM, double? segmentM = null)
    {
        ArgumentOutOfRangeException.ThrowIfZero(groups.Sum(g => g.Count));
        if (groups.Any(g => g.Any(w => Math.Max(w.Start.Z, w.End.Z) > 1e-9)))
            throw new ArgumentException("Buried wires lie at z ≤ 0.", nameof(groups));
        var conductors = groups.Select((g, i) => new WireConductor($"earth {i + 1}", [.. g.Select(w => w with { Fine = false })])).ToList();
        var mesh = WireMesh.Build(conductors, segmentM ?? groups.Max(g => g.Max(w => w.LengthM)) / 10, 1).ToArray();
        var matrix = Matrix<double>.Build.Dense(mesh.Length, mesh.Length, (i, j) =>
        {
            var at = mesh[i].Match;
            return LineCharge.Potential(mesh[j].Start, mesh[j].End, at, mesh[i].RadiusM)
                + LineCharge.Potential(mesh[j].Start, mesh[j].End, at with { Z = -at.Z }, mesh[i].RadiusM);
        });
        var leakage = matrix.LU().Solve(Vector<double>.Build.Dense(mesh.Length, 1.0));
        return new(mesh, leakage.ToArray(), resistivityOhmM, groups.Count);
    }

    /// <summary>Potential of the soil surface at a point, as a share of the potential of the conductors.</summary>
    /// <param name="x">East in metres.</param>
    /// <param name="y">North in metres.</param>
    public double SurfaceShare(double x, double y)
    {
        var at = new Vec3(x, y, 0);
        var sum = 0.0;
        for (var j = 0; j < _mesh.Length; j++)
            sum += _leakage[j] * 2 * LineCharge.Potential(_mesh[j].Start, _mesh[j].End, at, _mesh[j].RadiusM);
        return sum;
    }
}
