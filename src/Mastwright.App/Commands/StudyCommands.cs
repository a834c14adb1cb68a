using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary>A command for every study.</summary>
internal static class StudyCommands
{
    public static IEnumerable<Command> Create() => Studies.All.Select(Create);

    private static Command Create(Study study)
    {
        var file = Shared.FileArgument();
        var command = new Command(study.Name, study.Purpose + ".") { file };
        var choice = study.Choice is { } offered ? new Option<string?>("--" + offered.Name) { Description = $"{offered.Purpose} (left out: {offered.Words[0]})." }.AcceptOnlyFromAmong([.. offered.Words]) : null;
        if (choice is not null)
        {
            command.Add(choice);
        }

        var csv = new Option<string?>("--csv") { Description = "A folder for every table and every curve as comma-separated text." }.NamesFile();
        command.Add(csv);
        if (study.TakesPrices)
        {
            command.Add(PriceOptions.Prices);
            command.Add(PriceOptions.Sample);
        }

        command.SetAction((parsed, cancellation) => Task.FromResult(
            study.TakesPrices && PriceOptions.WriteSample(parsed) is { } written ? written
            : Run(study, parsed.GetValue(file), choice is null ? null : parsed.GetValue(choice), parsed.GetValue(csv), study.TakesPrices ? PriceOptions.Read(parsed) : null, cancellation)));
        return command;
    }

    private static int Run(Study study, string? path, string? chosen, string? csv, Reading<PriceList>? prices, CancellationToken cancellation)
    {
        try
        {
            var reading = DesignFile.Read(path);
            Finding[] wrong = [.. reading.Ok ? [] : reading.Findings, .. prices is { IsUsable: false } ? prices.Findings : []];
            if (wrong.Length > 0)
            {
                FindingsView.Write(Shared.Messages(), wrong);
                return ExitCode.WrongInput;
            }

            var document = Shared.WithProgress(progress => study.Make(new StudyInput(reading, progress, cancellation) { Chosen = chosen, Prices = prices }));
            TerminalDocument.Write(Shared.Output(), document);
            if (csv is not null && Export(document, study.Name, csv) is { } obstacle)
            {
                FindingsView.Write(Shared.Messages(), [obstacle]);
                return ExitCode.WrongInput;
            }

            return document.Verdict is Verdict.Pass or Verdict.Caution ? ExitCode.Pass : ExitCode.CheckFails;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }

    private static Finding? Export(Document document, string stem, string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Finding("folder-unwritable", Severity.Error, "The folder cannot be made: " + e.Message, Value: folder, WayOut: "Name another folder, or make it yourself.");
        }

        var tables = CsvTables.Of(document, stem);
        foreach (var table in tables)
        {
            if (WholeFile.Write(Path.Combine(folder, table.Name + ".csv"), table.Text, replace: true) is { } finding)
            {
                return finding;
            }
        }

        Console.Error.WriteLine($"{tables.Length} tables written to {folder}");
        return null;
    }
}
