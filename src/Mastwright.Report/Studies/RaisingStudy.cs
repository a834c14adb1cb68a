using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Structure.Raising;

namespace Mastwright.Report.Studies;

/// <summary>Forces in line, pole, hinge, side guys and the mast itself while it goes up.</summary>
public static class RaisingStudy
{
    private const int EveryDegrees = 8;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("raise", "Forces in line, pole, hinge, side guys and the mast itself while it goes up, through every angle", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Raising the mast", input.Station.Name, input.Station.UnitSystem);
        foreach (var mast in input.Station.Masts)
        {
            var lift = RaisingRun.LiftOf(input.Station, mast);
            document.Section($"Mast {mast.Name}: {lift.Forces.Method}").Caution(lift.Forces.Caution);
            if (mast.Raising.Method == RaisingMethod.Stacking)
            {
                document.Text("The plan of the file is to build this mast upwards piece by piece: see “mastwright stack”. Below, for comparison, the forces if it were raised whole by a falling derrick.");
            }

            document.Table("Worst of the whole lift", ["What", "#Value", "#At angle"], lift.Forces.Explain().Select(t => new Cell[]
            {
                t.Name, document.Show(t), document.Show(t.Inputs[0], 2),
            }).Append([
                $"side guy in a wind of {document.Show(mast.Raising.WindMPerS, QuantityKind.Speed, 2)}", document.Show(lift.SideGuys.TensionN, QuantityKind.Force), "every",
            ]));
            document.Checks("What must bear it", LiftChecks.Of(input.Station, mast, lift));
            Missing(document, mast.Raising);
            document.Table("Through the lift", ["#Angle", "#Haul line", "#Lift line", "#Pole (− is pulled)", "#Hinge", "#Back stay", "#Side guy", "#Bending in the mast"],
                lift.Forces.Steps.Where((_, i) => i % EveryDegrees == 0).Select(s => new Cell[]
                {
                    document.Show(s.AngleRad, QuantityKind.Angle, 2), s.HaulLineN < 0 ? "slack: back line" : document.Show(s.HaulLineN, QuantityKind.Force, 3), document.Show(s.LiftLineN, QuantityKind.Force, 3),
                    s.HaulLineN < 0 ? "" : document.Show(s.PoleCompressionN, QuantityKind.Force, 3), document.Show(s.HingeOnMastN.Length, QuantityKind.Force, 3),
                    document.Show(s.BackStayN, QuantityKind.Force, 3), document.Show(lift.SideGuys.TensionN, QuantityKind.Force, 3), document.Show(s.MastBendingNm, QuantityKind.Moment, 3),
                }));
            Angles(document, lift);
            LiftingPoints(document, mast, lift);
            document.Text($"Side guys run from the lifting point to anchors {document.Show(mast.Raising.SideGuyDistanceM ?? (mast.LengthM / 2), QuantityKind.Length, 3)} to either side, in line with the hinge pin: they are {document.Show(lift.SideGuys.LengthM, QuantityKind.Length, 3)} long at every angle, and neither tighten nor slacken as the mast turns.");
            document.Findings(lift.Forces.Findings);
        }

        return document.Build();
    }

    private static void Missing(DocumentBuilder document, RaisingPlan plan)
    {
        var missing = new (string Key, bool There, string What)[]
        {
            ("line-strength", plan.LineStrengthN is not null, "the line"), ("pole", plan.Pole is not null, "the pole against buckling"), ("lug", plan.Lug is not null, "the lifting lug"),
        }.Where(m => !m.There).ToList();
        if (missing.Count > 0)
        {
            document.Add(new Note(NoteKind.Assumption, $"Not checked, because the file does not describe it: {string.Join(", ", missing.Select(m => m.What))}. Add {string.Join(", ", missing.Select(m => $"“{m.Key}:”"))} to “raising:”."));
        }
    }

    private static void Angles(DocumentBuilder document, Lift lift)
    {
        var steps = lift.Forces.Steps.Where(s => s.HaulLineN >= 0).ToList();
        var unit = QuantityFormat.UnitFor(steps.Max(s => Math.Max(s.HaulLineN, s.HingeOnMastN.Length)), QuantityKind.Force, document.Units);
        double[] x = [.. steps.Select(s => s.AngleRad * 180 / Math.PI)];
        Curve Line(string name, Func<RaisingStep, double> of) => Curve.Of(name, x, [.. steps.Select(s => unit.FromSi(of(s)))]);
        document.Add(Plots.Curves("Forces through the lift", "Forces through the lift; a pole below zero is pulled and its foot must be held down.", "angle of the mast above the ground, °", $"force, {unit.Symbol}",
            [Line("haul line", s => s.HaulLineN), Line("lift line", s => s.LiftLineN), Line("pole", s => s.PoleCompressionN), Line("hinge", s => s.HingeOnMastN.Length)]));
    }

    private static void LiftingPoints(DocumentBuilder document, Mast mast, Lift lift)
    {
        var bending = lift.Bending;
        var best = bending.Best();
        var (now, least) = (bending.Worst(), best.Worst());
        document.Text($"Lying level, the mast bends by {document.Show(now.MomentNm, QuantityKind.Moment, 3)} at {document.Show(now.AtM, QuantityKind.Length, 3)} from its foot, lifted {(bending.SpreadM > 0 ? $"at two points {document.Show(bending.SpreadM, QuantityKind.Length, 2)} apart, their middle " : "")}at {document.Show(bending.LiftM, QuantityKind.Length, 3)}. "
            + $"Least is {document.Show(least.MomentNm, QuantityKind.Moment, 3)}, lifted at {document.Show(best.LiftM, QuantityKind.Length, 3)}.");
        var spreads = new[] { 0, 0.2, 0.3, 0.4 }.Select(k => k * mast.LengthM).Select(s => (bending with { SpreadM = s }).Best());
        document.Table("Where to lift for the least bending", ["Lifting points", "#Their middle", "#Bending, lying level"], spreads.Select(s => new Cell[]
        {
            s.SpreadM == 0 ? "one" : $"two, {document.Show(s.SpreadM, QuantityKind.Length, 2)} apart, on an equalising bridle", document.Show(s.LiftM, QuantityKind.Length, 3), document.Show(s.Worst().MomentNm, QuantityKind.Moment, 3),
        }));
    }
}
