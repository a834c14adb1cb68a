using System.Text.Json;
using Json.Schema;
using Mastwright.Model.Schema;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>What the docs say is made from the model or run by a test, so that it cannot go stale.</summary>
public class DocumentTests
{
    private const string Mark = "<!-- made from the model: fields -->\n\n";

    [Fact]
    public void The_field_reference_is_the_one_the_model_makes()
    {
        var file = Repository.File("docs", "file-format.md");
        var text = File.ReadAllText(file).ReplaceLineEndings("\n");
        var head = text[..(text.IndexOf(Mark, StringComparison.Ordinal) + Mark.Length)];

        Approved.Matches(head + FormatReference.Markdown(), "docs", "file-format.md");
    }

    [Fact]
    public async Task The_published_schemas_are_the_ones_the_program_prints()
    {
        Approved.Matches((await Cli.Start("schema", "design")).Output, "docs", "schemas", "design.schema.json");
        Approved.Matches((await Cli.Start("schema", "result")).Output, "docs", "schemas", "result.schema.json");
        JsonSchema.FromText(File.ReadAllText(Repository.File("docs", "schemas", "design.schema.json")));
        Assert.True(JsonDocument.Parse(File.ReadAllText(Repository.File("docs", "schemas", "result.schema.json"))).RootElement.TryGetProperty("properties", out _));
    }

    [Fact]
    public void Every_theory_page_a_source_names_exists()
    {
        var named = Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => System.Text.RegularExpressions.Regex.Matches(File.ReadAllText(f), "docs/theory/[a-z0-9-]+\\.md").Select(m => m.Value))
            .Distinct().ToList();

        Assert.NotEmpty(named);
        Assert.DoesNotContain(named, p => !File.Exists(Repository.File(p.Split('/'))));
    }
}
