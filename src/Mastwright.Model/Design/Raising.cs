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

    /// <summary>Distance between the two lifting points of a bridle, m; 0 for one point.</summary>
    [Field("lift-spread", "Distance between the two lifting points of an equalising bridle, its middle at lift-at; 0 for a single point.", Default = "0 m", Why = "one lifting point")]
    [Quantity(QuantityKind.Length, 0, 100)]
    public double LiftSpreadM { get; init; }

    /// <summary>Wind up to which the lift goes on, m/s.</summary>
    [Field("wind", "Wind up to which the lift goes on; the side guys are held against it.", Default = "5 m/s", Why = "a gentle breeze; stop above it; common practice, no source")]
    [Quantity(QuantityKind.Speed, 0, 20)]
    public double WindMPerS { get; init; } = 5;

    /// <summary>Distance of the side guys' anchors from the hinge, m.</summary>
    [Field("side-guys", "Distance of the temporary side guys' anchors from the hinge, on both sides in line with the hinge pin.", Default = "half the mast's length")]
    [Quantity(QuantityKind.Length, 0.5, 200)]
    public double? SideGuyDistanceM { get; init; }

    /// <summary>Breaking strength of the lifting line, N.</summary>
    [Field("line-strength", "Breaking strength of the lifting line.", Default = "not stated; the line is not checked")]
    [Quantity(QuantityKind.Force, 100, 10e6)]
    public double? LineStrengthN { get; init; }

    /// <summary>Factor on the line.</summary>
    [Field("line-factor", "Breaking strength of the lifting gear over its largest load.", Default = "5", Why = "five for running wire rope and rigging gear; from memory: ASME B30.5 and B30.26")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double LineFactor { get; init; } = 5;

    /// <summary>The pole; null when not described.</summary>
    [Field("pole", "The tube the pole is made of, to check it against buckling.", Default = "not described; the pole is not checked")]
    public TubeSection? Pole { get; init; }

    /// <summary>The lifting lug; null when not described.</summary>
    [Field("lug", "The lifting lug on the mast.", Default = "not described; it is not checked")]
    public LugSpec? Lug { get; init; }

    /// <summary>How the pole is clamped when the mast is built upwards; null for the defaults.</summary>
    [Field("stacking", "How the mast is built upwards section by section.", Default = "all of its own defaults")]
    public StackingPlan? Stacking { get; init; }
}

/// <summary>Building the mast upwards with a pole clamped to its top.</summary>
public sealed record StackingPlan
{
    /// <summary>Mass of the clamped pole, kg.</summary>
    [Field("pole-mass", "Mass of the pole that is clamped to the mast's top.", Default = "15 kg", Why = "an aluminium tube with its clamps; weigh yours")]
    [Quantity(QuantityKind.Mass, 0, 500)]
    public double PoleMassKg { get; init; } = 15;

    /// <summary>How far the sheave stands above the top, m.</summary>
    [Field("pole-above", "How far the pole's sheave stands above the top of the standing mast.", Default = "one piece and 0.5 m")]
    [Quantity(QuantityKind.Length, 0.2, 20)]
    public double? PoleAboveM { get; init; }

    /// <summary>Distance between the clamps, m.</summary>
    [Field("clamp-spacing", "Distance between the pole's two clamps on the mast.", Default = "1 m", Why = "common practice, no source")]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double ClampSpacingM { get; init; } = 1;

    /// <summary>Rated sideways force of a clamp, N.</summary>
    [Field("clamp-rating", "Sideways force one clamp may take, from its maker or a test.", Default = "not stated; the clamps are not checked")]
    [Quantity(QuantityKind.Force, 10, 1e6)]
    public double? ClampRatingN { get; init; }

    /// <summary>Distance of pole and load from the axis, m.</summary>
    [Field("offset", "Distance of the pole and of the hanging piece from the mast's axis.", Default = "0.3 m", Why = "beside the mast's face; measure yours")]
    [Quantity(QuantityKind.Length, 0.05, 3)]
    public double OffsetM { get; init; } = 0.3;

    /// <summary>Angle of the tag line's pull, rad.</summary>
    [Field("tag-angle", "Angle by which the tag line draws the hanging piece away from the mast.", Default = "6 °", Why = "the piece just clears the mast; common practice, no source")]
    [Quantity(QuantityKind.Angle, 0, 0.6)]
    public double TagAngleRad { get; init; } = 6 * Math.PI / 180;

    /// <summary>Mass of whoever works at the top, kg.</summary>
    [Field("climber", "Mass of whoever works at the top, with tools.", Default = "110 kg", Why = "a grown climber with harness and tools; common practice, no source")]
    [Quantity(QuantityKind.Mass, 0, 500)]
    public double ClimberKg { get; init; } = 110;

    /// <summary>Strand of the temporary guys, catalogue name.</summary>
    [Field("strand", "Strand or rope of the temporary guys.", Default = "3/16 in EHS", Why = "light strand on hand winches")]
    [CatalogueName("strands")]
    public string Strand { get; init; } = "3/16 in EHS";

    /// <summary>Tension of the temporary guys, N.</summary>
    [Field("tension", "Tension of the temporary guys.", Default = "1 kN", Why = "drawn by hand with a small winch; common practice, no source")]
    [Quantity(QuantityKind.Force, 10, 100e3)]
    public double TensionN { get; init; } = 1000;

    /// <summary>Largest length of mast above the highest guys, m.</summary>
    [Field("free-top", "Length of mast above the highest guys beyond which temporary guys are rigged.", Default = "6 m", Why = "two ten-foot pieces; common practice, no source; the maker's figure governs")]
    [Quantity(QuantityKind.Length, 0.5, 30)]
    public double FreeTopM { get; init; } = 6;
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

    /// <summary>Section by section.</summary>
    [Word("stacking", "built upwards piece by piece with a pole clamped to its top")]
    Stacking,
}
