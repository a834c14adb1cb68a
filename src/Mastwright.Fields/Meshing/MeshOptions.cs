namespace Mastwright.Fields.Meshing;

/// <summary>How finely wires are cut into segments.</summary>
/// <param name="SegmentsPerWavelength">No segment is longer than a wavelength over this number.</param>
/// <param name="MinSegmentsPerWire">Every wire gets at least about this many segments, however short in wavelengths, unless the radius forbids it.</param>
/// <param name="Refinement">Divides every segment length; 1 is the default mesh, 2 about twice as many unknowns.</param>
/// <param name="Uniform">Cut evenly, without shortening towards feeds and joints: for convergence studies.</param>
/// <param name="MaxUnknowns">
/// Refuse a matrix with more than the square of this many entries before its memory is taken. Rotational symmetry makes the matrix smaller.
/// </param>
public sealed record MeshOptions(
    double SegmentsPerWavelength = 30,
    double MinSegmentsPerWire = 7,
    double Refinement = 1,
    bool Uniform = false,
    int MaxUnknowns = 6000)
{
    /// <summary>The default mesh.</summary>
    public static MeshOptions Default { get; } = new();

    /// <summary>First segment at a feed, as a share of the longest: charge crowds there.</summary>
    internal const double FeedShare = 0.08;

    /// <summary>First segment at a joint, load or free end, as a share of the longest.</summary>
    internal const double EndShare = 0.25;

    /// <summary>Growth of segment length per unit distance from a feed, joint or free end.</summary>
    internal const double Growth = 0.35;

    /// <summary>
    /// In the soil the wavelength is shorter by |n|, but damping smooths the current: segments may be this much longer against it.
    /// Between 1.2 and 3.5 the feed impedance over 24 radials moved by less than 0.1 % from 1.9 to 28.5 MHz, between 3 and 5 over 60 radials
    /// by less than 0.06 %.
    /// </summary>
    internal const double SoilShare = 5;

    /// <summary>No segment is made shorter than this many radii of the thickest wire at its joint.</summary>
    internal const double ShortestInRadii = 2.5;
}
