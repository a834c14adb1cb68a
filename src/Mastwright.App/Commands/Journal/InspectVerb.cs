using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal inspect</c>: an inspection by the checklist made from this very design.</summary>
internal static class InspectVerb
{
    private static readonly Option<bool> Sheet = new("--sheet") { Description = "Print the checklist to take along; nothing is written." };
    private static readonly Option<string[]> Seen = new("--seen") { Description = "An item and what was found: key=good, key=\"watch: remark\", key=\"bad: remark\" or key=not-seen. May be given often.", AllowMultipleArgumentsPerToken = true, DefaultValueFactory = _ => [] };
    private static readonly Option<string?> Rest = new("--rest") { Description = "What was found for every item not named: good or not-seen." };

    public static Command Create() => JournalVerb.Adding("inspect", "Note an inspection by the checklist of this design, or print the checklist.", Run, Sheet, Seen, Rest);

    private static int Run(JournalVerb verb)
    {
        var checklist = UpkeepParts.Checklist(verb.Station);
        if (verb.Parsed.GetValue(Sheet))
        {
            return JournalVerb.Show(JournalDocuments.Sheet(verb.Station, checklist));
        }

        var mast = verb.Mast();
        var (id, at, author, text, weather) = verb.Common();
        if (mast is null)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var items = Items(verb, mast, [.. checklist.Where(c => c.Mast == mast.Name)]);
        if (items.IsEmpty && verb.Written.Problems.Count == 0)
        {
            return JournalVerb.Refuse(new Finding("inspection-empty", Severity.Error, "Nothing that was looked at is named.", Written.Place("--seen"), Allowed: "--seen key=state, or --rest good", WayOut: "`--sheet` prints the keys."));
        }

        return verb.Add(() => new InspectionEntry(id, at, mast.Name, author, text, weather, items));
    }

    private static ImmutableArray<InspectedItem> Items(JournalVerb verb, Mast mast, IReadOnlyList<ChecklistItem> checklist)
    {
        var found = Named(verb, mast, checklist, verb.Parsed.GetValue(Seen)!);
        if (verb.Written.Text(Rest) is { } rest)
        {
            if (State(rest) is not { } state || state is ItemState.Watch or ItemState.Bad)
            {
                verb.Written.Problems.Add(new Finding("state-bad", Severity.Error, "The rest can only be good or not seen.", Written.Place("--rest"), rest, "good, not-seen", "Name items to watch and bad ones with --seen."));
                return [];
            }

            foreach (var other in checklist.Where(c => !found.ContainsKey(c.Key)))
            {
                found.Add(other.Key, new InspectedItem(other.Key, other.Label, state));
            }
        }

        return [.. checklist.Where(c => found.ContainsKey(c.Key)).Select(c => found[c.Key])];
    }

    /// <summary>The items named on the command line, by key; what cannot be read becomes a problem.</summary>
    public static Dictionary<string, InspectedItem> Named(JournalVerb verb, Mast mast, IReadOnlyList<ChecklistItem> checklist, IEnumerable<string> seen)
    {
        var found = new Dictionary<string, InspectedItem>();
        foreach (var written in seen)
        {
            if (Item(verb, mast, checklist, written) is { } item && !found.TryAdd(item.Key, item))
            {
                verb.Written.Problems.Add(new Finding("item-twice", Severity.Error, $"“{item.Key}” is named twice.", Written.Place("--seen"), written, WayOut: "Name each item once."));
            }
        }

        return found;
    }

    private static InspectedItem? Item(JournalVerb verb, Mast mast, IReadOnlyList<ChecklistItem> checklist, string written)
    {
        var at = written.IndexOf('=', StringComparison.Ordinal);
        var key = (at < 0 ? written : written[..at]).Trim();
        var item = checklist.FirstOrDefault(c => c.Key.Equals(key, StringComparison.OrdinalIgnoreCase) || c.Key.Equals($"{mast.Name}/{key}", StringComparison.OrdinalIgnoreCase));
        if (item is null)
        {
            var near = NearMiss.Of(key, checklist.Select(c => c.Key[(mast.Name.Length + 1)..]));
            verb.Written.Problems.Add(new Finding("item-unknown", Severity.Error, $"The checklist of mast {mast.Name} has no item “{key}”.", Written.Place("--seen"), written, WayOut: near is null ? "`--sheet` prints the keys." : $"Did you mean “{near}”? `--sheet` prints the keys."));
            return null;
        }

        var value = at < 0 ? "" : written[(at + 1)..];
        var colon = value.IndexOf(':', StringComparison.Ordinal);
        if (State(colon < 0 ? value : value[..colon]) is not { } state)
        {
            verb.Written.Problems.Add(new Finding("state-bad", Severity.Error, "What was found is not said.", Written.Place("--seen"), written, "good, watch, bad, not-seen", $"Write it like {key}=good or {key}=\"bad: what was seen\"."));
            return null;
        }

        return new InspectedItem(item.Key, item.Label, state, colon < 0 ? "" : value[(colon + 1)..].Trim());
    }

    private static ItemState? State(string word) => word.Trim().ToLowerInvariant() switch
    {
        "good" or "ok" => ItemState.Good,
        "watch" => ItemState.Watch,
        "bad" => ItemState.Bad,
        "not-seen" or "not seen" => ItemState.NotSeen,
        _ => null,
    };
}
