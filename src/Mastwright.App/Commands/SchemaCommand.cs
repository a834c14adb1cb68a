using System.CommandLine;
using System.Text.Json;
using Mastwright.Analysis;
using Mastwright.Model.Schema;
using Mastwright.Report.Json;

namespace Mastwright.App.Commands;

/// <summary><c>schema</c>: prints the JSON Schema of the design file or of the result.</summary>
internal static class SchemaCommand
{
    // The schema is read by people too: keep ≥, ° and Ω as they are.
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Command Create()
    {
        var what = new Argument<string>("of") { Description = "design or result", DefaultValueFactory = _ => "design" };
        what.AcceptOnlyFromAmong("design", "result");
        var command = new Command("schema", "Print the JSON Schema of the design file or of `check --json`.") { what };
        command.SetAction(parsed =>
        {
            Console.Out.WriteLine(parsed.GetValue(what) == "design"
                ? DesignJsonSchema.Create(CatalogueNames.Of).ToJsonString(Readable)
                : ResultJson.Schema().ToJsonString(Readable));
            return ExitCode.Pass;
        });
        return command;
    }
}
