using System.Collections.Immutable;
using Mastwright.Model.Trails;
using static System.FormattableString;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// Sets the base gap. The window's lower end is the smallest spacing that still holds the highest working crest (all bands, mismatch, modulation)
/// with its margin, at radio frequency, wet, in the thinnest air and set too small; its upper end the largest spacing that fires, on a lightning front,
/// in the densest air and set too wide, before the weakest part behind it gives way.
/// </summary>
public static class GapWindow
{
    private const double SmallestM = 0.05e-3;
    private const double LargestM = 0.25;
    private static readonly Source Page = Source.Derived("docs/theory/spark-gap.md");

    /// <summary>Solves for the setting.</summary>
    public static GapAnswer Set(GapRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var faults = GapRequestRules.Faults(request);
        if (!faults.IsEmpty)
            return new GapInputUnusable(faults);

        var (working, band) = WorkingPeak(request);
        var (weakest, part) = Weakest(request);
        var needHold = working.Value * request.HoldOffMargin;
        var maxFire = weakest.Value / request.ProtectionMargin;
        var low = SmallestWith(s => HoldOffAt(request, s).Value >= needHold);
        var high = LargestWith(s => FiringAt(request, s).Value <= maxFire);

        if (low is null)
            return TooMuchVoltage(request, working, band, weakest, part, high);
        var lowTrail = Trail.Computed("smallest spacing", "smin", low.Value, QuantityKind.FineLength,
            "HoldOff(smin) = margin · working peak", Page, working, Given("hold-off margin", "m1", request.HoldOffMargin));
        Trail? highTrail = high is null ? null : Trail.Computed("largest spacing", "smax", high.Value, QuantityKind.FineLength,
            "Firing(smax) = weakest strength / margin", Page, weakest, Given("protection margin", "m2", request.ProtectionMargin));
        if (highTrail is null || high!.Value < low.Value)
            return Misfit(request, working, band, weakest, part, lowTrail, highTrail);
        return Fit(request, working, band, weakest, part, lowTrail, highTrail);
    }

    /// <summary>What a gap set to <paramref name="spacingM"/> is sure to hold: radio frequency, wet, thinnest air, set too small.</summary>
    public static Trail HoldOffAt(GapRequest request, double spacingM)
    {
        var s = Math.Max(spacingM - request.SettingToleranceM, 0.5 * SmallestM);
        var spark = GapBreakdown.PeakVolts(request.Electrodes, s, request.ThinAir);
        var rf = GapBreakdown.RadioFrequencyFactor(s);
        var wet = AssumedFactor("wet factor", "kw", request.WetFactor, "Rain drops and dirt shorten a gap of a few millimetres by an amount no table gives; 0.85 is this program's guess, 1 under a drip hood.");
        return Trail.Computed("hold-off voltage", "Uh", spark.Value * rf.Value * wet.Value, QuantityKind.PeakVoltage,
            "Uh = Us(s − tolerance, thin air)·krf·kw", Page, spark, rf, wet);
    }

    /// <summary>What a gap set to <paramref name="spacingM"/> may need to fire on a lightning front: densest air, set too wide.</summary>
    public static Trail FiringAt(GapRequest request, double spacingM)
    {
        if (!request.Fronts.IsDefaultOrEmpty)
            return request.Fronts.Select(f => FiringOn(request, f, spacingM)).MaxBy(t => t.Value)!;
        var spark = GapBreakdown.PeakVolts(request.Electrodes, spacingM + request.SettingToleranceM, request.DenseAir);
        var ratio = ImpulseRatio(request);
        return Trail.Computed("firing voltage", "Uf", spark.Value * ratio.Value, QuantityKind.PeakVoltage,
            "Uf = Us(s + tolerance, dense air)·ki", Page, spark, ratio);
    }

    /// <summary>What a gap set to <paramref name="spacingM"/> may need to fire on one stroke's front, from its volt-time curve: densest air, set too wide.</summary>
    public static Trail FiringOn(GapRequest request, Lightning.StrikeFront front, double spacingM)
    {
        var spark = GapBreakdown.PeakVolts(request.Electrodes, spacingM + request.SettingToleranceM, request.DenseAir);
        var lag = Lag(request);
        var firing = front.Fires(spark.Value, lag.Value);
        return Trail.Computed($"firing voltage, {front.Name}", "Uf", firing?.Volts ?? spark.Value, QuantityKind.PeakVoltage,
            "∫(u − Us)dt = Us·lag on the simulated front", Source.Derived("docs/theory/lightning.md"), spark, lag)
            .Remark(firing is null ? "The stroke ends its front before the gap would need more than its static voltage." : "No network beside the gap, which is the steepest front.");
    }

