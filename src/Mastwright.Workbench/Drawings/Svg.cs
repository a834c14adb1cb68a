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

    [GeneratedRegex("viewBox=\"([-0-9. ]+)\"")]
    private static partial Regex ViewBox();
}
