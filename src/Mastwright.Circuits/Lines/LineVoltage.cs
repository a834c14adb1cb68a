using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Lines;

/// <summary>A length of line inside a network or a group's feed against its working voltage.</summary>
internal static class LineVoltage
{
    private static readonly Source Page = Source.Derived("docs/theory/circuits-capacitors.md");

    /// <summary>The highest voltage along the line, modulation included, against the rating of its kind; null when that is not known.</summary>
    /// <param name="name">Name of the part.</param>
    /// <param name="type">Kind of line.</param>
    /// <param name="state">The line in the solution at the stated power.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="peakFactor">Crest with modulation over the crest at the stated power.</param>
    public static Check? Check(string name, LineType type, PartState state, double frequencyHz, double peakFactor)
    {
        if (type.PeakRating is not { } rating)
            return null;
        var volts = Trail.Given("highest peak voltage along the line", "Vp", state.PeakVoltage.Value, QuantityKind.PeakVoltage, new Source("the network's solution", SourceKind.Derived));
        var crest = Trail.Computed("highest peak voltage along the line with modulation", "Vm", peakFactor * state.PeakVoltage.Value, QuantityKind.PeakVoltage, "Vm = m·Vp", Page, volts, CrestFactor.Of(peakFactor));
        return Model.Trails.Check.AtMost($"feed.line.voltage[{name}]", Trade.Feed, $"{name}, {type.Name}: voltage along it", crest,
            Trail.Given("peak rating", "Vr", rating.Value, QuantityKind.PeakVoltage, new Source(type.Name, SourceKind.MakerData)),
            FormattableString.Invariant($"{frequencyHz / 1e6:0.###} MHz, full power"), "Take another network, or a heavier line.", "High voltage: switch off, ground and wait before touching.");
    }

    /// <summary>What to say of a line that does not stand its voltage; null when it does.</summary>
    /// <param name="name">Name of the part.</param>
    /// <param name="check">Its check.</param>
    public static Finding? Fault(string name, Check? check) => check is not { Verdict: Verdict.Fail } ? null
        : new("line-rating", Severity.Error, $"{name}: the line does not stand the voltage along it.", Value: FormattableString.Invariant($"{check.Demand.Value:0} V peak"),
            Allowed: FormattableString.Invariant($"{check.Capacity.Value:0} V"), WayOut: "Take another network, less power, or a heavier line.");
}
