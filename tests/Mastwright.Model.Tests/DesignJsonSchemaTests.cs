using System.Text.Json;
using Json.Schema;
using Mastwright.Model.Schema;

namespace Mastwright.Model.Tests;

/// <summary>The schema is held against an independent validator, JsonSchema.Net (draft 2020-12).</summary>
public class DesignJsonSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(
        DesignJsonSchema.Create(list => list == "soils" ? ["medium-dry", "wet"] : null).ToJsonString());

    private const string Good = """
        {
          "mastwright": 1, "name": "Test", "site": { "wind": { "speed": "90 mph" } },
          "masts": [ {
            "name": "A", "base": { "insulator": "post" }, "sections": [ { "length": "22 m", "lattice": "tri" } ],
            "anchors": [ { "name": "N", "bearing": "0 deg", "distance": "12 m" } ],
            "guys": [ { "height": "11 m", "strand": "ehs", "initial-tension": "10 %" } ],
            "radials": { "count": 60, "length": "20 m" } } ],
          "bands": [ { "frequency": "1.85 MHz", "power": "1500 W" } ]
        }
        """;

    private static bool Accepts(string json) => Schema.Evaluate(JsonDocument.Parse(json).RootElement).IsValid;

    [Fact]
    public void Accepts_a_good_design() => Assert.True(Accepts(Good));

    [Theory]
    [InlineData("\"name\": \"Test\",", "")]
    [InlineData("\"count\": 60", "\"count\": 1000")]
    [InlineData("\"count\": 60", "\"cuont\": 60")]
    [InlineData("\"wind\": { \"speed\": \"90 mph\" }", "\"wind\": { \"speed\": \"90 mph\" }, \"soil\": \"moon dust\"")]
    [InlineData("\"bands\": [ { \"frequency\": \"1.85 MHz\", \"power\": \"1500 W\" } ]", "\"bands\": []")]
    public void Refuses_mistakes(string from, string to)
    {
        Assert.Contains(from, Good);
        Assert.False(Accepts(Good.Replace(from, to)));
    }
}
