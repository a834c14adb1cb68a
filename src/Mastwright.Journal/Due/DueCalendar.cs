using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace Mastwright.Journal.Due;

/// <summary>The due list as an iCalendar file (RFC 5545) for any calendar program.</summary>
public static class DueCalendar
{
    private const int LongestLineOctets = 75;

    /// <summary>
    /// One all-day event for each item. An item keeps its identity from one export to the next, so that importing again
    /// moves it instead of doubling it.
    /// </summary>
    /// <param name="station">Name of the station.</param>
    /// <param name="items">What is due.</param>
    /// <param name="stamp">When the file is made.</param>
    public static string Write(string station, IEnumerable<DueItem> items, Instant stamp)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//Mastwright//Station journal//EN", Version = "2.0" };
        var at = stamp.ToDateTimeUtc();
        foreach (var due in items)
        {
            var day = due.DueOn;
            var text = new StringBuilder(due.Reason).Append('\n');
            if (due.LastSeen is { } seen) text.Append(CultureInfo.InvariantCulture, $"Last seen {seen.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}: {due.LastState}\n");
            if (due.Item.Caution.Length > 0) text.Append("Caution: ").Append(due.Item.Caution).Append('\n');
            text.Append("Interval: ").Append(due.Item.Source);
            calendar.Events.Add(new CalendarEvent
            {
                Uid = Identity(station, due.Item.Key),
                DtStamp = new CalDateTime(at, "UTC"),
                Start = new CalDateTime(day.Year, day.Month, day.Day),
                End = new CalDateTime(day.PlusDays(1).Year, day.PlusDays(1).Month, day.PlusDays(1).Day),
                Summary = due.Item.Label,
                Description = text.ToString(),
                Location = due.Item.Mast.Length > 0 ? $"{station}, {due.Item.Mast}" : station,
                Transparency = Ical.Net.TransparencyType.Transparent,
            });
        }
        return Fold(new CalendarSerializer().SerializeToString(calendar) ?? "");
    }

    // A digest keeps the identity free of characters that calendars stumble over, and of the station's name.
    private static string Identity(string station, string key) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(station + "\n" + key)))[..32] + "@station-journal";

    // RFC 5545 section 3.1: lines end in CR LF and should be no longer than 75 octets (not characters); a longer one goes on
    // after CR LF and a blank, and no character is cut in two.
    private static string Fold(string text)
    {
        var unfolded = text.ReplaceLineEndings("\n").Replace("\n ", "", StringComparison.Ordinal).Replace("\n\t", "", StringComparison.Ordinal);
        var folded = new StringBuilder(text.Length + 64);
        foreach (var line in unfolded.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var octets = 0;
            foreach (var rune in line.EnumerateRunes())
            {
                if (octets + rune.Utf8SequenceLength > LongestLineOctets)
                {
                    folded.Append("\r\n ");
                    octets = 1;
                }
                folded.Append(rune.ToString());
                octets += rune.Utf8SequenceLength;
            }
            folded.Append("\r\n");
        }
        return folded.ToString();
    }
}