    /// <summary>The impulse ratio that counts: the one given, or r from (r − 1)²/r = 2·lag/T₁, equal area on a straight front of T₁ = 1.2 µs on which the gap fires at the crest.</summary>
    public static Trail ImpulseRatio(GapRequest request)
    {
        const double frontS = 1.2e-6;
        if (request.ImpulseRatio is { } given)
            return Given("impulse ratio", "ki", given);
        var lag = Lag(request);
        var x = 2 * lag.Value / frontS;
        return Trail.Computed("impulse ratio", "ki", 1 + (0.5 * x) + Math.Sqrt(x + (0.25 * x * x)), QuantityKind.Ratio, "(ki − 1)²/ki = 2·lag/T1", Page, lag,
            Trail.Given("front of the standard impulse", "T1", frontS, QuantityKind.Time, Source.FromMemory("IEC 60060-1, lightning impulse 1.2/50", "2010")))
            .Remark("Strengths are stated for the same standard front. Steeper strokes raise both; the strike simulation follows them.");
    }

    /// <summary>The lag that counts into the equal area: the spark forms, after it has waited for a first electron.</summary>
    /// <param name="request">What was asked.</param>
    public static Trail Lag(GapRequest request) => Trail.Computed("lag of the spark", "lag", request.FormativeLagS + request.StatisticalLagS, QuantityKind.Time, "lag = tf + ts", Page,
        request.FormativeLagS == GapRequest.UsualFormativeLagS
            ? Trail.Assumed("formative lag", "tf", request.FormativeLagS, QuantityKind.Time, "common practice, no source: a few millimetres fire within about 500 ns at a fifth over the static voltage")
            : Trail.Given("formative lag", "tf", request.FormativeLagS, QuantityKind.Time, Source.DesignFile),
        request.StatisticalLagS == 0
            ? Trail.Assumed("statistical lag", "ts", 0, QuantityKind.Time, "the gap sees daylight, so that it need not wait for an electron")
            : Trail.Given("statistical lag", "ts", request.StatisticalLagS, QuantityKind.Time, Source.DesignFile));

    /// <summary>The highest working crest of all bands and groups, mismatch and modulation counted, and where it arises.</summary>
    /// <param name="request">What was asked; at least one band.</param>
    public static (Trail Peak, GapBand Band) WorkingPeak(GapRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var band = request.Bands.MaxBy(b => b.CarrierPeakV.Value * b.ModulationFactor)!;
        var mismatch = AssumedFactor("mismatch factor", "km", request.MismatchFactor, "allowance for a match that drifts");
        var modulation = Given("modulation factor", "kc", band.ModulationFactor);
        return (Trail.Computed($"working peak ({band.Name})", "Uw", band.CarrierPeakV.Value * request.MismatchFactor * band.ModulationFactor,
            QuantityKind.PeakVoltage, "Uw = U·km·kc, greatest over all bands", Page, band.CarrierPeakV, mismatch, modulation), band);
    }

    private static (Trail Strength, GapProtected Part) Weakest(GapRequest request)
    {
        var density = request.ThinAir.DensityFactor();
        double Strength(GapProtected p) => p.StrengthPeakV.Value * (p.FallsWithAirDensity ? Math.Min(1, density.Value) : 1);
        var part = request.Protected.MinBy(Strength)!;
        var kind = part.Kind switch
        {
            StrengthKind.Impulse => "Stated as impulse strength.",
            StrengthKind.AlternatingCrest => "Stated as alternating crest and taken as the impulse strength, on the safe side.",
            _ => "Stated for direct voltage and taken as the impulse strength, on the safe side.",
        };
        var trail = part.FallsWithAirDensity
            ? Trail.Computed($"weakest strength ({part.Name})", "Ub", Strength(part), QuantityKind.PeakVoltage, "Ub = U·min(1, k(δ)), least over all parts", Page, part.StrengthPeakV, density)
            : Trail.Computed($"weakest strength ({part.Name})", "Ub", Strength(part), QuantityKind.PeakVoltage, "Ub = U, least over all parts", Page, part.StrengthPeakV);
        return (trail.Remark(kind), part);
    }

