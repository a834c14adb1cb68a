namespace Mastwright.Circuits.Loss;

/// <summary>How a coil loses power: its series resistance over frequency.</summary>
public abstract record CoilLoss
{
    private protected CoilLoss()
    {
    }

    /// <summary>A coil without loss, for textbook comparison only.</summary>
    public static CoilLoss None { get; } = new ConstantResistanceLoss(0);

    /// <summary>The same Q at every frequency.</summary>
    /// <param name="q">Quality factor ωL/R, above zero.</param>
    public static CoilLoss ConstantQ(double q) => new ConstantQLoss(Guard.Positive(q));

    /// <summary>The same resistance at every frequency, ohms.</summary>
    /// <param name="resistanceOhm">Series resistance.</param>
    public static CoilLoss Resistance(double resistanceOhm) => new ConstantResistanceLoss(Guard.NotNegative(resistanceOhm, nameof(resistanceOhm)));

    /// <summary>A resistance measured at one frequency, growing with √f as skin effect makes it.</summary>
    /// <param name="resistanceOhm">Series resistance at the stated frequency.</param>
    /// <param name="atHz">That frequency.</param>
    public static CoilLoss SkinEffect(double resistanceOhm, double atHz) =>
        new SkinEffectLoss(Guard.NotNegative(resistanceOhm, nameof(resistanceOhm)), Guard.Positive(atHz));

    /// <summary>Series resistance in ohms.</summary>
    public abstract double ResistanceOhm(double inductanceH, double frequencyHz);
}

/// <summary>R = ωL/Q with one Q at every frequency.</summary>
/// <param name="Q">Quality factor.</param>
public sealed record ConstantQLoss(double Q) : CoilLoss
{
    /// <inheritdoc/>
    public override double ResistanceOhm(double inductanceH, double frequencyHz) => 2 * Math.PI * frequencyHz * inductanceH / Q;
}

/// <summary>One resistance at every frequency.</summary>
/// <param name="Ohm">Ohms.</param>
public sealed record ConstantResistanceLoss(double Ohm) : CoilLoss
{
    /// <inheritdoc/>
    public override double ResistanceOhm(double inductanceH, double frequencyHz) => Ohm;
}

/// <summary>R = R0·√(f/f0).</summary>
/// <param name="Ohm">Ohms at the stated frequency.</param>
/// <param name="AtHz">That frequency.</param>
public sealed record SkinEffectLoss(double Ohm, double AtHz) : CoilLoss
{
    /// <inheritdoc/>
    public override double ResistanceOhm(double inductanceH, double frequencyHz) => Ohm * Math.Sqrt(frequencyHz / AtHz);
}
