using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>What a builder should know about a candidate before choosing it.</summary>
internal static class MatchRemarks
{
    public static ImmutableArray<Finding> On(MatchCandidate candidate)
    {
        var remarks = ImmutableArray.CreateBuilder<Finding>();
        if (!candidate.DrainsStatic)
            remarks.Add(new("match-no-drain", Severity.Warning, "Static charge on the mast has no way to ground through this network.", WayOut: "Add a choke or a resistor from the base to ground, or take a network with a coil to ground."));
        if (candidate.Swr > 1.5)
            remarks.Add(new("match-leftover", Severity.Warning, "The network leaves a mismatch at the design frequency.", Value: Text(candidate.Swr, "0.00"), Allowed: "1.5", WayOut: "Take a network with one more element."));
        if (candidate.LossDb > 1)
            remarks.Add(new("match-lossy", Severity.Warning, "The network turns more than a fifth of the power into heat.", Value: Text(candidate.LossDb, "0.0") + " dB", WayOut: "Use a coil of higher Q, a taller or top-loaded mast, or another network."));
        for (var i = 0; i < candidate.Ladder.Sections.Length; i++)
            if (Unwieldy(candidate.Ladder.Sections[i], candidate.Problem) is { } what)
                remarks.Add(new("match-value", Severity.Warning, $"{candidate.Ladder.NameOf(i)} is hard to make: {what}.", WayOut: "Take another network."));
        if (!candidate.Problem.Load.VariesWithFrequency)
            remarks.Add(new("match-constant-load", Severity.Note, "The bandwidth is that of the network alone: the load was given at one frequency.", WayOut: "Give the antenna's impedance over frequency."));
        else if (candidate.Problem.Band is var (low, high) && !(candidate.Problem.Load.Covers(low) && candidate.Problem.Load.Covers(high)))
            remarks.Add(new("match-table-short", Severity.Warning, "The antenna's impedance is not known over the whole band; beyond its table the end value was held.", WayOut: "Compute or measure the impedance to the band's edges."));
        return remarks.ToImmutable();
    }

    // Limits of what is commonly wound, bought and cut (common practice, no source).
    internal static string? Unwieldy(LadderSection section, MatchProblem problem) => section switch
    {
        LineSection line when !problem.Lines.Contains(line.Type) => $"no line of {Text(line.Type.CharacteristicOhm, "0.#")} Ω is sold",
        StubSection stub when !problem.Lines.Contains(stub.Type) => $"no line of {Text(stub.Type.CharacteristicOhm, "0.#")} Ω is sold",
        { ValueKind: QuantityKind.Inductance, Value: > 150e-6 } => $"{Text(section.Value * 1e6, "0")} µH",
        { ValueKind: QuantityKind.Inductance, Value: < 0.05e-6 } => $"{Text(section.Value * 1e9, "0")} nH, no more than a piece of wire",
        { ValueKind: QuantityKind.Capacitance, Value: < 5e-12 } => $"{Text(section.Value * 1e12, "0.0")} pF, no more than strays",
        { ValueKind: QuantityKind.Capacitance, Value: > 10e-9 } => $"{Text(section.Value * 1e9, "0.0")} nF",
        { ValueKind: QuantityKind.Length, Value: > 60 } => $"{Text(section.Value, "0")} m of line",
        _ => null,
    };

    private static string Text(double value, string format) => value.ToString(format, System.Globalization.CultureInfo.InvariantCulture);
}