    private static GapSetting Fit(GapRequest request, Trail working, GapBand band, Trail weakest, GapProtected part, Trail low, Trail high)
    {
        // The middle in the geometric sense leaves the same voltage ratio at both ends.
        var target = Math.Sqrt(low.Value * high.Value);
        var feeler = FeelerSize.Nearest(target, low.Value, high.Value);
        var set = feeler.HasInch ? feeler.InchSizeM : feeler.Millimetres * 1e-3;
        // The millimetre feeler stands for the same setting, so it is taken nearest to it.
        feeler = feeler with { Millimetres = FeelerSize.Nearest(set, low.Value, high.Value).Millimetres };
        var setting = Trail.Computed("gap setting", "s", set, QuantityKind.FineLength, "s = feeler nearest √(smin·smax)", Page, low, high);
        var hold = HoldOffAt(request, set);
        var firing = FiringAt(request, set);
        var spark = GapBreakdown.PeakVolts(request.Electrodes, set, request.DenseAir);
        var findings = OutOfRange(setting, hold, firing);
        return new(setting, feeler, low, high, working, weakest, hold, firing, spark,
            Checks(request, working, band, weakest, part, hold, firing), findings);
    }

    private static NoGapFits Misfit(GapRequest request, Trail working, GapBand band, Trail weakest, GapProtected part, Trail low, Trail? high)
    {
        var firing = FiringAt(request, low.Value);
        var hold = HoldOffAt(request, low.Value);
        var needed = Trail.Computed("strength needed", "Ub'", firing.Value * request.ProtectionMargin, QuantityKind.PeakVoltage,
            "Ub' = m2·Firing(smin)", Page, firing, Given("protection margin", "m2", request.ProtectionMargin));
        var holdAtHigh = high is null ? 0 : HoldOffAt(request, high.Value).Value;
        var allowed = Trail.Computed("working peak allowed", "Uw'", holdAtHigh / request.HoldOffMargin, QuantityKind.PeakVoltage,
            "Uw' = HoldOff(smax)/m1", Page, weakest, Given("hold-off margin", "m1", request.HoldOffMargin));
        return new(low, high, working, weakest, needed, allowed, band.Name, part.Name, Changes(request, band, part, working, needed, allowed),
            Checks(request, working, band, weakest, part, hold, firing), [NoFit(band, part, needed), .. OutOfRange(low, hold, firing)]);
    }

    private static NoGapFits TooMuchVoltage(GapRequest request, Trail working, GapBand band, Trail weakest, GapProtected part, double? high)
    {
        var low = Trail.Computed("smallest spacing", "smin", LargestM, QuantityKind.FineLength, "no spacing up to 250 mm holds the working peak", Page, working)
            .Within("up to 250 mm", "No spacing up to 250 mm holds the working voltage.");
        Trail? highTrail = high is null ? null : Trail.Computed("largest spacing", "smax", high.Value, QuantityKind.FineLength, "Firing(smax) = weakest strength / margin", Page, weakest);
        return Misfit(request, working, band, weakest, part, low, highTrail);
    }

    private static ImmutableArray<Check> Checks(GapRequest request, Trail working, GapBand band, Trail weakest, GapProtected part, Trail hold, Trail firing)
    {
        var holdCapacity = Trail.Computed("hold-off voltage with margin", "Uh/m1", hold.Value / request.HoldOffMargin, QuantityKind.PeakVoltage,
            "Uh/m1", Page, hold, Given("hold-off margin", "m1", request.HoldOffMargin));
        var fireCapacity = Trail.Computed("weakest strength with margin", "Ub/m2", weakest.Value / request.ProtectionMargin, QuantityKind.PeakVoltage,
            "Ub/m2", Page, weakest, Given("protection margin", "m2", request.ProtectionMargin));
        return
        [
            Check.AtMost("survive.gap.hold-off", Trade.Survive, "The base gap does not fire on the station's own voltage", working, holdCapacity,
                $"band {band.Name}", "Widen the gap, or lower the base voltage of that band.", GapAnswer.Caution),
            Check.AtMost("survive.gap.protect", Trade.Survive, "The base gap fires before the weakest part behind it", firing, fireCapacity,
                part.Name, $"Narrow the gap, or fit a stronger {part.Name}.", GapAnswer.Caution),
        ];
    }

