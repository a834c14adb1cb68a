using System.Collections.Immutable;

namespace Mastwright.Circuits.Transient;

/// <summary>
/// A circuit to be followed through time: parts between named nodes. Immutable; each call gives a new circuit.
/// <code>
/// var result = new TransientCircuit()
///     .CurrentSource("strike", "0", "top", wave)
///     .Line("mast", "top", "base", 350, 100e-9)
///     .Gap("gap", "base", "0", gap)
///     .Run(new TransientOptions(20e-6));
/// </code>
/// </summary>
public sealed class TransientCircuit
{
    /// <summary>The reference node.</summary>
    public const string Ground = "0";

    /// <summary>A circuit without parts.</summary>
    public TransientCircuit()
        : this([], [])
    {
    }

    private TransientCircuit(ImmutableList<TransientPart> parts, ImmutableList<TransientMutual> mutuals) => (Parts, Mutuals) = (parts, mutuals);

    /// <summary>The parts in the order given.</summary>
    public ImmutableList<TransientPart> Parts { get; }

    /// <summary>The couplings between inductors.</summary>
    public ImmutableList<TransientMutual> Mutuals { get; }

    /// <summary>Adds a part.</summary>
    /// <exception cref="ArgumentException">The name is taken.</exception>
    public TransientCircuit Add(TransientPart part) =>
        Parts.Any(p => p.Name == part.Name)
            ? throw new ArgumentException($"Two parts are named {part.Name}.", nameof(part))
            : new(Parts.Add(part), Mutuals);

    /// <summary>Adds a resistor, ohms.</summary>
    public TransientCircuit Resistor(string name, string a, string b, double ohm) => Add(new TransientResistor(name, a, b, Guard.Positive(ohm)));

    /// <summary>Adds a resistor whose ohms depend on its current.</summary>
    public TransientCircuit Resistor(string name, string a, string b, Func<double, double> ohmAtCurrent) => Add(new CurrentDependentResistor(name, a, b, ohmAtCurrent));

    /// <summary>Adds an inductor, henries, with its current at time zero.</summary>
    public TransientCircuit Inductor(string name, string a, string b, double henry, double initialA = 0) => Add(new TransientInductor(name, a, b, Guard.Positive(henry), initialA));

    /// <summary>Adds a capacitor, farads, with its voltage at time zero.</summary>
    public TransientCircuit Capacitor(string name, string a, string b, double farad, double initialV = 0) => Add(new TransientCapacitor(name, a, b, Guard.Positive(farad), initialV));

    /// <summary>Couples two inductors already added.</summary>
    /// <exception cref="ArgumentException">An inductor is missing or |k| is not below 1.</exception>
    public TransientCircuit Mutual(string name, string coil1, string coil2, double coupling)
    {
        foreach (var coil in new[] { coil1, coil2 })
            if (!Parts.Any(p => p is TransientInductor && p.Name == coil))
                throw new ArgumentException($"{name} couples {coil}, which is no inductor of this circuit.", nameof(name));
        if (!(Math.Abs(coupling) < 1))
            throw new ArgumentException("The coupling lies between -1 and 1.", nameof(coupling));
        return new(Parts, Mutuals.Add(new(name, coil1, coil2, coupling)));
    }

    /// <summary>Adds a lossless line, both returns on ground.</summary>
    public TransientCircuit Line(string name, string a, string b, double ohm, double delayS) => Add(new TransientLine(name, a, b, Guard.Positive(ohm), Guard.Positive(delayS)));

    /// <summary>Adds a source pushing current from one node through itself into another.</summary>
    public TransientCircuit CurrentSource(string name, string from, string into, Waveform amperes) => Add(new TransientCurrentSource(name, from, into, amperes));

    /// <summary>Adds a voltage source behind a resistance.</summary>
    public TransientCircuit VoltageSource(string name, string plus, string minus, Waveform volts, double internalOhm = 0) =>
        Add(new TransientVoltageSource(name, plus, minus, volts, Guard.NotNegative(internalOhm, nameof(internalOhm))));

    /// <summary>Adds a contact that closes at one time and, if asked, opens at a later one.</summary>
    public TransientCircuit Switch(string name, string a, string b, double closesAtS, double opensAtS = double.PositiveInfinity, double closedOhm = 1e-3, double openOhm = 1e9) =>
        Add(new TransientSwitch(name, a, b, Waveform.Of(t => t > closesAtS && t <= opensAtS ? 1 : 0, double.IsInfinity(opensAtS) ? [closesAtS] : [closesAtS, opensAtS]), Guard.Positive(closedOhm), Guard.Positive(openOhm)));

    /// <summary>Adds a spark gap.</summary>
    public TransientCircuit Gap(string name, string a, string b, GapModel model) => Add(new TransientGap(name, a, b, model));

    /// <summary>Follows the circuit through time.</summary>
    /// <param name="options">How long and how finely.</param>
    /// <param name="progress">Told the share of the time done, 0 to 1; null for none.</param>
    /// <param name="cancel">Stops the run.</param>
    /// <returns>Voltages and currents at every step, events, and findings if the run stalled.</returns>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public TransientResult Run(TransientOptions options, IProgress<double>? progress = null, CancellationToken cancel = default) =>
        new TransientEngine(this, options).Run(progress, cancel);
}
