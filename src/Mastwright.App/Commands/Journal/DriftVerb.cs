using System.CommandLine;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal drift</c>: trends of tensions and resonances.</summary>
internal static class DriftVerb
{
    private static readonly Option<string?> Tension = new("--tension-limit") { Description = "Allowed deviation of a tension from the table, as a share of its set value.", DefaultValueFactory = _ => "15 %" };
    private static readonly Option<string?> Resonance = new("--resonance-limit") { Description = "Allowed deviation of a resonance from the first sweep.", DefaultValueFactory = _ => "1 %" };

    public static Command Create() => JournalVerb.Reading("drift", "Show how tensions and resonances drift. Exits with 1 when one is outside its limit.", Run, Tension, Resonance);

    private static int Run(JournalVerb verb)
    {
        var tension = verb.Written.Quantity(Tension, QuantityKind.Ratio, 0.001, 10);
        var resonance = verb.Written.Quantity(Resonance, QuantityKind.Ratio, 1e-5, 1);
        if (verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var (entries, problem) = verb.Entries();
        if (entries is null)
        {
            return JournalVerb.Refuse(problem!);
        }

        var reports = Shared.WithProgress(_ => DriftStudy.Judge(verb.Station, entries, tension!.Value, resonance!.Value, Written.Now().ToInstant(), verb.Cancellation));
        return JournalVerb.Show(DriftStudy.Document(verb.Station, reports));
    }
}
