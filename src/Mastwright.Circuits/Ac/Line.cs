using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Lines;

namespace Mastwright.Circuits.Ac;

/// <summary>
/// A length of transmission line between two ports, by the telegraph equations
/// V1 = V2·cosh γl + Z0·I2·sinh γl, I1 = (V2/Z0)·sinh γl + I2·cosh γl (I2 out of the far end).
/// Only the wanted, differential wave is modelled; current on the outside of a screen is a matter for the antenna model.
/// </summary>
public sealed record Line : Part
{
    /// <summary>Creates a line between two ports.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="near">Near port: hot, then return.</param>
    /// <param name="far">Far port: hot, then return.</param>
    /// <param name="type">Kind of line.</param>
    /// <param name="lengthM">Physical length, metres, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is negative or not finite.</exception>
    public Line(string name, (string Hot, string Return) near, (string Hot, string Return) far, LineType type, double lengthM)
        : base(name)
    {
        (Near, Far, Type) = (near, far, type);
        LengthM = Guard.NotNegative(lengthM, nameof(lengthM));
    }

    /// <summary>Creates a line with both screens on ground.</summary>
    public Line(string name, string near, string far, LineType type, double lengthM)
        : this(name, (near, Network.Ground), (far, Network.Ground), type, lengthM)
    {
    }

    /// <summary>Near port.</summary>
    public (string Hot, string Return) Near { get; }

    /// <summary>Far port.</summary>
    public (string Hot, string Return) Far { get; }

    /// <summary>Kind of line.</summary>
    public LineType Type { get; }

    /// <summary>Physical length, metres.</summary>
    public double LengthM { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [Near.Hot, Near.Return, Far.Hot, Far.Return];

    internal override int BranchCount => 2;

    internal override void Stamp(StampContext at)
    {
        var (cosh, sinh, scale) = Hyperbolics(at.FrequencyHz);
        var z0 = Type.CharacteristicOhm;
        var (n, nr, f, fr) = (at.Pin(0), at.Pin(1), at.Pin(2), at.Pin(3));
        var (b1, b2) = (at.Branch(0), at.Branch(1));
        at.Add(n, b1, 1);
        at.Add(nr, b1, -1);
        at.Add(f, b2, 1);
        at.Add(fr, b2, -1);

        // Branch 2 counts current into the far port, so the line equations carry -I2.
        at.Add(b1, n, scale);
        at.Add(b1, nr, -scale);
        at.Add(b1, f, -cosh);
        at.Add(b1, fr, cosh);
        at.Add(b1, b2, z0 * sinh);
        at.Add(b2, b1, scale * z0);
        at.Add(b2, f, -sinh);
        at.Add(b2, fr, sinh);
        at.Add(b2, b2, z0 * cosh);
    }

    internal override PartState Read(ReadContext at)
    {
        var near = new PortState(at.Voltage(0), at.Current(0));
        var far = new PortState(at.Voltage(2), at.Current(1));
        var wave = new StandingWave(Type, LengthM, at.FrequencyHz, far.VoltagePhasor, -far.CurrentPhasor);
        return new(this, [near, far], new(wave.HighestVoltage().RmsVolts), new(wave.HighestCurrent().RmsAmps));
    }

    // Both functions are scaled by e^(-γl) so that a very lossy line does not overflow.
    private (Complex Cosh, Complex Sinh, Complex Scale) Hyperbolics(double frequencyHz)
    {
        var gl = Type.PropagationPerM(frequencyHz) * LengthM;
        var e2 = Complex.Exp(-2 * gl);
        return ((1 + e2) / 2, (1 - e2) / 2, Complex.Exp(-gl));
    }
}
