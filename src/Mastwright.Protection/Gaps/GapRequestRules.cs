using System.Collections.Immutable;
using Mastwright.Model.Trails;
using static System.FormattableString;

namespace Mastwright.Protection.Gaps;

/// <summary>The one place where a gap request is checked.</summary>
internal static class GapRequestRules
{
    public static ImmutableArray<Finding> Faults(GapRequest request)
    {
        var faults = ImmutableArray.CreateBuilder<Finding>();
        void Range(string code, string what, double value, double low, double high, string unit, string wayOut)
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new(code, Severity.Error, Invariant($"{what} is {value:0.####} {unit}."),
                    Value: Invariant($"{value:0.####} {unit}"), Allowed: Invariant($"{low:0.####} to {high:0.####} {unit}"), WayOut: wayOut));
            }
        }

        if (!request.Electrodes.IsSharp)
            Range("gap-diameter", "The ball or dome diameter", 1000 * request.Electrodes.DiameterM, 2, 1000, "mm", "Give the diameter of the rounded face.");
        foreach (var (air, name) in new[] { (request.ThinAir, "thin"), (request.DenseAir, "dense") })
        {
            Range("gap-elevation", $"The elevation ({name} air)", air.ElevationM, -400, 6000, "m", "Give the site's height above sea level.");
            Range("gap-temperature", $"The temperature ({name} air)", air.TemperatureK - 273.15, -53, 57, "°C", "Give an air temperature the site can see.");
            Range("gap-humidity", $"The absolute humidity ({name} air)", 1000 * air.AbsoluteHumidityKgPerM3, 0, 40, "g/m³", "8.5 g/m³ is the reference.");
            if (air.PressurePa is { } p)
                Range("gap-pressure", $"The station pressure ({name} air)", p / 1000, 40, 110, "kPa", "Give station pressure, not pressure reduced to sea level; or leave it out.");
        }

        Range("gap-mismatch", "The mismatch factor", request.MismatchFactor, 1, 20, "", "1 means the match never drifts.");
        Range("gap-hold-off-margin", "The hold-off margin", request.HoldOffMargin, 1, 10, "", "A margin below 1 would let the gap fire on the station's own voltage.");
        Range("gap-protection-margin", "The protection margin", request.ProtectionMargin, 1, 10, "", "A margin below 1 would let the part go first.");
        Range("gap-wet-factor", "The wet factor", request.WetFactor, 0.1, 1, "", "1 for a gap under a drip hood.");
        if (request.ImpulseRatio is { } ratio)
            Range("gap-impulse-ratio", "The impulse ratio", ratio, 1, 10, "", "1 means the gap fires without delay; leave it out to have it computed.");
        Range("gap-lag", "The formative lag", 1e9 * request.FormativeLagS, 0, 10e3, "ns", "100 ns is usual for a few millimetres.");
        Range("gap-statistical-lag", "The statistical lag", 1e9 * request.StatisticalLagS, 0, 100e3, "ns", "0 for a gap that sees daylight.");
        Range("gap-tolerance", "The setting tolerance", 1000 * request.SettingToleranceM, 0, 5, "mm", "Give the plus-or-minus error of the feeler.");
        if (request.Bands.IsDefaultOrEmpty)
            faults.Add(new("gap-no-bands", Severity.Error, "No band is given, so the working voltage is unknown.", WayOut: "Give every band with its base voltage."));
        if (request.Protected.IsDefaultOrEmpty)
            faults.Add(new("gap-nothing-protected", Severity.Error, "No part behind the gap is given, so its upper limit is unknown.", WayOut: "Give the strength of the base insulator at least."));
        foreach (var band in request.Bands.IsDefault ? [] : request.Bands)
        {
            Range("gap-band-voltage", $"The base voltage on {band.Name}", band.CarrierPeakV.Value, 0, 1e6, "V peak", "Give the crest across the base at full power.");
            Range("gap-modulation", $"The modulation factor on {band.Name}", band.ModulationFactor, 1, 4, "", "1 for single sideband, telegraphy and FM; 2 for full amplitude modulation.");
        }

        foreach (var part in request.Protected.IsDefault ? [] : request.Protected)
            Range("gap-strength", $"The strength of {part.Name}", part.StrengthPeakV.Value, 1, 1e7, "V peak", "Give the withstand or rated peak voltage.");
        return faults.ToImmutable();
    }
}
