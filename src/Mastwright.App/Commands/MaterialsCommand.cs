using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Sheets;
using Mastwright.Report.Studies;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary><c>materials</c>: what to buy, with the user's own prices or the invented samples.</summary>
internal static class MaterialsCommand
{
    private static readonly Argument<string?> Design = Shared.FileArgument();
    private static readonly Option<string?> Prices = new("--prices") { Description = "Your own prices as CSV (part,unit,price,currency,pack,invented,note); left out, invented samples." };
    private static readonly Option<string?> Sample = new("--sample") { Description = "Write the invented sample prices as a CSV file to start your own from." };

    public static Command Create()
    {
        var command = new Command(MaterialsSheet.Study.Name, MaterialsSheet.Study.Purpose + ".") { Design, Prices, Sample };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, cancellation)));
        return command;
    }

    /// <summary>Reads a price file; what cannot be read comes back as findings.</summary>
    public static Reading<PriceList> Read(string path)
    {
        var (text, problem) = OutputFile.Read(path);
        return text is null ? new Reading<PriceList>(null, [problem!]) : PriceFile.Read(text, path);
    }

    private static int Run(ParseResult parsed, CancellationToken cancellation)
    {
        if (parsed.GetValue(Sample) is { } sample)
        {
            if (OutputFile.Write(sample, PriceFile.Sample()) is { } unwritten)
            {
                FindingsView.Write(Shared.Messages(), [unwritten]);
                return ExitCode.WrongInput;
            }

            Console.Out.WriteLine($"Wrote {sample}: every price in it is invented; put in your own.");
            return ExitCode.Pass;
        }

        try
        {
            var reading = DesignFile.Read(parsed.GetValue(Design));
            var prices = parsed.GetValue(Prices) is { } file ? Read(file) : null;
            List<Finding> wrong = [.. reading.Ok ? [] : reading.Findings, .. prices is { IsUsable: false } ? prices.Findings : []];
            if (wrong.Count > 0)
            {
                FindingsView.Write(Shared.Messages(), wrong);
                return ExitCode.WrongInput;
            }

            var document = Shared.WithProgress(progress => MaterialsSheet.Document(new StudyInput(reading, progress, cancellation), prices));
            TerminalDocument.Write(Shared.Output(), document);
            return ExitCode.Pass;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }
}
