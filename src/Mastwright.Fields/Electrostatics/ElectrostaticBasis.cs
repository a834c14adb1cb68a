using System.Collections.Immutable;
using Mastwright.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Fields.Electrostatics;

/// <summary>A point on a conductor's surface where the field is known.</summary>
/// <param name="Body">Index of the conductor.</param>
/// <param name="Position">Where, in metres; axisymmetric problems put it in the x–z plane.</param>
/// <param name="SmallRadiusM">Smaller radius of curvature of the surface there, in metres.</param>
/// <param name="LargeRadiusM">Larger radius of curvature, in metres; infinite on a cylinder.</param>
public readonly record struct SurfacePoint(int Body, Vec3 Position, double SmallRadiusM, double LargeRadiusM);

/// <summary>How one conductor is held.</summary>
/// <param name="IsFloating">True for a conductor on insulators with a known charge; false for one held at a potential.</param>
/// <param name="Value">Charge in coulombs when floating, potential in volts when held.</param>
public readonly record struct ConductorState(bool IsFloating, double Value)
{
    /// <summary>Connected to earth.</summary>
    public static ConductorState Earthed => new(false, 0);

    /// <summary>On insulators, without charge.</summary>
    public static ConductorState Floating => new(true, 0);

    /// <summary>Held at a potential in volts.</summary>
    public static ConductorState At(double volts) => new(false, volts);

    /// <summary>On insulators with a charge in coulombs.</summary>
    public static ConductorState Charged(double coulombs) => new(true, coulombs);
}

/// <summary>
/// The solved electrostatics of a set of conductors: the response to one volt on each conductor and to a uniform vertical field of 1 V/m,
/// from which any state follows by superposition. Immutable and safe to share between threads.
/// </summary>
public sealed class ElectrostaticBasis
{
    private readonly double[][] _fieldPerVolt;
    private readonly double[] _fieldPerExternal;

    internal ElectrostaticBasis(
        ImmutableArray<string> names, ImmutableArray<SurfacePoint> points, double[][] fieldPerVolt, double[] fieldPerExternal,
        double[,] capacitanceF, double[] chargePerExternal, int unknowns)
    {
        Names = names;
        Points = points;
        _fieldPerVolt = fieldPerVolt;
        _fieldPerExternal = fieldPerExternal;
        CapacitanceF = Matrix<double>.Build.DenseOfArray(capacitanceF);
        ChargePerFieldCM = [.. chargePerExternal];
        Unknowns = unknowns;
    }

    /// <summary>Names of the conductors, in the order of every array here.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>Surface points at which the field is known.</summary>
    public ImmutableArray<SurfacePoint> Points { get; }

    /// <summary>Maxwell capacitance matrix in farads: charge of a row's conductor for one volt on a column's, all others at 0 V (earth or infinity).</summary>
    public Matrix<double> CapacitanceF { get; }

    /// <summary>Charge on each conductor for an upward external field of 1 V/m with all conductors at 0 V, in C/(V/m).</summary>
    public ImmutableArray<double> ChargePerFieldCM { get; }

    /// <summary>Number of unknowns solved for.</summary>
    public int Unknowns { get; }

    /// <summary>Capacitance in farads of one conductor to everything else held at 0 V.</summary>
    public double SelfCapacitanceF(int conductor) => CapacitanceF[conductor, conductor];

    /// <summary>
    /// Electrical height of a conductor in metres: potential it would float to in an external field of 1 V/m with the others earthed.
    /// </summary>
    public double EffectiveHeightM(int conductor) => ChargePerFieldCM[conductor] / CapacitanceF[conductor, conductor];

    /// <summary>
    /// The field for given states of the conductors and a uniform external field.
    /// </summary>
    /// <param name="states">One state for each conductor, in the order of <see cref="Names"/>.</param>
    /// <param name="upwardFieldVPerM">External field far away in V/m, positive upwards; fair weather points down, so it is negative.</param>
    public ElectrostaticField With(IReadOnlyList<ConductorState> states, double upwardFieldVPerM)
    {
        if (states.Count != Names.Length)
            throw new ArgumentException($"{Names.Length} states are needed, {states.Count} given.", nameof(states));
        var volts = Potentials(states, upwardFieldVPerM);
        var charge = (CapacitanceF * Vector<double>.Build.DenseOfArray(volts)).ToArray();
        for (var b = 0; b < charge.Length; b++)
            charge[b] += upwardFieldVPerM * ChargePerFieldCM[b];
        var field = new double[Points.Length];
        for (var p = 0; p < field.Length; p++)
        {
            field[p] = upwardFieldVPerM * _fieldPerExternal[p];
            for (var b = 0; b < volts.Length; b++)
                field[p] += volts[b] * _fieldPerVolt[b][p];
        }

        return new(this, [.. volts], [.. charge], [.. field]);
    }

    private double[] Potentials(IReadOnlyList<ConductorState> states, double external)
    {
        var floating = Enumerable.Range(0, states.Count).Where(i => states[i].IsFloating).ToArray();
        var volts = states.Select(s => s.IsFloating ? 0 : s.Value).ToArray();
        if (floating.Length == 0)
            return volts;
        var c = Matrix<double>.Build.Dense(floating.Length, floating.Length, (i, j) => CapacitanceF[floating[i], floating[j]]);
        var q = Vector<double>.Build.Dense(floating.Length, i =>
        {
            var b = floating[i];
            var known = external * ChargePerFieldCM[b];
            for (var j = 0; j < volts.Length; j++)
                known += CapacitanceF[b, j] * volts[j];
            return states[b].Value - known;
        });
        var v = c.Solve(q);
        for (var i = 0; i < floating.Length; i++)
            volts[floating[i]] = v[i];
        return volts;
    }
}

/// <summary>The field around conductors in one state.</summary>
/// <param name="Basis">The solved problem.</param>
/// <param name="PotentialV">Potential of each conductor in volts.</param>
/// <param name="ChargeC">Charge of each conductor in coulombs.</param>
/// <param name="SurfaceFieldVPerM">Field normal to the surface at each of the basis's points in V/m, positive outwards.</param>
public sealed record ElectrostaticField(
    ElectrostaticBasis Basis, ImmutableArray<double> PotentialV, ImmutableArray<double> ChargeC, ImmutableArray<double> SurfaceFieldVPerM)
{
    /// <summary>The point of a conductor with the strongest field.</summary>
    /// <param name="conductor">Index of the conductor.</param>
    /// <param name="where">Only points for which this holds; null takes all. At least one point must be left.</param>
    public (SurfacePoint Point, double FieldVPerM) Strongest(int conductor, Func<SurfacePoint, bool>? where = null)
    {
        var best = -1;
        for (var i = 0; i < SurfaceFieldVPerM.Length; i++)
        {
            if (Basis.Points[i].Body == conductor && (where?.Invoke(Basis.Points[i]) ?? true) && (best < 0 || Math.Abs(SurfaceFieldVPerM[i]) > Math.Abs(SurfaceFieldVPerM[best])))
                best = i;
        }

        return best < 0
            ? throw new ArgumentException("No surface point is left.", nameof(where))
            : (Basis.Points[best], SurfaceFieldVPerM[best]);
    }
}
