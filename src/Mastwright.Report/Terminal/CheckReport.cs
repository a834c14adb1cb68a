using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Spectre.Console;

namespace Mastwright.Report.Terminal;

/// <summary>The verdict on a station for the terminal: headline, worst checks, band table, gap, assumptions, cautions.</summary>
public sealed partial class CheckReport(IAnsiConsole console, StationResult result)
{
    private readonly UnitSystem units = result.Station.UnitSystem;

    /// <summary>Writes the whole report.</summary>
    /// <param name="everyCheck">Every check instead of the worst of each kind.</param>
    public void Write(bool everyCheck)
    {
        Headline();
        Checks(everyCheck ? result.Checks : result.WorstOfEachKind, everyCheck);
        foreach (var mast in result.Masts)
        {
            Bands(mast);
            Network(mast);
            Gap(mast);
        }

        foreach (var group in result.Groups)
        {
            Group(group);
        }

        Assumptions();
        FindingsView.Write(console, result.Findings);
        Cautions();
    }

    private void Headline()
    {
        var failed = result.Checks.Count(c => c.Verdict == Verdict.Fail);
        var unknown = result.Checks.Count(c => c.Verdict == Verdict.Unknown);
        var cautions = result.Checks.Count(c => c.Verdict == Verdict.Caution);
        var (words, colour) = result.Verdict switch
        {
            Verdict.Fail => ($"NOT FIT: {failed} of {result.Checks.Length} checks fail", "red"),
            Verdict.Unknown => ($"OPEN: {unknown} of {result.Checks.Length} checks cannot be decided", "yellow"),
            Verdict.Caution => ($"FIT WITH {cautions} CAUTION{(cautions == 1 ? "" : "S")}: all {result.Checks.Length} checks pass", "green"),
            _ => ($"FIT: all {result.Checks.Length} checks pass", "green"),
        };
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{result.Station.Name}[/]");
        console.MarkupLineInterpolated($"[bold {colour}]{words}[/]");
        foreach (var check in result.WorstOfEachTrade.Where(c => c.Verdict == Verdict.Fail))
        {
            console.MarkupLineInterpolated($"  {check.Title}: {check.GoverningCase}");
        }

        console.WriteLine();
    }

    private void Checks(IEnumerable<Check> checks, bool every)
    {
        var table = NewTable(every ? "Every check" : "Worst check of each kind", "Check", "Demand", "Limit", "Use", "Verdict", "Governed by");
        foreach (var check in checks)
        {
            var (word, colour) = Word(check.Verdict);
            table.AddRow(
                Markup.Escape(check.Title), Show(check.Demand), DocumentBuilder.Side(check) + Show(check.Capacity), Use(check),
                $"[{colour}]{word}[/]", Markup.Escape(check.GoverningCase));
        }

        console.Write(table);
        foreach (var check in checks.Where(c => c.Cure.Length > 0 && c.Verdict is Verdict.Fail or Verdict.Unknown))
        {
            console.MarkupLineInterpolated($"  [grey]{check.Id}[/]  {check.Cure}");
        }

        console.WriteLine();
    }

    private void Bands(MastResult mast)
    {
        var resonance = mast.FirstResonanceHz is { } f ? "first resonance " + Show(f) : "no resonance found below the highest band";
        var table = NewTable($"Mast {Markup.Escape(mast.Name)}: {resonance}",
            "Band", "Frequency", "Power", "Feed impedance", "Reactance", "Earth loss", "Efficiency", "Base current RMS", "Base peak", "Gain", "At 1 km");
        foreach (var band in mast.Bands)
        {
            table.AddRow(
                Markup.Escape(band.Name), Show(band.FrequencyHz, QuantityKind.Frequency), Show(band.PowerW, QuantityKind.Power), StudyWords.Ohm(band.FeedOhm),
                Math.Abs(band.FeedOhm.Imaginary) < 0.05 * band.FeedOhm.Real ? "resonant" : band.FeedOhm.Imaginary < 0 ? "capacitive" : "inductive",
                Show(band.EarthLossOhm, 3), Percent(band.Efficiency.Value) + (band.Efficiency.Value > 1 ? " (!)" : ""), Show(band.BaseCurrentRms, 3), Show(band.BasePeakV, 3),
                band.GainDbi.Value.ToString("0.0", CultureInfo.InvariantCulture) + " dBi", Show(band.FieldAt1KmVPerM, 3));
        }

        console.Write(table);
        foreach (var above in mast.Bands.Where(b => b.Efficiency.Value > 1 && b.Efficiency.OutOfRange is not null).GroupBy(b => b.Efficiency.OutOfRange))
        {
            console.MarkupLineInterpolated($"(!) {string.Join(", ", above.Select(b => b.Name))}: {above.Key}.");
        }

        console.WriteLine();
    }

