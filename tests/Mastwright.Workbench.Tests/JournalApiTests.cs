using System.IO.Compression;
using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Ical.Net;
using Mastwright.Journal.Export;

namespace Mastwright.Workbench.Tests;

/// <summary>What a phone sends to the journal, and what can be taken away.</summary>
[Collection("one at a time")]
public sealed class JournalApiTests(Keeping keeping)
{
    [Fact]
    public async Task TheCardHoldsEveryGuyWithTheTensionItShouldShowAndTheChecklist()
    {
        var card = JsonNode.Parse(await (await keeping.Client()).GetStringAsync("/api/journal/card"))!;
        var mast = card["masts"]![0]!;
        Assert.Equal("T", (string?)mast["name"]);
        Assert.Equal(8, mast["guys"]!.AsArray().Count);
        Assert.Equal("lbf", (string?)card["units"]!["force"]);
        Assert.Equal(8, mast["items"]!.AsArray().Count(i => ((string)i!["key"]!).EndsWith("/turnbuckle", StringComparison.Ordinal)));

        // A guy slackens as it warms: its strand lengthens while the mast grows far less across.
        var tensions = mast["guys"]![0]!["shouldBe"]!.AsArray().Select(v => (double)v!).ToList();
        Assert.Equal(mast["temperatures"]!.AsArray().Count, tensions.Count);
        Assert.All(tensions.Zip(tensions.Skip(1)), p => Assert.True(p.First > p.Second));
    }

    [Fact]
    public async Task AnEntrySentTwiceIsKeptOnce()
    {
        var note = Note(kind: "tension", guy: "1/back", way: "gauge", reading: "400 lbf", temperature: "59 °F");
        var first = await Send(note);
        Assert.Equal("kept", (string?)first["state"]);
        Assert.Contains("table says", (string?)first["says"]);
        Assert.Equal("already", (string?)(await Send(note))["state"]);
        Assert.Single((await Exported()).Entries, e => e.Id.ToString() == (string?)note["id"]);
    }

