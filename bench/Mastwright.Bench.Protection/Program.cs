using System.Diagnostics;
using System.Globalization;
using Mastwright.Analysis;
using Mastwright.Analysis.Survive;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Design;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;
using Mastwright.Protection.Statics;
using Mastwright.Protection.Tests.Support;

// Usage: no arguments, or a design file in place of the lattice example. Prints times as measured and, where there is a baseline on this machine, the ratio to it. Best of five.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

var deck = new StrikeDeck(StrikeDeck.Usual);
var same = Best(() => deck.RunOurs());
Console.WriteLine($"strike, 12 µs, gap as a switch: {same:F3} s");
if (StrikeDeck.Which("ngspice") is { } ngspice)
{
    var spice = Best(() => deck.RunSpice(ngspice));
    Console.WriteLine($"  ngspice on the same circuit, 2 ns steps, start of the program included: {spice:F3} s; ours over it {same / spice:F3}");
}

var steps = 0;
var whole = Best(() => steps = StrikeSimulation.Run(StrikeDeck.Usual)!.Raw.TimesS.Length);
Console.WriteLine($"strike, five tails, lag, arc law and soil breakdown, earth solved, {steps} steps: {whole:F3} s, {Processor(() => StrikeSimulation.Run(StrikeDeck.Usual)):F3} s of processor time");

var body = AxisymmetricBody.Rod("rod", 0, 20, 0.05);
var (unknowns, tip) = (0, 0.0);
var corona = Best(() =>
{
    var basis = AxisymmetricElectrostatics.Solve([body], refinement: 3);
    (unknowns, tip) = (basis.Unknowns, basis.With([ConductorState.Earthed], 1).Strongest(0).FieldVPerM);
});
Console.WriteLine($"corona, rod on a plane, {unknowns} unknowns: {corona:F4} s, enhancement {tip:F2}");
if (File.Exists("/usr/bin/python3") && Python(unknowns, 20, 0.05) is { } scipy)
{
    Console.WriteLine($"  SciPy on the same rod, {scipy.Unknowns:F0} unknowns: {scipy.Seconds:F4} s, enhancement {scipy.Tip:F2}; ours over it {corona / scipy.Seconds:F3}");
}

// The same from a design file: all that the study of one stroke and of static asks, the earth solved anew.
var file = args.Length > 0 ? args[0] : Path.Combine(Root(), "examples", "lattice-22m.yaml");
var reading = DesignReader.Read(File.ReadAllText(file), file, CatalogueNames.Of);
var station = reading.Station!;
var result = StationAnalysis.Run(reading);
var scenario = StrikeRun.Scenario(station, station.Masts[0], result.Masts[0], LightningCurrents.Of(StrikeRun.LevelOf(station), StrokeKind.FirstNegative));
var stroke = Best(() => steps = StrikeSimulation.Run(scenario)!.Raw.TimesS.Length);
Console.WriteLine($"strike from the design file {Path.GetFileName(file)}, five tails, every part, {steps} steps: {stroke:F3} s, {Processor(() => StrikeSimulation.Run(scenario)):F3} s of processor time");
Console.WriteLine($"  of which the earth: {Processor(() => new RadialEarth(scenario.Earth, Mastwright.Protection.Earthing.SoilIonisation.CriticalFieldCigre)):F3} s of processor time");
var fromFile = new StrikeDeck(scenario);
var ours = Best(() => fromFile.RunOurs());
Console.WriteLine($"  its first 12 µs, gap as a switch: {ours:F3} s");
if (StrikeDeck.Which("ngspice") is { } engine)
{
    var spice = Best(() => fromFile.RunSpice(engine));
    Console.WriteLine($"  ngspice on the same circuit, 2 ns steps, start of the program included: {spice:F3} s; ours over it {ours / spice:F3}");
}

var top = StaticsRun.Outline(station.Masts[0]);
var elements = AxisymmetricElectrostatics.Solve([top.ToBody()]).Unknowns;
var weather = Best(() => StaticStudy.Solve(top, AirState.Reference, 0.93, Weather.Usual));
Console.WriteLine($"corona solution from the design file, {elements} unknowns: {weather:F4} s, {Processor(() => StaticStudy.Solve(top, AirState.Reference, 0.93, Weather.Usual)):F4} s of processor time");
if (File.Exists("/usr/bin/python3") && Python(elements, top.HeightM, top.RadiusM) is { } same22)
{
    Console.WriteLine($"  SciPy on a plain rod of that height and radius, {same22.Unknowns:F0} unknowns: {same22.Seconds:F4} s; ours over it {weather / same22.Seconds:F3}");
}

Console.WriteLine($"volt-time front of the gap, earth solved: {Best(() => StrikeSimulation.FrontAtGap(scenario)):F4} s");
Console.WriteLine($"leg ends and whiskers in three dimensions: {Best(() => TopPoints.Solve(new(17.1, 0.12, 0.3), [TopPoints.LegEnds(3, 18, 0.9, 0.173, 0.012), TopPoints.Whiskers(6, 18, 0.2, 0.5, 0.002, 0.8)], AirState.Reference, 0.93, Weather.Usual)):F4} s");

var mast = new MastOutline(18, 0.04, 0.3, 0.6, 0.008, new(0.4, 0.028, 18.6));
Console.WriteLine($"corona study of a mast with rod and ring: {Best(() => StaticStudy.Solve(mast, AirState.Reference, 0.93, Weather.Usual)):F4} s");
Console.WriteLine($"smallest quiet ring over eight tubes: {Best(() => QuietRing.Search(mast, AirState.Reference, 0.93, 5000)):F3} s");

static string Root()
{
    var folder = AppContext.BaseDirectory;
    while (!Directory.Exists(Path.Combine(folder, "examples")))
    {
        folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("No folder “examples” above the benchmark.");
    }

    return folder;
}

// What a busy machine does not stretch: processor time of this process, best of five.
static double Processor(Action work)
{
    var best = double.PositiveInfinity;
    for (var i = 0; i < 5; i++)
    {
        var before = Environment.CpuUsage.TotalTime;
        work();
        best = Math.Min(best, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    return best;
}

static double Best(Action work)
{
    var best = double.PositiveInfinity;
    for (var i = 0; i < 5; i++)
    {
        var watch = Stopwatch.StartNew();
        work();
        best = Math.Min(best, watch.Elapsed.TotalSeconds);
    }

    return best;
}

static (double Seconds, double Unknowns, double Tip)? Python(int unknowns, double heightM, double radiusM)
{
    var dome = unknowns / 3;
    var script = Path.Combine(AppContext.BaseDirectory, "corona.py");
    using var process = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script, $"{heightM}", $"{radiusM}", $"{dome}", $"{unknowns - dome}"]) { RedirectStandardOutput = true })!;
    var words = process.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    process.WaitForExit();
    return process.ExitCode == 0 && words.Length == 3
        ? (double.Parse(words[0]), double.Parse(words[1]), double.Parse(words[2]))
        : null;
}
