using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Mastwright.Bench.Fields;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;

// Usage: no arguments, or "four" to add the large group. Prints times as measured and, where there is a baseline, the ratio to it.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var average = Ground.Over(new Soil("average", 13, 0.005));
Console.WriteLine("guyed mast over perfect ground, per band (best of 3; wall time, and processor time of all threads in brackets):");
foreach (var f in (double[])[1.9e6, 3.6e6, 7.1e6, 14.2e6, 28.5e6])
    Report(Stations.Guyed(Ground.Perfect), f);
Console.WriteLine("guyed mast over 30 buried radials, average soil:");
foreach (var f in (double[])[1.9e6, 3.6e6, 7.1e6])
    Report(Stations.WithGuys(Stations.Buried(average, 30, Vec3.Zero)), f);
Console.WriteLine("bare mast over buried radials, average soil, 3.6 MHz:");
foreach (var radials in (int[])[4, 15, 60, 120])
    Report(Stations.Buried(average, radials, Vec3.Zero), 3.6e6);

Console.WriteLine("symmetry: sectors against the whole matrix (baseline), 15 buried radials:");
var mesh = WireMesh.Build(Stations.Buried(average, 15, Vec3.Zero), 3.6e6).Mesh!;
Complex[][] right = [WireSolver.Excitation(mesh, mesh.FeedEnds[0])];
var whole = Best(() => WireSolver.SolveWhole(mesh, 3.6e6, right, [new Complex[mesh.UnknownCount]], default));
var sectors = Best(() => SectorSystem.Fill(mesh, RotationSymmetry.Find(mesh)!, 3.6e6, default).Solve(right, [new Complex[mesh.UnknownCount]], default));
Console.WriteLine($"  whole {whole.Cpu:F0} ms, sectors {sectors.Cpu:F0} ms of processor time, ratio {whole.Cpu / sectors.Cpu:F1}");

Console.WriteLine("guyed mast over 60 buried radials, average soil, 14.2 MHz: interactions shared by congruent pairs against each pair afresh (baseline):");
var shared = WireMesh.Build(Stations.WithGuys(Stations.Buried(average, 60, Vec3.Zero)), 14.2e6).Mesh!;
var rows = Enumerable.Range(0, shared.Segments.Length).Where(i => i % 7 == 0).ToArray();
double Rows(Func<Interactions, Func<int, int, Mastwright.Fields.Kernels.PairBlock>> way) => Clock(() =>
{
    var between = way(new Interactions(shared, 14.2e6));
    Parallel.ForEach(rows, p =>
    {
        for (var q = 0; q < shared.Segments.Length; q++)
            between(p, q);
    });
}).Cpu;
var (fresh, once) = (Rows(i => i.Direct), Rows(i => i.Between));
Console.WriteLine($"  every seventh row of {shared.Segments.Length}: afresh {fresh:F0} ms, shared {once:F0} ms of processor time, ratio {fresh / once:F1}");

Console.WriteLine("sweep 3.4 to 4.0 MHz, 300 points, guyed mast: rational fit against every point (baseline):");
var model = Stations.Guyed(Ground.Perfect);
var band = BandSweep.Run(model, 3.4e6, 4.0e6, 1e-3);
var fitted = Best(() => band = BandSweep.Run(model, 3.4e6, 4.0e6, 1e-3));
var top = WireMesh.Build(model, 4.0e6).Mesh!;
var worst = 0.0;
var every = Clock(() =>
{
    for (var i = 0; i < 300; i++)
    {
        var f = 3.4e6 + (0.6e6 * (i + 0.5) / 300);
        var exact = WireSolver.Solve(top, f).Require().FeedImpedance();
        worst = Math.Max(worst, (band.FeedImpedance(f) - exact).Magnitude / exact.Magnitude);
    }
});
Console.WriteLine($"  every point {every.Cpu:F0} ms, fit {fitted.Cpu:F0} ms of processor time with {band.SolvedHz.Length} solutions, ratio {every.Cpu / fitted.Cpu:F1}, worst difference {worst:E1}, estimated {band.ErrorEstimate:E1}");

