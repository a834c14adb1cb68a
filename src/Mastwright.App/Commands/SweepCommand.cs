using System.CommandLine;
using Mastwright.App.Commands.Journal;
using Mastwright.App.Files;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;
using Mastwright.Report.Tune;

namespace Mastwright.App.Commands;

/// <summary><c>sweep</c>: a measured sweep over the prediction, the fit, the next setting; kept in the journal when asked.</summary>
internal static class SweepCommand
{
    private static readonly Argument<string> Design = new Argument<string>("design") { Description = "The design file." }.NamesFile();
    private static readonly Argument<string> Measured = new Argument<string>("measured") { Description = "The sweep: .s1p, .s2p (Touchstone) or .csv." }.NamesFile();
    private static readonly Option<bool> Keep = new("--keep") { Description = "Keep the sweep in the journal beside the design." };
    private static readonly Option<string?> JournalFile = new Option<string?>("--journal") { Description = "The journal to keep it in; left out, beside the design." }.NamesFile();
    private static readonly Option<string?> Plot = new Option<string?>("--plot") { Description = "Also write the drawing as an SVG file." }.NamesFile();
    private static readonly Option<string?> When = new("--at") { Description = "When it was taken; left out, now." };
    private static readonly Option<string?> By = new("--by") { Description = "Who took it." };
    private static readonly Option<string?> NoteText = new("--note") { Description = "Free words." };
    private static readonly Option<string?> Temperature = new("--temperature") { Description = "Air temperature." };
    private static readonly Option<string?> WeatherWords = new("--weather") { Description = "The weather in words; wet ground moves the reading." };

    public static Command Create()
    {
        var command = new Command("sweep", "Lay a measured sweep over the prediction, fit what is uncertain, and say what to set next.") { Design, Measured };
        foreach (var option in SweepOptions.All.Concat([Keep, JournalFile, Plot, When, By, NoteText, Temperature, WeatherWords]))
        {
            command.Add(option);
        }

        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, CancellationToken cancellation)
    {
        try
        {
            var design = parsed.GetValue(Design)!;
            var reading = DesignFile.Read(design);
            if (!reading.Ok)
            {
                return JournalVerb.Refuse([.. reading.Findings]);
            }

            var written = new Written(parsed);
            var (request, problems, warnings) = SweepOptions.Read(parsed, written, reading.Station!, parsed.GetValue(Measured)!);
            var weather = new Weather(written.Quantity(Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK), null, written.Text(WeatherWords) ?? "");
            var at = written.Moment(When);
            if (request is null || written.Problems.Count > 0)
            {
                return JournalVerb.Refuse([.. problems, .. written.Problems.Except(problems)]);
            }

            FindingsView.Write(Shared.Messages(), warnings);
            var (answer, findings) = Shared.WithProgress(progress => SweepTuning.Of(request, progress, cancellation));
            if (answer is null)
            {
                return JournalVerb.Refuse([.. findings]);
            }

            var document = SweepDocument.Of(answer);
            TerminalDocument.Write(Shared.Output(), document);
            if (written.Text(Plot) is { } plot && OutputFile.Write(plot, SweepPlot.Of(answer).Svg) is { } unwritten)
            {
                return JournalVerb.Refuse(unwritten);
            }

            return parsed.GetValue(Keep)
                ? Store(written.Text(JournalFile) ?? JournalVerb.PathFor(design), answer, entry => entry with { At = at, Author = written.Text(By) ?? "", Text = written.Text(NoteText) ?? "", Weather = weather })
                : ExitCode.Pass;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped; nothing was written.");
            return ExitCode.Cancelled;
        }
    }

    private static int Store(string path, SweepAnswer answer, Func<SweepEntry, SweepEntry> complete)
    {
        var (bare, refused) = SweepKeeping.Entry(answer, Written.Now());
        if (bare is null)
        {
            return JournalVerb.Refuse(refused!);
        }

        var entry = complete(bare);
        var opened = JournalStore.Open(path);
        if (opened.Value is not { } store)
        {
            return JournalVerb.Refuse(opened.Problem!);
        }

        using (store)
        {
            return store.Add(entry) is { Problem: { } problem } ? JournalVerb.Refuse(problem) : JournalVerb.Say($"Kept in {path} as {EntryWords.Key(entry)}.");
        }
    }
}
