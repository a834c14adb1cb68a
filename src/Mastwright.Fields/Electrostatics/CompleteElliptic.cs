namespace Mastwright.Fields.Electrostatics;

/// <summary>Complete elliptic integrals of the first and second kind by the arithmetic-geometric mean (Abramowitz and Stegun 17.6).</summary>
public static class CompleteElliptic
{
    /// <summary>K as a function of the complementary parameter 1 − m, above 0; exact to rounding even next to the singularity at m = 1.</summary>
    /// <param name="complementaryParameter">1 − m = 1 − k².</param>
    public static double FirstKind(double complementaryParameter)
    {
        var a = 1.0;
        var b = Math.Sqrt(complementaryParameter);
        while (Math.Abs(a - b) > 1e-15 * a)
            (a, b) = (0.5 * (a + b), Math.Sqrt(a * b));
        return Math.PI / (a + b);
    }
}
