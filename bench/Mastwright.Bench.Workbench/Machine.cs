using System.Diagnostics;
using System.Globalization;

namespace Mastwright.Bench.Workbench;

/// <summary>The machine and what was measured on it.</summary>
internal static class Machine
{
    /// <summary>The repository, from wherever this runs.</summary>
    public static string Root { get; } = Find();

    /// <summary>The example stations.</summary>
    public static IEnumerable<string> Examples => Directory.EnumerateFiles(Path.Combine(Root, "examples"), "*.yaml").Order();

    /// <summary>Processes waiting for a core over the last minute; above the number of cores every time below is too long.</summary>
    public static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    /// <summary>Memory a process holds, MB.</summary>
    public static double HeldMb(int process)
    {
        using var p = Process.GetProcessById(process);
        return p.WorkingSet64 / 1e6;
    }

    /// <summary>Median, 95th percentile and largest of some times in milliseconds.</summary>
    public static string Spread(IEnumerable<double> times)
    {
        var sorted = times.Order().ToList();
        double At(double share) => sorted[Math.Min(sorted.Count - 1, (int)Math.Ceiling(share * sorted.Count) - 1)];
        return string.Create(CultureInfo.InvariantCulture, $"median {At(0.5):F0} ms, 95th percentile {At(0.95):F0} ms, longest {sorted[^1]:F0} ms ({sorted.Count} times)");
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Mastwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("This does not run inside the repository.");
    }
}
