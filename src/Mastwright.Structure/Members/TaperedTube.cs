using System.Collections.Immutable;

namespace Mastwright.Structure.Members;

/// <summary>A stretch of tapered tube, as short straight ones.</summary>
/// <param name="BottomM">Lower end, m above the foot.</param>
/// <param name="TopM">Upper end, m above the foot.</param>
/// <param name="Section">Section at its middle.</param>
public sealed record TubeSlice(double BottomM, double TopM, RoundSection Section);

/// <summary>A tube that tapers evenly with height and keeps its wall.</summary>
/// <param name="BottomDiameterM">Outside diameter at the bottom, m.</param>
/// <param name="TopDiameterM">Outside diameter at the top, m.</param>
/// <param name="WallM">Wall, m.</param>
/// <param name="LengthM">Length, m.</param>
public sealed record TaperedTube(double BottomDiameterM, double TopDiameterM, double WallM, double LengthM)
{
    /// <summary>The tube in slices of equal length with the section at the middle of each; the error falls with the square of their number.</summary>
    /// <param name="count">How many, at least 1.</param>
    /// <param name="bottomM">Height of the lower end above the foot, m.</param>
    public ImmutableArray<TubeSlice> Slices(int count, double bottomM = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var step = LengthM / count;
        return
        [
            .. Enumerable.Range(0, count).Select(i => new TubeSlice(
                bottomM + (i * step),
                bottomM + ((i + 1) * step),
                new(BottomDiameterM + ((TopDiameterM - BottomDiameterM) * (i + 0.5) / count), WallM))),
        ];
    }
}
