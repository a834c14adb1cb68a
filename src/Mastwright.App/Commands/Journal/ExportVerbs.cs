using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Journal;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Export;
using Mastwright.Model.Trails;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal export</c> and <c>journal import</c>: everything as JSON or CSV, and back without loss.</summary>
internal static class ExportVerbs
{
    private static readonly Option<string?> To = new Option<string?>("--to") { Description = "A .json file, or a folder for CSV tables.", Required = true }.NamesFile();
    private static readonly Option<string?> From = new Option<string?>("--from") { Description = "A .json file, or a folder of CSV tables, as the export wrote them.", Required = true }.NamesFile();

    public static Command Export() => JournalVerb.Reading("export", "Write everything as one JSON file or a folder of CSV tables.", Export, To);

    public static Command Import() => JournalVerb.Reading("import", "Take in an export; what is here already is passed over.", Import, From);

    private static int Export(JournalVerb verb) => verb.Open(write: false, store =>
    {
        var content = store.Content();
        if (content.Value is not { } all)
        {
            return JournalVerb.Refuse(content.Problem!);
        }

        var to = verb.Written.Text(To)!;
        var problem = IsJson(to) ? OutputFile.Write(to, JournalJson.Write(all)) : Tables(to, all);
        return problem is null ? JournalVerb.Say($"Wrote {all.Entries.Length} entries to {to}.") : JournalVerb.Refuse(problem);
    });

    private static Finding? Tables(string folder, JournalContent content)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Finding("folder-unwritable", Severity.Error, "The folder cannot be made: " + e.Message, new Place(folder, 0, 0, ""), folder, WayOut: "Choose another name, or one ending in .json for a single file.");
        }

        return JournalCsv.Write(content).Select(t => OutputFile.Write(Path.Combine(folder, t.Key), t.Value)).FirstOrDefault(f => f is not null);
    }

    private static int Import(JournalVerb verb)
    {
        var from = verb.Written.Text(From)!;
        var (content, problem) = IsJson(from) ? Json(from) : Csv(from);
        return content is null
            ? JournalVerb.Refuse(problem!)
            : verb.Open(write: true, store => store.Import(content) is { Problem: { } failed } ? JournalVerb.Refuse(failed) : JournalVerb.Say($"Took in {content.Entries.Length} entries from {from}."));
    }

    private static (JournalContent? Content, Finding? Problem) Json(string path)
    {
        var (text, problem) = OutputFile.Read(path);
        return text is null ? (null, problem) : Of(JournalJson.Read(text, path));
    }

    private static (JournalContent? Content, Finding? Problem) Csv(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return (null, new Finding("no-folder", Severity.Error, "There is no such folder.", new Place(folder, 0, 0, ""), folder, WayOut: "Name the folder the CSV export wrote, or a .json file."));
        }

        var tables = new Dictionary<string, string>();
        foreach (var file in Directory.EnumerateFiles(folder, "*.csv"))
        {
            var (text, problem) = OutputFile.Read(file);
            if (text is null)
            {
                return (null, problem);
            }

            tables[Path.GetFileName(file)] = text;
        }

        return Of(JournalCsv.Read(tables));
    }

    private static (JournalContent?, Finding?) Of(Outcome<JournalContent> outcome) => (outcome.Value, outcome.Problem);

    private static bool IsJson(string path) => path.EndsWith(".json", StringComparison.OrdinalIgnoreCase);
}
