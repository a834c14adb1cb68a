using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Wind by EN 1991-1-4:2005 section 4: the peak velocity pressure qp(z) from a 10-minute mean speed.
/// National annexes change constants; the recommended values are used.
/// </summary>
public sealed class EurocodeWind : IWindMethod
{
    private static readonly ImmutableDictionary<string, (double Z0, double ZMin)> Terrain = new Dictionary<string, (double, double)>
    {
        ["0"] = (0.003, 1),
        ["I"] = (0.01, 1),
        ["II"] = (0.05, 2),
        ["III"] = (0.3, 5),
        ["IV"] = (1.0, 10),
    }.ToImmutableDictionary();

    /// <inheritdoc/>
    public string Name => "EN 1991-1-4";

    /// <inheritdoc/>
    public ImmutableArray<string> Exposures { get; } = ["0", "I", "II", "III", "IV"];

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(WindSite site) =>
        [.. WindFindings.Common(site, this), .. WindFindings.HillNotRead(site, this)];

    /// <inheritdoc/>
    public Trail Pressure(WindSite site, double heightM, BodyKind body)
    {
        WindFindings.DemandSound(Examine(site));
        var (rough, lowest) = Terrain[site.Exposure.ToUpperInvariant()];
        var z = Trail.Given("height above ground", "z", heightM, QuantityKind.Length, InputSource.Design);
        var z0 = Trail.Given($"roughness length, terrain {site.Exposure.ToUpperInvariant()}", "z0", rough, QuantityKind.Length, Standard("table 4.1"));
        var vb = Trail.Given("basic wind velocity (10-minute mean)", "vb", site.SpeedMps, QuantityKind.Speed, site.Source);
        var co = Trail.Given("orography factor", "co", site.TopographicFactor, QuantityKind.Ratio, site.Source);
        var rho = Trail.Given("air density", "ρ", site.AirDensityKgPerM3, QuantityKind.Density, site.Source);
        var log = Math.Log(Math.Max(heightM, lowest) / rough);
        var kr = Trail.Computed("terrain factor", "kr", 0.19 * Math.Pow(rough / 0.05, 0.07), QuantityKind.Ratio, "kr = 0.19·(z0/0.05)^0.07", Standard("eq. 4.5"), z0);
        var cr = Trail.Computed("roughness factor", "cr", kr.Value * log, QuantityKind.Ratio, FormattableString.Invariant($"cr = kr·ln(z/z0), z not below {lowest} m"), Standard("eq. 4.4"), kr, z, z0);
        var vm = Trail.Computed("mean wind velocity", "vm", cr.Value * co.Value * vb.Value, QuantityKind.Speed, "vm = cr·co·vb", Standard("eq. 4.3"), cr, co, vb);
        var iv = Trail.Computed("turbulence intensity", "Iv", 1 / (co.Value * log), QuantityKind.Ratio, "Iv = 1/(co·ln(z/z0))", Standard("eq. 4.7"), co, z, z0);
        var qp = Trail.Computed(
            "peak velocity pressure", "qp", (1 + (7 * iv.Value)) * 0.5 * rho.Value * vm.Value * vm.Value, QuantityKind.Pressure, "qp = (1 + 7·Iv)·½·ρ·vm²", Standard("eq. 4.8"), iv, rho, vm)
            .Within("height up to 200 m", heightM > 200 ? "Above 200 m the standard's profile no longer holds." : null);
        return site.Directionality is { } given
            ? Trail.Computed(
                "design velocity pressure", "p", qp.Value * given, QuantityKind.Pressure, "p = qp·cdir²", Standard("eq. 4.1"),
                qp, Trail.Given("direction factor, squared", "cdir²", given, QuantityKind.Ratio, site.Source))
            : qp;
    }

    /// <inheritdoc/>
    public Trail GustFactor(WindSite site) =>
        site.GustFactor is { } given
            ? Trail.Given("structural factor", "cscd", given, QuantityKind.Ratio, site.Source)
            : Trail.Given("structural factor", "cscd", 1, QuantityKind.Ratio, Standard("section 6.2"), "the peak pressure already holds the gust; EN 1993-3-1 asks patch loads of tall guyed masts as well")
                .Within("masts that the gust finds whole; EN 1993-3-1 annex B.3.2 asks guyed masts for a gust on one stretch at a time besides, which the mast's checks run");

    /// <inheritdoc/>
    public Trail TubeDrag(TubeShape tube, Trail pressure) => EurocodeDrag.Tube(tube, pressure);

    /// <inheritdoc/>
    public Trail LatticeDrag(Trail solidity, LatticeShape lattice, double toFaceNormalRad) =>
        EurocodeDrag.Lattice(solidity, lattice, toFaceNormalRad);

    private static Source Standard(string where) => Source.FromMemory($"EN 1991-1-4, {where}", "2005");
}
