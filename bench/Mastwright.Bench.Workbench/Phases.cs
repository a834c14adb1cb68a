using System.Diagnostics;
using System.Globalization;
using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Workbench.Edits;

namespace Mastwright.Bench.Workbench;

/// <summary>Where the time of an edit goes inside the program: writing the value, reading the text, the structure, the rest.</summary>
internal static class Phases
{
    public static void Run(int edits)
    {
        foreach (var example in Machine.Examples)
        {
            var text = File.ReadAllText(example);
            List<double> write = [], read = [], looked = [], stood = [], whole = [];
            for (var i = -2; i < Math.Min(edits, 12); i++)
            {
                var watch = Stopwatch.StartNew();
                double Lap() { var t = watch.Elapsed.TotalMilliseconds; watch.Restart(); return t; }
                var changed = TextEdits.Set(text, "site.elevation", string.Create(CultureInfo.InvariantCulture, $"{100 + (3 * (i + 2))} m"))!;
                var wrote = Lap();
                var reading = DesignReader.Read(changed, "design", CatalogueNames.Of);
                _ = Fingerprint.Of(reading.Station!);
                var readIn = Lap();
                _ = QuickLook.Stand(reading.Station!);
                var look = Lap();
                var stand = 0.0;
                StationAnalysis.Run(reading, null, CancellationToken.None, _ => stand = watch.Elapsed.TotalMilliseconds);
                var all = Lap();
                if (i >= 0)
                {
                    write.Add(wrote);
                    read.Add(readIn);
                    looked.Add(look);
                    stood.Add(stand);
                    whole.Add(all);
                }
            }

            Console.WriteLine($"{Path.GetFileName(example)}, inside the program: writing the value {Machine.Spread(write)}");
            Console.WriteLine($"  reading the text {Machine.Spread(read)}");
            Console.WriteLine($"  first look at the structure {Machine.Spread(looked)}");
            Console.WriteLine($"  structure known after {Machine.Spread(stood)}");
            Console.WriteLine($"  whole station after {Machine.Spread(whole)}");
        }
    }
}
