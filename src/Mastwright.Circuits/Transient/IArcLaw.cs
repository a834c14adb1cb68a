namespace Mastwright.Circuits.Transient;

/// <summary>What an arc has been through since its gap fired.</summary>
/// <param name="SinceFiringS">Time since the gap fired, seconds.</param>
/// <param name="CurrentA">Current now, amperes, with sign.</param>
/// <param name="ChargeC">∫|i|dt since firing, coulombs.</param>
/// <param name="ActionA2S">∫i²dt since firing, A²s.</param>
public readonly record struct ArcState(double SinceFiringS, double CurrentA, double ChargeC, double ActionA2S);

/// <summary>How an arc's resistance follows from what it has been through. Laws hold no state and may be shared.</summary>
public interface IArcLaw
{
    /// <summary>Resistance in ohms, above zero and finite: a law that starts from infinity is cut off at a stated seed resistance.</summary>
    double ResistanceOhm(in ArcState state);
}

/// <summary>One resistance from the moment of firing.</summary>
/// <param name="Ohm">Ohms, above zero.</param>
public sealed record ConstantArc(double Ohm) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) => Ohm;
}

/// <summary>
/// Toepler's law R = kT·d/∫|i|dt (Toepler 1906/1927, from memory), held between a floor and a seed resistance.
/// </summary>
/// <param name="ConstantVsPerM">kT, V·s/m; about 0.5e-2 to 2e-2 in air (from memory).</param>
/// <param name="GapM">Gap length, metres.</param>
/// <param name="FloorOhm">The lowest resistance of the hot channel, ohms.</param>
/// <param name="SeedOhm">The resistance it starts from, ohms.</param>
public sealed record ToeplerArc(double ConstantVsPerM, double GapM, double FloorOhm = 0.01, double SeedOhm = 1e5) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) =>
        Math.Clamp(ConstantVsPerM * GapM / Math.Max(state.ChargeC, double.Epsilon), FloorOhm, SeedOhm);
}

/// <summary>
/// Rompe and Weizel's law R = d/√(2a·∫i²dt) (Zeitschrift für Physik 1944, from memory), held between a floor and a seed resistance.
/// </summary>
/// <param name="ConstantM2PerV2S">a, m²/(V²·s); about 0.5e-4 to 2e-4 in air at normal pressure (from memory).</param>
/// <param name="GapM">Gap length, metres.</param>
/// <param name="FloorOhm">The lowest resistance of the hot channel, ohms.</param>
/// <param name="SeedOhm">The resistance it starts from, ohms.</param>
public sealed record RompeWeizelArc(double ConstantM2PerV2S, double GapM, double FloorOhm = 0.01, double SeedOhm = 1e5) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) =>
        Math.Clamp(GapM / Math.Sqrt(Math.Max(2 * ConstantM2PerV2S * state.ActionA2S, double.Epsilon)), FloorOhm, SeedOhm);
}

/// <summary>A burning arc that holds one voltage whatever the current: R = V/|i|, held between a floor and a ceiling.</summary>
/// <param name="Volts">Arc voltage, volts.</param>
/// <param name="FloorOhm">Lowest resistance, ohms.</param>
/// <param name="CeilingOhm">Highest resistance, near a current zero, ohms.</param>
public sealed record ConstantVoltageArc(double Volts, double FloorOhm = 1e-4, double CeilingOhm = 1e4) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) =>
        Math.Clamp(Volts / Math.Max(Math.Abs(state.CurrentA), double.Epsilon), FloorOhm, CeilingOhm);
}

/// <summary>Two laws in series: the channel that forms, then the arc that burns.</summary>
/// <param name="First">One law.</param>
/// <param name="Second">The other.</param>
public sealed record ArcsInSeries(IArcLaw First, IArcLaw Second) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) => First.ResistanceOhm(state) + Second.ResistanceOhm(state);
}
