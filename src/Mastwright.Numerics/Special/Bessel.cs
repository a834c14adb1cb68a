using System.Numerics;
using MathNet.Numerics;

namespace Mastwright.Numerics.Special;

/// <summary>Bessel and Hankel functions of order 0 and 1.</summary>
/// <remarks>
/// Y and H come from Math.NET's port of D. E. Amos's routines (ACM Trans. Math. Softw. 12 (1986) 265-273, algorithm 644),
/// which does well enough. J0 and J1 are our own because whole ground integrals hang on their speed. All are held against
/// SciPy. The negative real axis is the cut of Y and H.
/// </remarks>
public static class Bessel
{
    /// <summary>J0 of real argument.</summary>
    public static double J0(double x) => BesselJ.Pair(x).J0;

    /// <summary>J1 of real argument.</summary>
    public static double J1(double x) => BesselJ.Pair(x).J1;

    /// <summary>Y0 of positive real argument.</summary>
    public static double Y0(double x) => SpecialFunctions.BesselY(0, x);

    /// <summary>Y1 of positive real argument.</summary>
    public static double Y1(double x) => SpecialFunctions.BesselY(1, x);

    /// <summary>J0 of complex argument.</summary>
    public static Complex J0(Complex z) => BesselJ.Pair(z).J0;

    /// <summary>J1 of complex argument.</summary>
    public static Complex J1(Complex z) => BesselJ.Pair(z).J1;

    /// <summary>J0 and J1 of real argument for the price of one.</summary>
    public static (double J0, double J1) J0J1(double x) => BesselJ.Pair(x);

    /// <summary>J0 and J1 of complex argument for the price of one.</summary>
    public static (Complex J0, Complex J1) J0J1(Complex z) => BesselJ.Pair(z);

    /// <summary>Hankel function of the first kind, order 0: J0 + i Y0.</summary>
    public static Complex H1Order0(Complex z) => SpecialFunctions.HankelH1(0, z);

    /// <summary>Hankel function of the first kind, order 1.</summary>
    public static Complex H1Order1(Complex z) => SpecialFunctions.HankelH1(1, z);

    /// <summary>Hankel function of the second kind, order 0: J0 - i Y0, the outgoing wave with time factor exp(+jωt).</summary>
    public static Complex H2Order0(Complex z) => SpecialFunctions.HankelH2(0, z);

    /// <summary>Hankel function of the second kind, order 1.</summary>
    public static Complex H2Order1(Complex z) => SpecialFunctions.HankelH2(1, z);
}
