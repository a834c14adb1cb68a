using System.Globalization;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Journal.Entries;

/// <summary>What every entry must be before it is stored: numbers finite and possible, words storable.</summary>
internal static class EntryChecks
{
    public static Finding? Fault(JournalEntry entry) => Times(entry) ?? Texts(entry) ?? Numbers(entry);

    private static Finding? Times(JournalEntry entry)
    {
        foreach (var time in (OffsetDateTime?[])[entry.At, (entry as StormEntry)?.Ended])
        {
            if (time is { } t && (t.Calendar != CalendarSystem.Iso || t.Year is < 1900 or > 9998))
                return Problem(entry, "time", t.ToString(), "a date of the common calendar, years 1900 to 9998");
        }
        return null;
    }

    private static Finding? Texts(JournalEntry entry)
    {
        foreach (var (name, text) in AllTexts(entry))
        {
            if (text is null) return Problem(entry, name, null, "words, or nothing");
            for (var i = 0; i < text.Length; i++)
            {
                var paired = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
                if (paired) i++;
                else if (char.IsSurrogate(text[i]) || (char.IsControl(text[i]) && text[i] is not ('\n' or '\r' or '\t')))
                    return Problem(entry, name, string.Create(CultureInfo.InvariantCulture, $"character U+{(int)text[i]:X4} at {i + 1}"), "characters that can be shown, line ends and tabs");
            }
        }
        return null;
    }

    private static IEnumerable<(string Name, string? Text)> AllTexts(JournalEntry entry)
    {
        yield return ("mast", entry.Mast);
        yield return ("author", entry.Author);
        yield return ("text", entry.Text);
        yield return ("weather", entry.Weather.Words);
        switch (entry)
        {
            case TensionEntry t:
                yield return ("guy", t.Guy);
                yield return ("method", t.Method);
                yield return ("raw reading", t.Raw);
                break;
            case SweepEntry s:
                yield return ("plane", s.Plane);
                yield return ("file name", s.SourceName);
                yield return ("file text", s.SourceText);
                break;
            case InspectionEntry i:
                foreach (var item in i.Items)
                {
                    yield return ("item key", item.Key);
                    yield return ("item label", item.Label);
                    yield return ("item remark", item.Remark);
                }
                break;
            case PhotoEntry p:
                yield return ("path", p.Path);
                yield return ("digest", p.Sha256);
                break;
        }
    }

    private static Finding? Numbers(JournalEntry entry)
    {
        Finding? Need(string name, double? value, bool holds, string allowed) =>
            value is null || (double.IsFinite(value.Value) && holds) ? null : Problem(entry, name, value.Value.ToString(CultureInfo.InvariantCulture), allowed);
        var weather = Need("temperature", entry.Weather.TemperatureK, entry.Weather.TemperatureK > 0, "above 0 K") ?? Need("wind", entry.Weather.WindMs, entry.Weather.WindMs >= 0, "0 m/s and above");
        if (weather is not null) return weather;
        switch (entry)
        {
            case TensionEntry t:
                return t.Guy.Length == 0 ? Problem(entry, "guy", "", "the name of a guy")
                    : Need("tension", t.TensionN, t.TensionN >= 0, "0 N and above") ?? Need("uncertainty", t.UncertaintyN, t.UncertaintyN >= 0, "0 N and above");
            case SweepEntry s:
                if (s.Samples.IsDefaultOrEmpty) return Problem(entry, "samples", "none", "at least one frequency");
                if (Need("reference", s.ReferenceOhm, s.ReferenceOhm > 0, "above 0 Ω") is { } r) return r;
                for (var i = 0; i < s.Samples.Length; i++)
                {
                    var p = s.Samples[i];
                    if ((Need("frequency", p.FrequencyHz, p.FrequencyHz >= 0 && (i == 0 || p.FrequencyHz > s.Samples[i - 1].FrequencyHz), "rising from one to the next")
                        ?? Need("resistance", p.ResistanceOhm, true, "finite") ?? Need("reactance", p.ReactanceOhm, true, "finite")) is { } bad) return bad;
                }
                return null;
            case InspectionEntry i:
                return i.Items.IsDefaultOrEmpty ? Problem(entry, "items", "none", "at least one line") : null;
            case StormEntry s:
                return Need("gust", s.GustMs, s.GustMs >= 0, "0 m/s and above") ?? Need("ice", s.IceM, s.IceM >= 0, "0 m and above")
                    ?? (s.Ended is { } ended && ended.ToInstant() < s.At.ToInstant() ? Problem(entry, "end", ended.ToString(), "not before it began") : null);
            case PhotoEntry p:
                return p.Path.Length == 0 ? Problem(entry, "path", "", "the path of the photo") : null;
            default:
                return null;
        }
    }

    private static Finding Problem(JournalEntry entry, string field, string? value, string allowed) =>
        new("entry-bad", Severity.Error, $"The {field} of this {entry.Kind} entry cannot be kept.", new("journal", 0, 0, $"{entry.Kind}.{field}"), value, allowed, "Correct it and save again; nothing was written.");
}
