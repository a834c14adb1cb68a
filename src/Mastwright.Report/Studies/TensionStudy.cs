using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Guy tensions to set in still air, by temperature, and what follows when a guy is lost.</summary>
public static class TensionStudy
{
    private const string Caution =
        "A guy under tension stores energy: stand clear of its line, never slacken one guy alone, and follow the makers' data for every fitting. Local codes and a licensed engineer come first.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("tension", "Guy tensions to set in still air, by temperature, and what follows when a guy is lost", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Guy tensions", input.Station.Name, input.Station.UnitSystem);
        foreach (var mast in input.Result.Masts)
        {
            document.Section($"Mast {mast.Name}");
            if (mast.Stand.Tensions.IsEmpty)
            {
                document.Text("The mast does not stand in still air, so there are no tensions to set. Mend that first: mastwright check shows what to change.");
                continue;
            }

            Tensions(document, mast);
            Winds(document, input, mast);
            LostGuys(document, mast);
        }

        return document.Caution(Caution).Build();
    }

    private static void Tensions(DocumentBuilder document, MastResult mast)
    {
        var guys = mast.Stand.Tensions[0].AnchorTensionN.Keys.ToList();
        document.Text("Tension at the anchor in still air, every guy at its set length. Measure in the early morning or under cloud, when steel and air have one temperature.");
        document.Table("Tension at the anchor", ["#Temperature", .. guys.Select(g => "#" + g)], mast.Stand.Tensions.Select(row =>
            guys.Select(g => (Cell)document.Show(row.AnchorTensionN[g], QuantityKind.Force)).Prepend(document.Show(row.TemperatureK, QuantityKind.Temperature, 3)).ToArray()));
    }

    private static void Winds(DocumentBuilder document, StudyInput input, MastResult mast)
    {
        var stable = mast.Stand.Cases.Where(c => c.Stable && !c.Guys.IsEmpty).ToList();
        var levels = stable[0].Guys.Select(g => g.Level).Distinct().ToList();
        document.Text("Tension against wind and temperature: the largest and the least that any guy of a level sees, over all directions. A least near nothing is a guy that hangs slack on the lee side.");
        document.Table("Tension against wind, ice and temperature", ["Combination", "#At", .. levels.SelectMany(l => new[] { $"#Level {l}, most", $"#Level {l}, least" })], stable.GroupBy(c => c.Kind).Select(g =>
            levels.SelectMany(l => new Cell[]
            {
                document.Show(g.Max(c => c.Guys.Where(x => x.Level == l).Max(x => x.TensionN)), QuantityKind.Force, 3), document.Show(g.Min(c => c.Guys.Where(x => x.Level == l).Min(x => x.TensionN)), QuantityKind.Force, 3),
            }).Prepend(document.Show(g.First().TemperatureK, QuantityKind.Temperature, 3)).Prepend(g.Key).ToArray()));
        foreach (var level in levels)
        {
            if (stable.Where(c => c.WindFromRad is not null).GroupBy(c => c.Kind).MaxBy(g => g.Max(c => c.LargestGuyN)) is { } worst)
            {
                document.Add(TensionRose.Of(document.Units, $"Mast {mast.Name}, level {level}: {worst.Key}", level, [.. worst.OrderBy(c => c.WindFromRad)], input.Station.Limits.GuyFactor));
            }
        }
    }

    private static void LostGuys(DocumentBuilder document, MastResult mast)
    {
        document.Text("If one guy is lost in still air: the largest tension the others see on the way to the new rest, and the least force on the foot. Where it falls below zero the mast jumps off its seat.");
        document.Table("One guy lost", ["Guy lost", "Mast", "#Largest guy tension", "#Largest foot force", "#Least foot force"], mast.Stand.LostGuys.Select(l => new Cell[]
        {
            l.Guy, l.Stands ? new Cell("stands", Verdict.Pass) : new Cell("comes down", Verdict.Caution),
            l.Stands ? document.Show(l.LargestGuyPeakN, QuantityKind.Force) : "", l.Stands ? document.Show(l.LargestFootN, QuantityKind.Force) : "",
            l.Stands ? document.Show(l.LeastFootN, QuantityKind.Force) : "",
        }));
    }
}
