using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Terminal;
using Mastwright.Report.Tune;

namespace Mastwright.App.Commands;

/// <summary><c>turns</c>: from measured tensions to the next turns of which turnbuckle.</summary>
internal static class TurnsCommand
{
    private static readonly Argument<string?> Design = Shared.FileArgument();
    private static readonly Option<string?> Measured = new("--measured") { Description = "Tensions at the anchors: \"1/north=1.8 kN, 1/south-east=1.7 kN, ...\".", Required = true };
    private static readonly Option<string?> MastName = new("--mast") { Description = "The mast; needed when the station has several." };
    private static readonly Option<string?> Temperature = new("--temperature") { Description = "Temperature of the guys; left out, the tensioning temperature of the design." };
    private static readonly Option<string?> Tolerance = new("--tolerance") { Description = "Deviation from the target that is good enough.", DefaultValueFactory = _ => "5 %" };
    private static readonly Option<string?> PerTurn = new("--per-turn") { Description = "What one turn takes up, e.g. \"3.2 mm\"; left out, from the thread of the design's turnbuckle." };

    public static Command Create()
    {
        var command = new Command("turns", "Say which turnbuckle to turn next, and how far, from the tensions measured.") { Design, Measured, MastName, Temperature, Tolerance, PerTurn };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, CancellationToken cancellation)
    {
        try
        {
            var reading = DesignFile.Read(parsed.GetValue(Design));
            if (!reading.Ok)
            {
                return Refuse(reading.Findings);
            }

            var station = reading.Station!;
            var written = new Written(parsed);
            var (mast, unknown) = MastChoice.Of(station, written.Text(MastName));
            var temperature = written.Quantity(Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK) ?? station.Site.TensioningTemperatureK;
            var tolerance = written.Quantity(Tolerance, QuantityKind.Ratio, 0.005, 0.5) ?? 0.05;
            var perTurn = written.Quantity(PerTurn, QuantityKind.FineLength, 1e-4, 0.05);
            var pairs = written.Pairs("--measured", written.Text(Measured)).Select(p => (Guy: p.Name, N: written.Quantity("--measured", p.Value, QuantityKind.Force, 0, 1e7))).ToList();
            if (unknown is not null)
            {
                written.Problems.Add(unknown);
            }

            if (written.Problems.Count > 0)
            {
                return Refuse(written.Problems);
            }

            var request = new TurnsRequest(station, mast!, temperature, [.. pairs.Select(p => (p.Guy, p.N!.Value))], tolerance, perTurn);
            var (document, findings) = Shared.WithProgress(_ => TurnsAdvice.Of(request, cancellation));
            if (document is null)
            {
                return Refuse(findings);
            }

            TerminalDocument.Write(Shared.Output(), document);
            return ExitCode.Pass;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }

    private static int Refuse(IEnumerable<Finding> findings)
    {
        FindingsView.Write(Shared.Messages(), findings);
        return ExitCode.WrongInput;
    }
}
