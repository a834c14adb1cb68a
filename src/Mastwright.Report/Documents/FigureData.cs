using System.Collections.Immutable;
using Mastwright.Model.Text;

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
        string[] Cells(string curve, string x, string y, string note) => notes ? [curve, x, y, note] : [curve, x, y];
        return CsvText.ForSpreadsheet(Series.SelectMany(s => s.Points.Select(p => Cells(s.Name, CsvText.Number(p.X), CsvText.Number(p.Y), p.Note ?? ""))).Prepend(Cells("curve", XAxis, YAxis, "note")));
    }
}
