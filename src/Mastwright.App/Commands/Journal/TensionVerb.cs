using System.CommandLine;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal tension</c>: a tension from what was read beside the guy.</summary>
internal static class TensionVerb
{
    private static readonly Option<string?> Guy = new("--guy") { Description = "The guy by level and anchor, e.g. 1/north.", Required = true };
    private static readonly Dictionary<string, Option<string?>> Ways = TensionReadings.Ways.ToDictionary(w => w.Key, w => new Option<string?>("--" + w.Key) { Description = $"{Meaning(w.Key)}, e.g. \"{w.Value}\"." });

    public static Command Create() => JournalVerb.Adding("tension", "Note the tension of a guy from a gauge, pulse, swing, pitch, sag, tangent or side pull.", Run, [Guy, .. Ways.Values]);

    private static int Run(JournalVerb verb)
    {
        var given = Ways.Where(w => verb.Written.Text(w.Value) is not null).ToList();
        if (given.Count != 1)
        {
            return JournalVerb.Refuse(new Finding("reading-one", Severity.Error, given.Count == 0 ? "No reading is given." : "Several readings are given; each is an entry of its own.", Written.Place(string.Join(", ", given.Select(g => g.Value.Name))),
                Allowed: string.Join(", ", Ways.Values.Select(w => w.Name)), WayOut: "Give one of these."));
        }

        var mast = verb.Mast();
        var head = verb.Common();
        if (mast is null || verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var (way, raw) = (given[0].Key, verb.Written.Text(given[0].Value)!);
        var (reading, problem) = verb.Take(mast, head.Weather.TemperatureK, verb.Written.Text(Guy)!, way, raw, "--" + way);
        if (reading is null)
        {
            return JournalVerb.Refuse(problem!);
        }

        FindingsView.Write(Shared.Messages(), reading.Remarks);
        var added = verb.Add(() => reading.Entry(head));
        if (added == ExitCode.Pass)
        {
            TerminalDocument.Write(Shared.Output(), TensionReadingDocument.Of(verb.Station, reading.Guy, reading.Found, head.Weather.TemperatureK));
        }

        return added;
    }

    private static string Meaning(string way) => way switch
    {
        "gauge" => "Spring gauge in line at the anchor",
        "pulse" => "Returns of a sideways pulse and their time together",
        "swing" => "Sideways swings of the whole guy and their time together",
        "pitch" => "Pitch of the plucked guy",
        "sag" => "Vertical sag at half span",
        "side-pull" => "Sideways pull, how far the guy gives, and how far from the anchor along it",
        _ => "Where the tangent at the anchor meets the mast, below the guy's pin",
    };
}
