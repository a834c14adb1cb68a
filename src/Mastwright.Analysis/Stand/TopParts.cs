using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Structure.Loads;

namespace Mastwright.Analysis.Stand;

/// <summary>
/// A rod, whiskers or a ring on a mast's top as something that weighs, catches wind and carries ice. The file states no metal: rods and whiskers are
/// taken as solid copper, the heaviest that is usual, a ring as copper tube of 1 mm wall (common practice, no source).
/// </summary>
/// <param name="Name">What it is.</param>
/// <param name="LengthM">Developed length, which ice covers, m.</param>
/// <param name="WindLengthM">Length turned to the wind, m: all of rods, twice the diameter of a ring.</param>
/// <param name="DiameterM">Diameter of the rod or tube, m.</param>
/// <param name="RiseM">Height of its middle above the mast's top, m.</param>
/// <param name="MassKg">Its mass.</param>
internal sealed record TopPart(string Name, double LengthM, double WindLengthM, double DiameterM, double RiseM, double MassKg)
{
    /// <summary>Drag coefficient of a round member across the wind, below its critical Reynolds number: EN 1991-1-4 figure 7.28 (from memory).</summary>
    public const double RodDrag = 1.2;

    /// <summary>What the wind meets.</summary>
    public PointBody Wind => new(Name, WindLengthM * DiameterM, RodDrag, DiameterM);

    /// <summary>What ice covers.</summary>
    public PointBody Ice => new(Name, LengthM * DiameterM, RodDrag, DiameterM);
}

/// <summary>The parts on the top of a mast.</summary>
internal static class TopParts
{
    private const double RingWallM = 0.001;

    /// <summary>Density of copper, kg/m³, of the catalogue.</summary>
    public static double CopperKgPerM3 => Catalogue.Default.Metals["copper"].DensityKgPerM3;

    /// <summary>Them, none without a fitting.</summary>
    public static IEnumerable<TopPart> Of(Mast mast)
    {
        if (mast.Top is not { } top)
        {
            yield break;
        }

        if (top.RodLengthM > 0)
        {
            yield return new TopPart("rod on the top", top.RodLengthM, top.RodLengthM, top.RodDiameterM, top.RodLengthM / 2, top.RodLengthM * SolidKgPerM(top.RodDiameterM));
        }

        if (top.Whiskers > 0)
        {
            var length = top.Whiskers * top.WhiskerLengthM;
            yield return new TopPart("whiskers", length, length, top.WhiskerDiameterM, top.WhiskerLengthM / 2 * Math.Sin(top.WhiskerSlopeRad), length * SolidKgPerM(top.WhiskerDiameterM));
        }

        if (top.RingDiameterM is { } ring)
        {
            var bore = Math.Max(0, top.RingTubeM - (2 * RingWallM));
            yield return new TopPart("ring round the top", Math.PI * ring, 2 * ring, top.RingTubeM, 0, Math.PI * ring * (SolidKgPerM(top.RingTubeM) - SolidKgPerM(bore)));
        }
    }

    private static double SolidKgPerM(double diameterM) => Math.PI / 4 * diameterM * diameterM * CopperKgPerM3;
}
