using System.CommandLine;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal storm</c>: a storm, what the model says it did, and what is to be looked at.</summary>
internal static class StormVerb
{
    private static readonly Option<string?> Gust = new("--gust") { Description = "Strongest gust, e.g. \"31 m/s\" or \"70 mph\"." };
    private static readonly Option<string?> Ice = new("--ice") { Description = "Radial ice, e.g. \"8 mm\"." };
    private static readonly Option<bool> Lightning = new("--lightning") { Description = "Lightning struck here or near." };
    private static readonly Option<string?> From = new("--from") { Description = "Bearing the wind came from, e.g. \"240 °\"; left out, all round is looked at." };
    private static readonly Option<string?> Ended = new("--ended") { Description = "When it ended." };
    private static readonly Option<bool> Try = new("--try") { Description = "Only say what it would do; nothing is written." };

    public static Command Create() => JournalVerb.Adding("storm", "Note a storm: what the model says it did, and which checks are due.", Run, Gust, Ice, Lightning, From, Ended, Try);

    private static int Run(JournalVerb verb)
    {
        var (id, at, author, text, weather) = verb.Common();
        var gust = verb.Written.Quantity(Gust, QuantityKind.Speed, 0, Analysis.Keep.StormReplay.GreatestGustMPerS);
        var ice = verb.Written.Quantity(Ice, QuantityKind.FineLength, 0, 0.2);
        var from = verb.Written.Quantity(From, QuantityKind.Angle, -2 * Math.PI, 4 * Math.PI);
        var ended = verb.Written.MomentOrNull(Ended, endOfDay: true);
        var storm = new StormEntry(id, at, "", author, text, weather, ended, gust, ice, verb.Parsed.GetValue(Lightning));
        if (verb.Written.Problems.Count == 0 && gust is null && ice is null && !storm.Lightning)
        {
            return JournalVerb.Refuse(new Finding("storm-empty", Severity.Error, "Nothing is said about the storm.", Written.Place("--gust"), Allowed: "--gust, --ice, --lightning", WayOut: "Give at least one of these; for anything else write a note."));
        }

        if (verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        // What was reported is safe before the long work starts.
        if (!verb.Parsed.GetValue(Try) && verb.Add(() => storm) is var added and not ExitCode.Pass)
        {
            return added;
        }

        var document = Shared.WithProgress(progress =>
        {
            progress?.Report(new Analysis.AnalysisStep("Loading the masts with the storm", 0));
            return StormStudy.Of(verb.Station, storm, from, UpkeepParts.Checklist(verb.Station), verb.Cancellation);
        });
        TerminalDocument.Write(Shared.Output(), document);

        // The storm is noted whatever the model says of it.
        return ExitCode.Pass;
    }
}
