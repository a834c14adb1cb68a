using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Glaze by the ice classes G1 to G5 of ISO 12494: a thickness that is the same on every member, and a share of the wind pressure.</summary>
public sealed class IsoGlaze : IIceMethod
{
    // Thickness in mm (table 3) and the factor k on wind pressure (table 6), by class.
    private static readonly ImmutableArray<(double ThicknessMm, double WindFactor)> Classes =
        [(10, 0.40), (20, 0.45), (30, 0.50), (40, 0.55), (50, 0.60)];

    /// <inheritdoc/>
    public string Name => "ISO 12494 glaze";

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(IceSite site) => site.GlazeClass is >= 1 and <= 5
        ? []
        : [new(
            "ice-class", Severity.Error, "There is no such glaze class.", null,
            site.GlazeClass.ToString(CultureInfo.InvariantCulture), "1 to 5 (10 to 50 mm)", "Ask a meteorologist which class fits the site; for more than 50 mm state the thickness.")];

    /// <inheritdoc/>
    public IceLayer At(IceSite site, double heightM)
    {
        WindFindings.DemandSound(Examine(site));
        var row = Classes[site.GlazeClass - 1];
        return new(
            Trail.Given($"glaze thickness, class G{site.GlazeClass}", "t", row.ThicknessMm / 1000, QuantityKind.FineLength, Standard("table 3"), "the same at every height"),
            Trail.Given("density of glaze", "ρ", site.DensityKgPerM3, QuantityKind.Density, Standard("section 7.2")));
    }

    /// <inheritdoc/>
    public WindWithIce Reduce(IceSite site, WindSite wind)
    {
        WindFindings.DemandSound(Examine(site));
        return new(wind, Trail.Given(
            $"share of wind pressure with glaze G{site.GlazeClass}", "k", Classes[site.GlazeClass - 1].WindFactor, QuantityKind.Ratio, Standard("section 9.2, factor k")));
    }

    private static Source Standard(string where) => Source.FromMemory($"ISO 12494, {where}", "2017");
}
