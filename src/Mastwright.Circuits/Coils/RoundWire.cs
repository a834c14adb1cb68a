using System.Numerics;

namespace Mastwright.Circuits.Coils;

/// <summary>Round wire: its skin effect, and what its roundness does to a coil's inductance.</summary>
public static class RoundWire
{
    /// <summary>Skin depth δ = √(2/(ωμ0σ)), metres.</summary>
    public static double SkinDepthM(double conductivitySPerM, double frequencyHz) =>
        Math.Sqrt(2 / (2 * Math.PI * frequencyHz * Nagaoka.Mu0 * conductivitySPerM));

    /// <summary>
    /// Impedance of a straight round wire over its direct-current resistance, Z/Rdc = ka·J0(ka)/(2·J1(ka)), k = (1 - j)/δ.
    /// The real part is the resistance ratio; the imaginary part over (a/δ)²/4 is the internal inductance over μ0/8π.
    /// </summary>
    /// <param name="radiusOverSkinDepth">a/δ, above zero.</param>
    public static Complex ImpedanceRatio(double radiusOverSkinDepth)
    {
        var z = new Complex(radiusOverSkinDepth, -radiusOverSkinDepth);

        // J1/J0 by the backward recurrence of r(n) = J(n)/J(n-1) = 1/(2n/z - r(n+1)), stable from above |z|.
        var r = Complex.Zero;
        for (var n = (int)z.Magnitude + 60; n >= 1; n--)
            r = 1 / ((2 * n / z) - r);
        return z / (2 * r);
    }

    /// <summary>Direct-current resistance of a round wire, ohms per metre.</summary>
    public static double DcOhmPerM(double diameterM, double conductivitySPerM) => 4 / (Math.PI * diameterM * diameterM * conductivitySPerM);

    /// <summary>Resistance of a straight round wire with skin effect, ohms per metre.</summary>
    public static double AcOhmPerM(double diameterM, double conductivitySPerM, double frequencyHz) =>
        DcOhmPerM(diameterM, conductivitySPerM) * ImpedanceRatio(diameterM / 2 / SkinDepthM(conductivitySPerM, frequencyHz)).Real;

    /// <summary>Rosa's A for the self-inductance of turns of round wire instead of tape: A = 5/4 - ln(2p/d) (Rosa 1906; NBS Circular 74).</summary>
    /// <param name="wireOverPitch">d/p, above 0, at most 1.</param>
    public static double RosaA(double wireOverPitch) => 1.25 - Math.Log(2 / Guard.Positive(wireOverPitch));

    /// <summary>
    /// Rosa's B for the mutual inductance of turns: B = ln 2π - 3/2 - ln N/(6N) - 0.33084236/N - 1/(120N³) + 1/(504N⁵) - 0.0011923/N⁷
    /// (published fit to Rosa's sum, from memory; below two turns a straight line from zero).
    /// </summary>
    /// <param name="turns">Number of turns, above zero.</param>
    public static double RosaB(double turns)
    {
        if (turns < 2)
            return Math.Max(0, turns - 1) * RosaB(2);
        var n = turns;
        return Math.Log(2 * Math.PI) - 1.5 - (Math.Log(n) / (6 * n)) - (0.33084236 / n) - (1 / (120 * Math.Pow(n, 3))) + (1 / (504 * Math.Pow(n, 5))) - (0.0011923 / Math.Pow(n, 7));
    }
}