    private void Network(MastResult mast)
    {
        var table = NewTable($"Mast {Markup.Escape(mast.Name)}: matching to {Show(result.Station.Feed.LineOhm, QuantityKind.Resistance)}",
            "Band", "Network", "Part", "Value", "Peak voltage", "Current RMS", "Loss");
        foreach (var band in mast.Bands)
        {
            if (band.Match is not { } match)
            {
                table.AddRow(Markup.Escape(band.Name), "none: see the findings", "", "", "", "", "");
                continue;
            }

            var first = true;
            foreach (var part in match.Stresses)
            {
                table.AddRow(
                    first ? Markup.Escape(band.Name) : "", first ? Markup.Escape(match.Title) : "", Markup.Escape(part.Section.Title),
                    Show(part.Section.Value, part.Section.ValueKind), Show(part.Voltage.Value, QuantityKind.PeakVoltage, 3),
                    Show(part.Current.Value, QuantityKind.RmsCurrent, 3), Show(part.HeatW, QuantityKind.Power, 3));
                first = false;
            }
        }

        console.Write(table);
        console.WriteLine();
    }

    private void Gap(MastResult mast)
    {
        switch (mast.Gap)
        {
            case GapSetting gap:
                console.MarkupLineInterpolated($"[bold]Base gap of mast {mast.Name}:[/] set {Plain(gap.SpacingM)} (nearest feeler {gap.Feeler.Text}); any setting from {Plain(gap.WindowLowM)} to {Plain(gap.WindowHighM)} serves.");
                console.MarkupLineInterpolated($"  holds {Plain(gap.HoldOffV, 3)} against a working peak of {Plain(gap.WorkingPeakV, 3)}; fires at {Plain(gap.FiringV, 3)} before the weakest part at {Plain(gap.WeakestStrengthV, 3)}.");
                break;
            case NoGapFits none:
                console.MarkupLineInterpolated($"[bold red]Base gap of mast {mast.Name}: no gap fits.[/] Working peak {Plain(none.WorkingPeakV, 3)} ({none.GoverningBand}), weakest part {Plain(none.WeakestStrengthV, 3)} ({none.WeakestPart}).");
                foreach (var change in none.Changes)
                {
                    console.MarkupLineInterpolated($"  {change}");
                }

                break;
            default:
                console.MarkupLineInterpolated($"[bold yellow]Base gap of mast {mast.Name}: cannot be set.[/]");
                FindingsView.Write(console, mast.Gap.Findings);
                break;
        }

        console.WriteLine();
    }

    private void Group(GroupResult group)
    {
        var table = NewTable($"Group {Markup.Escape(group.Name)}", "Direction", "Gain", "Front to back", "Over one mast", "Mast", "Drive impedance", "Current RMS", "Base peak", "Power");
        foreach (var direction in group.Directions)
        {
            var first = true;
            foreach (var drive in direction.Drives)
            {
                table.AddRow(
                    first ? Markup.Escape(direction.Name) : "", first ? Show(direction.GainDbi, 3) : "", first ? Show(direction.FrontToBackDb, 3) : "", first ? Show(direction.GainOverOneDb, 3) : "",
                    Markup.Escape(drive.Mast), StudyWords.Ohm(drive.DriveOhm), Show(drive.CurrentRms, 3), Show(drive.BasePeakV, 3), Show(drive.PowerW, 3));
                first = false;
            }
        }

        console.Write(table);
        console.WriteLine();
    }

    private void Assumptions()
    {
        if (result.Assumptions.IsEmpty)
        {
            return;
        }

        var table = NewTable("Assumed, because the file is silent", "Field", "Taken", "Why");
        // The same default in every item of a list is one line.
        foreach (var same in result.Assumptions.GroupBy(a => (Path: ListPlace().Replace(a.Path, "[*]"), Value: a.Shown(result.Station.UnitSystem), a.Why)))
        {
            var path = same.Count() == 1 ? same.First().Path : $"{same.Key.Path} ({same.Count()} times)";
            table.AddRow(Markup.Escape(path), Markup.Escape(same.Key.Value), Markup.Escape(same.Key.Why));
        }

        console.Write(table);
        console.WriteLine();
    }

    private void Cautions()
    {
        console.MarkupLine("[bold]Caution[/]");
        foreach (var caution in result.Cautions)
        {
            console.MarkupLineInterpolated($"  {caution}");
        }
    }

    private static Table NewTable(string title, params string[] columns)
    {
        var table = new Table { Border = TableBorder.Simple, Title = new TableTitle($"[bold]{title}[/]") };
        foreach (var column in columns)
        {
            table.AddColumn(new TableColumn(Markup.Escape(column)) { Padding = new Padding(0, 0, 1, 0) });
        }

        return table;
    }

    private string Show(Trail trail, int digits = 4) =>
        Markup.Escape(QuantityFormat.Show(trail, units, digits)) + (trail.RangeWarnings().Any() ? " [yellow]![/]" : "");

    // For lines whose markup is escaped as a whole.
    private string Plain(Trail trail, int digits = 4) => QuantityFormat.Show(trail, units, digits) + (trail.RangeWarnings().Any() ? " (!)" : "");

    private string Show(double value, QuantityKind kind, int digits = 4) => Markup.Escape(QuantityFormat.Show(value, kind, units, digits));

    private static string Percent(double share) => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private static string Use(Check check) => double.IsInfinity(check.Ratio) ? "∞" : Percent(check.Ratio);

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex ListPlace();

    private static (string Word, string Colour) Word(Verdict verdict) => verdict switch
    {
        Verdict.Pass => ("pass", "green"),
        Verdict.Caution => ("caution", "yellow"),
        Verdict.Fail => ("FAIL", "red"),
        _ => ("unknown", "yellow"),
    };
}
