using Mastwright.Model.Units;

namespace Mastwright.Report.Documents;

/// <summary>A size of paper, upright, in millimetres.</summary>
/// <param name="Name">Its name.</param>
/// <param name="WidthMm">Width.</param>
/// <param name="HeightMm">Height.</param>
public sealed record Paper(string Name, double WidthMm, double HeightMm)
{
    /// <summary>Margin at the left and right, mm.</summary>
    public const double SideMm = 18;

    /// <summary>Margin at the top, the running head included, mm.</summary>
    public const double TopMm = 22;

    /// <summary>Margin at the bottom, the page number included, mm.</summary>
    public const double BottomMm = 18;

    /// <summary>ISO 216 A4.</summary>
    public static Paper A4 { get; } = new("A4", 210, 297);

    /// <summary>US Letter, 8 1/2 by 11 in.</summary>
    public static Paper Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>Width that text and drawings have, mm.</summary>
    public double TextWidthMm => WidthMm - (2 * SideMm);

    /// <summary>Height that text and drawings have, mm.</summary>
    public double TextHeightMm => HeightMm - TopMm - BottomMm;

    /// <summary>The usual paper where these units are used.</summary>
    public static Paper For(UnitSystem units) => units == UnitSystem.Us ? Letter : A4;
}
