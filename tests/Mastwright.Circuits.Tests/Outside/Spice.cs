using System.Diagnostics;
using System.Globalization;
using System.Numerics;

namespace Mastwright.Circuits.Tests.Outside;

/// <summary>Runs ngspice in batch mode on a deck text and reads back what it printed.</summary>
internal static class Spice
{
    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>All vectors of a one-frequency AC analysis, by lower-case name.</summary>
    public static Dictionary<string, Complex> Ac(IEnumerable<string> elements, double frequencyHz)
    {
        var f = Number(frequencyHz);
        var output = Run($"* deck\n{string.Join('\n', elements)}\n.ac lin 1 {f} {f}\n.control\nset numdgt=15\nrun\nprint all\n.endc\n.end\n");
        var values = new Dictionary<string, Complex>();
        foreach (var line in output.Split('\n'))
        {
            var parts = line.Split(" = ");
            if (parts.Length != 2)
                continue;
            var numbers = parts[1].Trim().Split(',');
            if (numbers.Length == 2 && Parse(numbers[0], out var re) && Parse(numbers[1], out var im))
                values[parts[0].Trim().ToLowerInvariant().Replace("v(", "").Replace(")", "")] = new(re, im);
        }

        Assert.NotEmpty(values);
        return values;
    }

    /// <summary>Columns of a transient analysis: time, then the asked vectors.</summary>
    public static (double[] Times, double[][] Vectors) Transient(IEnumerable<string> elements, string tranLine, params string[] vectors)
    {
        var file = Path.Combine(Path.GetTempPath(), $"mastwright-{Guid.NewGuid():N}.txt");
        try
        {
            Run($"* deck\n{string.Join('\n', elements)}\n{tranLine}\n.control\nset numdgt=12\nset wr_singlescale\nrun\nwrdata {file} {string.Join(' ', vectors)}\n.endc\n.end\n");
            var rows = File.ReadAllLines(file)
                .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray())
                .Where(r => r.Length == vectors.Length + 1)
                .ToArray();
            Assert.NotEmpty(rows);
            return ([.. rows.Select(r => r[0])], [.. Enumerable.Range(1, vectors.Length).Select(v => rows.Select(r => r[v]).ToArray())]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    public static string Run(string deck)
    {
        var deckFile = Path.Combine(Path.GetTempPath(), $"mastwright-{Guid.NewGuid():N}.cir");
        File.WriteAllText(deckFile, deck);
        try
        {
            using var process = Start(deckFile);
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(!output.Contains("fatal", StringComparison.OrdinalIgnoreCase), output + error.Result + deck);
            return output;
        }
        finally
        {
            File.Delete(deckFile);
        }
    }

    private static Process Start(string deckFile)
    {
        try
        {
            var info = new ProcessStartInfo("ngspice", ["-b", deckFile]) { RedirectStandardOutput = true, RedirectStandardError = true };
            return Process.Start(info)!;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("ngspice is not installed: Debian package ngspice");
            throw;
        }
    }

    private static bool Parse(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
}
