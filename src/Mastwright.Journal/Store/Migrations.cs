using System.Collections.Immutable;

namespace Mastwright.Journal.Store;

/// <summary>
/// The steps from an empty file to today's. A step is never changed once it has been released; a new need is a new step.
/// The number of steps taken stands in the file's <c>user_version</c>.
/// </summary>
internal static class Migrations
{
    /// <summary>"MWJ1" as a number: marks a file as a journal of ours.</summary>
    public const int ApplicationId = 0x4D574A31;

    public static int Latest => Steps.Length;

    public static ImmutableArray<string> Steps { get; } =
    [
        // 1: station and entries.
        """
        CREATE TABLE station(
            id INTEGER PRIMARY KEY CHECK (id = 1),
            name TEXT NOT NULL
        ) STRICT;
        INSERT INTO station(id, name) VALUES (1, '');

        CREATE TABLE entry(
            id TEXT PRIMARY KEY,
            kind TEXT NOT NULL CHECK (kind IN ('tension', 'sweep', 'inspection', 'photo', 'storm', 'note')),
            at TEXT NOT NULL,
            at_utc TEXT NOT NULL,
            mast TEXT NOT NULL,
            author TEXT NOT NULL,
            text TEXT NOT NULL,
            temperature_k REAL,
            wind_ms REAL,
            weather TEXT NOT NULL
        ) STRICT;
        CREATE INDEX entry_by_time ON entry(at_utc, id);

        CREATE TABLE tension(
            entry_id TEXT PRIMARY KEY REFERENCES entry(id) ON DELETE CASCADE,
            guy TEXT NOT NULL,
            tension_n REAL NOT NULL,
            uncertainty_n REAL,
            method TEXT NOT NULL,
            raw TEXT NOT NULL
        ) STRICT;
        CREATE INDEX tension_by_guy ON tension(guy);

        CREATE TABLE sweep(
            entry_id TEXT PRIMARY KEY REFERENCES entry(id) ON DELETE CASCADE,
            plane TEXT NOT NULL,
            reference_ohm REAL NOT NULL,
            source_name TEXT NOT NULL,
            source_text TEXT NOT NULL
        ) STRICT;
        CREATE TABLE sweep_point(
            entry_id TEXT NOT NULL REFERENCES sweep(entry_id) ON DELETE CASCADE,
            position INTEGER NOT NULL,
            frequency_hz REAL NOT NULL,
            resistance_ohm REAL NOT NULL,
            reactance_ohm REAL NOT NULL,
            PRIMARY KEY (entry_id, position)
        ) STRICT, WITHOUT ROWID;

        CREATE TABLE inspection_item(
            entry_id TEXT NOT NULL REFERENCES entry(id) ON DELETE CASCADE,
            position INTEGER NOT NULL,
            key TEXT NOT NULL,
            label TEXT NOT NULL,
            state TEXT NOT NULL CHECK (state IN ('Good', 'Watch', 'Bad', 'NotSeen')),
            remark TEXT NOT NULL,
            PRIMARY KEY (entry_id, position)
        ) STRICT, WITHOUT ROWID;

        CREATE TABLE photo(
            entry_id TEXT PRIMARY KEY REFERENCES entry(id) ON DELETE CASCADE,
            path TEXT NOT NULL,
            sha256 TEXT NOT NULL,
            about TEXT
        ) STRICT;

        CREATE TABLE storm(
            entry_id TEXT PRIMARY KEY REFERENCES entry(id) ON DELETE CASCADE,
            ended TEXT,
            gust_ms REAL,
            ice_m REAL,
            lightning INTEGER NOT NULL CHECK (lightning IN (0, 1))
        ) STRICT;
        """,

        // 2: what an entry said before it was corrected or struck out.
        """
        CREATE TABLE earlier(
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            entry_id TEXT NOT NULL,
            changed_at TEXT NOT NULL,
            reason TEXT NOT NULL,
            content TEXT NOT NULL
        ) STRICT;
        CREATE INDEX earlier_by_entry ON earlier(entry_id);
        """,
    ];
}
