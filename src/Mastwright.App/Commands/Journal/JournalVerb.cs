using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands.Journal;

/// <summary>What every verb of the journal works with: the design, the journal beside it, and who writes when in which weather.</summary>
internal sealed class JournalVerb
{
    private static readonly Argument<string?> Design = Shared.FileArgument();
    private static readonly Option<string?> JournalFile = new Option<string?>("--journal") { Description = "The journal; left out, the file beside the design with the ending .journal." }.NamesFile();
    private static readonly Option<string?> MastName = new("--mast") { Description = "The mast; needed when the station has several." };
    private static readonly Option<string?> When = new("--at") { Description = "Date, or date and time, e.g. 2026-05-01 or \"2026-05-01 14:30\"; left out, now." };
    private static readonly Option<string?> By = new("--by") { Description = "Who noted it." };
    private static readonly Option<string?> NoteText = new("--note") { Description = "Free words." };
    private static readonly Option<string?> Temperature = new("--temperature") { Description = "Air temperature, e.g. \"12 °C\"; tensions are compared at their temperature." };
    private static readonly Option<string?> Wind = new("--wind") { Description = "Wind meanwhile, e.g. \"2 m/s\"." };
    private static readonly Option<string?> WeatherWords = new("--weather") { Description = "Anything else of the weather, e.g. \"frost on the ground\"." };

    private readonly CancellationToken cancellation;

    private JournalVerb(ParseResult parsed, Station station, string path, CancellationToken cancellation)
    {
        (Parsed, Station, Path, this.cancellation) = (parsed, station, path, cancellation);
        Written = new Written(parsed);
    }

    /// <summary>The command line.</summary>
    public ParseResult Parsed { get; }

    /// <summary>The command line with its problems gathered.</summary>
    public Written Written { get; }

    /// <summary>The station.</summary>
    public Station Station { get; }

    /// <summary>The journal's file.</summary>
    public string Path { get; }

    /// <summary>Stops the work.</summary>
    public CancellationToken Cancellation => cancellation;

    /// <summary>A verb that reads.</summary>
    public static Command Reading(string name, string purpose, Func<JournalVerb, int> run, params Symbol[] own) => Create(name, purpose, run, [JournalFile, .. own]);

    /// <summary>A verb that adds an entry.</summary>
    public static Command Adding(string name, string purpose, Func<JournalVerb, int> run, params Symbol[] own) =>
        Create(name, purpose, run, [JournalFile, .. own, MastName, When, By, NoteText, Temperature, Wind, WeatherWords]);

    /// <summary>The journal's file for a design: beside it, with its own ending.</summary>
    public static string PathFor(string? designPath) => JournalPath.For(designPath);

    /// <summary>The mast asked for; the only one when none was named.</summary>
    public Mast? Mast()
    {
        var name = Written.Text(MastName);
        var (mast, problem) = MastChoice.Of(Station, name);
        if (problem is not null)
        {
            Written.Problems.Add(problem);
        }

        return mast;
    }

    /// <summary>The mast named, or empty for the whole station.</summary>
    public string MastOrStation() => Written.Text(MastName) is null ? "" : Mast()?.Name ?? "";

    /// <summary>What every entry has.</summary>
    public EntryHead Common() => new(
        Guid.CreateVersion7(), Written.Moment(When), Written.Text(By) ?? "", Written.Text(NoteText) ?? "",
        new Weather(Written.Quantity(Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK), Written.Quantity(Wind, QuantityKind.Speed, 0, Weather.MostWindMPerS), Written.Text(WeatherWords) ?? ""));

    /// <summary>An entry with what every entry has said anew where it was given, the rest as it stands.</summary>
    public JournalEntry Corrected(JournalEntry entry) => entry with
    {
        At = Written.MomentOrNull(When, endOfDay: false) ?? entry.At,
        Mast = Written.Text(MastName) is null ? entry.Mast : Mast()?.Name ?? entry.Mast,
        Author = Written.Text(By) ?? entry.Author,
        Text = Written.Text(NoteText) ?? entry.Text,
        Weather = new Weather(
            Written.Quantity(Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK) ?? entry.Weather.TemperatureK, Written.Quantity(Wind, QuantityKind.Speed, 0, Weather.MostWindMPerS) ?? entry.Weather.WindMs, Written.Text(WeatherWords) ?? entry.Weather.Words),
    };

