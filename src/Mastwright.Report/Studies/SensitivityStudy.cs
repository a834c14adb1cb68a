using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Which input moves the structural verdict most, and by how much.</summary>
public static class SensitivityStudy
{
    private const string Caution = "An input that moves the verdict much is worth measuring before metal is bought: ask your building office for wind and ice, weigh and measure the rest. Local codes and a licensed engineer come first.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("sensitivity", "Which input moves the structural verdict most, and by how much", Make) { Long = true };

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("What the verdict hangs on", input.Station.Name, input.Station.UnitSystem);
        document.Text("One input after the other is changed by a tenth or by its natural step, all else as in the file, and the mast is judged anew with twelve wind directions. Use is the largest share of capacity of any structural check; 100 % is the limit.");
        foreach (var (mast, index) in input.Station.Masts.Select((m, i) => (m, i)))
        {
            var result = Sensitivity.Of(input.Station, index, input.Progress, input.Cancellation);
            document.Section($"Mast {mast.Name}");
            document.Text($"As it is: {StudyWords.Percent(result.Use)} at “{result.Worst?.Title}”, {result.Worst?.GoverningCase}.");
            if (result.Lines.FirstOrDefault() is { } first && Math.Abs(first.Change) > 0)
            {
                var group = result.Lines.Where(l => l.Group == first.Group).MaxBy(l => Math.Abs(l.Change))!;
                document.Text($"Most depends on: {group.Input}, which changes the largest use by {Signed(group.Change)}.");
            }

            document.Table("Every step, the input that moves the verdict most first", ["Input and step", "#Use", "#Change", "Verdict", "Then governed by"], result.Lines.Select(l => new Cell[]
            {
                l.Input, StudyWords.Percent(l.Use), Signed(l.Change), l.Passes ? new Cell("pass", Verdict.Pass) : new Cell("fail", Verdict.Fail), l.Worst?.Title ?? "",
            }));
        }

        return document.Caution(Caution).Build();
    }

    private static string Signed(double share) => double.IsInfinity(share) ? "∞" : FormattableString.Invariant($"{100 * share:+0.0;−0.0;0.0} points");
}
