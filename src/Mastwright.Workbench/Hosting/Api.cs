using System.ComponentModel;
using System.Text;
using Mastwright.Analysis;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Report.Json;
using Mastwright.Workbench.Desks;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Hosting;

/// <summary>A problem with a design sent by a script.</summary>
/// <param name="Code">Stable name.</param>
/// <param name="Severity">error, warning or note.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Line">Line in the text; 0 when unknown.</param>
/// <param name="Column">Column in the text; 0 when unknown.</param>
/// <param name="Field">Dotted path of the field.</param>
/// <param name="Value">The value found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="WayOut">What to do.</param>
public sealed record ApiFinding(string Code, string Severity, string Message, int Line, int Column, string? Field, string? Value, string? Allowed, string? WayOut);

/// <summary>The calls for scripts.</summary>
internal static class Api
{
    // One script's design at a time: the person at the desk comes first.
    private static readonly SemaphoreSlim Turn = new(1, 1);

    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api").DisableAntiforgery();
        api.MapPost("/check", Check)
            .Accepts<string>("application/yaml")
            .Produces(StatusCodes.Status200OK, contentType: "application/json")
            .Produces<IReadOnlyList<ApiFinding>>(StatusCodes.Status422UnprocessableEntity)
            .WithSummary("Check a design: its text in, the result of `mastwright check --json` out.");
        api.MapGet("/design", (Desk desk) => Results.Text(desk.Now.Text, "application/yaml", Encoding.UTF8)).WithSummary("The text on the desk.");
        api.MapGet("/result", (Desk desk) => desk.Now.FieldState == Freshness.Fresh
                ? Results.Text(ResultJson.Write(desk.Now.Result!), "application/json", Encoding.UTF8)
                : Results.Json(new { state = desk.Now.FieldState.ToString().ToLowerInvariant() }, statusCode: StatusCodes.Status409Conflict))
            .WithSummary("The result of the text on the desk; 409 while it is being computed or the text has errors.");
        api.MapGet("/schema/design", () => Results.Text(DesignJsonSchema.Create(CatalogueNames.Of).ToJsonString(), "application/schema+json", Encoding.UTF8))
            .WithSummary("JSON Schema of the design file.");
        api.MapGet("/schema/result", () => Results.Text(ResultJson.Schema().ToJsonString(), "application/schema+json", Encoding.UTF8))
            .WithSummary("JSON Schema of the result.");
        api.MapGet("/csv/{table}", Csv).WithSummary("A table as CSV in SI units: checks, bands, cases, sweeps.");
    }

    private static async Task<IResult> Check(HttpRequest request, CancellationToken cancellation)
    {
        // These types cannot be sent by a form or a plain link of another page, so no other page can make a browser ask.
        if (request.ContentType?.Split(';')[0].Trim() is not ("application/yaml" or "application/x-yaml" or "text/yaml"))
        {
            return Results.Text("Send the design's text with Content-Type: application/yaml.", statusCode: StatusCodes.Status415UnsupportedMediaType);
        }

        using var reader = new StreamReader(request.Body, Encoding.UTF8);
        var text = await reader.ReadToEndAsync(cancellation);
        var reading = DesignReader.Read(text, "design", CatalogueNames.Of);
        if (!reading.Ok)
        {
            return Results.Json(reading.Findings.Select(Of), statusCode: StatusCodes.Status422UnprocessableEntity);
        }

        await Turn.WaitAsync(cancellation);
        try
        {
            var result = await Task.Run(() => StationAnalysis.Run(reading, null, cancellation), cancellation);
            return Results.Text(ResultJson.Write(result), "application/json", Encoding.UTF8);
        }
        finally
        {
            Turn.Release();
        }
    }

    private static ApiFinding Of(Finding f) =>
        new(f.Code, f.Severity.ToString().ToLowerInvariant(), f.Message, f.Place?.Line ?? 0, f.Place?.Column ?? 0, f.Place?.Path, f.Value, f.Allowed, f.WayOut);

    private static IResult Csv([Description("checks, bands, cases or sweeps")] string table, Desk desk)
    {
        var sheet = desk.Now;
        if (sheet.Result is not { } result)
        {
            return Results.Text("Nothing is computed yet.", statusCode: StatusCodes.Status409Conflict);
        }

        var rows = table switch
        {
            "checks" => Checks(result),
            "bands" => Bands(result),
            "cases" => Cases(result),
            "sweeps" => Sweeps(sheet),
            _ => null,
        };
        return rows is null
            ? Results.Text("The tables: checks, bands, cases, sweeps.", statusCode: StatusCodes.Status404NotFound)
            : Results.Text(CsvText.ForSpreadsheet(rows.Select(r => r.Select(Cell))), "text/csv", Encoding.UTF8);
    }

    private static IEnumerable<object[]> Checks(StationResult result) =>
        result.Checks.Select(c => new object[] { c.Id, c.Trade, c.Title, c.Verdict, c.Ratio, c.Demand.Value, c.Capacity.Value, c.Demand.Kind, c.GoverningCase, c.Cure })
            .Prepend(["id", "trade", "title", "verdict", "use", "demand", "capacity", "kind", "governed by", "cure"]);

    private static IEnumerable<object[]> Bands(StationResult result) =>
        result.Masts.SelectMany(m => m.Bands.Select(b => new object[]
            {
                m.Name, b.Name, b.FrequencyHz, b.PowerW, b.FeedOhm.Real, b.FeedOhm.Imaginary, b.EarthLossOhm.Value, b.Efficiency.Value, b.BaseCurrentRms.Value, b.BasePeakV.Value, b.GainDbi.Value, b.FieldAt1KmVPerM.Value,
            }))
            .Prepend(["mast", "band", "frequency Hz", "power W", "feed R ohm", "feed X ohm", "earth loss ohm", "efficiency", "base current A rms", "base voltage V peak", "gain dBi", "field at 1 km V/m"]);

    private static IEnumerable<object[]> Cases(StationResult result) =>
        result.Masts.SelectMany(m => m.Stand.Cases.Select(c => new object[] { m.Name, c.Name, c.Stable, c.TopDeflectionM, c.BaseCompressionN, c.LargestGuyN, c.LargestMomentNm }))
            .Prepend(["mast", "case", "stable", "top moves m", "compression at foot N", "largest guy N", "largest moment Nm"]);

    private static IEnumerable<object[]> Sweeps(Sheet sheet) =>
        sheet.Sweeps.SelectMany(s => s.Points.Select(p => new object[] { s.Mast, s.Band, p.FrequencyHz, p.FeedOhm.Real, p.FeedOhm.Imaginary, (object?)p.Swr ?? "" }))
            .Prepend(["mast", "band", "frequency Hz", "feed R ohm", "feed X ohm", "SWR"]);

    private static string Cell(object value) => value is double number ? CsvText.Number(number) : value.ToString() ?? "";
}
