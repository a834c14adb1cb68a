using Mastwright.Fields.Earth;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>The quick estimate of earth loss for the radials a design describes: sheets at the base and sectors cut short included.</summary>
internal static class EarthEstimate
{
    private const double BareGroundingRadiusM = 0.1;
    private const double WidestMeshM = 0.3;

    private static readonly Source Method = Source.Derived("docs/theory/fields-radial-loss.md");

    /// <summary>Loss resistance at the base.</summary>
    public static Trail Of(Mast mast, Soil soil, BaseField field) => Estimate(mast, soil, field).Remark("a quick estimate; `mastwright soil` solves the exact earth");

    private static Trail Estimate(Mast mast, Soil soil, BaseField field)
    {
        var radials = mast.Radials;
        var height = radials.Lay == RadialLay.Elevated ? radials.HeightM!.Value : -radials.DepthM;

        // A sheet is so much better than soil that heating is counted from its rim outward.
        var grounding = radials.Screen is { } s && (s.MeshM ?? 0) < WidestMeshM ? Math.Max(BareGroundingRadiusM, s.RadiusM) : BareGroundingRadiusM;
        Trail With(double lengthM) => RadialLoss.Estimate(soil, new(radials.Count, lengthM, radials.WireDiameterM / 2, height), field, grounding).Total;
        if (radials.Shortened.IsEmpty)
        {
            return With(radials.LengthM);
        }

        var lengths = Enumerable.Range(0, radials.Count).GroupBy(i => radials.LengthTowards(2 * Math.PI * i / radials.Count))
            .Select(g => (Share: (double)g.Count() / radials.Count, Loss: With(g.Key))).ToList();
        return Trail.Computed("ground loss resistance", "R_g", lengths.Sum(l => l.Share * l.Loss.Value), QuantityKind.Resistance,
                "R_g = Σ share of the circle · R_g(radials of that length all round)", Method, [.. lengths.Select(l => l.Loss)])
            .Within("the mast's field taken as round; no current from long radials into the soil beside short ones");
    }
}
