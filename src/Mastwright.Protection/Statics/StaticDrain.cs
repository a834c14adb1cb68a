using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Statics;

/// <summary>The radio-frequency voltage on the base of one band.</summary>
/// <param name="Name">Name of the band.</param>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="BaseRmsV">Base voltage at full power, rms, with its trail.</param>
/// <param name="TransmitterW">Power into the antenna in watts.</param>
public sealed record DrainBand(string Name, double FrequencyHz, Trail BaseRmsV, double TransmitterW);

/// <summary>What is asked of a drain across the base.</summary>
/// <param name="Bands">Bands used, at least one.</param>
/// <param name="StaticCurrentA">Greatest steady current to be drained, e.g. from <see cref="PointDischarge.InWind"/>.</param>
/// <param name="AllowedStaticV">Direct voltage that may stand on the mast: a small share of the gap's hold-off voltage, and low enough to be felt as harmless.</param>
/// <param name="CapacitanceF">Capacitance of the mast.</param>
/// <param name="AllowedLossShare">Share of the transmitter power that may be lost in the drain, e.g. 0.005.</param>
public sealed record DrainRequest(ImmutableArray<DrainBand> Bands, Trail StaticCurrentA, Trail AllowedStaticV, Trail CapacitanceF, double AllowedLossShare = 0.005);

/// <summary>One band's loss in a drain.</summary>
/// <param name="Band">The band.</param>
/// <param name="LossW">Power lost in watts.</param>
/// <param name="Share">Share of the transmitter power.</param>
public sealed record DrainLoss(string Band, Trail LossW, Trail Share);

/// <summary>A drain resistor or choke.</summary>
/// <param name="LowestOhm">Smallest resistance that keeps within the allowed radio-frequency loss.</param>
/// <param name="HighestOhm">Largest resistance that drains the static current within the allowed voltage.</param>
/// <param name="ResistorOhm">The resistance proposed; null when none fits.</param>
/// <param name="RatingW">Power it must stand, twice the loss.</param>
/// <param name="TimeConstantS">Time in which the mast's charge falls to 37 %.</param>
/// <param name="Losses">Loss on each band.</param>
/// <param name="ChokeH">The choke that does the same: reactance at the lowest band for the same loss with a Q of 100.</param>
/// <param name="Checks">Checks.</param>
/// <param name="Findings">Remarks; when no resistor fits, what to do.</param>
public sealed record DrainAnswer(
    Trail LowestOhm, Trail HighestOhm, Trail? ResistorOhm, Trail? RatingW, Trail? TimeConstantS, ImmutableArray<DrainLoss> Losses, Trail ChokeH,
    ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings);

/// <summary>Sizes the resistor or the choke that drains static from an insulated mast.</summary>
public static class StaticDrain
{
    /// <summary>Quality factor counted for a drain choke.</summary>
    public const double ChokeQ = 100;

    private static readonly Source Page = Source.Derived("docs/theory/corona-static.md");

    /// <summary>Sizes the drain.</summary>
    public static DrainAnswer Size(DrainRequest request)
    {
        ArgumentOutOfRangeException.ThrowIfZero(request.Bands.Length);
        var share = Trail.Given("allowed share of the power", "η", request.AllowedLossShare, QuantityKind.Ratio, Source.DesignFile);
        var worst = request.Bands.MaxBy(b => b.BaseRmsV.Value * b.BaseRmsV.Value / b.TransmitterW)!;
        var power = Trail.Given($"transmitter power ({worst.Name})", "P", worst.TransmitterW, QuantityKind.Power, Source.DesignFile);
        var lowest = Trail.Computed("smallest drain resistance", "Rmin", worst.BaseRmsV.Value * worst.BaseRmsV.Value / (request.AllowedLossShare * worst.TransmitterW),
            QuantityKind.Resistance, "Rmin = U²/(η·P), greatest over all bands", Page, worst.BaseRmsV, share, power);
        // Without a current to drain any resistance does; a gigaohm stands for "no upper limit" because dirt on the insulator is already less.
        var highestOhm = request.StaticCurrentA.Value > 0 ? request.AllowedStaticV.Value / request.StaticCurrentA.Value : 1e9;
        var highest = Trail.Computed("largest drain resistance", "Rmax", Math.Min(highestOhm, 1e9), QuantityKind.Resistance,
            "Rmax = Udc/Ip, at most 1 GΩ", Page, request.AllowedStaticV, request.StaticCurrentA);
        var fits = lowest.Value <= highest.Value;
        var chosen = fits
            ? Trail.Computed("drain resistance", "R", Preferred(lowest.Value, highest.Value), QuantityKind.Resistance, "R = preferred value nearest √(Rmin·Rmax)", Page, lowest, highest)
            : null;
        var losses = chosen is null ? [] : Losses(request, chosen);
        var greatest = losses.IsEmpty ? null : losses.MaxBy(l => l.LossW.Value)!.LossW;
        var rating = greatest is null ? null : Trail.Computed("rating of the resistor", "Pr", 2 * greatest.Value, QuantityKind.Power, "Pr = 2·loss", Source.CommonPractice, greatest);
        var time = chosen is null ? null : Trail.Computed("time constant", "τ", chosen.Value * request.CapacitanceF.Value, QuantityKind.Time, "τ = R·C", Page, chosen, request.CapacitanceF);
        return new(lowest, highest, chosen, rating, time, losses, Choke(request, share), Checks(request, chosen, losses), Findings(fits));
    }

