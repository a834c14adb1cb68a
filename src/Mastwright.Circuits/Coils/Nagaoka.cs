using Mastwright.Numerics.Special;

namespace Mastwright.Circuits.Coils;

/// <summary>Inductance of a cylindrical current sheet.</summary>
public static class Nagaoka
{
    /// <summary>Vacuum permeability, H/m (the classical value, good to 1e-9).</summary>
    public const double Mu0 = 4e-7 * Math.PI;

    /// <summary>
    /// Nagaoka's coefficient K: what the ends take off the inductance of a current sheet,
    /// K = 4/(3πk')·[(k'²/k²)(K(k) - E(k)) + E(k) - k], k² = u²/(1 + u²) (Nagaoka 1909; table in NBS Circular 74).
    /// </summary>
    /// <param name="diameterOverLength">u = D/l, above zero.</param>
    public static double Coefficient(double diameterOverLength)
    {
        var u = Guard.Positive(diameterOverLength);

        // Below this the bracket is a difference of nearly equal numbers; K = 1 - 4u/(3π) + u²/8 is exact to 1e-9 there.
        if (u < 1e-2)
            return 1 - (4 * u / (3 * Math.PI)) + (u * u / 8) - (u * u * u * u / 64);
        var k2 = u * u / (1 + (u * u));
        var (k, k1) = (Math.Sqrt(k2), 1 / Math.Sqrt(1 + (u * u)));
        var (first, second) = (EllipticIntegrals.K(k2), EllipticIntegrals.E(k2));
        return 4 / (3 * Math.PI * k1) * ((k1 * k1 / k2 * (first - second)) + second - k);
    }

    /// <summary>Inductance of a current sheet, henries: L = μ0·π(D/2)²·N²·K/l.</summary>
    /// <param name="diameterM">Diameter of the sheet, metres: the mean diameter of the winding.</param>
    /// <param name="lengthM">Length, metres: turns times pitch.</param>
    /// <param name="turns">Number of turns.</param>
    public static double SheetInductanceH(double diameterM, double lengthM, double turns) =>
        Mu0 * Math.PI * diameterM * diameterM / 4 * turns * turns / lengthM * Coefficient(diameterM / lengthM);
}
