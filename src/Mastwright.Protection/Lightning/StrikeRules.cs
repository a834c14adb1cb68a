using System.Collections.Immutable;
using Mastwright.Model.Trails;
using static System.FormattableString;

namespace Mastwright.Protection.Lightning;

/// <summary>The one place where a strike scenario is checked.</summary>
internal static class StrikeRules
{
    public static ImmutableArray<Finding> Faults(StrikeScenario s)
    {
        var faults = ImmutableArray.CreateBuilder<Finding>();
        void Range(string code, string what, double value, double low, double high, string unit)
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new(code, Severity.Error, Invariant($"{what} is {value:G5} {unit}."), Value: Invariant($"{value:G5} {unit}"),
                    Allowed: Invariant($"{low:G5} to {high:G5} {unit}"), WayOut: "Give a value in this range."));
            }
        }

        Range("strike-crest", "The crest of the stroke", s.Stroke.CrestA, 100, 1e6, "A");
        Range("strike-height", "The mast height", s.Mast.HeightM, 2, 300, "m");
        Range("strike-mast-radius", "The mast radius", s.Mast.RadiusM, 1e-3, 0.1 * s.Mast.HeightM, "m");
        Range("strike-base-capacitance", "The base capacitance", s.Mast.BaseCapacitanceF, 1e-13, 1e-7, "F");
        if (s.Gap is { } gap)
        {
            Range("strike-gap", "The gap spacing", gap.SpacingM, 1e-4, 0.25, "m");
            Range("strike-strap", "The strap length", gap.StrapLengthM, 0.02, 30, "m");
            Range("strike-strap-width", "The strap width", gap.StrapWidthM, 1e-3, 1, "m");
            Range("strike-strap-thickness", "The strap thickness", gap.StrapThicknessM, 1e-5, 0.1, "m");
            Range("strike-arc", "The arc voltage", gap.ArcVolts, 10, 1e5, "V");
            Range("strike-lag", "The formative lag", gap.FormativeLagS + gap.StatisticalLagS, 1e-9, 1e-4, "s");
        }

        Range("strike-soil", "The soil resistivity", s.Earth.SoilOhmM, 0.1, 1e5, "Ω·m");
        Range("strike-radials", "The number of radials", s.Earth.Radials, 1, 240, "");
        Range("strike-radial-length", "The radial length", s.Earth.RadialLengthM, 0.5, 500, "m");
        Range("strike-radial-radius", "The radial wire's radius", s.Earth.RadialRadiusM, 1e-4, 0.05, "m");
        Range("strike-depth", "The radial depth", s.Earth.DepthM, 2 * s.Earth.RadialRadiusM, 3, "m");
        Range("strike-rods", "The number of rods", s.Earth.Rods, 0, 100, "");
        Range("strike-rod-distance", "The distance of the rods", s.Earth.RodDistanceM, 0.05, 100, "m");
        if (s.Earth.Ring is { } ring)
        {
            Range("strike-ring", "The diameter of the buried ring", ring.DiameterM, 0.5, 200, "m");
            Range("strike-ring-wire", "The radius of the ring's wire", ring.WireRadiusM, 2e-4, 0.1, "m");
            Range("strike-ring-depth", "The depth of the ring", ring.DepthM, 2 * ring.WireRadiusM, 5, "m");
        }

        foreach (var part in s.Feed.IsDefault ? [] : s.Feed)
        {
            Range("strike-feed-part", $"The value of {part.Name}", part.Value, 1e-15, 1e9, "");
            if (part.IsLine)
                Range("strike-feed-line", $"The impedance of {part.Name}", part.LineOhm, 5, 1000, "Ω");
        }

        if (!s.Feed.IsDefaultOrEmpty && s.Feed.Select(p => p.Name).Distinct().Count() != s.Feed.Length)
            faults.Add(new("strike-feed-names", Severity.Error, "Two parts of the feed have one name.", WayOut: "Give every part its own name."));
        if (s.LineOhm is { } line)
            Range("strike-line", "The impedance of the feed line", line, 5, 1000, "Ω");
        if (s.Cable is { } cable)
        {
            Range("strike-cable", "The cable length", cable.LengthM, 1, 1000, "m");
            Range("strike-cable-speed", "The velocity factor of the cable", cable.VelocityFactor, 0.3, 1, "");
            Range("strike-cable-impedance", "The cable impedance", cable.ImpedanceOhm, 5, 600, "Ω");
        }

        if (s.House is { } house)
        {
            Range("strike-panel-earth", "The panel's earth", house.PanelEarthOhm, 0.01, 1e4, "Ω");
            Range("strike-mains-earth", "The mains earth", house.MainsEarthOhm, 0.01, 1e4, "Ω");
            Range("strike-panel-strap", "The panel strap", house.PanelStrapM, 0.05, 100, "m");
            Range("strike-bond", "The bond to the mains earth", house.BondLengthM, 0.05, 200, "m");
            Range("strike-equipment", "The path through the radio", house.EquipmentPathM, 0.05, 200, "m");
        }

        if (s.House is not null && s.Cable is null)
            faults.Add(new("strike-house-without-cable", Severity.Error, "A house is given without a cable to it.", WayOut: "Give the cable, or leave the house out."));
        return faults.ToImmutable();
    }
}
