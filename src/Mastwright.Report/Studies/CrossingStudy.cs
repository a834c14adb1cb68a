using Mastwright.Analysis.Survive;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Cables that cross the base insulator.</summary>
public static class CrossingStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("crossing", "Cables across the base: their effect on every band and their strike path", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Cables across the base", station.Name, station.UnitSystem).Caution(StrikeCautions.Storm).Caution(GapAnswer.Caution);
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var (mast, result) = (station.Masts[m], input.Result.Masts[m]);
            document.Section($"Mast {mast.Name}");
            if (mast.Crossings.IsEmpty)
            {
                document.Text("The file names no cable across the base. Name a lamp, a rotator or another aerial under “crossings”, as a coil, a transformer or a stub.");
                continue;
            }

            var scenario = StrikeRun.Scenario(station, mast, result, LightningCurrents.Of(StrikeRun.LevelOf(station), StrokeKind.Subsequent), new StruckNetwork("", []));
            var strike = StrikeSimulation.Run(scenario, cancellation: input.Cancellation);
            foreach (var crossing in CrossingRun.Of(station, mast, result, strike?.Parts[0].PeakV))
            {
                One(document, crossing, strike?.Parts.FirstOrDefault(p => p.Name == StrikeNetworks.CableName(crossing.Name)));
            }
        }

        return document.Build();
    }

    private static void One(DocumentBuilder document, CrossingCase crossing, StruckPart? struck)
    {
        document.Table($"{crossing.Name}: effect on every band", ["Band", "#Crossing R", "#Crossing X", "#Base R with it", "#Base X with it", "#Loss", "#SWR it makes", "#Crest across it"], crossing.Answer.Effects.Select(e => new Cell[]
        {
            e.Band, document.Show(e.CrossingR, 3), document.Show(e.CrossingX, 3), document.Show(e.BaseR, 3), document.Show(e.BaseX, 3), document.Show(e.LossW, 3),
            Swr(e.DetuningRatio.Value), document.Show(e.VoltagePeakV, 3),
        }));
        document.Checks($"{crossing.Name}: checks", crossing.Answer.Checks);
        if (struck is not null)
        {
            document.Table($"{crossing.Name}: in the subsequent stroke, beside the gap, no network connected", ["#Peak voltage", "#Above half for", "#Peak current", "#Energy"],
                [[document.Show(struck.PeakV, 3), document.Show(struck.AboveHalfS, 3), document.Show(struck.PeakA, 3), Math.Abs(struck.EnergyJ.Value) < 0.1 ? "under 0.1 J" : document.Show(struck.EnergyJ, 3)]]);
        }

        document.Text($"In a strike: {crossing.Answer.StrikePath}");
        if (crossing.Answer.StrikeVoltPerTurn is { } turn)
        {
            document.Text($"Between turns, were the strike's voltage spread evenly: {document.Show(turn, 3)}. {turn.Note}");
        }
    }

    private static string Swr(double reflection) => reflection >= 1 ? "∞" : StudyWords.Swr((1 + reflection) / (1 - reflection));
}
