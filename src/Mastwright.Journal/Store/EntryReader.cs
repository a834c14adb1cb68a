using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Journal.Entries;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace Mastwright.Journal.Store;

/// <summary>Reads entries back, in order of time.</summary>
internal sealed class EntryReader(SqliteConnection connection)
{
    /// <summary>Entries from one time (included) to another (excluded), or one by its key.</summary>
    public ImmutableArray<JournalEntry> Read(Instant? from, Instant? to, string? kind, Guid? id)
    {
        // One transaction, so that all tables are read as they were at one moment.
        using var moment = connection.BeginTransaction(deferred: true);
        var entries = Read(moment, from, to, kind, id);
        moment.Commit();
        return entries;
    }

    /// <summary>One entry, inside a transaction that is under way.</summary>
    public JournalEntry? Read(SqliteTransaction moment, Guid id) => Read(moment, null, null, null, id).FirstOrDefault();

    private ImmutableArray<JournalEntry> Read(SqliteTransaction moment, Instant? from, Instant? to, string? kind, Guid? id)
    {
        const string where = "WHERE ($from IS NULL OR at_utc >= $from) AND ($to IS NULL OR at_utc < $to) AND ($kind IS NULL OR kind = $kind) AND ($id IS NULL OR id = $id)";
        var fromText = from is { } f ? EntryRows.Utc(f) : null;
        var toText = to is { } t ? EntryRows.Utc(t) : null;
        var key = id is { } g ? EntryRows.Key(g) : null;

        var points = Grouped($"SELECT p.entry_id, p.frequency_hz, p.resistance_ohm, p.reactance_ohm FROM sweep_point p JOIN entry ON entry.id = p.entry_id {where} ORDER BY p.entry_id, p.position",
            r => new SweepSample(r.GetDouble(1), r.GetDouble(2), r.GetDouble(3)));
        var items = Grouped($"SELECT i.entry_id, i.key, i.label, i.state, i.remark FROM inspection_item i JOIN entry ON entry.id = i.entry_id {where} ORDER BY i.entry_id, i.position",
            r => new InspectedItem(r.GetString(1), r.GetString(2), Enum.Parse<ItemState>(r.GetString(3)), r.GetString(4)));
        var result = ImmutableArray.CreateBuilder<JournalEntry>();
        using var command = Command($"""
            SELECT id, kind, at, mast, author, entry.text, temperature_k, wind_ms, weather,
                   guy, tension_n, uncertainty_n, method, raw,
                   plane, reference_ohm, source_name, source_text,
                   path, sha256, about,
                   ended, gust_ms, ice_m, lightning
            FROM entry
            LEFT JOIN tension ON tension.entry_id = id
            LEFT JOIN sweep ON sweep.entry_id = id
            LEFT JOIN photo ON photo.entry_id = id
            LEFT JOIN storm ON storm.entry_id = id
            {where}
            ORDER BY at_utc, id
            """);
        using (var r = command.ExecuteReader())
        {
            while (r.Read()) result.Add(Entry(r));
        }
        return result.ToImmutable();

        JournalEntry Entry(SqliteDataReader r)
        {
            var entryId = r.GetString(0);
            var guid = Guid.ParseExact(entryId, "D");
            var at = EntryRows.Time.Parse(r.GetString(2)).Value;
            var (mast, author, text) = (r.GetString(3), r.GetString(4), r.GetString(5));
            var weather = new Weather(Number(r, 6), Number(r, 7), r.GetString(8));
            return r.GetString(1) switch
            {
                "tension" => new TensionEntry(guid, at, mast, author, text, weather, r.GetString(9), r.GetDouble(10), Number(r, 11), r.GetString(12), r.GetString(13)),
                "sweep" => new SweepEntry(guid, at, mast, author, text, weather, r.GetString(14), r.GetDouble(15), [.. points[entryId]], r.GetString(16), r.GetString(17)),
                "inspection" => new InspectionEntry(guid, at, mast, author, text, weather, [.. items[entryId]]),
                "photo" => new PhotoEntry(guid, at, mast, author, text, weather, r.GetString(18), r.GetString(19), r.IsDBNull(20) ? null : Guid.ParseExact(r.GetString(20), "D")),
                "storm" => new StormEntry(guid, at, mast, author, text, weather, r.IsDBNull(21) ? null : EntryRows.Time.Parse(r.GetString(21)).Value, Number(r, 22), Number(r, 23), r.GetInt64(24) == 1),
                "note" => new NoteEntry(guid, at, mast, author, text, weather),
                var other => throw new InvalidOperationException($"Kind {other} passed the table's own check."),
            };
        }

        ILookup<string, T> Grouped<T>(string sql, Func<SqliteDataReader, T> make)
        {
            using var grouped = Command(sql);
            using var reader = grouped.ExecuteReader();
            var rows = new List<(string Id, T Value)>();
            while (reader.Read()) rows.Add((reader.GetString(0), make(reader)));
            return rows.ToLookup(x => x.Id, x => x.Value);
        }

        SqliteCommand Command(string sql)
        {
            var made = connection.CreateCommand();
            made.Transaction = moment;
            made.CommandText = sql;
            made.Parameters.AddWithValue("$from", (object?)fromText ?? DBNull.Value);
            made.Parameters.AddWithValue("$to", (object?)toText ?? DBNull.Value);
            made.Parameters.AddWithValue("$kind", (object?)kind ?? DBNull.Value);
            made.Parameters.AddWithValue("$id", (object?)key ?? DBNull.Value);
            return made;
        }
    }

    public ImmutableArray<EarlierEntry> Earlier()
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT entry_id, changed_at, reason, content FROM earlier ORDER BY number";
        using var r = command.ExecuteReader();
        var result = ImmutableArray.CreateBuilder<EarlierEntry>();
        while (r.Read()) result.Add(new(Guid.ParseExact(r.GetString(0), "D"), EntryRows.Time.Parse(r.GetString(1)).Value, r.GetString(2), r.GetString(3)));
        return result.ToImmutable();
    }

    public string StationName()
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT name FROM station WHERE id = 1";
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    private static double? Number(SqliteDataReader r, int column) => r.IsDBNull(column) ? null : r.GetDouble(column);
}
