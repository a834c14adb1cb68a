using Mastwright.Analysis.Stand;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Structure.Raising;

namespace Mastwright.Report.Studies;

/// <summary>Building the mast upwards piece by piece: at every step what pole, rope, clamps, guys and the part-built mast bear.</summary>
public static class StackingStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("stack", "Building the mast upwards piece by piece: rope, pole, clamps, temporary guys and mast at every step", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Building the mast upwards", input.Station.Name, input.Station.UnitSystem).Caution(RaisingCaution.StackingText);
        foreach (var mast in input.Station.Masts)
        {
            var plan = mast.Raising.Stacking ?? new Model.Design.StackingPlan();
            var answer = StackingRun.Of(input.Station, mast, input.Cancellation);
            document.Section($"Mast {mast.Name}");
            if (answer.Rows.IsEmpty)
            {
                document.Text("The mast is one piece: there is nothing to stack. Say how long its pieces are (sections: piece), or raise it whole (mastwright raise).");
                continue;
            }

            document.Text($"Pole of {document.Show(plan.PoleMassKg, QuantityKind.Mass, 3)} clamped to the top, its clamps {document.Show(plan.ClampSpacingM, QuantityKind.Length, 2)} apart, {document.Show(plan.OffsetM, QuantityKind.Length, 2)} off the axis; a climber of {document.Show(plan.ClimberKg, QuantityKind.Mass, 3)} beside it; the piece drawn out by {document.Show(plan.TagAngleRad, QuantityKind.Angle, 2)} with a tag line; weights times {mast.Raising.DynamicFactor:0.##} for starting and stopping. Still air: wind stops the work.");
            document.Text($"Temporary guys of {plan.Strand} at {document.Show(plan.TensionN, QuantityKind.Force, 3)} go to the mast’s own anchors wherever more than {document.Show(plan.FreeTopM, QuantityKind.Length, 2)} would stand free, and come off when the permanent guys above them are tight.");
            document.Table("Step by step", ["#Step", "#Standing", "Guys rigged at", "#Free top", "#Rope", "#Pole pressed", "#Clamp, sideways", "#Top moves", "#Mast used", "Step"], answer.Rows.Select((r, i) => new Cell[]
            {
                $"{i + 1}", document.Show(r.Step.HeightM + mast.Base.HeightM, QuantityKind.Length, 3), r.Guys, document.Show(r.Step.FreeTopM, QuantityKind.Length, 2), document.Show(r.Step.RopeN, QuantityKind.Force, 3),
                document.Show(r.Step.PoleCompressionN, QuantityKind.Force, 3), document.Show(r.Step.ClampN, QuantityKind.Force, 3),
                r.Step.Solution.IsStable ? document.Show(double.Hypot(r.Step.Solution.Nodes[^1].DisplacementM.X, r.Step.Solution.Nodes[^1].DisplacementM.Y), QuantityKind.FineLength, 2) : "",
                r.Use is { } u ? DocumentBuilder.Use(u) : "", r.Stands ? new Cell("stands", Verdict.Pass) : new Cell("does not stand", Verdict.Fail),
            }));
            document.Checks("What must hold", answer.Checks);
            document.Findings(answer.Rows.SelectMany(r => r.Step.Findings).Where(f => f.Code is not "guy-slack").DistinctBy(f => f.Message));
        }

        return document.Build();
    }
}
