namespace Mastwright.Circuits.Transient;

/// <summary>One part of a transient circuit, between two nodes; positive current flows from <paramref name="A"/> through it to <paramref name="B"/>.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node; ground is <see cref="TransientCircuit.Ground"/>.</param>
public abstract record TransientPart(string Name, string A, string B);

/// <summary>A constant resistance.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
/// <param name="Ohm">Ohms, above zero.</param>
public sealed record TransientResistor(string Name, string A, string B, double Ohm) : TransientPart(Name, A, B);

/// <summary>A resistance that depends on its own current, such as an earth electrode whose soil ionises.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
/// <param name="OhmAt">Ohms at a current (with sign), above zero; continuous.</param>
public sealed record CurrentDependentResistor(string Name, string A, string B, Func<double, double> OhmAt) : TransientPart(Name, A, B);

/// <summary>An inductance; give loss as a resistor of its own.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node, the dotted end.</param>
/// <param name="B">Second node.</param>
/// <param name="Henry">Henries, above zero.</param>
/// <param name="InitialA">Current at time zero, amperes.</param>
public sealed record TransientInductor(string Name, string A, string B, double Henry, double InitialA) : TransientPart(Name, A, B);

/// <summary>A capacitance.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
/// <param name="Farad">Farads, above zero.</param>
/// <param name="InitialV">Voltage at time zero, volts.</param>
public sealed record TransientCapacitor(string Name, string A, string B, double Farad, double InitialV) : TransientPart(Name, A, B);

/// <summary>A source of current, pushed from <c>A</c> through the source into <c>B</c>.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">Node the current is drawn from.</param>
/// <param name="B">Node it is pushed into.</param>
/// <param name="Wave">Amperes over time.</param>
public sealed record TransientCurrentSource(string Name, string A, string B, Waveform Wave) : TransientPart(Name, A, B);

/// <summary>A source of voltage of <c>A</c> over <c>B</c> behind a resistance.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">Hot node.</param>
/// <param name="B">Return.</param>
/// <param name="Wave">Open-circuit volts over time.</param>
/// <param name="Ohm">Internal resistance, ohms, zero or more.</param>
public sealed record TransientVoltageSource(string Name, string A, string B, Waveform Wave, double Ohm) : TransientPart(Name, A, B);

/// <summary>A contact that changes state at stated times.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
/// <param name="ClosedAt">Whether the contact is made at a time; constant between the change times.</param>
/// <param name="ClosedOhm">Ohms when made.</param>
/// <param name="OpenOhm">Ohms when open.</param>
public sealed record TransientSwitch(string Name, string A, string B, Waveform ClosedAt, double ClosedOhm, double OpenOhm) : TransientPart(Name, A, B);

/// <summary>A spark gap.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">First electrode.</param>
/// <param name="B">Second electrode.</param>
/// <param name="Model">When it fires and what its arc does.</param>
public sealed record TransientGap(string Name, string A, string B, GapModel Model) : TransientPart(Name, A, B);

/// <summary>The coupling of two inductors, M = k·√(L1·L2), dots at their first nodes.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="Coil1">Name of one inductor.</param>
/// <param name="Coil2">Name of the other.</param>
/// <param name="Coupling">k, between -1 and 1, ends excluded.</param>
public sealed record TransientMutual(string Name, string Coil1, string Coil2, double Coupling);

/// <summary>A lossless line as two travelling waves (Bergeron), both returns on ground.</summary>
/// <param name="Name">Unique name.</param>
/// <param name="A">Near node.</param>
/// <param name="B">Far node.</param>
/// <param name="Ohm">Characteristic impedance, ohms.</param>
/// <param name="DelayS">One-way travel time, seconds.</param>
public sealed record TransientLine(string Name, string A, string B, double Ohm, double DelayS) : TransientPart(Name, A, B);
