using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Wind by ASCE 7 chapters 26 and 29: qz = 0.613 Kz Kzt Kd Ke V² (Pa, m/s), force = qz G Cf A.
/// In the 2022 edition Kd stands with the force and not in qz; the product is the same.
/// </summary>
public sealed class AsceWind : IWindMethod
{
    private const double FootM = 0.3048;
    private const double LowestFt = 15;

    private readonly int _year;
    private readonly double _profileFactor;
    private readonly ImmutableDictionary<string, (double Alpha, double GradientFt)> _exposures;
    private readonly double _tubeDirectionality;

    private AsceWind(int year, double profileFactor, double tubeDirectionality, ImmutableDictionary<string, (double Alpha, double GradientFt)> exposures)
    {
        _year = year;
        _profileFactor = profileFactor;
        _tubeDirectionality = tubeDirectionality;
        _exposures = exposures;
        Name = $"ASCE 7-{year % 100}";
    }

    /// <summary>ASCE/SEI 7-16.</summary>
    public static AsceWind Edition2016 { get; } = new(2016, 2.01, 0.95, Profile((7.0, 1200), (9.5, 900), (11.5, 700)));

    /// <summary>ASCE/SEI 7-22; the constants of its height profile are from memory.</summary>
    public static AsceWind Edition2022 { get; } = new(2022, 2.41, 1.0, Profile((7.5, 3280), (9.8, 2460), (11.5, 1935)));

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public ImmutableArray<string> Exposures { get; } = ["B", "C", "D"];

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(WindSite site)
    {
        var hill = site.Hill is { } h && !(h.HalfLengthM > 0)
            ? new Finding(
                "wind-hill", Severity.Error, "The half length of the hill must be a length.", null, null, "above 0 m", "Give the upwind distance from the crest to half the height.")
            : null;
        return [.. WindFindings.Common(site, this), .. hill is null ? Array.Empty<Finding>() : [hill]];
    }

    /// <inheritdoc/>
    public Trail Pressure(WindSite site, double heightM, BodyKind body)
    {
        WindFindings.DemandSound(Examine(site));
        var v = Trail.Given("basic wind speed (3-second gust)", "V", site.SpeedMps, QuantityKind.Speed, site.Source);
        var z = Trail.Given("height above ground", "z", heightM, QuantityKind.Length, InputSource.Design);
        var kz = ExposureFactor(site.Exposure, z);
        var kzt = site.Hill is null
            ? Trail.Given("topographic factor", "Kzt", site.TopographicFactor, QuantityKind.Ratio, site.Source)
            : AsceTopography.Factor(site.Hill, site.Exposure, z, Standard("section 26.8"));
        var ke = ElevationFactor(site);
        var kd = Directionality(site, body);
        if (_year < 2022)
        {
            return Trail.Computed(
                "velocity pressure", "qz", 0.613 * kz.Value * kzt.Value * kd.Value * ke.Value * v.Value * v.Value, QuantityKind.Pressure,
                "qz = 0.613·Kz·Kzt·Kd·Ke·V²", Standard("eq. 26.10-1"), kz, kzt, kd, ke, v);
        }

        var qz = Trail.Computed(
            "velocity pressure", "qz", 0.613 * kz.Value * kzt.Value * ke.Value * v.Value * v.Value, QuantityKind.Pressure,
            "qz = 0.613·Kz·Kzt·Ke·V²", Standard("eq. 26.10-1"), kz, kzt, ke, v);
        return Trail.Computed(
            "design velocity pressure", "p", qz.Value * kd.Value, QuantityKind.Pressure, "p = qz·Kd", Standard("section 29.4"), qz, kd);
    }

    /// <inheritdoc/>
    public Trail GustFactor(WindSite site) =>
        site.GustFactor is { } given
            ? Trail.Given("gust-effect factor", "G", given, QuantityKind.Ratio, site.Source)
            : site.GustTrail ?? Trail.Given("gust-effect factor", "G", 0.85, QuantityKind.Ratio, Standard("section 26.11.1"), "for a structure whose lowest natural frequency is 1 Hz or more")
                .Within("natural frequency at least 1 Hz");

    /// <inheritdoc/>
    public Trail TubeDrag(TubeShape tube, Trail pressure) => AsceDrag.Tube(tube, pressure, Standard("fig. 29.4-1"));

    /// <inheritdoc/>
    public Trail LatticeDrag(Trail solidity, LatticeShape lattice, double toFaceNormalRad) =>
        AsceDrag.Lattice(solidity, lattice, toFaceNormalRad, Standard("fig. 29.4-3"));

    /// <summary>Velocity pressure exposure coefficient Kz, never below its value at 15 ft.</summary>
    internal Trail ExposureFactor(string exposure, Trail height)
    {
        var (alpha, gradientFt) = _exposures[exposure.ToUpperInvariant()];
        var z = Math.Clamp(height.Value / FootM, LowestFt, gradientFt);
        var alphaTrail = Trail.Given($"power law exponent, exposure {exposure.ToUpperInvariant()}", "α", alpha, QuantityKind.Ratio, Standard("table 26.11-1"));
        var gradient = Trail.Given("gradient height", "zg", gradientFt * FootM, QuantityKind.Length, Standard("table 26.11-1"));
        var formula = FormattableString.Invariant($"Kz = {_profileFactor}·(z/zg)^(2/α), z not below 15 ft");
        return Trail.Computed(
            "exposure coefficient", "Kz", _profileFactor * Math.Pow(z / gradientFt, 2 / alpha), QuantityKind.Ratio,
            formula, Standard("table 26.10-1"), height, gradient, alphaTrail);
    }

    private Trail ElevationFactor(WindSite site)
    {
        var ground = Trail.Given("height of the ground above the sea", "ze", site.GroundElevationM, QuantityKind.Length, site.Source);
        return Trail.Computed(
            "ground elevation factor", "Ke", Math.Exp(-0.0000362 * site.GroundElevationM / FootM), QuantityKind.Ratio,
            "Ke = exp(-0.0000362·ze), ze in ft", Standard("table 26.9-1"), ground);
    }

    private Trail Directionality(WindSite site, BodyKind body)
    {
        if (site.Directionality is { } given)
        {
            return Trail.Given("wind directionality factor", "Kd", given, QuantityKind.Ratio, site.Source);
        }

        return body switch
        {
            BodyKind.Lattice => Trail.Given("wind directionality factor, lattice tower", "Kd", 0.85, QuantityKind.Ratio, Standard("table 26.6-1")),
            BodyKind.Tube => Trail.Given("wind directionality factor, round shaft", "Kd", _tubeDirectionality, QuantityKind.Ratio, Standard("table 26.6-1")),
            _ => Trail.Given("wind directionality factor, cable", "Kd", 0.95, QuantityKind.Ratio, Standard("table 26.6-1"), "the table names no cables; the value for other cross-sections is taken"),
        };
    }

    private Source Standard(string where) => Source.FromMemory($"{Name}, {where}", _year.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static ImmutableDictionary<string, (double Alpha, double GradientFt)> Profile(
        (double Alpha, double GradientFt) b, (double Alpha, double GradientFt) c, (double Alpha, double GradientFt) d) =>
        ImmutableDictionary.CreateRange(new KeyValuePair<string, (double, double)>[] { new("B", b), new("C", c), new("D", d) });
}
