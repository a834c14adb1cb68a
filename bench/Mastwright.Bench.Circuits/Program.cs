using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tolerance;
using Mastwright.Circuits.Transient;
using MathNet.Numerics.LinearAlgebra.Complex;

// Usage: no arguments. Prints times as measured and, where there is a baseline, the ratio to it.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

double[] bands = [1.85e6, 3.65e6, 5.36e6, 7.1e6, 10.1e6, 14.2e6, 18.1e6, 21.2e6, 24.9e6, 28.5e6];
Console.WriteLine($"ten bands, first run, ranked overall: {Both(() => Console.WriteLine($"{TenBands(MatchCriterion.Overall)} candidates"))}");
Console.WriteLine($"  again: {Both(() => TenBands(MatchCriterion.Overall))}");
Console.WriteLine($"  ranked by bandwidth (SWR 2 edges of each): {Both(() => TenBands(MatchCriterion.Bandwidth))}");

var shop = new Workshop([new CapacitorItem("variable", CapacitorKind.Vacuum, 10e-12, 1000e-12, new PeakVolts(7500), new RmsAmps(40), 10e6, CapacitorLoss.ConstantQ(5000))]);
var built = 0;
var first = Both(() => built = bands.Count(f => BuiltNetworks.Of(MatchDesigner.Design(Problem(f)).Candidates, shop, enough: 1).Built.Length > 0));
Console.WriteLine($"ten bands, the first that can be built of each, in real parts: {built} of 10, with the candidates {first}");
var count = 0;
var all = Both(() => count = bands.Sum(f => BuiltNetworks.Of(MatchDesigner.Design(Problem(f)).Candidates, shop).Built.Length));
Console.WriteLine($"ten bands, every candidate tried in real parts: {count} can be built, with the candidates {all}");

var network = MatchDesigner.Design(Problem(3.65e6)).Candidates.MaxBy(c => c.Network.Parts.Length)!.Network;
const int Solves = 20000;
network.Solve(3.65e6);
var nodal = Time(() => Repeat(Solves, () => network.Solve(3.65e6)));

// Baseline: the general dense LU of Math.NET on a system of the same size, without the stamping that the nodal time includes.
var size = network.Nodes.Count() + network.Parts.Length;
var random = new Random(1);
var matrix = DenseMatrix.Create(size, size, (_, _) => new Complex(random.NextDouble(), random.NextDouble()));
var right = DenseVector.Create(size, _ => new Complex(random.NextDouble(), 0));
matrix.LU().Solve(right);
var baseline = Time(() => Repeat(Solves, () => matrix.LU().Solve(right)));
Console.WriteLine($"one nodal solution: {nodal / Solves * 1e6:F1} us; Math.NET dense LU of {size} unknowns: {baseline / Solves * 1e6:F1} us (ratio {nodal / baseline:F2})");

var candidate = MatchDesigner.Design(Problem(1.85e6)).Candidates[0];
Console.WriteLine($"tolerance study of 2000 trials with its causes: {Time(() => ToleranceStudy.Run(candidate, new ToleranceSpec())):F3} s");

foreach (var tolerance in new[] { 1e-4, 1e-5, 1e-6 })
{
    var steps = 0;
    var seconds = Time(() => steps = Strike(tolerance));
    Console.WriteLine($"strike of 50 us through a line, a gap and an earth lead, tolerance {tolerance:E0}: {steps} steps, {seconds:F3} s");
}

int TenBands(MatchCriterion criterion) => bands.Sum(f => MatchDesigner.Design(Problem(f), criterion).Candidates.Length);

static MatchProblem Problem(double f) => new(
    LoadImpedance.Table([.. Enumerable.Range(0, 21).Select(i => f * (0.9 + (0.01 * i))).Select(g => (g, new Complex(20 + (f / 1e6 * 3), -200 + (((g / f) - 1) * 2000) + (f / 1e6 * 15))))]),
    50,
    f,
    1000,
    PartQuality.HomeBuilt)
{
    Band = (f * 0.98, f * 1.02),
};

static int Strike(double tolerance) => new TransientCircuit()
    .CurrentSource("strike", "0", "top", Waveform.Lines((0, 0), (1e-6, 30e3), (50e-6, 15e3)))
    .Resistor("channel", "top", "0", 1000)
    .Line("mast", "top", "base", 350, 80e-9)
    .Gap("gap", "base", "0", new GapModel(new VoltageBreakdown(new PeakVolts(15e3)), new ArcsInSeries(new ToeplerArc(1e-2, 5e-3), new ConstantVoltageArc(200)), 20e-12))
    .Capacitor("insulator", "base", "0", 40e-12)
    .Inductor("lead", "base", "earth", 10e-6)
    .Resistor("earth", "earth", "0", 20)
    .Run(new TransientOptions(50e-6) { RelativeTolerance = tolerance })
    .TimesS.Length;

static void Repeat(int times, Action action)
{
    for (var i = 0; i < times; i++)
        action();
}

// Processor time holds on a busy machine too.
static string Both(Action action)
{
    var before = Environment.CpuUsage.TotalTime;
    var wall = Time(action);
    return $"{wall:F3} s wall, {(Environment.CpuUsage.TotalTime - before).TotalSeconds:F3} s processor";
}

static double Time(Action action)
{
    var watch = Stopwatch.StartNew();
    action();
    return watch.Elapsed.TotalSeconds;
}
