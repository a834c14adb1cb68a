using System.Globalization;
using Mastwright.Journal.Entries;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.Journal.Store;

/// <summary>Writes one entry into its tables.</summary>
internal static class EntryRows
{
    public static readonly OffsetDateTimePattern Time = OffsetDateTimePattern.ExtendedIso;

    public static string Key(Guid id) => id.ToString("D", CultureInfo.InvariantCulture);

    public static void Insert(SqliteConnection connection, SqliteTransaction transaction, JournalEntry entry)
    {
        var id = Key(entry.Id);
        Run("INSERT INTO entry(id, kind, at, at_utc, mast, author, text, temperature_k, wind_ms, weather) VALUES ($0, $1, $2, $3, $4, $5, $6, $7, $8, $9)",
            id, entry.Kind, Time.Format(entry.At), Utc(entry.At), entry.Mast, entry.Author, entry.Text, entry.Weather.TemperatureK, entry.Weather.WindMs, entry.Weather.Words);
        switch (entry)
        {
            case TensionEntry t:
                Run("INSERT INTO tension(entry_id, guy, tension_n, uncertainty_n, method, raw) VALUES ($0, $1, $2, $3, $4, $5)", id, t.Guy, t.TensionN, t.UncertaintyN, t.Method, t.Raw);
                break;
            case SweepEntry s:
                Run("INSERT INTO sweep(entry_id, plane, reference_ohm, source_name, source_text) VALUES ($0, $1, $2, $3, $4)", id, s.Plane, s.ReferenceOhm, s.SourceName, s.SourceText);
                for (var i = 0; i < s.Samples.Length; i++)
                    Run("INSERT INTO sweep_point(entry_id, position, frequency_hz, resistance_ohm, reactance_ohm) VALUES ($0, $1, $2, $3, $4)", id, i, s.Samples[i].FrequencyHz, s.Samples[i].ResistanceOhm, s.Samples[i].ReactanceOhm);
                break;
            case InspectionEntry inspection:
                for (var i = 0; i < inspection.Items.Length; i++)
                {
                    var item = inspection.Items[i];
                    Run("INSERT INTO inspection_item(entry_id, position, key, label, state, remark) VALUES ($0, $1, $2, $3, $4, $5)", id, i, item.Key, item.Label, item.State.ToString(), item.Remark);
                }
                break;
            case PhotoEntry p:
                Run("INSERT INTO photo(entry_id, path, sha256, about) VALUES ($0, $1, $2, $3)", id, p.Path, p.Sha256, p.About is { } about ? Key(about) : null);
                break;
            case StormEntry s:
                Run("INSERT INTO storm(entry_id, ended, gust_ms, ice_m, lightning) VALUES ($0, $1, $2, $3, $4)", id, s.Ended is { } ended ? Time.Format(ended) : null, s.GustMs, s.IceM, s.Lightning ? 1 : 0);
                break;
        }

        void Run(string sql, params ReadOnlySpan<object?> values)
        {
            using var command = connection.CreateCommand();
            command.Transaction = transaction;
            command.CommandText = sql;
            for (var i = 0; i < values.Length; i++)
            {
                // SQLite keeps no sign on zero, so none is written: what comes back is what went in.
                object value = values[i] switch { null => DBNull.Value, double d => d + 0.0, { } v => v };
                command.Parameters.AddWithValue("$" + i.ToString(CultureInfo.InvariantCulture), value);
            }
            command.ExecuteNonQuery();
        }
    }

    /// <summary>A time in UTC whose text sorts like the time, years 0 to 9999.</summary>
    public static string Utc(OffsetDateTime at) => Utc(at.ToInstant());

    /// <summary>A time in UTC whose text sorts like the time, years 0 to 9999.</summary>
    public static string Utc(Instant at) => InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fffffffff'Z'").Format(at);
}
