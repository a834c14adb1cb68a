using Mastwright.Analysis.Stand;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Forces in line, pole and hinge while the mast goes up.</summary>
public static class RaisingStudy
{
    private const int EveryDegrees = 8;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("raise", "Forces in line, pole and hinge while the mast goes up, through every angle", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Raising the mast", input.Station.Name, input.Station.UnitSystem);
        foreach (var mast in input.Station.Masts)
        {
            var lift = RaisingRun.Of(input.Station, mast);
            document.Section($"Mast {mast.Name}: {lift.Method}").Caution(lift.Caution);
            document.Table("Worst of the whole lift", ["What", "#Value", "#At angle"], lift.Explain().Select(t => new Cell[]
            {
                t.Name, document.Show(t), document.Show(t.Inputs[0], 2),
            }));
            document.Table("Through the lift", ["#Angle", "#Haul line", "#Lift line", "#Pole (− is pulled)", "#Hinge", "#Back stay", "#Bending in the mast"],
                lift.Steps.Where((_, i) => i % EveryDegrees == 0).Select(s => new Cell[]
                {
                    document.Show(s.AngleRad, QuantityKind.Angle, 2), document.Show(s.HaulLineN, QuantityKind.Force, 3), document.Show(s.LiftLineN, QuantityKind.Force, 3),
                    document.Show(s.PoleCompressionN, QuantityKind.Force, 3), document.Show(s.HingeOnMastN.Length, QuantityKind.Force, 3),
                    document.Show(s.BackStayN, QuantityKind.Force, 3), document.Show(s.MastBendingNm, QuantityKind.Moment, 3),
                }));
            document.Findings(lift.Findings);
        }

        return document.Build();
    }
}
