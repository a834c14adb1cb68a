using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>A point in the ground that holds guys.</summary>
public sealed record Anchor
{
    /// <summary>What it is called.</summary>
    [Field("name", "What you call the anchor; guy levels refer to it.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Compass bearing from the foot, rad.</summary>
    [Field("bearing", "Compass bearing from the mast foot, from north through east.", Required = true)]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double BearingRad { get; init; }

    /// <summary>Level distance from the foot, m.</summary>
    [Field("distance", "Level distance from the mast foot.", Required = true)]
    [Quantity(QuantityKind.Length, 0.5, 500)]
    public double DistanceM { get; init; }

    /// <summary>Height of the attachment above the ground at the mast foot, m.</summary>
    [Field("rise", "Height of the guy's lower end above (or, negative, below) the ground at the mast foot.", Default = "0 m", Why = "level ground")]
    [Quantity(QuantityKind.Length, -100, 100)]
    public double RiseM { get; init; }

    /// <summary>Pull the anchor is rated for, N.</summary>
    [Field("rated-pull", "Pull the anchor can hold in this soil, from its maker or your own test, before any safety factor; or describe it as one of the kinds below.", Default = "not stated")]
    [Quantity(QuantityKind.Force, 10, 10e6)]
    public double? RatedPullN { get; init; }

    /// <summary>A concrete block.</summary>
    [Field("block", "The anchor is a concrete block.", Default = "it is not")]
    public BlockAnchor? Block { get; init; }

    /// <summary>A buried beam.</summary>
    [Field("deadman", "The anchor is a beam buried across the pull.", Default = "it is not")]
    public DeadmanAnchor? Deadman { get; init; }

    /// <summary>A screw.</summary>
    [Field("screw", "The anchor is a screw with a helical plate.", Default = "it is not")]
    public ScrewInGround? Screw { get; init; }

    /// <summary>A bar in rock.</summary>
    [Field("rock-bar", "The anchor is a bar grouted into rock.", Default = "it is not")]
    public RockBar? RockBar { get; init; }

    /// <summary>A post.</summary>
    [Field("post", "The anchor is a tube set in the ground that holds the guy above it, at the height “rise”.", Default = "it is not")]
    public PostInGround? Post { get; init; }
}

/// <summary>One level of guys.</summary>
public sealed record GuyLevel
{
    /// <summary>Attachment height above ground, m.</summary>
    [Field("height", "Height of the attachment above ground.", Required = true)]
    [Quantity(QuantityKind.Length, 0.5, 200)]
    public double HeightM { get; init; }

    /// <summary>Strand, catalogue name.</summary>
    [Field("strand", "The strand or rope (see `mastwright list strands`).", Required = true)]
    [CatalogueName("strands")]
    public string Strand { get; init; } = "";

    /// <summary>Initial tension as a share of breaking strength or as a force.</summary>
    [Field("initial-tension", "Tension at the anchor when set up: a share of breaking strength or a force.", Default = "10 %", Why = "common practice, no source: 8 to 15 % of breaking strength")]
    public InitialTension InitialTension { get; init; } = InitialTension.Share(0.10);

    /// <summary>Names of the anchors; empty for all.</summary>
    [Field("anchors", "Names of the anchors this level goes to.", Default = "all anchors of the mast")]
    public ImmutableArray<string> Anchors { get; init; } = [];

    /// <summary>Level distance of the attachment from the mast axis, m.</summary>
    [Field("attachment-radius", "Level distance of the attachment from the mast's axis.", Default = "0 m", Why = "guys meet on the axis and give no torsional hold; safe")]
    [Quantity(QuantityKind.FineLength, 0, 3)]
    public double AttachmentRadiusM { get; init; }

    /// <summary>Places of guy insulators along the guy from the mast, m.</summary>
    [Field("insulators-at", "Places of strain insulators along the guy, measured from the mast.", Default = "one at the mast end only", Why = "a metal guy is insulated from the mast at least once")]
    [Quantity(QuantityKind.Length, 0, 500)]
    public ImmutableArray<double> InsulatorsAtM { get; init; } = [];

    /// <summary>The fittings; null when not described.</summary>
    [Field("hardware", "The fittings of each guy: shackles, turnbuckle, ends, thimbles.", Default = "not described; fittings are not checked")]
    public GuyHardware? Hardware { get; init; }

    /// <summary>Guy insulator, catalogue name.</summary>
    [Field("insulator", "The strain insulator (see `mastwright list strain-insulators`).", Default = "ANSI 54-3", Why = "a common strain insulator for 1/4 in strand")]
    [CatalogueName("strain-insulators")]
    public string Insulator { get; init; } = "ANSI 54-3";
}

/// <summary>Initial tension: a share of breaking strength or a force.</summary>
/// <param name="ShareOfStrength">The share, when that is how it is given.</param>
/// <param name="ForceN">The force in newtons, when that is how it is given.</param>
public readonly record struct InitialTension(double? ShareOfStrength, double? ForceN)
{
    /// <summary>A share of breaking strength, 0.1 for 10 %.</summary>
    public static InitialTension Share(double share) => new(share, null);

    /// <summary>A force, N.</summary>
    public static InitialTension Force(double forceN) => new(null, forceN);

    /// <summary>The tension of a strand of this breaking strength, N.</summary>
    public double For(double breakingStrengthN) => ForceN ?? ShareOfStrength!.Value * breakingStrengthN;
}
