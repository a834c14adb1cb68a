using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;

namespace Mastwright.App.Commands.Journal;

/// <summary>Finds an entry by the beginning of its key.</summary>
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
        var found = bare.Length < FewestCharacters ? [] : entries.Where(e => e.Id.ToString("N", CultureInfo.InvariantCulture).StartsWith(bare, StringComparison.Ordinal)).ToList();
        return found.Count switch
        {
            1 => (found[0], null),
            0 => (null, new Finding("entry-none", Severity.Error, "There is no entry with this key.", Written.Place("--key"), key, $"at least {FewestCharacters} characters of a key", "`mastwright journal list` shows the keys.")),
            _ => (null, new Finding("entry-many", Severity.Error, $"{found.Count} entries have keys that begin so.", Written.Place("--key"), key, WayOut: "Give more of the key; `mastwright journal show` takes the whole one.")),
        };
    }
}
