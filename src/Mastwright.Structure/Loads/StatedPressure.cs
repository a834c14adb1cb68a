using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// One pressure from the ground up, stated by the builder (or half the air density times the speed squared when only
/// a speed is stated). Drag as in EN 1991-1-4 and EN 1993-3-1, no gust factor: whoever states a pressure states all of it.
/// </summary>
public sealed class StatedPressure : IWindMethod
{
    /// <inheritdoc/>
    public string Name => "stated pressure";

    /// <inheritdoc/>
    public ImmutableArray<string> Exposures => [];

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(WindSite site)
    {
        var pressure = Value(site);
        return pressure is >= 0 and <= 10_000
            ? []
            : [new(
                "wind-pressure", Severity.Error, "The stated wind pressure is out of reach.", null,
                pressure.ToString("G4", CultureInfo.InvariantCulture) + " Pa", "0 to 10 kPa (0 to 209 psf)", "Give the design pressure, or choose a standard.")];
    }

    /// <inheritdoc/>
    public Trail Pressure(WindSite site, double heightM, BodyKind body)
    {
        WindFindings.DemandSound(Examine(site));
        if (site.StatedPressurePa is { } stated)
        {
            return Trail.Given("stated wind pressure", "q", stated, QuantityKind.Pressure, site.Source, "the same at every height");
        }

        var v = Trail.Given("stated wind speed", "V", site.SpeedMps, QuantityKind.Speed, site.Source);
        return Trail.Computed("wind pressure", "q", Value(site), QuantityKind.Pressure, "q = 0.613·V²", Source.Literature("half of the air density, 1.226 kg/m³ at 15 °C and sea level"), v);
    }

    /// <inheritdoc/>
    public Trail GustFactor(WindSite site) =>
        Trail.Given("gust factor", "G", site.GustFactor ?? 1, QuantityKind.Ratio, site.GustFactor is null ? Source.CommonPractice : site.Source, "a stated pressure is taken as the gust's own");

    /// <inheritdoc/>
    public Trail TubeDrag(TubeShape tube, Trail pressure) => EurocodeDrag.Tube(tube, pressure);

    /// <inheritdoc/>
    public Trail LatticeDrag(Trail solidity, LatticeShape lattice, double toFaceNormalRad) =>
        EurocodeDrag.Lattice(solidity, lattice, toFaceNormalRad);

    private static double Value(WindSite site) => site.StatedPressurePa ?? (0.613 * site.SpeedMps * site.SpeedMps);
}
