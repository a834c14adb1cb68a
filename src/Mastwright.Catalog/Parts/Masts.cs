namespace Mastwright.Catalog;

/// <summary>Round tube.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="OuterDiameterM">Outside diameter.</param>
/// <param name="WallM">Nominal wall thickness.</param>
/// <param name="Metal">Name of the usual metal on the shelf of metals.</param>
public sealed record Tube(RowInfo Info, double OuterDiameterM, double WallM, string Metal) : Part(Info);

/// <summary>How the faces of a lattice are braced.</summary>
public enum BracePattern
{
    /// <summary>One diagonal a panel, turning back and forth.</summary>
    Zigzag,

    /// <summary>Two diagonals a panel, crossing.</summary>
    Cross,
}

/// <summary>Mast section of three or four round legs with round bracing.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Legs">3 or 4.</param>
/// <param name="Metal">Name of the metal on the shelf of metals.</param>
/// <param name="FaceWidthM">Face width between the centres of the legs.</param>
/// <param name="PanelHeightM">Height of one panel of bracing.</param>
/// <param name="LegDiameterM">Outside diameter of a leg.</param>
/// <param name="LegWallM">Wall of a leg; 0 for a solid round.</param>
/// <param name="DiagonalDiameterM">Outside diameter of a diagonal.</param>
/// <param name="DiagonalWallM">Wall of a diagonal; 0 for a solid round.</param>
/// <param name="HorizontalDiameterM">Outside diameter of a horizontal; 0 when there is none.</param>
/// <param name="HorizontalWallM">Wall of a horizontal; 0 for a solid round or none.</param>
/// <param name="Pattern">Bracing pattern.</param>
/// <param name="Welded">Whether bracing is welded to the legs.</param>
/// <param name="SectionLengthM">Length of one section.</param>
/// <param name="MassPerLengthKgPerM">Mass per length.</param>
public sealed record Lattice(
    RowInfo Info,
    int Legs,
    string Metal,
    double FaceWidthM,
    double PanelHeightM,
    double LegDiameterM,
    double LegWallM,
    double DiagonalDiameterM,
    double DiagonalWallM,
    double HorizontalDiameterM,
    double HorizontalWallM,
    BracePattern Pattern,
    bool Welded,
    double SectionLengthM,
    double MassPerLengthKgPerM)
    : Part(Info);
