using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Numerics;

namespace Mastwright.Fields.Results;

/// <summary>Current on a wire at one place; RMS phasor, positive from the wire's start to its end.</summary>
/// <param name="AlongM">Distance from the wire's start, metres.</param>
/// <param name="Position">The place, metres.</param>
/// <param name="Current">Current in amperes RMS.</param>
public readonly record struct WireCurrent(double AlongM, Vec3 Position, Complex Current);

/// <summary>Power turned into heat in one part.</summary>
/// <param name="Part">Name of the wire or load.</param>
/// <param name="PowerW">Watts.</param>
public readonly record struct PartLoss(string Part, double PowerW);

/// <summary>
/// A solved model driven in one particular way. Currents are the primary data; fields and powers are worked out when asked for.
/// All phasors RMS. Safe to share between threads.
/// </summary>
public sealed class DrivenWires
{
    private readonly Complex[] _unknowns;
    private readonly (Complex Start, Complex End)[] _endCurrents;

    internal DrivenWires(WireMesh mesh, double frequencyHz, Complex[] unknowns, Complex[] voltages)
    {
        Mesh = mesh;
        FrequencyHz = frequencyHz;
        _unknowns = unknowns;
        FeedVoltages = [.. voltages];
        FeedCurrents = [.. Enumerable.Range(0, voltages.Length).Select(f => WireSolution.FeedCurrent(mesh, f, unknowns))];
        _endCurrents = [.. Enumerable.Range(0, mesh.Segments.Length).Select(s => (CurrentAt(new(s, 0)), CurrentAt(new(s, 1))))];
        Elements = CurrentElements.Of(mesh, this);
    }

    /// <summary>The wires as they were cut.</summary>
    public WireMesh Mesh { get; }

    /// <summary>Frequency in hertz.</summary>
    public double FrequencyHz { get; }

    /// <summary>Voltage at each feed, volts RMS.</summary>
    public ImmutableArray<Complex> FeedVoltages { get; }

    /// <summary>Current into each feed, amperes RMS.</summary>
    public ImmutableArray<Complex> FeedCurrents { get; }

    /// <summary>Power into all feeds together, watts.</summary>
    public double InputPowerW => FeedVoltages.Zip(FeedCurrents, (v, i) => (v * Complex.Conjugate(i)).Real).Sum();

    /// <summary>Driving-point impedance of a feed under this drive, ohms.</summary>
    public Complex DriveImpedance(int feed = 0) => FeedVoltages[feed] / FeedCurrents[feed];

    internal CurrentElements Elements { get; }

    /// <summary>Current along one wire, at every node from start to end.</summary>
    /// <param name="wire">Name of the wire.</param>
    /// <exception cref="ArgumentException">There is no such wire.</exception>
    public ImmutableArray<WireCurrent> CurrentsOn(string wire)
    {
        if (!Mesh.Model.Wires.Any(w => w.Name == wire))
            throw new ArgumentException($"There is no wire called {wire}.", nameof(wire));
        var result = ImmutableArray.CreateBuilder<WireCurrent>();
        var index = JointGraph.IndexOf(Mesh.Model, wire);
        for (var s = 0; s < Mesh.Segments.Length; s++)
        {
            var segment = Mesh.Segments[s];
            if (segment.Wire != index)
                continue;
            var (start, end) = EndCurrents(s);

            // A joint inside the wire may let current out sideways: both values are kept then.
            if (result.Count == 0 || (result[^1].Current - start).Magnitude > 1e-9 * (start.Magnitude + result[^1].Current.Magnitude))
                result.Add(new(segment.StartAlongM, segment.Start, start));
            result.Add(new(segment.StartAlongM + segment.LengthM, segment.End, end));
        }

        return result.ToImmutable();
    }

    /// <summary>Heat in every lossy wire (its jacket included) and every lumped load, largest first; parts without loss are left out.</summary>
    public ImmutableArray<PartLoss> LossByPart()
    {
        var wires = new double[Mesh.Model.Wires.Length];
        for (var s = 0; s < Mesh.Segments.Length; s++)
        {
            var segment = Mesh.Segments[s];
            var wire = Mesh.Model.Wires[segment.Wire];
            var resistance = wire.Metal.InternalImpedancePerM(segment.RadiusM, FrequencyHz).Real * segment.LengthM;
            var (a, b) = EndCurrents(s);
            wires[segment.Wire] += resistance / 3 * (Square(a) + Square(b) + (a * Complex.Conjugate(b)).Real);
            if (wire.Jacket is { } jacket)
                wires[segment.Wire] += jacket.LossOhmM(segment.RadiusM, FrequencyHz) * Square(b - a) / segment.LengthM;
        }

        var parts = wires.Select((w, i) => new PartLoss(Mesh.Model.Wires[i].Name, w))
            .Concat(Mesh.Model.Loads.Select((l, i) => new PartLoss(l.Name, l.Element.ImpedanceOhm(FrequencyHz).Real * Square(LoadCurrent(i)))));
        return [.. parts.Where(p => p.PowerW > 0).OrderByDescending(p => p.PowerW)];
    }

    /// <summary>Current through a lumped load, amperes RMS.</summary>
    public Complex LoadCurrent(int load) => CurrentAt(Mesh.LoadEnds[load]) * BasisSet.OutwardSign(Mesh.LoadEnds[load].End);

    /// <summary>All heat in wires and loads, watts.</summary>
    public double LossPowerW => LossByPart().Sum(p => p.PowerW);

    /// <summary>Currents at the start and end of a segment, along its tangent, amperes RMS.</summary>
    public (Complex Start, Complex End) EndCurrents(int segment) => _endCurrents[segment];

    private Complex CurrentAt(SegmentEnd end)
    {
        var sum = Complex.Zero;
        foreach (var term in Mesh.Basis.At(end))
            sum += term.Weight * _unknowns[term.Unknown];
        return sum;
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
