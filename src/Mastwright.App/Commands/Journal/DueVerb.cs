using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Journal.Due;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal due</c>: what is to be looked at when.</summary>
internal static class DueVerb
{
    private static readonly Option<string?> Built = new("--built") { Description = "Day the station was built or last gone through; left out, the day of the first entry." };
    private static readonly Option<int> Within = new("--within") { Description = "How many days to look ahead.", DefaultValueFactory = _ => 60 };
    private static readonly Option<string?> Today = new("--today") { Description = "The day to count from; left out, today." };
    private static readonly Option<string?> Calendar = new Option<string?>("--calendar") { Description = "Also write everything due as an iCalendar file (RFC 5545) for your calendar." }.NamesFile();

    public static Command Create() => JournalVerb.Reading("due", "Show what is due, and write it for your calendar. Exits with 1 when something is overdue.", Run, Built, Within, Today, Calendar);

    private static int Run(JournalVerb verb)
    {
        var today = (verb.Written.MomentOrNull(Today, endOfDay: false) ?? Written.Now()).Date;
        var built = verb.Written.MomentOrNull(Built, endOfDay: false)?.Date;
        var within = verb.Parsed.GetValue(Within);
        if (within is < 0 or > 36500)
        {
            verb.Written.Problems.Add(new Finding("value-range", Severity.Error, "The days to look ahead cannot be.", Written.Place("--within"), $"{within}", "0 to 36500", "Give a number of days."));
        }

        if (verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var (entries, problem) = verb.Entries(mustExist: false);
        if (entries is null)
        {
            return JournalVerb.Refuse(problem!);
        }

        var from = built ?? (entries.Count > 0 ? entries[0].At.Date : today);
        var due = DueList.For(UpkeepParts.Checklist(verb.Station), entries, from);
        if (verb.Written.Text(Calendar) is { } file)
        {
            if (OutputFile.Write(file, DueCalendar.Write(verb.Station.Name, due, Written.Now().ToInstant())) is { } unwritten)
            {
                return JournalVerb.Refuse(unwritten);
            }

            Console.Out.WriteLine($"Wrote {due.Length} events to {file}.");
        }

        return JournalVerb.Show(JournalDocuments.Due(verb.Station, due, today, within));
    }
}
