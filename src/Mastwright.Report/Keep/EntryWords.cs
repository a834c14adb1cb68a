using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.Report.Keep;

/// <summary>Entries of the journal in words.</summary>
public static class EntryWords
{
    private static readonly OffsetDateTimePattern Minute = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm o<m>");

    /// <summary>A moment to the minute, with the offset of its clock.</summary>
    public static string When(OffsetDateTime at) => Minute.Format(at);

    /// <summary>The end of an entry's key, enough to name it. Its beginning is the time it was noted: entries of one minute begin alike.</summary>
    public static string Key(JournalEntry entry) => Key(entry.Id);

    private static string Key(Guid id) => id.ToString("N", CultureInfo.InvariantCulture)[^8..];

    /// <summary>One line of what an entry says.</summary>
    public static string Summary(JournalEntry entry, UnitSystem units)
    {
        string Show(double value, QuantityKind kind, int digits = 3) => QuantityFormat.Show(value, kind, units, digits);
        var own = entry switch
        {
            TensionEntry t => $"guy {t.Guy}: {Show(t.TensionN, QuantityKind.Force)}{(t.UncertaintyN is { } u ? $" ± {Show(u, QuantityKind.Force, 2)}" : "")} by {t.Method} ({t.Raw})",
            SweepEntry s => $"{s.Samples.Length} points, {Show(s.Samples[0].FrequencyHz, QuantityKind.Frequency, 5)} to {Show(s.Samples[^1].FrequencyHz, QuantityKind.Frequency, 5)} at the {s.Plane}{(s.SourceName.Length > 0 ? $", from {s.SourceName}" : "")}",
            InspectionEntry i => string.Join(", ", i.Items.GroupBy(x => x.State).OrderBy(g => g.Key).Select(g => $"{g.Count()} {Word(g.Key)}")),
            PhotoEntry p => p.Path + (p.About is { } about ? $", about {Key(about)}" : ""),
            StormEntry s => string.Join(", ", new[] { s.GustMs is { } g ? $"gust {Show(g, QuantityKind.Speed)}" : null, s.IceM > 0 ? $"ice {Show(s.IceM.Value, QuantityKind.FineLength)}" : null, s.Lightning ? "lightning" : null }.OfType<string>()),
            _ => "",
        };
        return entry.Text.Length == 0 ? own : own.Length == 0 ? entry.Text : $"{own}; {entry.Text}";
    }

    /// <summary>The weather of an entry; empty when nothing was noted.</summary>
    public static string Weather(JournalEntry entry, UnitSystem units) => string.Join(", ", new[]
    {
        entry.Weather.TemperatureK is { } k ? QuantityFormat.Show(k, QuantityKind.Temperature, units, 3) : null,
        entry.Weather.WindMs is { } w ? "wind " + QuantityFormat.Show(w, QuantityKind.Speed, units, 2) : null,
        entry.Weather.Words.Length > 0 ? entry.Weather.Words : null,
    }.OfType<string>());

    /// <summary>A state in one word.</summary>
    public static string Word(ItemState state) => state switch
    {
        ItemState.Good => "good",
        ItemState.Watch => "to watch",
        ItemState.Bad => "bad",
        _ => "not seen",
    };

    /// <summary>The verdict a state amounts to.</summary>
    public static Verdict Of(ItemState state) => state switch
    {
        ItemState.Good => Verdict.Pass,
        ItemState.Bad => Verdict.Fail,
        _ => Verdict.Caution,
    };
}
