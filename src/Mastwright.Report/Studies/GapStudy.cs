using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>The base gap of every mast: its window, the feeler, what bounds it on both sides.</summary>
public static class GapStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("gap", "The base gap: its window, the feeler in inch and millimetre, what bounds it on both sides", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("The base gap", station.Name, station.UnitSystem).Caution(GapAnswer.Caution);
        foreach (var mast in input.Result.Masts)
        {
            document.Section($"Mast {mast.Name}");
            document.Table("Working peaks", ["Band", "#Base crest at full power"], mast.Bands.OrderByDescending(b => b.BasePeakV.Value).Select(b => new Cell[] { b.Name, document.Show(b.BasePeakV, 3) }));
            document.Table("Parts behind the gap", ["Part", "#Withstands"], station.Protection.Parts.Select(p => new Cell[] { p.Name, document.Show(p.WithstandPeakV, QuantityKind.PeakVoltage, 3) }));
            switch (mast.Gap)
            {
                case GapSetting setting:
                    Setting(document, setting);
                    break;
                case NoGapFits none:
                    None(document, none);
                    break;
            }

            document.Findings(mast.Gap.Findings);
            document.Checks("Checks", input.Result.Checks.Where(c => c.Id.StartsWith("survive.gap", StringComparison.Ordinal) && c.Id.EndsWith($"[{mast.Name}]", StringComparison.Ordinal)));
        }

        return document.Build();
    }

    private static void Setting(DocumentBuilder document, GapSetting s) => document.Table("The setting", ["What", "#Value"],
    [
        ["set", document.Show(s.SpacingM, 3)],
        ["feeler", $"{s.Feeler.InchText} or {Model.Units.QuantityFormat.Digits(s.Feeler.Millimetres, 3)} mm"],
        ["smallest that holds off, setting error included", document.Show(s.WindowLowM, 3)],
        ["largest that protects, setting error included", document.Show(s.WindowHighM, 3)],
        ["highest working peak, mismatch and modulation included", document.Show(s.WorkingPeakV, 3)],
        ["holds at radio frequency, wet, thinnest air, set too small", document.Show(s.HoldOffV, 3)],
        ["sparks at slowly rising voltage, dry, densest air", document.Show(s.StaticSparkV, 3)],
        ["fires on a lightning front, densest air, set too wide", document.Show(s.FiringV, 3)],
        ["weakest part behind it", document.Show(s.WeakestStrengthV, 3)],
    ]);

    private static void None(DocumentBuilder document, NoGapFits n)
    {
        document.Table("No gap fits", ["What", "#Value"],
        [
            ["smallest that holds off", document.Show(n.WindowLowM, 3)],
            ["largest that protects", n.WindowHighM is { } high ? document.Show(high, 3) : "none"],
            [$"highest working peak ({n.GoverningBand})", document.Show(n.WorkingPeakV, 3)],
            [$"weakest part ({n.WeakestPart})", document.Show(n.WeakestStrengthV, 3)],
            ["strength every part would need", document.Show(n.StrengthNeededV, 3)],
            ["working peak that would be allowed", document.Show(n.WorkingPeakAllowedV, 3)],
        ]);
        document.Add(new Steps([.. n.Changes]));
    }
}
