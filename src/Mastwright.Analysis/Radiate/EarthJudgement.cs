using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Radiate;

/// <summary>
/// Decides whether a ground system may be judged by the field along the ground: only while that is the mast's strongest direction over
/// perfect ground. A mast of three quarters of a wavelength sends little there to begin with, and a few per cent of scatter from soil and guys
/// would pass for efficiency.
/// </summary>
internal static class EarthJudgement
{
    // The field along the ground must reach this share of the strongest, in power (common practice, no source).
    private const double Least = 0.8;

    // Much above five eighths of a wavelength a mast's field along the ground is the rest of parts that cancel; a little is left for fat and loaded masts (common practice, no source).
    private const double HighestWavelengths = 0.65;

    /// <summary>The comparison; null where it says nothing.</summary>
    public static EarthComparison? Of(Mast mast, WireSolution overSoil, WireSolution overPerfectGround, int feed) =>
        mast.TopM <= HighestWavelengths * Vacuum.WavelengthM(overPerfectGround.FrequencyHz)
        && IsFair(FarField.Of(overPerfectGround.DrivePower(1, feed))) ? EarthComparison.Of(overSoil, overPerfectGround, feed) : null;

    private static bool IsFair(FarField perfect)
    {
        double Mean(double elevationRad) => Enumerable.Range(0, 8).Average(a => perfect.Gain((Math.PI / 2) - elevationRad, a * Math.PI / 4));
        return Mean(0) >= Least * Enumerable.Range(0, 45).Max(e => Mean(e * Math.PI / 90));
    }
}
