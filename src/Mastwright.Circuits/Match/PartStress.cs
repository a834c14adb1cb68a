using System.Collections.Immutable;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>What one part of a match goes through at full power, with trails.</summary>
/// <param name="Name">Reference name, e.g. <c>L1</c>.</param>
/// <param name="Title">What it is.</param>
/// <param name="Value">Its value with its trail; null for what has none, such as the base insulator of a measured mast.</param>
/// <param name="PeakVoltage">Crest voltage across it, V.</param>
/// <param name="Current">RMS current through it, A.</param>
/// <param name="Heat">Heat in it, W.</param>
public sealed record PartStress(string Name, string Title, Trail? Value, Trail PeakVoltage, Trail Current, Trail Heat)
{
    private static readonly Source Solver = Source.Derived("docs/theory/circuits-nodal.md");

    /// <summary>Every part of a match, the one at the line first.</summary>
    public static ImmutableArray<PartStress> Of(MatchCandidate candidate)
    {
        var problem = candidate.Problem;
        var stated = new Source("the problem as stated", SourceKind.Design);
        var z = problem.Load.At(problem.FrequencyHz)[0, 0];
        Trail[] given =
        [
            Trail.Given("transmitter power", "P", problem.PowerW, QuantityKind.Power, stated),
            Trail.Given("frequency", "f", problem.FrequencyHz, QuantityKind.Frequency, stated),
            Trail.Given("load resistance", "R", z.Real, QuantityKind.Resistance, stated),
            Trail.Given("load reactance", "X", z.Imaginary, QuantityKind.Resistance, stated),
        ];
        var values = candidate.Ladder.Sections.Select((s, i) => s.Why ?? Trail.Given(s.Title, candidate.Ladder.NameOf(i), s.Value, s.ValueKind, new("the network as chosen", SourceKind.Design))).ToArray();
        Trail[] inputs = [.. given, .. values];
        var rows = ImmutableArray.CreateBuilder<PartStress>();
        foreach (var part in candidate.NetworkParts)
        {
            var index = Enumerable.Range(0, values.Length).FirstOrDefault(i => part.Name == candidate.Ladder.NameOf(i) || part.Name == candidate.Ladder.NameOf(i) + "b", -1);
            rows.Add(Row(part, index < 0 ? part.Name : candidate.Ladder.Sections[index].Title, index < 0 ? null : values[index], inputs));
        }

        return rows.ToImmutable();
    }

    private static PartStress Row(PartState part, string title, Trail? value, Trail[] inputs)
    {
        const string Solved = "nodal solution of the whole network with the losses of its parts";
        var volts = Trail.Computed($"voltage across {part.Name}", "V", part.HighestVoltage.Value, QuantityKind.RmsVoltage, Solved, Solver, inputs);
        var amps = Trail.Computed($"current through {part.Name}", "I", part.HighestCurrent.Value, QuantityKind.RmsCurrent, Solved, Solver, inputs);
        return new(
            part.Name,
            title,
            value,
            Trail.Computed($"peak voltage across {part.Name}", "Vp", part.PeakVoltage.Value, QuantityKind.PeakVoltage, "Vp = √2·V", Solver, volts),
            amps,
            Trail.Computed($"heat in {part.Name}", "P", part.DissipationW, QuantityKind.Power, part.Part is Line ? "power into one end less power out of the other" : "P = I²·R of the part's loss", Solver, volts, amps));
    }
}
