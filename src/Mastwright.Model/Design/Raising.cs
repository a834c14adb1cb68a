using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>How the mast is to be raised.</summary>
public sealed record RaisingPlan
{
    /// <summary>The method.</summary>
    [Field("method", "How the mast is raised.", Default = "falling-derrick", Why = "one piece, one winch, all work on the ground")]
    public RaisingMethod Method { get; init; } = RaisingMethod.FallingDerrick;

    /// <summary>Length of the pole, m.</summary>
    [Field("pole-length", "Length of the derrick or gin pole.", Default = "a third of the mast")]
    [Quantity(QuantityKind.Length, 0.5, 60)]
    public double? PoleLengthM { get; init; }

    /// <summary>Mass of the pole, kg.</summary>
    [Field("pole-mass", "Mass of the pole.", Default = "30 kg", Why = "a stout steel tube; weigh yours")]
    [Quantity(QuantityKind.Mass, 0, 2000)]
    public double PoleMassKg { get; init; } = 30;

    /// <summary>Distance of the winch or back stay anchor from the hinge, m.</summary>
    [Field("winch-distance", "Distance of the winch anchor (or of the back stay's anchor) from the hinge, on the far side from the mast.", Default = "half the mast's length")]
    [Quantity(QuantityKind.Length, 0.5, 200)]
    public double? WinchDistanceM { get; init; }

    /// <summary>Distance of the lifting point from the foot, m.</summary>
    [Field("lift-at", "Distance of the lifting point from the mast's foot.", Default = "seven tenths of the mast")]
    [Quantity(QuantityKind.Length, 0.5, 200)]
    public double? LiftAtM { get; init; }

    /// <summary>Factor on the weight for starting and stopping.</summary>
    [Field("dynamic-factor", "Factor on the weight for starting and stopping the lift.", Default = "1.3", Why = "a slow hand winch; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1, 5)]
    public double DynamicFactor { get; init; } = 1.3;
}

/// <summary>Methods of raising.</summary>
public enum RaisingMethod
{
    /// <summary>Falling derrick.</summary>
    [Word("falling-derrick", "hinged at the foot, pulled up by a pole that turns with it")]
    FallingDerrick,

    /// <summary>Standing gin pole.</summary>
    [Word("gin-pole", "hinged at the foot, pulled up over a standing pole at the hinge")]
    GinPole,
}