    private static ImmutableArray<DrainLoss> Losses(DrainRequest request, Trail ohm) =>
    [
        .. request.Bands.Select(b =>
        {
            var loss = Trail.Computed($"loss in the drain ({b.Name})", "PR", b.BaseRmsV.Value * b.BaseRmsV.Value / ohm.Value, QuantityKind.Power, "PR = U²/R", Page, b.BaseRmsV, ohm);
            return new DrainLoss(b.Name, loss, Trail.Computed($"share lost ({b.Name})", "PR/P", loss.Value / b.TransmitterW, QuantityKind.Ratio, "PR/P", Page, loss,
                Trail.Given("transmitter power", "P", b.TransmitterW, QuantityKind.Power, Source.DesignFile)));
        }),
    ];

    private static Trail Choke(DrainRequest request, Trail share)
    {
        // Loss U²/(Q X) = η P at each band: the band that asks for the most inductance governs.
        var worst = request.Bands.MaxBy(b => b.BaseRmsV.Value * b.BaseRmsV.Value / (b.TransmitterW * b.FrequencyHz))!;
        var reactance = worst.BaseRmsV.Value * worst.BaseRmsV.Value / (ChokeQ * request.AllowedLossShare * worst.TransmitterW);
        return Trail.Computed("drain choke", "L", reactance / (2 * Math.PI * worst.FrequencyHz), QuantityKind.Inductance, "L = U²/(2π·f·Q·η·P), greatest over all bands", Page,
            worst.BaseRmsV, Trail.Given("frequency", "f", worst.FrequencyHz, QuantityKind.Frequency, Source.DesignFile),
            Trail.Assumed("quality factor", "Q", ChokeQ, QuantityKind.Ratio, "an air-wound or large-pitch choke; measure it"), share,
            Trail.Given("transmitter power", "P", worst.TransmitterW, QuantityKind.Power, Source.DesignFile))
            .Within("below the choke's own resonance", null)
            .Remark("Its own resonances must lie outside every band: sweep it before use. A choke drains any static current, and carries part of a strike: put it behind the gap.");
    }

    private static ImmutableArray<Check> Checks(DrainRequest request, Trail? chosen, ImmutableArray<DrainLoss> losses)
    {
        if (chosen is null)
            return [];
        var standing = Trail.Computed("static voltage on the mast", "Udc", request.StaticCurrentA.Value * chosen.Value, QuantityKind.PeakVoltage, "Udc = Ip·R", Page, request.StaticCurrentA, chosen);
        var worst = losses.MaxBy(l => l.Share.Value)!;
        return
        [
            Check.AtMost("survive.drain.static", Trade.Survive, "The drain keeps the static voltage down", standing, request.AllowedStaticV, "greatest point discharge",
                "Take a smaller resistance or a choke.", StaticStudy.Caution),
            Check.AtMost("survive.drain.loss", Trade.Survive, "The drain costs little power", worst.Share,
                Trail.Given("allowed share", "η", request.AllowedLossShare, QuantityKind.Ratio, Source.DesignFile), worst.Band, "Take a larger resistance."),
        ];
    }

    private static ImmutableArray<Finding> Findings(bool fits) => fits
        ? [new("drain-not-a-protector", Severity.Note, "A drain keeps slow charge off the mast; the jump of the field when a nearby cloud discharges is too fast for it, and goes to the gap.")]
        : [new("no-drain-resistor", Severity.Warning, "No resistor both drains the static current and keeps within the allowed loss.",
            WayOut: "Use a choke (or a coil of the network that leads to earth), or feed the band with the highest base voltage otherwise.")];

    // One figure of the E12 series, nearest to the middle in ratio, inside the window.
    private static double Preferred(double low, double high)
    {
        ReadOnlySpan<double> e12 = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];
        var target = Math.Sqrt(low * high);
        var best = target;
        var least = double.PositiveInfinity;
        for (var decade = Math.Floor(Math.Log10(low)); decade <= Math.Ceiling(Math.Log10(high)); decade++)
        {
            foreach (var figure in e12)
            {
                var value = figure * Math.Pow(10, decade);
                var distance = Math.Abs(Math.Log(value / target));
                if (value >= low && value <= high && distance < least)
                    (best, least) = (value, distance);
            }
        }

        return best;
    }
}
