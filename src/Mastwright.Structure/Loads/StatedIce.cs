using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Ice of a stated thickness at every height, with a stated share of the wind pressure.</summary>
public sealed class StatedIce : IIceMethod
{
    /// <inheritdoc/>
    public string Name => "stated ice";

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(IceSite site) =>
    [
        .. IceFindings.Thickness(site),
        .. site.PressureShare is >= 0 and <= 1
            ? Array.Empty<Finding>()
            : [new(
                "ice-share", Severity.Error, "The share of wind pressure with ice must be a share.", null,
                site.PressureShare.ToString("G4", CultureInfo.InvariantCulture), "0 to 1", "Common practice takes a quarter to a half.")],
    ];

    /// <inheritdoc/>
    public IceLayer At(IceSite site, double heightM)
    {
        WindFindings.DemandSound(Examine(site));
        return new(
            Trail.Given("stated ice thickness", "t", site.NominalThicknessM, QuantityKind.FineLength, site.Source, "the same at every height"),
            Trail.Given("density of ice", "ρ", site.DensityKgPerM3, QuantityKind.Density, site.Source));
    }

    /// <inheritdoc/>
    public WindWithIce Reduce(IceSite site, WindSite wind)
    {
        WindFindings.DemandSound(Examine(site));
        return new(wind, Trail.Given("share of wind pressure with ice", "k", site.PressureShare, QuantityKind.Ratio, site.Source));
    }
}
