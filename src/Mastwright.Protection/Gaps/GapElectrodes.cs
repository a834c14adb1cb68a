namespace Mastwright.Protection.Gaps;

/// <summary>The shape of the two faces a spark jumps between.</summary>
public enum GapShape
{
    /// <summary>Two equal balls facing each other.</summary>
    BallToBall,

    /// <summary>A ball facing a flat plate much wider than the ball.</summary>
    BallToPlate,

    /// <summary>A rounded (acorn) nut or dome facing a flat plate: taken as a ball of the dome's diameter.</summary>
    RoundedNutToPlate,

    /// <summary>Two rounded nuts or domed bolt ends facing each other: taken as balls of the dome's diameter.</summary>
    RoundedNuts,

    /// <summary>Two rods or bolts with sharp or cut ends: taken as needle points, the lowest strength such a gap can have.</summary>
    Rods,
}

/// <summary>A pair of gap electrodes.</summary>
/// <param name="Shape">Their shape.</param>
/// <param name="DiameterM">Diameter of the ball or dome in metres, 2 mm to 1 m; ignored for <see cref="GapShape.Rods"/>.</param>
public sealed record GapElectrodes(GapShape Shape, double DiameterM)
{
    /// <summary>Whether the far face is a plate.</summary>
    public bool FacesPlate => Shape is GapShape.BallToPlate or GapShape.RoundedNutToPlate;

    /// <summary>Whether the spark voltage follows a needle gap.</summary>
    public bool IsSharp => Shape is GapShape.Rods;
}
