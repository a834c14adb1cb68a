using System.Numerics;

namespace Mastwright.Circuits.Lines;

/// <summary>Reflection on a line of real impedance.</summary>
public static class Mismatch
{
    /// <summary>The reflection coefficient Γ = (Z - Z0)/(Z + Z0); 1 for an open circuit.</summary>
    public static Complex Reflection(Complex impedanceOhm, double lineOhm) =>
        Complex.IsFinite(impedanceOhm) ? (impedanceOhm - lineOhm) / (impedanceOhm + lineOhm) : Complex.One;

    /// <summary>Standing wave ratio (1 + |Γ|)/(1 - |Γ|); infinite for total reflection.</summary>
    public static double Swr(double reflection) => reflection >= 1 ? double.PositiveInfinity : (1 + reflection) / (1 - reflection);

    /// <summary>Standing wave ratio of an impedance on a line.</summary>
    public static double Swr(Complex impedanceOhm, double lineOhm) => Swr(Reflection(impedanceOhm, lineOhm).Magnitude);

    /// <summary>Return loss in dB, positive.</summary>
    public static double ReturnLossDb(double reflection) => -20 * Math.Log10(reflection);

    /// <summary>Mismatch loss -10·log(1 - |Γ|²) in dB.</summary>
    public static double MismatchLossDb(double reflection) => -10 * Math.Log10(1 - (reflection * reflection));
}
