using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;

namespace Mastwright.App.Commands.Journal;

/// <summary>Finds an entry by the end of its key, as it is shown, or by the beginning.</summary>
internal static class EntryKey
{
    private const int FewestCharacters = 4;

    public static (JournalEntry? Entry, Finding? Problem) Find(JournalVerb verb, string key)
    {
        var (entries, problem) = verb.Entries();
        if (entries is null)
        {
            return (null, problem);
        }

        var bare = key.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant();
        var found = bare.Length < FewestCharacters ? [] : entries.Where(e => Names(e.Id.ToString("N", CultureInfo.InvariantCulture), bare)).ToList();
        return found.Count switch
        {
            1 => (found[0], null),
            0 => (null, new Finding("entry-none", Severity.Error, "There is no entry with this key.", Written.Place("--key"), key, $"at least {FewestCharacters} characters of a key", "`mastwright journal list` shows the keys.")),
            _ => (null, new Finding("entry-many", Severity.Error, $"{found.Count} entries have keys that begin or end so.", Written.Place("--key"), key, WayOut: "Give more of the key; `mastwright journal show` takes the whole one.")),
        };
    }

    private static bool Names(string key, string part) => key.EndsWith(part, StringComparison.Ordinal) || key.StartsWith(part, StringComparison.Ordinal);
}
