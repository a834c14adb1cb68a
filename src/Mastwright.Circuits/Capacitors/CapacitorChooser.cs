using System.Collections.Immutable;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Capacitors;

/// <summary>What a capacitor must do.</summary>
/// <param name="CapacitanceF">Capacitance wanted, farads.</param>
/// <param name="FrequencyHz">Frequency, hertz.</param>
/// <param name="Voltage">Peak voltage across it at full power.</param>
/// <param name="Current">RMS current through it at full power.</param>
/// <param name="DutyRatio">Average over peak power of the mode; heating follows it, breakdown does not.</param>
/// <param name="PeakFactor">Crest with modulation over the peak voltage at the stated power; breakdown follows it, heating does not.</param>
public sealed record CapacitorDuty(double CapacitanceF, double FrequencyHz, PeakVolts Voltage, RmsAmps Current, double DutyRatio = 1, double PeakFactor = 1);

/// <summary>A bank of like capacitors that does the duty, with its checks.</summary>
/// <param name="Item">The capacitor.</param>
/// <param name="InSeries">How many in series.</param>
/// <param name="InParallel">How many such strings in parallel.</param>
/// <param name="CapacitanceF">What the bank gives (variable ones set to the wanted value), farads.</param>
/// <param name="Checks">Voltage and current against rating.</param>
public sealed record CapacitorBank(CapacitorItem Item, int InSeries, int InParallel, double CapacitanceF, ImmutableArray<Check> Checks)
{
    /// <summary>Number of capacitors.</summary>
    public int Count => InSeries * InParallel;

    /// <summary>Price of the bank; null when unknown.</summary>
    public double? Price => Item.Price * Count;

    /// <summary>The worst use of a rating.</summary>
    public double WorstUse => Checks.Max(c => c.Ratio);
}

/// <summary>Chooses capacitors against their ratings.</summary>
public static class CapacitorChooser
{
    private static readonly Source Page = Source.Derived("docs/theory/circuits-capacitors.md");

    /// <summary>Holds one capacitor, or a bank of like ones, against a duty.</summary>
    public static CapacitorBank Try(CapacitorItem item, CapacitorDuty duty, int inSeries = 1, int inParallel = 1)
    {
        var scale = (double)inParallel / inSeries;
        var set = Math.Clamp(duty.CapacitanceF, item.LowestF * scale, item.HighestF * scale);
        var stated = new Source("the network's solution", SourceKind.Derived);
        var maker = new Source(item.Name, SourceKind.MakerData);
        var volts = Trail.Given("peak voltage across the bank", "Vp", duty.Voltage.Value, QuantityKind.PeakVoltage, stated);
        var amps = Trail.Given("current through the bank", "I", duty.Current.Value, QuantityKind.RmsCurrent, stated);
        var one = Trail.Computed("peak voltage on one", "Vp1", duty.PeakFactor * duty.Voltage.Value / inSeries, QuantityKind.PeakVoltage, "Vp1 = m·Vp/n, n in series, shared evenly", Page, volts, CrestFactor.Of(duty.PeakFactor));
        var heating = Trail.Computed("heating current in one", "I1", duty.Current.Value / inParallel * Math.Sqrt(duty.DutyRatio), QuantityKind.RmsCurrent, "I/m in parallel·√η", Page, amps);
        return new(item, inSeries, inParallel, set,
        [
            Check.AtMost("feed.capacitor.voltage", Trade.Feed, $"{item.Name}: peak voltage", one, Trail.Given("peak rating", "Vr", item.PeakRating.Value, QuantityKind.PeakVoltage, maker), FormattableString.Invariant($"{duty.FrequencyHz / 1e6:0.###} MHz, full power"), "Put more in series, or take one of higher rating.", "High voltage: switch off, ground and wait before touching."),
            Check.AtMost("feed.capacitor.current", Trade.Feed, $"{item.Name}: heating current", heating, Trail.Given("current rating at the frequency", "Ir", item.CurrentAllowedAt(duty.FrequencyHz).Value, QuantityKind.RmsCurrent, maker), FormattableString.Invariant($"{duty.FrequencyHz / 1e6:0.###} MHz, full power"), "Put more in parallel, or take one of higher rating."),
        ]);
    }

    /// <summary>
    /// The banks of up to four by four like capacitors that give the wanted value within the tolerance and stay within
    /// nine tenths of every rating; cheapest, then fewest first. A finding names the nearest when none does.
    /// </summary>
    /// <param name="stock">What can be had.</param>
    /// <param name="duty">What is asked.</param>
    /// <param name="tolerance">Allowed relative error of the value.</param>
    public static (ImmutableArray<CapacitorBank> Banks, ImmutableArray<Finding> Findings) Choose(IEnumerable<CapacitorItem> stock, CapacitorDuty duty, double tolerance = 0.05)
    {
        // Nobody gangs more than two capacitors that are turned.
        var all = (from item in stock
                   from s in Enumerable.Range(1, 4)
                   from p in Enumerable.Range(1, 4)
                   where !item.IsVariable || s * p <= 2
                   select Try(item, duty, s, p)).ToList();
        bool Right(CapacitorBank b) => Math.Abs((b.CapacitanceF / duty.CapacitanceF) - 1) <= tolerance;
        var good = all.Where(b => Right(b) && b.WorstUse <= Check.CautionRatio)
            .GroupBy(b => b.Item)
            .Select(g => g.MinBy(b => b.Count)!)
            .OrderBy(b => b.Price ?? double.MaxValue).ThenBy(b => b.Count).ThenBy(b => b.WorstUse)
            .ToImmutableArray();
        if (!good.IsEmpty)
            return (good, []);
        var nearest = all.OrderBy(b => Right(b) ? 0 : 1).ThenBy(b => b.WorstUse).FirstOrDefault();
        var wanted = FormattableString.Invariant($"{duty.CapacitanceF * 1e12:0.#} pF, {duty.PeakFactor * duty.Voltage.Value:0} V peak, {duty.Current.Value:0.##} A");
        var near = nearest is null ? null : FormattableString.Invariant($"nearest: {nearest.InSeries} in series × {nearest.InParallel} in parallel of {nearest.Item.Name}, {nearest.CapacitanceF * 1e12:0.#} pF at {nearest.WorstUse:P0} of rating");
        return ([], [new("capacitor-rating", Severity.Error, "No capacitor in stock, alone or in banks of up to four by four, gives this value within its ratings.", Value: wanted, Allowed: near, WayOut: "Add a vacuum capacitor or one of higher rating to the stock, or choose a network with less voltage.")]);
    }
}
