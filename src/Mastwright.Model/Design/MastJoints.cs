using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>How the lengths of a run are joined to each other and to the run above.</summary>
public sealed record SectionJoint
{
    /// <summary>The kind.</summary>
    [Field("kind", "How the joint is made.", Required = true)]
    public MastJointKind Kind { get; init; } = MastJointKind.Telescoped;

    /// <summary>Bolts in one joint, or in one leg of a lattice.</summary>
    [Field("bolts", "Bolts through one joint of tubes, or along one leg of a lattice.", Default = "2", Why = "two bolts crossed, or two to a leg; use the maker's figure")]
    [Quantity(QuantityKind.Count, 1, 24)]
    public int Bolts { get; init; } = 2;

    /// <summary>Nominal diameter of a bolt, m.</summary>
    [Field("bolt", "Nominal diameter of a bolt.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.003, 0.05)]
    public double BoltDiameterM { get; init; } = 0.01;

    /// <summary>Tensile strength of the bolts, Pa.</summary>
    [Field("bolt-strength", "Tensile strength of the bolts: 400 MPa for class 4.6, 800 MPa for 8.8, 515 MPa for 304 stainless.", Default = "400 MPa", Why = "common soft bolts; read the head of yours")]
    [Quantity(QuantityKind.Stress, 100e6, 1400e6)]
    public double BoltUltimatePa { get; init; } = 400e6;

    /// <summary>Overlap of tubes, m; null for two diameters.</summary>
    [Field("overlap", "How far one tube stands in the other.", Default = "two diameters of the inner tube")]
    [Quantity(QuantityKind.Length, 0.01, 5)]
    public double? OverlapM { get; init; }

    /// <summary>Whether the inner tube stands on a stop.</summary>
    [Field("stop", "Whether the upper tube stands on a stop or shoulder, so that the bolts carry no compression.", Default = "no", Why = "the bolts then carry all; safe")]
    public bool Stop { get; init; }
}

/// <summary>Kinds of joint.</summary>
public enum MastJointKind
{
    /// <summary>The thinner tube in the wider one.</summary>
    [Word("telescoped", "the thinner tube stands in the wider one, bolted through")]
    Telescoped,

    /// <summary>An end drawn thin.</summary>
    [Word("swaged", "an end of the tube is drawn down to fit into its neighbour, which makes a shoulder to stand on, bolted through")]
    Swaged,

    /// <summary>Bolted legs.</summary>
    [Word("leg-bolts", "bolts along each leg of a lattice, which carry its pull")]
    LegBolts,
}

/// <summary>A cable or conduit that runs along the mast.</summary>
public sealed record ConduitAlong
{
    /// <summary>What it is.</summary>
    [Field("name", "What it is.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Outside diameter, m.</summary>
    [Field("diameter", "Outside diameter, which wind and ice meet; a cable inside a tube has no wind: leave it out and add its mass to an attachment.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.002, 0.3)]
    public double DiameterM { get; init; }

    /// <summary>Mass per length, kg/m.</summary>
    [Field("mass", "Mass per length, with what lies in it.", Required = true)]
    [Quantity(QuantityKind.LinearMass, 0, 50)]
    public double MassKgPerM { get; init; }

    /// <summary>Upper end above ground, m; null for the top of the mast.</summary>
    [Field("up-to", "Height above ground up to which it runs, from the mast's foot.", Default = "the mast's top")]
    [Quantity(QuantityKind.Length, 0.1, 300)]
    public double? UpToM { get; init; }
}
