using Mastwright.Model.Trails;

namespace Mastwright.Fields.Earth;

/// <summary>How much of the transmitter's power leaves as a wave.</summary>
public static class Efficiency
{
    /// <summary>η = R_r/(R_r + ΣR_loss), all resistances referred to the same current.</summary>
    /// <param name="radiationResistance">Radiation resistance, ohms.</param>
    /// <param name="losses">Loss resistances, ohms, referred to the same current.</param>
    public static Trail Of(Trail radiationResistance, params ReadOnlySpan<Trail> losses)
    {
        ArgumentNullException.ThrowIfNull(radiationResistance);
        var total = radiationResistance.Value;
        foreach (var loss in losses)
            total += loss.Value;
        return Trail.Computed(
            "radiation efficiency", "η", total > 0 ? radiationResistance.Value / total : 0, QuantityKind.Ratio, "η = R_r/(R_r + ΣR_loss)",
            Source.Derived("docs/theory/fields-radial-loss.md"), [radiationResistance, .. losses]);
    }
}
