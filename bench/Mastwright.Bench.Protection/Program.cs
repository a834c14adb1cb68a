using System.Diagnostics;
using System.Globalization;
using Mastwright.Fields.Electrostatics;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;
using Mastwright.Protection.Statics;
using Mastwright.Protection.Tests.Support;

// Usage: no arguments. Prints times as measured and, where there is a baseline on this machine, the ratio to it. Best of five.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

var deck = new StrikeDeck(StrikeDeck.Usual);
var same = Best(() => deck.RunOurs());
Console.WriteLine($"strike, 12 µs, gap as a switch: {same:F3} s");
if (StrikeDeck.Which("ngspice") is { } ngspice)
{
    var spice = Best(() => deck.RunSpice(ngspice));
    Console.WriteLine($"  ngspice on the same circuit, 2 ns steps, start of the program included: {spice:F3} s; ours over it {same / spice:F3}");
}

var whole = Best(() => StrikeSimulation.Run(StrikeDeck.Usual));
Console.WriteLine($"strike, five tails, lag, arc law and soil breakdown, earth solved: {whole:F3} s");

var body = AxisymmetricBody.Rod("rod", 0, 20, 0.05);
var (unknowns, tip) = (0, 0.0);
var corona = Best(() =>
{
    var basis = AxisymmetricElectrostatics.Solve([body], refinement: 3);
    (unknowns, tip) = (basis.Unknowns, basis.With([ConductorState.Earthed], 1).Strongest(0).FieldVPerM);
});
Console.WriteLine($"corona, rod on a plane, {unknowns} unknowns: {corona:F4} s, enhancement {tip:F2}");
if (File.Exists("/usr/bin/python3") && Python(unknowns) is { } scipy)
{
    Console.WriteLine($"  SciPy on the same rod, {scipy.Unknowns:F0} unknowns: {scipy.Seconds:F4} s, enhancement {scipy.Tip:F2}; ours over it {corona / scipy.Seconds:F3}");
}

var mast = new MastOutline(18, 0.04, 0.3, 0.6, 0.008, new(0.4, 0.028, 18.6));
Console.WriteLine($"corona study of a mast with rod and ring: {Best(() => StaticStudy.Solve(mast, AirState.Reference, 0.93, Weather.Usual)):F4} s");
Console.WriteLine($"smallest quiet ring over eight tubes: {Best(() => QuietRing.Search(mast, AirState.Reference, 0.93, 5000)):F3} s");

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

static (double Seconds, double Unknowns, double Tip)? Python(int unknowns)
{
    var dome = unknowns / 3;
    var script = Path.Combine(AppContext.BaseDirectory, "corona.py");
    using var process = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script, "20", "0.05", $"{dome}", $"{unknowns - dome}"]) { RedirectStandardOutput = true })!;
    var words = process.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    process.WaitForExit();
    return process.ExitCode == 0 && words.Length == 3
        ? (double.Parse(words[0]), double.Parse(words[1]), double.Parse(words[2]))
        : null;
}
