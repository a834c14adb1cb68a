using System.Diagnostics;
using Mastwright.Analysis;
using Mastwright.Model.Design;

namespace Mastwright.Bench.Structure;

/// <summary>The whole mechanical verdict of a station as the design file gives it: every combination, 24 directions, every guy lost, buckling, vibration, tensions, members, base, anchors, lift.</summary>
internal static class StationBench
{
    private const string Design = """
        mastwright: 1
        name: Bench
        site:
          wind: { method: asce-7-22, speed: 40 m/s, exposure: open }
          ice: { thickness: 10 mm, wind-speed: 15 m/s }
        masts:
          - name: B
            base: { insulator: base-egg-300kN, footing-width: 1.5 m, footing-depth: 1.5 m }
            sections:
              - { length: 36 m, lattice: tri-450-steel }
            anchors:
              - { name: N, bearing: 0 °, distance: 24 m, block: { length: 2 m, width: 2 m, height: 1.5 m } }
              - { name: E, bearing: 120 °, distance: 24 m, block: { length: 2 m, width: 2 m, height: 1.5 m } }
              - { name: W, bearing: 240 °, distance: 24 m, block: { length: 2 m, width: 2 m, height: 1.5 m } }
            guys:
              - { height: 12 m, strand: 5/16 in EHS, insulators-at: [1 m] }
              - { height: 24 m, strand: 5/16 in EHS, insulators-at: [1 m] }
              - { height: 35 m, strand: 5/16 in EHS, insulators-at: [1 m] }
            radials: { count: 60, length: 30 m }
        bands:
          - { frequency: 1.85 MHz, power: 1500 W }
        """;

    /// <summary>Prints the best of several runs, wall and processor time.</summary>
    public static void Run()
    {
        var reading = DesignReader.Read(Design, "bench", CatalogueNames.Of);
        if (reading.Station is null)
        {
            Console.WriteLine("the station of the benchmark is not read: " + string.Join("; ", reading.Findings));
            return;
        }

        var (wall, processor) = (double.PositiveInfinity, double.PositiveInfinity);
        var words = "";
        for (var i = 0; i < 8; i++)
        {
            using var stop = new CancellationTokenSource();
            var (watch, used) = (Stopwatch.StartNew(), Process.GetCurrentProcess().TotalProcessorTime);
            try
            {
                StationAnalysis.Run(reading, null, stop.Token, stage =>
                {
                    wall = Math.Min(wall, watch.Elapsed.TotalSeconds);
                    processor = Math.Min(processor, (Process.GetCurrentProcess().TotalProcessorTime - used).TotalSeconds);
                    var stand = stage.Stands[0];
                    words = $"{stand.Cases.Length} combinations, {stand.Cases[0].Axis.Length} nodes, {stand.LostGuys.Length} lost guys, {stage.Checks.Length} checks";
                    stop.Cancel();
                });
            }
            catch (OperationCanceledException)
            {
                // Only the structure is timed.
            }
        }

        Console.WriteLine($"mechanical verdict of a station from its design file ({words}):");
        Console.WriteLine($"  wall {wall:F2} s, processor {processor:F2} s, best of 8");
    }
}
