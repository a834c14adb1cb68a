using System.CommandLine;
using System.Text;
using Mastwright.App.Files;
using Mastwright.Model.Trails;
using Mastwright.Report.Book;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary><c>book</c>: the whole station on paper.</summary>
internal static class BookCommand
{
    private static readonly Option<string?> Pdf = new Option<string?>("--pdf") { Description = "Write the book as PDF to this file." }.NamesFile();
    private static readonly Option<string?> Html = new Option<string?>("--html") { Description = "Write the book as one self-contained web page to this file." }.NamesFile();
    private static readonly Option<bool> Replace = new("--replace") { Description = "Replace files of these names." };
    private static readonly Option<string?> Date = new("--date") { Description = "The date to print, as 2027-05-01; left out, today." };

    public static Command Create()
    {
        var file = Shared.FileArgument();
        var command = new Command("book", "Print the station book: verdict, drawings, build papers, every check with its grounds.") { file, Pdf, Html, PriceOptions.Prices, Replace, Date };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, parsed.GetValue(file), cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, string? path, CancellationToken cancellation)
    {
        try
        {
            var (pdf, html) = (parsed.GetValue(Pdf), parsed.GetValue(Html));
            var reading = DesignFile.Read(path);
            var prices = PriceOptions.Read(parsed);
            List<Finding> wrong = [.. reading.Ok ? [] : reading.Findings, .. prices is { IsUsable: false } ? prices.Findings : []];
            wrong.AddRange(BeforeWork(pdf, html, parsed.GetValue(Replace)));
            if (DateOf(parsed.GetValue(Date), wrong) is not { } date || wrong.Count > 0)
            {
                FindingsView.Write(Shared.Messages(), wrong);
                return ExitCode.WrongInput;
            }

            var document = Shared.WithProgress(progress => StationBook.Of(new StudyInput(reading, progress, cancellation), prices));
            return Write(document, reading.Station!.UnitSystem, date, pdf, html, parsed.GetValue(Replace), cancellation);
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }

    private static int Write(Document document, Model.Units.UnitSystem units, DateOnly date, string? pdf, string? html, bool replace, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        foreach (var (path, bytes) in new (string? Path, Func<byte[]> Bytes)[]
        {
            (pdf, () => PdfDocument.Write(document, Paper.For(units), date, cancellation)),
            (html, () => Encoding.UTF8.GetBytes(HtmlDocument.Write(document, date))),
        })
        {
            if (path is null)
            {
                continue;
            }

            if (WholeFile.Write(path, bytes(), replace) is { } finding)
            {
                findings.Add(finding);
            }
            else
            {
                Console.Out.WriteLine($"Wrote {path}.");
            }
        }

        FindingsView.Write(Shared.Messages(), findings);
        return findings.Count > 0 ? ExitCode.WrongInput : document.Verdict is Verdict.Pass or Verdict.Caution ? ExitCode.Pass : ExitCode.CheckFails;
    }

    // Said before the work is done, not after.
    private static IEnumerable<Finding> BeforeWork(string? pdf, string? html, bool replace)
    {
        if (pdf is null && html is null)
        {
            yield return new Finding("book-nowhere", Severity.Error, "The command does not say where to write the book.", WayOut: "Add --pdf book.pdf, --html book.html, or both.");
        }

        foreach (var path in new[] { pdf, html }.OfType<string>())
        {
            if (WholeFile.Obstacle(path, replace) is { } finding)
            {
                yield return finding.Code == "file-exists" ? finding with { WayOut = "Choose another name, or add --replace." } : finding;
            }
        }
    }

    private static DateOnly? DateOf(string? text, List<Finding> findings)
    {
        if (text is null)
        {
            return DateOnly.FromDateTime(DateTime.Now);
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out var date))
        {
            return date;
        }

        findings.Add(new Finding("date-bad", Severity.Error, "The date cannot be read.", Value: text, Allowed: "a day such as 2027-05-01", WayOut: "Write year, month and day with hyphens, or leave --date out for today."));
        return null;
    }
}
