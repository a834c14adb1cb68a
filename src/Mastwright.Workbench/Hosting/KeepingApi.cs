using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Mastwright.Journal;
using Mastwright.Journal.Due;
using Mastwright.Journal.Export;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Mastwright.Workbench.Printing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;

namespace Mastwright.Workbench.Hosting;

/// <summary>The calls of the journal and the station book: what a phone sends, and what can be taken away as a file.</summary>
internal static class KeepingApi
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web) { MaxDepth = 8 };

    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api").DisableAntiforgery();
        api.MapGet("/journal/card", Card).Produces<FieldCard>().WithSummary("What a phone takes along: masts, guys with the tension each should show, checklist with days.");
        api.MapPost("/journal/entries", Take)
            .Accepts<IReadOnlyList<FieldNote>>("application/json")
            .Produces<IReadOnlyList<FieldAnswer>>()
            .WithSummary("Add entries. The sender makes the keys, so sending again never doubles an entry; each is answered by itself.");
        api.MapGet("/journal/export.json", (JournalDesk journal) => Given(journal.Content(), c => File(Encoding.UTF8.GetBytes(JournalJson.Write(c)), "application/json", "journal.json"))).WithSummary("The whole journal as JSON; can be taken in again.");
        api.MapGet("/journal/tables.zip", (JournalDesk journal) => Given(journal.Content(), c => File(Zip(JournalCsv.Write(c)), "application/zip", "journal-tables.zip"))).WithSummary("The whole journal as CSV tables.");
        api.MapGet("/journal/due.ics", Calendar).WithSummary("What is due as an iCalendar file (RFC 5545). built=2026-05-01 says when the station was built.");
        api.MapGet("/book/{id:guid}/{form}", Book).WithSummary("A station book that is ready: form is pdf or html.");
    }

    private static IResult Card(Desk desk, JournalDesk journal, CancellationToken cancellation) => desk.Now.Station is not { } station
        ? Results.Text("The design has errors, so its masts are not known.", statusCode: StatusCodes.Status409Conflict)
        : Given(journal.Entries(), entries => Results.Json(FieldCard.Of(station, entries, System.IO.Path.GetFileName(journal.Path), JournalDesk.Clock(), cancellation), Web));

    private static async Task<IResult> Take(HttpRequest request, FieldInbox inbox, CancellationToken cancellation)
    {
        // This type cannot be sent by a form or a plain link of another page, so no other page can make a browser write.
        if (request.ContentType?.Split(';')[0].Trim() is not "application/json")
        {
            return Results.Text("Send the entries with Content-Type: application/json.", statusCode: StatusCodes.Status415UnsupportedMediaType);
        }

        IReadOnlyList<FieldNote?>? notes;
        try
        {
            notes = await JsonSerializer.DeserializeAsync<IReadOnlyList<FieldNote?>>(request.Body, Web, cancellation);
        }
        catch (JsonException e)
        {
            return Results.Text($"These are no entries: line {(e.LineNumber ?? 0) + 1}, {e.Path ?? "$"}.", statusCode: StatusCodes.Status400BadRequest);
        }

        if (notes is null || notes.Count > FieldInbox.MostNotes || notes.Any(n => n is null))
        {
            return Results.Text($"Send a list of at most {FieldInbox.MostNotes} entries.", statusCode: StatusCodes.Status400BadRequest);
        }

        var answers = await Task.Run(() => notes.Select(n => inbox.Take(n!, cancellation)).ToList(), cancellation);
        return Results.Json(answers, Web);
    }

    private static IResult Calendar(string? built, Desk desk, JournalDesk journal) => desk.Now.Station is not { } station
        ? Results.Text("The design has errors, so its checklist is not known.", statusCode: StatusCodes.Status409Conflict)
        : Given(journal.Entries(), entries =>
        {
            var now = JournalDesk.Clock();
            var from = built is not null && LocalDatePattern.Iso.Parse(built) is { Success: true } day ? day.Value : entries.Count > 0 ? entries[0].At.Date : now.Date;
            var due = DueList.For(UpkeepParts.Checklist(station), entries, from);
            return File(Encoding.UTF8.GetBytes(DueCalendar.Write(station.Name, due, now.ToInstant())), "text/calendar; charset=utf-8", "due.ics");
        });

    private static IResult Book(Guid id, string form, BookPress press)
    {
        var order = press.Orders.FirstOrDefault(o => o.Id == id);
        return (order, form) switch
        {
            ({ Pdf: { } pdf }, "pdf") => File(pdf, "application/pdf", "station-book.pdf"),
            ({ Html: { } html }, "html") => File(html, "text/html; charset=utf-8", "station-book.html"),
            _ => Results.Text("There is no such book, or it is not ready.", statusCode: StatusCodes.Status404NotFound),
        };
    }

    // Always as a file to be kept: nothing made from a design is ever opened as a page of this address.
    private static IResult File(byte[] bytes, string type, string name) => Results.File(bytes, type, name);

    private static IResult Given<T>(Outcome<T> outcome, Func<T, IResult> then)
        where T : class => outcome.Value is { } value ? then(value) : Results.Text(Words(outcome.Problem!), statusCode: StatusCodes.Status409Conflict);

    private static string Words(Finding finding) => $"{finding.Message} {finding.WayOut}";

    private static byte[] Zip(IReadOnlyDictionary<string, string> tables)
    {
        using var whole = new MemoryStream();
        using (var zip = new ZipArchive(whole, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in tables)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return whole.ToArray();
    }
}
