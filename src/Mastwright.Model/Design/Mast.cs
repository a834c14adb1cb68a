using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>One guyed mast radiator.</summary>
public sealed record Mast
{
    /// <summary>What the mast is called.</summary>
    [Field("name", "What you call the mast.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>East of the site's origin, m.</summary>
    [Field("east", "Place of the foot, east of the site's origin.", Default = "0 m", Why = "the site's origin")]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double EastM { get; init; }

    /// <summary>North of the site's origin, m.</summary>
    [Field("north", "Place of the foot, north of the site's origin.", Default = "0 m", Why = "the site's origin")]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double NorthM { get; init; }

    /// <summary>The foot.</summary>
    [Field("base", "What the mast stands on.", Default = "all of its own defaults")]
    public MastBase Base { get; init; } = new();

    /// <summary>Sections from the bottom up.</summary>
    [Field("sections", "Mast sections from the bottom up.", Required = true)]
    public ImmutableArray<Section> Sections { get; init; } = [];

    /// <summary>Anchors of this mast.</summary>
    [Field("anchors", "The guy anchors of this mast, seen from its foot.", Required = true)]
    public ImmutableArray<Anchor> Anchors { get; init; } = [];

    /// <summary>Guy levels from the bottom up.</summary>
    [Field("guys", "The guy levels.", Required = true)]
    public ImmutableArray<GuyLevel> Guys { get; init; } = [];

    /// <summary>Top loading; null for none.</summary>
    [Field("top-wires", "Top-loading wires sloping down from the mast top.", Default = "none")]
    public TopWires? TopWires { get; init; }

    /// <summary>Radials.</summary>
    [Field("radials", "The radial wires around the base.", Required = true)]
    public Radials Radials { get; init; } = new();

    /// <summary>How radio frequency sees its lattice.</summary>
    [Field("lattice-as", "How radio frequency sees lattice sections; `mastwright lattice` compares the two.", Default = "equivalent", Why = "quicker, and within a per cent or two of every leg by itself while the mast is slim against the wavelength")]
    public LatticeModel LatticeAs { get; init; }

    /// <summary>How it is raised.</summary>
    [Field("raising", "How the mast is to be raised, for the forces of the lift.", Default = "all of its own defaults")]
    public RaisingPlan Raising { get; init; } = new();

    /// <summary>Things fixed to the mast.</summary>
    [Field("attachments", "Things fixed to the mast that weigh and catch wind.", Default = "none")]
    public ImmutableArray<Attachment> Attachments { get; init; } = [];

    /// <summary>Cables and conduits along the mast.</summary>
    [Field("conduits", "Cables and conduits that run up along the mast: they weigh and catch wind and ice.", Default = "none")]
    public ImmutableArray<ConduitAlong> Conduits { get; init; } = [];

    /// <summary>What stands on its top; null for nothing.</summary>
    [Field("top", "A rod, whip or ring on the mast's top: it draws static and corona, weighs (rods as solid copper, a ring as tube of 1 mm wall) and catches wind and ice.", Default = "nothing")]
    public TopFitting? Top { get; init; }

    /// <summary>Cables across the base.</summary>
    [Field("crossings", "Cables that cross the base insulator: lamp, rotator, other aerials.", Default = "none")]
    public ImmutableArray<CrossingSpec> Crossings { get; init; } = [];

    /// <summary>The section at a height above ground: at a joint the lower one, below the foot the lowest, above the top the topmost.</summary>
    /// <param name="heightM">Height above ground, m.</param>
    public Section SectionAt(double heightM)
    {
        const double joint = 1e-6;
        var top = Base.HeightM;
        foreach (var section in Sections)
        {
            top += section.LengthM;
            if (heightM <= top + joint)
            {
                return section;
            }
        }

        return Sections[^1];
    }

    /// <summary>Length of the mast above its insulator, m.</summary>
    public double LengthM => Sections.Sum(s => s.LengthM);

    /// <summary>Height of the mast top above ground, m.</summary>
    public double TopM => Base.HeightM + LengthM;
}

/// <summary>What the mast stands on.</summary>
public sealed record MastBase
{
    /// <summary>Height of the mast's lower end above ground, m: footing, insulator and pivot together.</summary>
    [Field("height", "Height of the mast's lower end above ground: footing, insulator and pivot together.", Default = "0.4 m", Why = "a low pedestal with a post insulator; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.05, 20)]
    public double HeightM { get; init; } = 0.4;

    /// <summary>How the foot may turn.</summary>
    [Field("pivot", "How the foot may turn, so that no bending reaches the ceramic.", Default = "ball-and-cone", Why = "turns freely every way; the usual base of a guyed radiator")]
    public Pivot Pivot { get; init; } = Pivot.BallAndCone;

    /// <summary>Rotation the pivot can take, rad.</summary>
    [Field("pivot-rotation", "Rotation the pivot can take before it binds.", Default = "3 °", Why = "a plain ball seat; common practice, no source; use the maker's figure")]
    [Quantity(QuantityKind.Angle, 0.001, 1.6)]
    public double PivotRotationRad { get; init; } = 3 * Math.PI / 180;

    /// <summary>Radius of ball, rocker or pin, m.</summary>
    [Field("pivot-radius", "Radius of the ball, of the rocker's curve or of the hinge pin: what it rolls or rubs on bends the ceramic a little.", Default = "20 mm", Why = "a common ball; measure yours")]
    [Quantity(QuantityKind.FineLength, 0.002, 1)]
    public double PivotRadiusM { get; init; } = 0.02;

    /// <summary>Bearing of the hinge pin, rad.</summary>
    [Field("hinge-axis", "Compass bearing along the hinge pin of a hinged pivot; the mast turns freely only across it.", Default = "90 °", Why = "east to west: the mast is laid to the north or south")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double HingeAxisRad { get; init; } = Math.PI / 2;

    /// <summary>Breaking strength of the hold-down, N.</summary>
    [Field("hold-down", "Breaking strength of a loose insulated hold-down that keeps the mast on its pivot.", Default = "0 N", Why = "none: the mast's own pressure keeps it there")]
    [Quantity(QuantityKind.Force, 0, 1e6)]
    public double HoldDownN { get; init; }

    /// <summary>Base insulator, catalogue name.</summary>
    [Field("insulator", "The base insulator (see `mastwright list base-insulators`).", Required = true)]
    [CatalogueName("base-insulators")]
    public string Insulator { get; init; } = "";

    /// <summary>Diameter of the lead from the network to the mast's foot, m.</summary>
    [Field("lead", "Diameter of the conductor from the earth plate's feed terminal up to the mast's foot.", Default = "10 mm", Why = "a stout tube or strap of like girth; common practice, no source")]
    [Quantity(QuantityKind.FineLength, 0.0005, 0.3)]
    public double LeadDiameterM { get; init; } = 0.010;

    /// <summary>Side of the square footing, m.</summary>
    [Field("footing-width", "Side of the square concrete footing under the base.", Default = "0.9 m", Why = "a common small footing; the check below says whether it serves")]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double FootingWidthM { get; init; } = 0.9;

    /// <summary>Depth of the footing underside, m.</summary>
    [Field("footing-depth", "Depth of the footing's underside below ground.", Default = "0.9 m", Why = "below frost in mild country; ask your building office")]
    [Quantity(QuantityKind.Length, 0.05, 10)]
    public double FootingDepthM { get; init; } = 0.9;

    /// <summary>Cylinder strength of the concrete, Pa.</summary>
    [Field("concrete", "Cylinder strength of the footing's concrete.", Default = "20 MPa", Why = "common ready-mix (3000 psi)")]
    [Quantity(QuantityKind.Stress, 5e6, 100e6)]
    public double ConcretePa { get; init; } = 20e6;

    /// <summary>The plate under the insulator; null when not described.</summary>
    [Field("plate", "The steel plate between insulator and concrete.", Default = "none: the insulator's own foot bears on the concrete")]
    public BasePlate? Plate { get; init; }
}

/// <summary>Kinds of foot.</summary>
public enum Pivot
{
    /// <summary>A ball in a cone.</summary>
    [Word("ball-and-cone", "a ball in a cone or cup: turns freely every way")]
    BallAndCone,

    /// <summary>A rocker on a plate with a pin.</summary>
    [Word("rocker-and-pin", "a rounded plate with a centring pin: rolls a little every way")]
    RockerAndPin,

    /// <summary>A hinge.</summary>
    [Word("hinged", "a hinge pin: turns about one axis, stiff about the other, used for raising")]
    Hinged,
}

/// <summary>One length of mast of constant section.</summary>
public sealed record Section
{
    /// <summary>Length, m.</summary>
    [Field("length", "Length of this run of sections.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 200)]
    public double LengthM { get; init; }

    /// <summary>Lattice section, catalogue name.</summary>
    [Field("lattice", "A lattice section from the catalogue (see `mastwright list lattices`); give this or a tube.", Default = "none, a tube is given")]
    [CatalogueName("lattices")]
    public string? Lattice { get; init; }

    /// <summary>Compass bearing that one face of a lattice looks to, rad.</summary>
    [Field("face-bearing", "Compass bearing that one face of a lattice looks to: a square one takes more wind on its corner.", Default = "0 °")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double FaceBearingRad { get; init; }

    /// <summary>A round tube.</summary>
    [Field("tube", "A round tube; give this or a lattice.", Default = "none, a lattice is given")]
    public TubeSection? Tube { get; init; }

    /// <summary>Length of one piece, m; null for the catalogue's, or the whole run.</summary>
    [Field("piece", "Length of one piece as delivered; a joint lies at every such length.", Default = "the catalogue's section length of a lattice, the whole run of a tube")]
    [Quantity(QuantityKind.Length, 0.2, 30)]
    public double? PieceM { get; init; }

    /// <summary>The joints; null when not described.</summary>
    [Field("joint", "How its pieces are joined to each other and to the run above.", Default = "not described; joints are not checked")]
    public SectionJoint? Joint { get; init; }
}

/// <summary>A round tube.</summary>
public sealed record TubeSection
{
    /// <summary>Outside diameter, m.</summary>
    [Field("diameter", "Outside diameter; of a tapered tube that at its bottom.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.005, 1.5)]
    public double DiameterM { get; init; }

    /// <summary>Outside diameter at the top, m; null when it does not taper.</summary>
    [Field("top-diameter", "Outside diameter at the top of a tapered tube.", Default = "the same: it does not taper")]
    [Quantity(QuantityKind.FineLength, 0.005, 1.5)]
    public double? TopDiameterM { get; init; }

    /// <summary>Wall, m.</summary>
    [Field("wall", "Wall thickness.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.0005, 0.1)]
    public double WallM { get; init; }

    /// <summary>Metal, catalogue name.</summary>
    [Field("metal", "The metal (see `mastwright list metals`).", Required = true)]
    [CatalogueName("metals")]
    public string Metal { get; init; } = "";

    /// <summary>Whether welds lie in the stressed length.</summary>
    [Field("welded", "Whether there are welds along the tube that soften aluminium.", Default = "no", Why = "joints are sleeved and bolted")]
    public bool Welded { get; init; }
}

/// <summary>Top-loading wires.</summary>
public sealed record TopWires
{
    /// <summary>How many.</summary>
    [Field("count", "How many wires, evenly spread.", Required = true)]
    [Quantity(QuantityKind.Count, 1, 24)]
    public int Count { get; init; }

    /// <summary>Length of each, m.</summary>
    [Field("length", "Length of each wire.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 200)]
    public double LengthM { get; init; }

    /// <summary>Slope below the horizontal, rad.</summary>
    [Field("slope", "Angle of the wires below the horizontal.", Default = "45 °", Why = "wires run along the top guys")]
    [Quantity(QuantityKind.Angle, 0, Math.PI / 2 * 0.95)]
    public double SlopeRad { get; init; } = Math.PI / 4;

    /// <summary>Wire diameter, m.</summary>
    [Field("wire", "Wire size.", Default = "3 mm", Why = "a stout copper-clad wire")]
    [Quantity(QuantityKind.FineLength, 0.0002, 0.05)]
    public double WireDiameterM { get; init; } = 0.003;

    /// <summary>Bearing of the first wire, rad.</summary>
    [Field("first-bearing", "Compass bearing of the first wire.", Default = "0 °", Why = "north")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double FirstBearingRad { get; init; }

    /// <summary>Whether a wire joins their outer ends.</summary>
    [Field("rim", "Whether a wire joins the outer ends of all the wires into a ring; its own weight and wind are not counted in the structure.", Default = "no", Why = "plain wires")]
    public bool Rim { get; init; }

    /// <summary>Whether the wires carry the mast's mechanical loads.</summary>
    [Field("conducting-guys", "Whether these wires are the upper ends of the top guys, bonded to the mast: they then follow the guys (count, slope and bearing are not used) and add no load of their own.", Default = "no", Why = "the wires hang in addition to the guys and are held by them; their weight and wind are added at the top")]
    public bool PartOfGuys { get; init; }
}

/// <summary>The radial wires.</summary>
public sealed record Radials
{
    /// <summary>How many.</summary>
    [Field("count", "How many radials.", Required = true)]
    [Quantity(QuantityKind.Count, 2, 360)]
    public int Count { get; init; }

    /// <summary>Length of each, m.</summary>
    [Field("length", "Length of each radial.", Required = true)]
    [Quantity(QuantityKind.Length, 0.5, 500)]
    public double LengthM { get; init; }

    /// <summary>Wire diameter, m.</summary>
    [Field("wire", "Wire size.", Default = "14 AWG", Why = "a common bare or insulated copper wire")]
    [Quantity(QuantityKind.FineLength, 0.0002, 0.05)]
    public double WireDiameterM { get; init; } = 0.001628;

    /// <summary>Depth below ground, m.</summary>
    [Field("depth", "Depth below the surface; 0 for wires laid on it.", Default = "0 m", Why = "laid on the surface and grown in")]
    [Quantity(QuantityKind.FineLength, 0, 1)]
    public double DepthM { get; init; }

    /// <summary>How they lie; null to tell from depth and height.</summary>
    [Field("lay", "How the radials lie.", Default = "elevated when a height is given, buried when a depth is, else on the surface")]
    public RadialLay? StatedLay { get; init; }

    /// <summary>Height above ground, m; null for radials on or in the soil.</summary>
    [Field("height", "Height of elevated radials above ground; the mast's lower end must be at least 0.1 m higher.", Default = "none: on or in the soil")]
    [Quantity(QuantityKind.Length, 0.05, 20)]
    public double? HeightM { get; init; }

    /// <summary>Ranges cut short.</summary>
    [Field("shortened", "Ranges of bearings in which the radials are cut short, at a fence or a house.", Default = "none")]
    public ImmutableArray<ShortRadials> Shortened { get; init; } = [];

    /// <summary>Insulation; null for bare wire.</summary>
    [Field("jacket", "Insulation on the radial wires; the quick estimate leaves it out.", Default = "none: bare wire")]
    public WireJacket? Jacket { get; init; }

    /// <summary>Mesh or plate at the base.</summary>
    [Field("screen", "A sheet of wire mesh or plate around the base, joined to the radials.", Default = "none")]
    public GroundScreen? Screen { get; init; }

    /// <summary>How they lie.</summary>
    public RadialLay Lay => StatedLay ?? (HeightM is not null ? RadialLay.Elevated : DepthM > 0 ? RadialLay.Buried : RadialLay.Surface);

    /// <summary>Length of a radial that runs in a direction, m.</summary>
    /// <param name="bearingRad">Compass bearing.</param>
    public double LengthTowards(double bearingRad) => Shortened.Where(s => s.Holds(bearingRad)).Select(s => s.LengthM).Append(LengthM).Min();
}

/// <summary>Something fixed to the mast.</summary>
public sealed record Attachment
{
    /// <summary>What it is.</summary>
    [Field("name", "What it is.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Height above ground, m.</summary>
    [Field("height", "Height above ground.", Required = true)]
    [Quantity(QuantityKind.Length, 0, 200)]
    public double HeightM { get; init; }

    /// <summary>Mass, kg.</summary>
    [Field("mass", "Its mass.", Required = true)]
    [Quantity(QuantityKind.Mass, 0, 5000)]
    public double MassKg { get; init; }

    /// <summary>Drag area CdA, m².</summary>
    [Field("drag-area", "Its drag area: area times drag coefficient.", Default = "0 m²", Why = "no wind on it")]
    [Quantity(QuantityKind.Area, 0, 100)]
    public double DragAreaM2 { get; init; }

    /// <summary>Diameter of the rods it is made of, m; 0 when ice on it is not counted.</summary>
    [Field("rods", "Diameter of the rods or tubes it is made of (a side antenna, a top hat, a ring), from which its ice follows.", Default = "0 mm", Why = "no ice counted on it")]
    [Quantity(QuantityKind.FineLength, 0, 0.3)]
    public double RodDiameterM { get; init; }

    /// <summary>Distance of its middle from the mast's axis, m.</summary>
    [Field("reach", "Level distance of its middle from the mast's axis: a side antenna bends and twists the mast.", Default = "0 m", Why = "on the axis, as a top hat or ring")]
    [Quantity(QuantityKind.Length, 0, 20)]
    public double ReachM { get; init; }

    /// <summary>Bearing from the axis to its middle, rad.</summary>
    [Field("bearing", "Compass bearing from the mast's axis to its middle.", Default = "0 °", Why = "north; it counts only with a reach")]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double BearingRad { get; init; }
}
