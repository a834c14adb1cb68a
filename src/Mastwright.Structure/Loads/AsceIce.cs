using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Freezing rain by ASCE 7 chapter 10: td = f·t·Ii·fz·Kzt^0.35, fz = (z/10 m)^0.10, with the concurrent gust of the map.
/// f is 2.0 on the 50-year maps (to 7-10) and 1 on the 500-year maps (from 7-16).
/// </summary>
public sealed class AsceIce : IIceMethod
{
    private const double ReferenceHeightM = 33 * 0.3048;
    private const double HighestM = 900 * 0.3048;

    private readonly int _year;
    private readonly double _factor;

    private AsceIce(int year, double factor)
    {
        _year = year;
        _factor = factor;
        Name = $"ASCE 7-{year % 100} ice";
    }

    /// <summary>ASCE/SEI 7-10: 50-year maps, factor 2.0.</summary>
    public static AsceIce Edition2010 { get; } = new(2010, 2);

    /// <summary>ASCE/SEI 7-16: 500-year maps.</summary>
    public static AsceIce Edition2016 { get; } = new(2016, 1);

    /// <summary>ASCE/SEI 7-22: maps by risk category, so the importance factor stays 1.</summary>
    public static AsceIce Edition2022 { get; } = new(2022, 1);

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public ImmutableArray<Finding> Examine(IceSite site)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(IceFindings.Thickness(site));
        if (site.ConcurrentWindMps is not (>= 5 and <= 60))
        {
            findings.Add(new(
                "ice-wind", Severity.Error, $"{Name} needs the gust speed that the ice map shows with the thickness.", null,
                site.ConcurrentWindMps?.ToString("G4", CultureInfo.InvariantCulture), "5 to 60 m/s (11 to 134 mph)", "Read the concurrent gust from the ice map, often 30 to 60 mph."));
        }

        if (!(site.ImportanceFactor is >= 0.5 and <= 1.5))
        {
            findings.Add(new(
                "ice-importance", Severity.Error, "The importance factor on ice is out of reach.", null,
                site.ImportanceFactor.ToString("G4", CultureInfo.InvariantCulture), "0.5 to 1.5", "Use 1 unless the risk category asks for more."));
        }

        return findings.ToImmutable();
    }

    /// <inheritdoc/>
    public IceLayer At(IceSite site, double heightM)
    {
        WindFindings.DemandSound(Examine(site));
        var t = Trail.Given("nominal ice thickness", "t", site.NominalThicknessM, QuantityKind.FineLength, site.Source);
        var importance = Trail.Given("importance factor", "Ii", site.ImportanceFactor, QuantityKind.Ratio, site.Source);
        var kzt = Trail.Given("topographic factor", "Kzt", site.TopographicFactor, QuantityKind.Ratio, site.Source);
        var z = Trail.Given("height above ground", "z", heightM, QuantityKind.Length, InputSource.Design);
        // The formula starts at zero height; ice on the lowest metre is taken as at one metre.
        var fz = Trail.Computed(
            "height factor", "fz", Math.Pow(Math.Clamp(heightM, 1, HighestM) / ReferenceHeightM, 0.10), QuantityKind.Ratio, "fz = (z/33 ft)^0.10", Standard("eq. 10.4-4"), z)
            .Within("0 to 900 ft", heightM > HighestM ? "Higher than the formula goes; the value at 900 ft is used." : null);
        var td = Trail.Computed(
            "design ice thickness", "td", _factor * t.Value * importance.Value * fz.Value * Math.Pow(kzt.Value, 0.35), QuantityKind.FineLength,
            _factor > 1 ? "td = 2.0·t·Ii·fz·Kzt^0.35" : "td = t·Ii·fz·Kzt^0.35", Standard("eq. 10.4-5"), t, importance, fz, kzt)
            .Remark(_factor > 1 ? "t from a 50-year map" : "t from a 500-year or risk-category map; that this edition drops the factor 2.0 is from memory");
        return new(td, Trail.Given("density of ice", "ρ", site.DensityKgPerM3, QuantityKind.Density, Standard("section 10.4.1"), "not less than 900 kg/m³ (56 pcf)"));
    }

    /// <inheritdoc/>
    public WindWithIce Reduce(IceSite site, WindSite wind)
    {
        WindFindings.DemandSound(Examine(site));
        return new(
            wind with { SpeedMps = site.ConcurrentWindMps!.Value, StatedPressurePa = null },
            Trail.Given("wind with ice: the concurrent gust takes the place of the basic speed", "k", 1, QuantityKind.Ratio, Standard("section 10.5")));
    }

    private Source Standard(string where) => Source.FromMemory($"ASCE 7-{_year % 100}, {where}", _year.ToString(CultureInfo.InvariantCulture));
}
