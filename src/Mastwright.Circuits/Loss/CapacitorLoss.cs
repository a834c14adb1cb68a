namespace Mastwright.Circuits.Loss;

/// <summary>
/// How a capacitor loses power: a dielectric loss tangent plus the resistance of its leads and plates, both as
/// a series resistance R = tan δ/(ωC) + ESR.
/// </summary>
/// <param name="LossTangent">tan δ of the dielectric, zero or more.</param>
/// <param name="EsrOhm">Series resistance of metal and leads, ohms.</param>
public sealed record CapacitorLoss(double LossTangent, double EsrOhm)
{
    /// <summary>A capacitor without loss, for textbook comparison only.</summary>
    public static CapacitorLoss None { get; } = new(0, 0);

    /// <summary>The same Q at every frequency, tan δ = 1/Q.</summary>
    /// <param name="q">Quality factor, above zero.</param>
    public static CapacitorLoss ConstantQ(double q) => new(1 / Guard.Positive(q), 0);

    /// <summary>Series resistance in ohms.</summary>
    public double ResistanceOhm(double capacitanceF, double frequencyHz) =>
        EsrOhm + (LossTangent == 0 ? 0 : LossTangent / (2 * Math.PI * frequencyHz * capacitanceF));
}
