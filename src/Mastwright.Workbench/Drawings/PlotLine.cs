namespace Mastwright.Workbench.Drawings;

/// <summary>A line of a plot.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Points">Its points.</param>
public sealed record PlotLine(string Name, IReadOnlyList<(double X, double Y)> Points);
