using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal readings</c>: a sheet for a day of tension readings, and the filled-in sheet into the journal with the next turns.</summary>
internal static class ReadingsVerb
{
    private static readonly Option<string?> Sheet = new Option<string?>("--sheet") { Description = "Write the sheet to fill in, a CSV file; nothing is noted." }.NamesFile();
    private static readonly Option<string?> From = new Option<string?>("--from") { Description = "The filled-in sheet: every reading is noted, and the next turns of every turnbuckle are given." }.NamesFile();

    public static Command Create() => JournalVerb.Reading("readings", "Write a sheet of tension readings to fill in, or note a filled-in one and get the next turns.", Run, Sheet, From);

    private static int Run(JournalVerb verb)
    {
        var (sheet, from) = (verb.Written.Text(Sheet), verb.Written.Text(From));
        if (sheet is null == from is null)
        {
            return JournalVerb.Refuse(new Finding("readings-one", Severity.Error, "It is not said what to do with the sheet.", Written.Place("--sheet, --from"), Allowed: "--sheet or --from", WayOut: "--sheet readings.csv writes it, --from readings.csv reads it back."));
        }

        return sheet is not null ? Write(verb, sheet) : Read(verb, from!);
    }

    private static int Write(JournalVerb verb, string path)
    {
        var (text, findings) = Shared.WithProgress(_ => SheetReadings.Sheet(verb.Station, verb.Cancellation));
        if (findings.Length > 0)
        {
            return JournalVerb.Refuse([.. findings]);
        }

        return OutputFile.Write(path, text) is { } problem ? JournalVerb.Refuse(problem) : JournalVerb.Say($"Wrote {path}: fill it in and give it back with --from.");
    }

    private static int Read(JournalVerb verb, string path)
    {
        var (text, unread) = OutputFile.Read(path);
        if (text is null)
        {
            return JournalVerb.Refuse(unread!);
        }

        var reading = Shared.WithProgress(_ => SheetReadings.Entries(verb.Station, text, path, verb.Written.MomentOf, verb.Cancellation));
        if (reading.Value is not { } entries)
        {
            return JournalVerb.Refuse([.. reading.Findings]);
        }

        FindingsView.Write(Shared.Messages(), reading.Findings);
        var added = verb.Open(write: true, store => store.AddAll(entries) is { Problem: { } problem } ? JournalVerb.Refuse(problem) : JournalVerb.Say($"Noted {entries.Count} readings in {verb.Path}."));
        return added == ExitCode.Pass ? JournalVerb.Show(Shared.WithProgress(_ => SheetReadings.Document(verb.Station, entries, verb.Cancellation))) : added;
    }
}
