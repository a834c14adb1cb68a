using System.Globalization;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Tension;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Keep;

/// <summary>Shows a tension as measured, beside what it should be.</summary>
public static class TensionReadingDocument
{
    /// <summary>Deviation from the table from which a reading is a caution, as a share: common practice, no source.</summary>
    public const double CautionShare = 0.1;

    /// <summary>The document.</summary>
    /// <param name="station">The station.</param>
    /// <param name="guy">The guy as it should be.</param>
    /// <param name="estimate">The tension found.</param>
    /// <param name="temperatureK">Temperature of the reading; null when not noted: then nothing is compared.</param>
    public static Document Of(Station station, GuyAtRest guy, TensionEstimate estimate, double? temperatureK)
    {
        var document = new DocumentBuilder($"Tension of guy {GuyNames.Short(guy.Name)} by {estimate.Method}", station.Name, station.UnitSystem);
        document.Caution("A guy stores energy: stand clear of its line, and never slacken one guy alone.");
        document.Table("", ["What", "#Value", "How"],
        [
            ["Tension at the anchor", document.Show(estimate.AtAnchor), estimate.AtAnchor.Formula],
            ["Reading error makes", "± " + document.Show(estimate.UncertaintyN, QuantityKind.Force, 2), "one standard deviation"],
            ["Tension at the mast", document.Show(estimate.AtMast), estimate.AtMast.Formula],
            ["Taut-string rule", document.Show(estimate.TautString), estimate.TautString.Formula],
        ]);
        if (temperatureK is { } k)
        {
            var off = (estimate.AtAnchor.Value / guy.AnchorTensionN) - 1;
            var near = Math.Abs(off) <= CautionShare;
            document.Table($"Against the table at {document.Show(k, QuantityKind.Temperature, 3)} in still air", ["#Should be", "#Is", "#Off", "State"],
            [
                [
                    document.Show(guy.AnchorTensionN, QuantityKind.Force), document.Show(estimate.AtAnchor), (100 * off).ToString("+0.#;−0.#;0", CultureInfo.InvariantCulture) + " %",
                    new Cell(near ? "near enough" : "off by more than a tenth", near ? Verdict.Pass : Verdict.Caution),
                ],
            ]);
        }
        else
        {
            document.Add(new Note(NoteKind.Assumption, "No temperature was noted, so the reading cannot be held against the table nor watched for drift."));
        }

        if (estimate.AtAnchor.Note is { } note)
        {
            document.Add(new Note(NoteKind.Remark, note));
        }

        foreach (var warning in estimate.TautString.RangeWarnings().Distinct())
        {
            document.Add(new Note(NoteKind.Assumption, warning));
        }

        return document.Build();
    }
}
