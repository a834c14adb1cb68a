using System.ComponentModel;
using System.Numerics;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using Mastwright.Analysis.Results;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;

namespace Mastwright.Report.Json;

/// <summary>Turns a station's result into JSON, and publishes the JSON Schema of that.</summary>
public static class ResultJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,

        // The text is never put into a page as it is; keep °, Ω and µ readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The result as JSON text.</summary>
    public static string Write(StationResult result) => JsonSerializer.Serialize(new Writer(result).Document(), Options);

    /// <summary>The JSON Schema of that text (draft 2020-12).</summary>
    public static JsonObject Schema()
    {
        var schema = Options.GetJsonSchemaAsNode(typeof(ResultDocument), new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Describe }).AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", "Mastwright check result");
        return schema;
    }

    private static JsonNode Describe(JsonSchemaExporterContext context, JsonNode node)
    {
        if (context.PropertyInfo is null && context.TypeInfo.Type.GetCustomAttribute<DescriptionAttribute>() is { } description && node is JsonObject named)
        {
            named["description"] = description.Description;
        }

        return node;
    }

    private sealed class Writer(StationResult result)
    {
        private readonly UnitSystem units = result.Station.UnitSystem;

        public ResultDocument Document() => new(
            ResultDocument.CurrentFormat, result.Station.Name, result.Fingerprint, Word(result.Verdict),
            [.. result.Checks.Select(Check)], [.. result.Masts.Select(Mast)], [.. result.Groups.Select(Group)],
            [.. result.Assumptions.Select(a => new JsonAssumption(a.Path, a.Value, a.Why))],
            [.. result.Findings.Select(f => new JsonFinding(f.Code, Word(f.Severity), f.Message, f.WayOut))], result.Cautions);

        private JsonNumber Number(Trail t) => new(
            t.Name, t.Symbol, Finite(t.Value), t.Kind.ToString(), QuantityFormat.Show(t, units), t.Formula, t.Source.ToString(), t.RestsOnAssumption, [.. t.RangeWarnings()]);

        private JsonNumber? NumberOrNull(Trail? t) => t is null ? null : Number(t);

        private JsonCheck Check(Check c) => new(
            c.Id, Word(c.Trade), c.Title, Word(c.Verdict), Finite(c.Ratio), c.GoverningCase, Number(c.Demand), Number(c.Capacity), c.Cure, c.Caution);

        private JsonMast Mast(MastResult m) => new(
            m.Name, NumberOrNull(m.FirstResonanceHz), [.. m.Bands.Select(Band)], Gap(m.Gap),
            [.. m.Stand.Cases.Select(c => new JsonCase(c.Name, c.Stable, c.TopDeflectionM, c.BaseCompressionN, c.LargestGuyN, c.LargestMomentNm))]);

        private JsonBand Band(BandResult b) => new(
            b.Name, b.FrequencyHz, b.PowerW, Ohm(b.MastOhm), Ohm(b.FeedOhm), Number(b.EarthLossOhm), Number(b.Efficiency),
            Number(b.BaseCurrentRms), Number(b.BasePeakV), Number(b.GainDbi), Number(b.FieldAt1KmVPerM), b.Match is { } m ? Match(m) : null);

        private static JsonMatch Match(MatchCandidate m) => new(m.Title, m.Swr, m.LossDb,
        [
            .. m.Stresses.Select(s => new JsonPart(s.Section.Title, s.Section.ValueKind.ToString(), s.Section.Value, s.Voltage.Value, s.Current.Value, s.HeatW)),
        ]);

        private JsonGap Gap(GapAnswer answer) => answer switch
        {
            GapSetting g => new(true, Number(g.SpacingM), g.Feeler.InchText, Number(g.WindowLowM), Number(g.WindowHighM), Number(g.WorkingPeakV), Number(g.WeakestStrengthV), []),
            NoGapFits n => new(false, null, null, Number(n.WindowLowM), NumberOrNull(n.WindowHighM), Number(n.WorkingPeakV), Number(n.WeakestStrengthV), n.Changes),
            _ => new(false, null, null, null, null, null, null, [.. answer.Findings.Select(f => f.Message)]),
        };

        private JsonGroup Group(GroupResult g) => new(g.Name, [.. g.Directions.Select(d => new JsonDirection(
            d.Name, Number(d.GainDbi), Number(d.FrontToBackDb), Number(d.GainOverOneDb),
            [.. d.Drives.Select(v => new JsonDrive(v.Mast, Ohm(v.DriveOhm), Number(v.CurrentRms), Number(v.BasePeakV), Number(v.PowerW)))]))]);

        private static JsonOhm Ohm(Complex z) => new(z.Real, z.Imaginary);

        // JSON has no infinity: null stands for it, and the text beside it says ∞.
        private static double? Finite(double value) => double.IsFinite(value) ? value : null;

        private static string Word(Enum value) => value.ToString().ToLowerInvariant();
    }
}
