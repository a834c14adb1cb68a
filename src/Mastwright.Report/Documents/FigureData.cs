using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Mastwright.Report.Documents;

/// <summary>One point of a figure: the figures a reader wants of it, and where it is drawn.</summary>
/// <param name="X">Abscissa, in the unit the axis names.</param>
/// <param name="Y">Ordinate, in the unit the axis names.</param>
/// <param name="AtX">Where it is drawn, in the units of the drawing's viewBox, to the right.</param>
/// <param name="AtY">Where it is drawn, down.</param>
/// <param name="Note">A word about the point; null for none.</param>
public sealed record FigurePoint(double X, double Y, double AtX, double AtY, string? Note = null);

/// <summary>A curve or a set of points of a figure.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Points">Its points, in the order they are drawn.</param>
public sealed record FigureSeries(string Name, ImmutableArray<FigurePoint> Points);

/// <summary>The numbers behind a figure, so that a page can show them under the pointer and save them.</summary>
/// <param name="XAxis">What the abscissa is, with its unit.</param>
/// <param name="YAxis">What the ordinate is, with its unit.</param>
/// <param name="Series">The curves.</param>
public sealed record FigureData(string XAxis, string YAxis, ImmutableArray<FigureSeries> Series)
{
    /// <summary>How many points there are.</summary>
    public int Count => Series.Sum(s => s.Points.Length);

    /// <summary>The numbers as comma-separated values: one row a point, the curve's name first.</summary>
    public string ToCsv()
    {
        var notes = Series.Any(s => s.Points.Any(p => p.Note is not null));
        var text = new StringBuilder();
        Row(text, notes ? ["curve", XAxis, YAxis, "note"] : ["curve", XAxis, YAxis]);
        foreach (var series in Series)
        {
            foreach (var p in series.Points)
            {
                var (x, y) = (p.X.ToString("R", CultureInfo.InvariantCulture), p.Y.ToString("R", CultureInfo.InvariantCulture));
                text.Append(Cell(series.Name)).Append(',').Append(x).Append(',').Append(y);
                text.Append(notes ? "," + Cell(p.Note ?? "") : "").Append("\r\n");
            }
        }

        return text.ToString();
    }

    private static void Row(StringBuilder text, string[] cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    // Names come from the design: a cell that a spreadsheet could take for a formula gets a quote before it.
    private static string Cell(string text)
    {
        var plain = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' ? "'" + text : text;
        return plain.AsSpan().ContainsAny("\",\r\n") ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : plain;
    }
}
