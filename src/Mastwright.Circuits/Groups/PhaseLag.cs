namespace Mastwright.Circuits.Groups;

/// <summary>
/// Three-reactance networks that join two resistances and turn the phase: the current (T) or the voltage (pi) at the far
/// end lags the near end's by β (handbook formulas of phasing units, derived on the theory page).
/// </summary>
public static class PhaseLag
{
    /// <summary>
    /// T network, ohms: X1 in series at the near end, X3 to ground, X2 in series at the far end.
    /// X3 = -R1/(k·sin β), X1 = X3(k·cos β - 1), X2 = X3(cos β/k - 1), k = √(R1/R2) = |I2/I1|. Both resistances may be
    /// negative together: power then flows from the far end to the near one.
    /// </summary>
    /// <param name="nearOhm">Resistance wanted at the near end.</param>
    /// <param name="farOhm">Resistance at the far end, of the same sign.</param>
    /// <param name="lagRad">β, radians, not a multiple of π.</param>
    /// <exception cref="ArgumentException">The resistances differ in sign or one is zero.</exception>
    public static (double X1, double X2, double X3) T(double nearOhm, double farOhm, double lagRad)
    {
        Check(nearOhm, farOhm);
        var k = Math.Sqrt(nearOhm / farOhm);
        var x3 = -nearOhm / (k * Math.Sin(lagRad));
        return (x3 * ((k * Math.Cos(lagRad)) - 1), x3 * ((Math.Cos(lagRad) / k) - 1), x3);
    }

    /// <summary>
    /// Pi network, ohms: X1 to ground at the near end, X3 in series, X2 to ground at the far end.
    /// X3 = √(R1R2)·sin β, X1 = R1R2·sin β/(R2·cos β - √(R1R2)), X2 = R1R2·sin β/(R1·cos β - √(R1R2)); |V2/V1| = √(R2/R1).
    /// </summary>
    /// <param name="nearOhm">Resistance wanted at the near end, above zero.</param>
    /// <param name="farOhm">Resistance at the far end, above zero.</param>
    /// <param name="lagRad">β, radians, not a multiple of π.</param>
    /// <exception cref="ArgumentException">A resistance is not above zero.</exception>
    public static (double X1, double X2, double X3) Pi(double nearOhm, double farOhm, double lagRad)
    {
        Check(nearOhm, farOhm);
        if (nearOhm < 0)
            throw new ArgumentException("The pi network is given for positive resistances.", nameof(nearOhm));
        var (mean, s, c) = (Math.Sqrt(nearOhm * farOhm), Math.Sin(lagRad), Math.Cos(lagRad));
        return (mean * mean * s / ((farOhm * c) - mean), mean * mean * s / ((nearOhm * c) - mean), mean * s);
    }

    private static void Check(double nearOhm, double farOhm)
    {
        if (!(nearOhm * farOhm > 0) || !double.IsFinite(nearOhm * farOhm))
            throw new ArgumentException("Both resistances must be finite, other than zero and of one sign.", nameof(farOhm));
    }
}
