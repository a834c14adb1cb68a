using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The fence that keeps people from each base.</summary>
public sealed record Fence
{
    /// <summary>Least distance from the mast's axis, m.</summary>
    [Field("radius", "Least distance of the fence from the mast's axis.", Required = true)]
    [Quantity(QuantityKind.Length, 0.3, 500)]
    public double RadiusM { get; init; } = 3;

    /// <summary>Height, m.</summary>
    [Field("height", "Height of the fence.", Default = "1.8 m", Why = "a common fence that is not climbed by chance; local codes govern")]
    [Quantity(QuantityKind.Length, 0.3, 5)]
    public double HeightM { get; init; } = 1.8;

    /// <summary>Whether it is locked.</summary>
    [Field("locked", "Whether its gate is locked while the station can transmit.", Default = "yes", Why = "it must be; the inspection sheet asks for it")]
    public bool Locked { get; init; } = true;
}
