using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Speed-up over a hill by ASCE 7 section 26.8: Kzt = (1 + K1 K2 K3)².</summary>
internal static class AsceTopography
{
    public static Trail Factor(Hill hill, string exposure, Trail height, Source source)
    {
        // Columns of fig. 26.8-1: K1/(H/Lh) in exposures B, C, D; decay γ; spread μ upwind and downwind.
        var (b, c, d, gamma, upwind, downwind) = hill.Kind switch
        {
            HillKind.Ridge => (1.30, 1.45, 1.55, 3.0, 1.5, 1.5),
            HillKind.Escarpment => (0.75, 0.85, 0.95, 2.5, 1.5, 4.0),
            _ => (0.95, 1.05, 1.15, 4.0, 1.5, 1.5),
        };
        var perSlope = exposure.ToUpperInvariant() switch { "B" => b, "C" => c, _ => d };

        // The figure's note: beyond H/Lh = 0.5 the slope counts as 0.5 and Lh as 2H.
        var steep = hill.HeightM / hill.HalfLengthM > 0.5;
        var slope = steep ? 0.5 : hill.HeightM / hill.HalfLengthM;
        var length = steep ? 2 * hill.HeightM : hill.HalfLengthM;
        var mu = hill.FromCrestM < 0 ? upwind : downwind;

        var h = Trail.Given("height of the hill", "H", hill.HeightM, QuantityKind.Length, InputSource.Design);
        var lh = Trail.Given("half length of the hill", "Lh", length, QuantityKind.Length, InputSource.Design);
        var x = Trail.Given("distance from the crest", "x", hill.FromCrestM, QuantityKind.Length, InputSource.Design);
        var k1 = Trail.Computed("shape multiplier", "K1", perSlope * slope, QuantityKind.Ratio, FormattableString.Invariant($"K1 = {perSlope}·H/Lh, H/Lh at most 0.5"), source, h, lh);
        var k2 = Trail.Computed(
            "distance multiplier", "K2", Math.Max(0, 1 - (Math.Abs(hill.FromCrestM) / (mu * length))), QuantityKind.Ratio,
            FormattableString.Invariant($"K2 = 1 - |x|/({mu}·Lh), not below 0"), source, x, lh);
        var k3 = Trail.Computed(
            "height multiplier", "K3", Math.Exp(-gamma * height.Value / length), QuantityKind.Ratio, FormattableString.Invariant($"K3 = exp(-{gamma}·z/Lh)"), source, height, lh);
        var product = k1.Value * k2.Value * k3.Value;
        return Trail.Computed("topographic factor", "Kzt", (1 + product) * (1 + product), QuantityKind.Ratio, "Kzt = (1 + K1·K2·K3)²", source, k1, k2, k3)
            .Within("isolated hill, 2-D or round; H/Lh from 0.2", slope < 0.2 ? "The hill is flatter than the standard asks to be counted; the factor is a little high." : null);
    }
}
