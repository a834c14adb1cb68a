using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Journal.Export;

/// <summary>The journal as one JSON text, and back without loss.</summary>
public static class JournalJson
{
    private const string FormatName = "station-journal";

    private static readonly JsonSerializerOptions Options = Make(indented: true);
    private static readonly JsonSerializerOptions Compact = Make(indented: false);

    /// <summary>The whole journal as text.</summary>
    public static string Write(JournalContent content) =>
        JsonSerializer.Serialize(new Document(FormatName, JournalStore.FormatVersion, content.Station, content.Entries, content.Earlier), Options);

    /// <summary>A journal from text; a problem with line and column when it is none.</summary>
    public static Outcome<JournalContent> Read(string text, string fileName)
    {
        try
        {
            using (var probe = JsonDocument.Parse(text))
            {
                var root = probe.RootElement;
                if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out var format) || format.ValueKind != JsonValueKind.String || format.GetString() != FormatName)
                    return Problem(fileName, 1, 1, "export-foreign", "This file is not an export of a journal.", "Choose a file that was written by the journal's JSON export.");
                if (root.TryGetProperty("version", out var number) && number.TryGetInt32(out var version) && version > JournalStore.FormatVersion)
                    return Problem(fileName, 1, 1, "export-newer", $"This export was written by a newer program: its form is number {version}, this program knows up to {JournalStore.FormatVersion}.", "Use the newer program.");
            }
            var document = JsonSerializer.Deserialize<Document>(text, Options)!;
            if (document.Entries.IsDefault || document.Earlier.IsDefault || document.Entries.Any(e => e is null))
                return Problem(fileName, 1, 1, "export-broken", "The export has no list of entries.", "Take an unchanged export.");
            if (document.Entries.Select(EntryChecks.Fault).FirstOrDefault(f => f is not null) is { } fault)
                return fault with { Place = new(fileName, 0, 0, fault.Place!.Path) };
            return new JournalContent(document.Station ?? "", document.Entries, document.Earlier);
        }
        catch (JsonException problem)
        {
            return Problem(fileName, (int)(problem.LineNumber ?? 0) + 1, (int)(problem.BytePositionInLine ?? 0) + 1, "export-broken", $"The export cannot be read at {(problem.Path is { Length: > 0 } path ? path : "its start")}.", "Take an unchanged export; a file cut short cannot be used.");
        }
        catch (Exception problem) when (problem is NotSupportedException or NullReferenceException)
        {
            return Problem(fileName, 1, 1, "export-broken", "The export holds an entry of an unknown kind or without its fields.", "Take an unchanged export.");
        }
    }

    /// <summary>One entry as a line of JSON.</summary>
    internal static string Text(JournalEntry entry) => JsonSerializer.Serialize(entry, Compact);

    private static Finding Problem(string file, int line, int column, string code, string message, string wayOut) =>
        new(code, Severity.Error, message, new(file, line, column, ""), null, null, wayOut);

    private static JsonSerializerOptions Make(bool indented) => new()
    {
        WriteIndented = indented,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        Converters = { new JsonStringEnumConverter<ItemState>(), new TimeConverter() },
    };

    private sealed record Document(string Format, int Version, string Station, ImmutableArray<JournalEntry> Entries, ImmutableArray<EarlierEntry> Earlier);

    private sealed class TimeConverter : JsonConverter<OffsetDateTime>
    {
        public override OffsetDateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && EntryRows.Time.Parse(reader.GetString()!) is { Success: true } parsed
                ? parsed.Value
                : throw new JsonException("A time such as 2026-05-01T14:30:00+02:00 was expected.");

        public override void Write(Utf8JsonWriter writer, OffsetDateTime value, JsonSerializerOptions options) =>
            writer.WriteStringValue(EntryRows.Time.Format(value));
    }
}
