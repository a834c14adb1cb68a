using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;

namespace Mastwright.Report.Sheets;

/// <summary>Where the insulators of a guy sit, for drawings and cut lists.</summary>
public static class GuyPlaces
{
    private const double NearestM = 0.3;

    /// <summary>Distances from the mast along the guy, rising, m. A level that names none has one close to the mast.</summary>
    public static IReadOnlyList<double> InsulatorsM(Mast mast, GuyLevel level)
    {
        if (level.InsulatorsAtM.IsEmpty)
        {
            return [Math.Max(NearestM, 3 * mast.Sections.Max(WireModels.RadiusM))];
        }

        var shortest = StandModel.AnchorsOf(mast, level).Select(a => (StandModel.FootOf(mast) + ((level.HeightM - mast.Base.HeightM) * Numerics.Vec3.Up) - StandModel.EyeOf(mast, a)).Length).DefaultIfEmpty(0).Min();
        return [.. level.InsulatorsAtM.Where(d => d > 0.05 && d < shortest - 0.05).Distinct().Order()];
    }
}