    [Fact]
    public async Task ManyPhonesSendingTheSameEntriesAtOnceKeepEachOnce()
    {
        var notes = Enumerable.Range(0, 10).Select(i => Note(kind: "note", text: $"entry {i}")).ToArray();
        var client = await keeping.Client();
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(async _ => JsonNode.Parse(await (await client.PostAsJsonAsync("/api/journal/entries", notes)).Content.ReadAsStringAsync())!.AsArray()));
        var states = answers.SelectMany(a => a.Select(x => (string)x!["state"]!)).ToList();
        Assert.Equal(10, states.Count(s => s == "kept"));
        Assert.Equal(30, states.Count(s => s == "already"));
        var ids = notes.Select(n => (string)n["id"]!).ToHashSet();
        Assert.Equal(10, (await Exported()).Entries.Count(e => ids.Contains(e.Id.ToString())));
    }

    [Fact]
    public async Task AnotherEntryUnderTheSameKeyIsRefused()
    {
        var note = Note(kind: "note", text: "the first");
        await Send(note);
        note["text"] = "something else";
        Assert.Equal("refused", (string?)(await Send(note))["state"]);
    }

    /// <summary>The answer to the first sending is lost, the reading is changed on the phone: it must not pass as taken already.</summary>
    [Fact]
    public async Task AChangedReadingUnderTheSameKeyIsRefusedAndNotTakenForTheFormer()
    {
        var note = Note(kind: "tension", guy: "1/back", way: "gauge", reading: "400 lbf", temperature: "59 °F");
        Assert.Equal("kept", (string?)(await Send(note))["state"]);
        note["reading"] = "410 lbf";
        var second = await Send(note);
        Assert.Equal("refused", (string?)second["state"]);
        Assert.Equal("id", (string?)second["field"]);
    }

    [Theory]
    [InlineData("tension", "1/nowhere", "gauge", "400 lbf", "guy")]
    [InlineData("tension", "1/back", "gauge", "heavy", "reading")]
    [InlineData("tension", "1/back", "guess", "400 lbf", "way")]
    [InlineData("tension", "1/back", "pulse", "ten in five", "reading")]
    [InlineData("dream", null, null, null, "kind")]
    [InlineData("note", null, null, null, "text")]
    [InlineData("storm", null, null, null, "gust")]
    public async Task WhatCannotBeUsedIsRefusedByItsFieldAndTheRestIsKept(string kind, string? guy, string? way, string? reading, string field)
    {
        var (bad, good) = (Note(kind: kind, guy: guy, way: way, reading: reading), Note(kind: "note", text: "beside a refused one"));
        var answers = JsonNode.Parse(await (await (await keeping.Client()).PostAsJsonAsync("/api/journal/entries", new[] { bad, good })).Content.ReadAsStringAsync())!.AsArray();
        Assert.Equal("refused", (string?)answers[0]!["state"]);
        Assert.Equal(field, (string?)answers[0]!["field"]);
        Assert.NotEqual("", (string?)answers[0]!["says"]);
        Assert.Equal("kept", (string?)answers[1]!["state"]);
    }

    [Theory]
    [InlineData("text/plain", "[]", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/x-www-form-urlencoded", "a=b", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/json", "[{]", HttpStatusCode.BadRequest)]
    [InlineData("application/json", "null", HttpStatusCode.BadRequest)]
    [InlineData("application/json", "[null]", HttpStatusCode.BadRequest)]
    [InlineData("application/json", "[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]", HttpStatusCode.BadRequest)]
    [InlineData("application/json", "[{\"id\":\"no key\"}]", HttpStatusCode.BadRequest)]
    public async Task WhatIsNoListOfEntriesIsRefusedWithoutATrace(string type, string body, HttpStatusCode expected)
    {
        using var content = new StringContent(body, Encoding.UTF8, type);
        using var answer = await (await keeping.Client()).PostAsync("/api/journal/entries", content);
        Assert.Equal(expected, answer.StatusCode);
        Assert.DoesNotContain("   at ", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task MoreEntriesThanOneSendingTakesAreRefused()
    {
        using var answer = await (await keeping.Client()).PostAsJsonAsync("/api/journal/entries", Enumerable.Range(0, 201).Select(_ => Note(kind: "note", text: "x")));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task TheCalendarIsReadByAnotherReaderAndNamesEveryItem()
    {
        var client = await keeping.Client();
        var text = await client.GetStringAsync("/api/journal/due.ics?built=2026-01-01");

        // Read with Ical.Net, a reader of RFC 5545 that this project did not write.
        var events = Calendar.Load(text)!.Events;
        var card = JsonNode.Parse(await client.GetStringAsync("/api/journal/card"))!;
        Assert.Equal(card["masts"]!.AsArray().Sum(m => m!["items"]!.AsArray().Count), events.Count);
    }

    [Fact]
    public async Task TheTablesAreAFolderOfCsvThatReadsBack()
    {
        await Send(Note(kind: "note", text: "for the tables"));
        await using var stream = await (await keeping.Client()).GetStreamAsync("/api/journal/tables.zip");
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
        var tables = zip.Entries.ToDictionary(e => e.FullName, e => new StreamReader(e.Open()).ReadToEnd());
        Assert.Contains(JournalCsv.Read(tables).Value!.Entries, e => e.Text == "for the tables");
    }

    [Theory]
    [InlineData("/api/journal/export.json")]
    [InlineData("/api/journal/tables.zip")]
    [InlineData("/api/journal/due.ics")]
    public async Task FilesComeAsFilesToKeepNotAsPages(string path)
    {
        using var answer = await (await keeping.Client()).GetAsync(path);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
    }

    private async Task<Journal.Entries.JournalContent> Exported() => JournalJson.Read(await (await keeping.Client()).GetStringAsync("/api/journal/export.json"), "export").Value!;

    private async Task<JsonNode> Send(JsonObject note)
    {
        using var answer = await (await keeping.Client()).PostAsJsonAsync("/api/journal/entries", new[] { note });
        return JsonNode.Parse(await answer.Content.ReadAsStringAsync())![0]!;
    }

    private static JsonObject Note(string kind, string? text = null, string? guy = null, string? way = null, string? reading = null, string? temperature = null) => new()
    {
        ["id"] = Guid.NewGuid().ToString(),
        ["kind"] = kind,
        ["at"] = "2026-05-01T14:30:00+02:00",
        ["text"] = text,
        ["guy"] = guy,
        ["way"] = way,
        ["reading"] = reading,
        ["temperature"] = temperature,
    };
}
