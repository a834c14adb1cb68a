using System.Diagnostics;
using System.Globalization;
using Mastwright.Bench.Structure;
using Mastwright.Numerics;
using Mastwright.Structure.Batch;
using Mastwright.Structure.GuyLoss;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Stability;
using Mastwright.Structure.Tests.Support;
using Mastwright.Structure.Vibration;

// Usage: no arguments. Prints times as measured and, where there is a baseline, the ratio to it.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

double[] levels = [11, 22, 33];
double[] azimuths = [0, 120, 240];
var mast = new GuyedMast(
    Vec3.Zero,
    [ReferenceMasts.Tube(24, 0.1397, 0.005), ReferenceMasts.Tube(36, 0.1143, 0.0045, 24)],
    [.. levels.SelectMany(h => azimuths.Select(a => new Guy($"{h}/{a}", ReferenceMasts.Anchor(0.65 * Math.Max(h, 22), a), h, ReferenceMasts.Strand, GuySetting.OfAnchorTension(3000), 0.1)))]);

// 24 directions of: full wind, wind with less weight, wind with ice, each warm and cold; and a moderate wind with each guy lost.
var cases = new List<LoadCase>();
foreach (var (share, ice, temperature, dead) in new[] { (1.0, 0.0, 288.15, 1.0), (1.0, 0.0, 288.15, 0.9), (0.3, 6.0, 263.15, 1.2), (1.0, 0.0, 303.15, 1.2) })
{
    cases.AddRange(Enumerable.Range(0, 24).Select(i => Wind(share, ice, 15 * i) with { TemperatureK = temperature, DeadLoadFactor = dead }));
}

foreach (var guy in mast.Guys)
{
    cases.AddRange(Enumerable.Range(0, 24).Select(i => GuyLossStudy.Without(Wind(0.3, 0, 15 * i), guy.Name)));
}

var options = new SolverOptions { LongestElementM = 36.0 / 29 };
var prepared = MastSolver.Prepare(mast, cases, options);
Warm(() => CaseBatch.Run(prepared, cases.Take(48).ToList()));
IReadOnlyList<MastSolution> solutions = [];
var two = Time(() => solutions = CaseBatch.Run(prepared, cases, 2));
var one = Time(() => CaseBatch.Run(prepared, cases, 1));
var cold = Time(() => cases.ForEach(c => prepared.Solve(c)));
Console.WriteLine($"whole station: {cases.Count} cases, {solutions[0].Nodes.Count} nodes, 3 levels, 9 guys; {solutions.Count(s => !s.IsStable)} not carried, {solutions.Average(s => s.Iterations):F1} Newton steps a case");
Console.WriteLine($"  two threads {two:F3} s; one thread {one:F3} s (ratio {two / one:F2}); every case from rest, one thread {cold:F3} s (ratio {one / cold:F2})");
var rest = Time(() =>
{
    MastEnvelope.Of(solutions);
    foreach (var s in solutions.Take(24))
    {
        Buckling.Of(prepared, s);
    }

    MastVibration.Of(prepared, solutions[0]);
});
Console.WriteLine($"  envelope, 24 buckling factors, natural frequencies: {rest:F3} s");

StationBench.Run();

Console.WriteLine("cost against nodes (one case from rest):");
var first = 0.0;
foreach (var n in new[] { 30, 60, 120, 240, 480, 960 })
{
    var p = MastSolver.Prepare(mast, [], new() { LongestElementM = 36.0 / n });
    Warm(() => p.Solve(cases[0]));
    MastSolution s = p.Solve(cases[0]);
    var t = Time(() => s = p.Solve(cases[0]), 20) / s.Nodes.Count / s.Iterations;
    first = first == 0 ? t : first;
    Console.WriteLine($"  {s.Nodes.Count,5} nodes, {s.Iterations,2} steps: {1e6 * t:F2} µs a node and step, ratio to 30 nodes {t / first:F2}");
}

if (Calculix.IsThere)
{
    Console.WriteLine("against CalculiX, one case, same mast elements, guys of 40 beams (its start and file reading included):");
    foreach (var c in new[] { cases[0], cases[52] })
    {
        // Guys on the axis: the rigid arms are an awkward thing for beam elements of that program.
        var plain = mast with { Guys = [.. mast.Guys.Select(g => g with { AttachmentRadiusM = 0 })] };
        var own = Time(() => MastSolver.Solve(plain, c, options), 20);
        var other = Time(() => Calculix.Run(plain, c, 36.0 / 29, 40, [36]), 2);
        Console.WriteLine($"  {c.Name}: {1e3 * own:F1} ms against {1e3 * other:F0} ms, ratio {other / own:F0}");
    }
}

LoadCase Wind(double share, double iceNPerM, double degrees)
{
    var e = ReferenceMasts.Anchor(1, degrees);
    var c = ReferenceMasts.Wind(mast, 1000 * share, degrees, new LineLoad([new(0, (share * 70 * e) + new Vec3(0, 0, -iceNPerM)), new(36, (share * 110 * e) + new Vec3(0, 0, -iceNPerM))]));
    return c with
    {
        Name = $"wind {share}, ice {iceNPerM} N/m, {degrees:F0}°",
        GuyLoads = [.. c.GuyLoads.Select(l => l with { LoadNPerM = l.LoadNPerM + new Vec3(0, 0, -iceNPerM) })],
    };
}

// The best of several runs: on a shared machine the others are disturbed.
static double Time(Action action, int repeat = 3)
{
    var best = double.PositiveInfinity;
    for (var i = 0; i < repeat; i++)
    {
        var watch = Stopwatch.StartNew();
        action();
        best = Math.Min(best, watch.Elapsed.TotalSeconds);
    }

    return best;
}

// Long enough for the compiler to settle on its best code.
static void Warm(Action action)
{
    var watch = Stopwatch.StartNew();
    while (watch.Elapsed.TotalSeconds < 0.7)
    {
        action();
    }
}
