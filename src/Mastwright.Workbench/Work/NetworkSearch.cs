using System.Globalization;
using Mastwright.Analysis;
using Mastwright.Circuits.Match;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Workbench.Edits;

namespace Mastwright.Workbench.Work;

/// <summary>Every network that matches a band, by its loss and by how far it can be tuned without touching it; the one chosen is written into the file.</summary>
internal static class NetworkSearch
{
    private const string List = "feed.networks";

    /// <summary>Whether the file has a place for a chosen network.</summary>
    public static bool IsKnown => Kinds.Count > 0;

    // The words of the file for kinds of network.
    private static IReadOnlyList<string> Kinds { get; } =
        [.. Field(Field(RecordShape.Root, "feed"), "networks") is { } networks ? networks.Fields.FirstOrDefault(f => f.Field.Key == "network")?.Words.Select(w => w.Word) ?? [] : []];

    /// <summary>Looks at every network of one band.</summary>
    public static FoundSet Run(SearchInput input, StudyTalk talk)
    {
        var result = input.Known ?? StationAnalysis.Run(input.Reading, talk.Progress, talk.Cancellation);
        var mast = result.Masts[input.Mast];
        var band = mast.Bands.FirstOrDefault(b => b.Name == input.Choice) ?? mast.Bands[0];
        var gathered = new Searches.Gathered(new FoundSet("loss in the network, dB", "bandwidth for SWR 2, kHz", []), talk);
        if (band.Match is not { } present)
        {
            return gathered.With(["No passive network matches this band."]);
        }

        var candidates = MatchDesigner.Design(present.Problem).Candidates;
        for (var i = 0; i < candidates.Length; i++)
        {
            talk.Cancellation.ThrowIfCancellationRequested();
            var c = candidates[i];
            talk.Progress.Report(new AnalysisStep(c.Title, (double)i / candidates.Length));
            var (word, form) = (WordOf(c.TopologyId), FormOf(c));
            var width = (c.Bandwidth.HighHz - c.Bandwidth.LowHz) / 1e3;
            gathered.Add(new Found($"{c.Title}: {Parts(c, input.Units)}", c.LossDb, width, true, true,
                $"{QuantityFormat.Show(c.HighestVoltage.Value, QuantityKind.PeakVoltage, input.Units, 3)} peak across a part, {c.PartCount} parts",
                text => word is null ? null : Adopt(text, band.Name, input.Station.Masts.Length > 1 ? mast.Name : null, word, form)), isNow: c.TopologyId == present.TopologyId && FormOf(present) == form && Math.Abs(c.LossDb - present.LossDb) < 1e-3);
        }

        return gathered.With(["Every kind of network with ideal values and parts of the quality stated; parts that can be had are chosen as soon as you adopt one. Wider is steadier over the band and the weather; less loss is cooler coils."]);
    }

    /// <summary>Writes the chosen network of a band into a text, in place of the one chosen before.</summary>
    internal static string? Adopt(string text, string band, string? mast, string word, string? form)
    {
        for (var i = 0; TextEdits.WrittenAt(text, $"{List}[{i}]") is not null; i++)
        {
            if (Plain(TextEdits.WrittenAt(text, $"{List}[{i}].band")) == band && Plain(TextEdits.WrittenAt(text, $"{List}[{i}].mast")) == mast)
            {
                return TextEdits.Set(text, $"{List}[{i}].network", word) is { } set ? TextEdits.Set(set, $"{List}[{i}].form", form ?? "any") : null;
            }
        }

        var item = string.Create(CultureInfo.InvariantCulture, $"{{ band: {Quoted(band)}, {(mast is null ? "" : $"mast: {Quoted(mast)}, ")}network: {word}{(form is null ? "" : $", form: {form}")} }}");
        return TextEdits.Add(text, List, item) ?? TextEdits.Set(text, List, $"[{item}]");
    }

    private static RecordShape? Field(RecordShape? shape, string key) =>
        shape?.Fields.FirstOrDefault(f => f.Field.Key == key) is { Form: FieldForm.Record } field ? RecordShape.Of(field.ItemType) : null;

    // The file says mast where the circuits say load.
    private static string? WordOf(string topology) => new[] { topology, topology.Replace("load", "mast", StringComparison.Ordinal) }.FirstOrDefault(Kinds.Contains);

    private static string? FormOf(MatchCandidate c)
    {
        var reactive = c.Ladder.Sections.OfType<ReactiveSection>().ToList();
        var (path, ground) = (reactive.Where(s => s.IsSeries).ToList(), reactive.Where(s => !s.IsSeries).ToList());
        return path.Count == 0 || ground.Count == 0 ? null
            : path.All(s => s.IsCoil) && ground.All(s => !s.IsCoil) ? "low-pass"
            : path.All(s => !s.IsCoil) && ground.All(s => s.IsCoil) ? "high-pass" : null;
    }

    private static string Parts(MatchCandidate c, UnitSystem units) => string.Join(", ", c.Ladder.Sections.Select(s => $"{s.Title} {QuantityFormat.Show(s.Value, s.ValueKind, units, 3)}"));

    private static string? Plain(string? written) => written is { Length: >= 2 } w && w[0] is '\'' or '"' && written[^1] == written[0] ? written[1..^1].Replace("''", "'", StringComparison.Ordinal) : written;

    private static string Quoted(string name) => name.All(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '.') && name.Length > 0 && char.IsLetterOrDigit(name[0]) ? name : "'" + name.Replace("'", "''", StringComparison.Ordinal) + "'";
}
