using System.CommandLine;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal</c>: the memory of a station.</summary>
internal static class JournalCommand
{
    public static Command Create() => new("journal", "Keep the station's journal: readings, inspections, storms, what is due, what drifts.")
    {
        TensionVerb.Create(),
        ReadingsVerb.Create(),
        InspectVerb.Create(),
        StormVerb.Create(),
        NoteVerbs.Note(),
        NoteVerbs.Photo(),
        ReadVerbs.List(),
        ReadVerbs.Show(),
        DueVerb.Create(),
        DriftVerb.Create(),
        ReadVerbs.Changes(),
        CorrectVerb.Create(),
        StrikeVerb.Create(),
        ExportVerbs.Export(),
        ExportVerbs.Import(),
        FileVerbs.Backup(),
        FileVerbs.Restore(),
        FileVerbs.Check(),
    };
}