    /// <summary>The tension from a reading; a finding about its option when there is none.</summary>
    public (GuyReading? Reading, Finding? Problem) Take(Mast mast, double? temperatureK, string guy, string way, string raw, string option)
    {
        var (reading, problem) = Shared.WithProgress(_ => GuyReading.Take(new StandingMasts(), Station, mast, temperatureK, guy, way, raw, Cancellation));
        return (reading, problem?.Place?.Path switch
        {
            GuyReading.GuyField => problem with { Place = Written.Place("--guy") },
            GuyReading.ReadingField => problem with { Place = Written.Place(option) },
            _ => problem,
        });
    }

    /// <summary>Adds an entry unless something could not be read, and says where it is.</summary>
    public int Add(Func<JournalEntry> make)
    {
        if (Written.Problems.Count > 0)
        {
            return Refuse([.. Written.Problems]);
        }

        var entry = make();
        return Open(write: true, store => store.Add(entry) is { Problem: { } problem } ? Refuse(problem) : Say($"Noted in {Path} as {EntryWords.Key(entry)}."));
    }

    /// <summary>Works with the journal open; a problem with opening it is shown.</summary>
    public int Open(bool write, Func<JournalStore, int> work)
    {
        var opened = write ? JournalStore.Open(Path) : JournalStore.OpenReadOnly(Path);
        if (opened.Value is not { } store)
        {
            return Refuse(opened.Problem!);
        }

        using (store)
        {
            if (write && store.Content() is { Value: { Station.Length: 0 } } && store.NameStation(Station.Name) is { Problem: { } problem })
            {
                return Refuse(problem);
            }

            return work(store);
        }
    }

    /// <summary>The entries; none when there is no journal yet.</summary>
    public (IReadOnlyList<JournalEntry>? Entries, Finding? Problem) Entries(bool mustExist = true)
    {
        if (!mustExist && !File.Exists(Path))
        {
            return ([], null);
        }

        var opened = JournalStore.OpenReadOnly(Path);
        if (opened.Value is not { } store)
        {
            return (null, opened.Problem);
        }

        using (store)
        {
            var entries = store.Entries();
            return (entries.Value, entries.Problem);
        }
    }

    /// <summary>Shows what stands in the way.</summary>
    public static int Refuse(params Finding[] findings)
    {
        FindingsView.Write(Shared.Messages(), findings);
        return ExitCode.WrongInput;
    }

    /// <summary>Shows a document.</summary>
    public static int Show(Document document)
    {
        TerminalDocument.Write(Shared.Output(), document);
        return document.Verdict is Verdict.Pass or Verdict.Caution ? ExitCode.Pass : ExitCode.CheckFails;
    }

    /// <summary>Says a line.</summary>
    public static int Say(string line)
    {
        Console.Out.WriteLine(line);
        return ExitCode.Pass;
    }

    private static Command Create(string name, string purpose, Func<JournalVerb, int> run, Symbol[] symbols)
    {
        var command = new Command(name, purpose) { Design };
        foreach (var symbol in symbols)
        {
            if (symbol is Option option)
            {
                command.Add(option);
            }
            else
            {
                command.Add((Argument)symbol);
            }
        }

        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, run, cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, Func<JournalVerb, int> run, CancellationToken cancellation)
    {
        try
        {
            var path = parsed.GetValue(Design);
            var reading = DesignFile.Read(path);
            return reading.Ok
                ? run(new JournalVerb(parsed, reading.Station!, parsed.GetValue(JournalFile) ?? PathFor(path), cancellation))
                : Refuse([.. reading.Findings]);
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped; nothing was written.");
            return ExitCode.Cancelled;
        }
    }
}