    private static ImmutableArray<string> Changes(GapRequest request, GapBand band, GapProtected part, Trail working, Trail needed, Trail allowed)
    {
        var power = working.Value > 0 ? Math.Pow(allowed.Value / working.Value, 2) : 1;
        var changes = ImmutableArray.CreateBuilder<string>();
        changes.Add($"Fit a {part.Name} good for at least {Volts(needed)} peak.");
        if (!request.Fronts.IsDefaultOrEmpty && !part.FallsWithAirDensity)
            changes.Add($"Or let less than the whole gap voltage reach the {part.Name}: a series coil on the mast's side of it, or a gap or arrester of its own beside it; the study of the strike shows what reaches it.");
        changes.Add(power switch
        {
            >= 0.05 => Invariant($"Bring the working crest on {band.Name} down to {Volts(allowed)}: at the same base impedance that is {100 * power:0} % of the power, or change the height, the top loading or the feed of that band."),
            > 0 => $"Lowering the power alone does not help: the largest gap that protects the {part.Name} holds {Volts(allowed)} against {Volts(working)} on {band.Name}. Change the height, the top loading or the feed of that band so that its base voltage falls, or fit a stronger part.",
            _ => $"No power is low enough: even the smallest gap fires above what the {part.Name} stands. Fit a stronger part first.",
        });
        if (request.WetFactor < 0.99)
            changes.Add("Put a drip hood over the gap, which takes the wet factor to 1.");
        if (request.SettingToleranceM > 0.05e-3)
            changes.Add("Set the gap with a locked screw and a ground feeler, which takes the setting error below 0.05 mm.");
        if (request.Electrodes.IsSharp || request.Electrodes.DiameterM < 0.02)
            changes.Add("Use larger, rounder electrodes: they scatter less from spark to spark.");
        if (request.MismatchFactor > 1)
            changes.Add("Make the transmitter fold back on mismatch, which takes the mismatch factor towards 1.");
        return changes.ToImmutable();
    }

    private static Finding NoFit(GapBand band, GapProtected part, Trail needed) => new(
        "gap-none-fits", Severity.Error,
        $"No gap both holds the working voltage on {band.Name} and protects the {part.Name}.",
        Allowed: $"a weakest strength of at least {Volts(needed)} peak at these margins",
        WayOut: "See the list of changes; do not run without protection, and do not close the gap below the hold-off spacing.");

    private static ImmutableArray<Finding> OutOfRange(params ReadOnlySpan<Trail> trails)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var trail in trails)
        {
            foreach (var warning in trail.RangeWarnings())
            {
                if (!findings.Any(f => f.Message == warning))
                    findings.Add(new("gap-model-range", Severity.Warning, warning, WayOut: WayOut(warning)));
            }
        }

        return findings.ToImmutable();
    }

    // What to do depends on which model was left: the air, the radio-frequency lowering, or the shape.
    private static string WayOut(string warning) =>
        warning.Contains("density", StringComparison.OrdinalIgnoreCase) || warning.Contains("umidity", StringComparison.Ordinal)
            ? "Check the site's elevation, temperatures and humidity; where they are right, allow a wider margin on both sides and try the gap on the site."
        : warning.Contains("radio-frequency", StringComparison.Ordinal)
            ? "Allow a wider margin above the working peak, and watch the gap at full power from outside the fence."
        : warning.Contains("needle", StringComparison.Ordinal) ? "Use rounded electrodes, whose spark voltage is known better, or allow a wider margin."
        : "Choose electrodes with a larger diameter, or allow a wider margin.";

    private static string Volts(Trail trail) => Invariant($"{trail.Value / 1000:0.0} kV");

    private static double? SmallestWith(Func<double, bool> holds)
    {
        if (!holds(LargestM))
            return null;
        var (low, high) = (SmallestM, LargestM);
        if (holds(low))
            return low;
        while (high - low > 1e-7)
        {
            var mid = Math.Sqrt(low * high);
            if (holds(mid))
                high = mid;
            else
                low = mid;
        }

        return high;
    }

    private static double? LargestWith(Func<double, bool> fires)
    {
        if (!fires(SmallestM))
            return null;
        var (low, high) = (SmallestM, LargestM);
        if (fires(high))
            return high;
        while (high - low > 1e-7)
        {
            var mid = Math.Sqrt(low * high);
            if (fires(mid))
                low = mid;
            else
                high = mid;
        }

        return low;
    }

    private static Trail Given(string name, string symbol, double value) =>
        Trail.Given(name, symbol, value, QuantityKind.Ratio, Source.DesignFile);

    private static Trail AssumedFactor(string name, string symbol, double value, string why) =>
        Trail.Assumed(name, symbol, value, QuantityKind.Ratio, why);
}
