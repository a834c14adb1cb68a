using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Mastwright.Workbench.Drawings;

/// <summary>Numbers and paths for drawings.</summary>
internal static partial class Svg
{
    /// <summary>A coordinate.</summary>
    public static string N(double value) => double.IsFinite(value) ? Math.Round(value, 2).ToString(CultureInfo.InvariantCulture) : "0";

    /// <summary>Left, top, width and height of the viewBox of a drawing's text.</summary>
    public static double[] ViewBoxOf(string svg) => ViewBox().Match(svg) is { Success: true } box
        ? [.. box.Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))] : [0, 0, 100, 100];

    /// <summary>A line through points.</summary>
    public static string Path(IEnumerable<(double X, double Y)> points, bool closed = false)
    {
        var text = new StringBuilder();
        foreach (var (x, y) in points)
        {
            text.Append(text.Length == 0 ? 'M' : 'L').Append(N(x)).Append(' ').Append(N(y));
        }

        return closed ? text.Append('Z').ToString() : text.ToString();
    }

    /// <summary>Round numbers that divide a range into about so many parts.</summary>
    public static double[] Ticks(double low, double high, int about = 5)
    {
        var span = high - low;
        if (!(span > 0) || !double.IsFinite(span))
        {
            return [low];
        }

        var raw = span / about;
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = new[] { 1, 2, 2.5, 5, 10 }.Select(k => k * power).First(s => s >= raw * 0.999);
        var first = Math.Ceiling((low / step) - 1e-9);
        return [.. Enumerable.Range(0, 1 + (int)Math.Floor((high / step) - first + 1e-9)).Select(i => (first + i) * step)];
    }

    /// <summary>A round length for a scale bar, about a quarter of the width.</summary>
    public static double RoundLength(double whole)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(whole)));
        return new[] { 5.0, 2, 1, 0.5 }.Select(k => k * power).First(s => s <= whole);
    }

    [GeneratedRegex("viewBox=\"([-0-9. ]+)\"")]
    private static partial Regex ViewBox();
}
