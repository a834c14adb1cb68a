namespace Mastwright.Circuits.Coils;

/// <summary>A single-layer air-wound coil of round wire or tube.</summary>
public sealed record AirCoil
{
    private const double Inch = 0.0254;
    private const double LeastTurns = 1e-3;

    /// <summary>Conductivity of copper, S/m (100 % IACS, 20 °C).</summary>
    public const double CopperSPerM = 58.0e6;

    /// <summary>Describes a coil.</summary>
    /// <param name="diameterM">Mean diameter of the winding, centre of wire to centre of wire, metres.</param>
    /// <param name="turns">Number of turns, at least one.</param>
    /// <param name="pitchM">Distance from turn to turn, centre to centre, metres; at least the wire's diameter.</param>
    /// <param name="wireM">Outer diameter of the wire or tube, metres.</param>
    /// <param name="conductivitySPerM">Conductivity of its surface, S/m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public AirCoil(double diameterM, double turns, double pitchM, double wireM, double conductivitySPerM = CopperSPerM)
    {
        DiameterM = Guard.Positive(diameterM);
        Turns = turns >= 1 && double.IsFinite(turns) ? turns : throw new ArgumentOutOfRangeException(nameof(turns), turns, "At least one turn.");
        WireM = Guard.Positive(wireM);
        PitchM = pitchM >= wireM && double.IsFinite(pitchM) ? pitchM : throw new ArgumentOutOfRangeException(nameof(pitchM), pitchM, "Turns cannot lie closer than the wire is thick.");
        ConductivitySPerM = Guard.Positive(conductivitySPerM);
    }

    /// <summary>Mean diameter, metres.</summary>
    public double DiameterM { get; }

    /// <summary>Number of turns.</summary>
    public double Turns { get; }

    /// <summary>Turn to turn, metres.</summary>
    public double PitchM { get; }

    /// <summary>Wire or tube diameter, metres.</summary>
    public double WireM { get; }

    /// <summary>Conductivity, S/m.</summary>
    public double ConductivitySPerM { get; }

    /// <summary>Length of the winding, turns times pitch, metres.</summary>
    public double LengthM => Turns * PitchM;

    /// <summary>Length of wire in the winding, metres; leads come on top.</summary>
    public double WireLengthM => Turns * Math.Sqrt((Math.PI * Math.PI * DiameterM * DiameterM) + (PitchM * PitchM));

    /// <summary>Outer diameter, metres.</summary>
    public double OuterDiameterM => DiameterM + WireM;

    /// <summary>
    /// Low-frequency inductance, henries: current sheet (Nagaoka) less Rosa's correction for round wire,
    /// L = μ0·π(D/2)²·N²·K/l - μ0·(D/2)·N·(A + B).
    /// </summary>
    public double InductanceH => InductanceOfTurnsH(Turns);

    /// <summary>Inductance of a run of neighbouring turns of this coil with the rest left open, henries.</summary>
    /// <param name="turns">Turns in the run, above zero.</param>
    public double InductanceOfTurnsH(double turns) =>
        Nagaoka.SheetInductanceH(DiameterM, turns * PitchM, turns)
        - (Nagaoka.Mu0 * DiameterM / 2 * turns * (RoundWire.RosaA(WireM / PitchM) + RoundWire.RosaB(turns)));

    /// <summary>Turns from one end at which a tap gives an inductance (the rest left open); null when the whole coil is too small.</summary>
    /// <param name="inductanceH">Wanted inductance, henries.</param>
    public double? TurnsFor(double inductanceH)
    {
        if (!(inductanceH > 0) || inductanceH > InductanceH)
            return null;
        // Wheeler's formula of 1928 solved for the turns starts within a few percent; steps along the slope of the logarithms end it.
        var (r, l) = (DiameterM / 2 / Inch, inductanceH * 1e6);
        var p = PitchM / Inch;
        var turns = Math.Clamp(((10 * p * l) + Math.Sqrt((100 * p * p * l * l) + (36 * r * r * r * l))) / (2 * r * r), LeastTurns, Turns);
        var (at, before, beforeAt) = (InductanceOfTurnsH(turns), turns * 0.99, InductanceOfTurnsH(turns * 0.99));
        for (var i = 0; i < 20 && at > 0 && beforeAt > 0 && at != beforeAt; i++)
        {
            var slope = Math.Log(at / beforeAt) / Math.Log(turns / before);
            var next = turns * Math.Pow(inductanceH / at, 1 / slope);
            if (!(next > LeastTurns && next < 2 * Turns))
                break;
            if (Math.Abs(next - turns) < 1e-12 * turns)
                return Math.Min(next, Turns);
            (before, beforeAt, turns, at) = (turns, at, next, InductanceOfTurnsH(next));
        }

        // Where less than a turn is asked the slope may mislead; halving cannot.
        var (lo, hi) = (0.0, Turns);
        for (var i = 0; i < 60; i++)
        {
            var middle = (lo + hi) / 2;
            if (InductanceOfTurnsH(Math.Max(middle, LeastTurns)) < inductanceH)
                lo = middle;
            else
                hi = middle;
        }

        return (lo + hi) / 2;
    }
}