Console.WriteLine("the band study: every amateur band swept over 60 buried radials with guys, 0.5 %; a solution for each of 61 points (baseline, from three points):");
var station60 = Stations.WithGuys(Stations.Buried(average, 60, Vec3.Zero));
foreach (var (low, high) in ((double, double)[])[(1.81e6, 2.0e6), (3.5e6, 4.0e6), (7.0e6, 7.3e6), (10.1e6, 10.15e6), (14.0e6, 14.35e6), (18.068e6, 18.168e6), (21.0e6, 21.45e6), (24.89e6, 24.99e6), (28.0e6, 29.7e6)])
{
    var cut = WireMesh.Build(station60, high).Mesh!;
    var turns = RotationSymmetry.Find(cut);
    BandSweep? swept = null;
    var sweep = Clock(() => swept = BandSweep.Run(station60, low, high, 0.005));
    var three = Clock(() =>
    {
        for (var i = 0; i < 3; i++)
            WireSolver.Solve(cut, low + ((high - low) * i / 2)).Require();
    });
    var find = Clock(() => RotationSymmetry.Find(cut));
    var pairs = Clock(() => new Interactions(cut, high));
    SectorSystem? system = null;
    var fill = Clock(() => system = SectorSystem.Fill(cut, turns!, high, default));
    Complex[][] feed = [WireSolver.Excitation(cut, cut.FeedEnds[0])];
    var factor = Clock(() => system!.Solve(feed, [new Complex[cut.UnknownCount]], default));
    Console.WriteLine($"  {low / 1e6:F1} to {high / 1e6:F1} MHz, {cut.UnknownCount} unknowns in {turns!.Order} sectors: sweep {sweep.Cpu:F0} ms with {swept!.SolvedHz.Length} solutions, every point {three.Cpu / 3 * 61:F0} ms, ratio {three.Cpu / 3 * 61 / sweep.Cpu:F1}; of one solution {three.Cpu / 3:F0} ms: symmetry {find.Cpu:F0}, pairs found {pairs.Cpu:F0}, filling {fill.Cpu:F0}, factorising {factor.Cpu:F0}");
}

if (args.Contains("four"))
{
    Console.WriteLine("four masts with 60 buried radials each, average soil, 3.6 MHz:");
    var group = WireModel.Over(average);
    for (var i = 0; i < 4; i++)
    {
        var (s, c) = Math.SinCos((i * Math.PI / 2) + 0.1);
        var one = Stations.Buried(average, 60, new(30 * c, 30 * s, 0), $" {i}", 18);
        group = group with { Wires = [.. group.Wires, .. one.Wires], Feeds = [.. group.Feeds, .. one.Feeds] };
    }

    SolveResult? result = null;
    var (wall, cpu) = Clock(() => result = WireSolver.Solve(group, 3.6e6));
    Console.WriteLine(result!.Solution is { } solution
        ? $"  {solution.Mesh.UnknownCount} unknowns, {wall / 1000:F1} s wall, {cpu / 1000:F1} s of processor time, Z11 {solution.FeedImpedance():F2}, Z12 {solution.PortImpedances[0, 1]:F2}, {Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0:F0} MiB at most"
        : "  " + result.Findings[0].Message);
}

void Report(WireModel station, double frequencyHz)
{
    WireSolution? solution = null;
    FarField? far = null;
    DrivenWires? driven = null;
    var solve = Best(() => solution = WireSolver.Solve(station, frequencyHz).Require());
    var pattern = Best(() => _ = (far = FarField.Of(driven = solution!.DrivePower(1000))).RadiatedPowerW);
    var balance = station.Ground is Ground.PerfectPlane ? $", balance {(far!.RadiatedPowerW + driven!.LossPowerW) / driven.InputPowerW - 1:E1}" : $", sky wave {far!.RadiationEfficiency:P1}";
    Console.WriteLine($"  {frequencyHz / 1e6:F1} MHz, {solution!.Mesh.UnknownCount} unknowns: solve {solve.Wall:F0} ({solve.Cpu:F0}) ms, pattern {pattern.Wall:F0} ({pattern.Cpu:F0}) ms, Z {solution.FeedImpedance():F2}{balance}");
}

static (double Wall, double Cpu) Best(Action action)
{
    var runs = Enumerable.Range(0, 3).Select(_ => Clock(action)).ToArray();
    return (runs.Min(r => r.Wall), runs.Min(r => r.Cpu));
}

static (double Wall, double Cpu) Clock(Action action)
{
    var cpu = Process.GetCurrentProcess().TotalProcessorTime;
    var start = Stopwatch.GetTimestamp();
    action();
    return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, (Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds);
}
