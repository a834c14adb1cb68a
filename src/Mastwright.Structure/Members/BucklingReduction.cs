using Mastwright.Model.Trails;

namespace Mastwright.Structure.Members;

/// <summary>The buckling reduction factor χ that EN 1993-1-1 and EN 1999-1-1 share.</summary>
internal static class BucklingReduction
{
    public static Trail Of(Trail relativeSlenderness, Trail imperfection, double plateau, Source source)
    {
        var l = relativeSlenderness.Value;
        var phi = 0.5 * (1 + (imperfection.Value * (l - plateau)) + (l * l));
        var chi = l <= plateau ? 1 : Math.Min(1, 1 / (phi + Math.Sqrt((phi * phi) - (l * l))));
        return Trail.Computed(
            "buckling reduction", "χ", chi, QuantityKind.Ratio, FormattableString.Invariant($"χ = 1/(Φ + √(Φ² - λ̄²)), Φ = ½·(1 + α·(λ̄ - {plateau}) + λ̄²), at most 1"), source, relativeSlenderness, imperfection);
    }
}
