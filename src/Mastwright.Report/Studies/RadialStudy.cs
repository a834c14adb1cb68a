using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>How many radials and how long for an amount of wire.</summary>
public static class RadialStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("radials", "How many radials and how long for an amount of wire, soil by soil, and which layout of the present wire wins", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Radials", station.Name, station.UnitSystem);
        var answers = RadialRun.Of(station, input.Progress, input.Cancellation);
        var elevated = RadialRun.Elevated(station, input.Progress, input.Cancellation);
        if (answers.IsEmpty && elevated.IsEmpty)
        {
            return document.Text("There is nothing to weigh: the currents could not be solved.").Build();
        }

        foreach (var answer in elevated)
        {
            Elevated(document, answer);
        }

        if (answers.IsEmpty)
        {
            return document.Build();
        }

        document.Text("Curves are by the quick estimate, which is within about a third of the loss for fifteen or more radials; layouts of the present wire are solved exactly, the mast standing alone. The lowest bands are shown, where the ground costs most.");
        foreach (var answer in answers)
        {
            One(document, answer);
        }

        if (answers.Any(a => a.SameWire.Any(c => c.Efficiency > 1)))
        {
            document.Add(new Note(NoteKind.Assumption, "Above 100 %: a long screen spares the wave its first stretch of poor soil, so the field along the ground passes that over perfect ground judged by the same measure. It is no gain in power; compare layouts with each other."));
        }

        return document.Build();
    }

    private static void Elevated(DocumentBuilder document, ElevatedBand answer)
    {
        document.Section($"Mast {answer.Mast}, {answer.Band.Title}: radials {document.Show(answer.HeightM, QuantityKind.Length, 3)} up");
        if (answer.Choices.IsEmpty)
        {
            document.Text("The currents could not be solved.");
            return;
        }

        document.Text($"Every layout is solved exactly, the mast standing alone; the present wire is {document.Show(answer.PresentWireM, QuantityKind.Length, 4)}. " + (answer.ByField
            ? "Efficiency is judged by the field along the ground."
            : "The mast is so high on this band that its field along the ground is no judge: the figure is the share of the power that goes to the sky."));
        document.Table("Elevated radials by amount of wire", ["#Wire", "#Radials", "#Length of each", answer.ByField ? "#Efficiency" : "#Sky wave", "#Behind the best of its wire"], answer.Choices.GroupBy(c => Math.Round(c.WireM, 1)).OrderBy(g => g.Key).SelectMany(g => g.Select(c => new Cell[]
        {
            document.Show(c.WireM, QuantityKind.Length, 3), c.Count.ToString(CultureInfo.InvariantCulture), document.Show(c.LengthM, QuantityKind.Length, 3), StudyWords.Share(c.Efficiency), QuantityFormat.Digits(10 * Math.Log10(g.Max(x => x.Efficiency) / c.Efficiency), 2) + " dB",
        })));
        var unit = QuantityFormat.UnitFor(answer.PresentWireM, QuantityKind.Length, document.Units);
        document.Add(Drawings.Plots.Curves($"Efficiency against wire, mast {answer.Mast}, {answer.Band.Title}", "Efficiency of elevated radials against the wire in them, one curve for each number.", $"wire in all, {unit.Symbol}", answer.ByField ? "efficiency, %" : "sky wave, %",
            [.. answer.Choices.GroupBy(c => c.Count).OrderBy(g => g.Key).Select((g, i) => new Curve($"{g.Key} radials", [.. g.OrderBy(c => c.WireM).Select(c => (unit.FromSi(c.WireM), 100 * c.Efficiency))], Drawings.Plots.Dash(i)))]));
    }

    private static void One(DocumentBuilder document, RadialBand answer)
    {
        document.Section($"Mast {answer.Mast}, {answer.Band.Title}");
        var best = answer.SameWire.MaxBy(c => c.Efficiency)!;
        document.Text($"With the present {document.Show(answer.PresentWireM, QuantityKind.Length, 4)} of wire, {best.Count} radials of {document.Show(best.LengthM, QuantityKind.Length, 3)} do best: {StudyWords.Share(best.Efficiency)}.");
        document.Table(answer.Exact ? "The present wire laid otherwise, solved exactly" : "The present wire laid otherwise, by the estimate (the mast is so high on this band that the exact field along the ground is no judge)", ["#Radials", "#Length of each", "#Efficiency", "#Behind the best"],
            answer.SameWire.Select(c => new Cell[]
            {
                c.Count.ToString(CultureInfo.InvariantCulture), document.Show(c.LengthM, QuantityKind.Length, 3), StudyWords.Share(c.Efficiency), QuantityFormat.Digits(10 * Math.Log10(best.Efficiency / c.Efficiency), 2) + " dB",
            }));
        var unit = QuantityFormat.UnitFor(answer.PresentWireM, QuantityKind.Length, document.Units);
        document.Table("The best layout for an amount of wire, by the estimate; wire beyond what half-wave radials take is left over", ["#Wire", .. answer.Curves.Select(c => "#Soil: " + c.Soil)], Enumerable.Range(0, answer.Curves[0].Best.Length).Select(i =>
            answer.Curves.Select(c => (Cell)$"{StudyWords.Share(c.Best[i].Efficiency)}: {c.Best[i].Count} × {document.Show(c.Best[i].LengthM, QuantityKind.Length, 3)}")
                .Prepend(document.Show(answer.Curves[0].Best[i].WireM, QuantityKind.Length, 3)).ToArray()));
        document.Add(Drawings.Plots.Curves($"Efficiency against wire, mast {answer.Mast}, {answer.Band.Title}", "Best efficiency for an amount of radial wire, by the quick estimate.", $"wire in all, {unit.Symbol}", "efficiency, %",
            [.. answer.Curves.Select((c, i) => new Curve(c.Soil, [.. c.Best.Select(b => (unit.FromSi(b.WireM), 100 * b.Efficiency)).DistinctBy(p => p.Item1)], Drawings.Plots.Dash(i)))]));
    }
}
