using System.Collections.Immutable;

namespace Mastwright.Catalog;

/// <summary>
/// Every part and material the program knows, one <see cref="Shelf{T}"/> a kind. All numbers are SI;
/// every row carries its source and how firmly it stands. Immutable and safe to share between threads.
/// </summary>
public sealed class Catalogue
{
    private static readonly Lazy<Catalogue> Loaded = new(() => new Catalogue());

    private Catalogue()
    {
        Strands = Shelve("guy strand", ["strands.csv"], r => new Strand(
            r.Info(), r.Text("grade"), r.Number("diameter"), r.Count("wires"), r.Number("wireDiameter"), r.Number("mass"), r.Number("breaking"), r.Number("modulus"), r.Number("expansion")));
        Ropes = Shelve("synthetic guy rope", ["ropes.csv"], r => new Rope(
            r.Info(), r.Text("fibre"), r.Number("diameter"), r.Number("mass"), r.Number("breaking"), r.Number("modulus"), r.Number("expansion")));
        Metals = Shelve("metal", ["metals.csv"], r => new Metal(
            r.Info(),
            r.Text("family"),
            r.NumberOrNull("yield"),
            r.NumberOrNull("ultimate"),
            r.NumberOrNull("weldedYield"),
            r.NumberOrNull("weldedUltimate"),
            r.Number("modulus"),
            r.Number("density"),
            r.Number("expansion"),
            r.Number("conductivity"),
            r.Number("relativePermeability"),
            r.Number("anodicIndex")));
        Tubes = Shelve("tube", ["tubes-metric.csv", "tubes-imperial.csv"], r => new Tube(
            r.Info(), r.Number("outerDiameter"), r.Number("wall"), r.Text("metal")));
        Lattices = Shelve("lattice section", ["lattices.csv"], r => new Lattice(
            r.Info(),
            r.Count("legs"),
            r.Text("metal"),
            r.Number("faceWidth"),
            r.Number("panelHeight"),
            r.Number("legDiameter"),
            r.Number("legWall"),
            r.Number("diagonalDiameter"),
            r.Number("diagonalWall"),
            r.Number("horizontalDiameter"),
            r.Number("horizontalWall"),
            Enum.Parse<BracePattern>(r.Text("pattern"), ignoreCase: true),
            r.Flag("welded"),
            r.Number("sectionLength"),
            r.Number("mass")));
        Shackles = Shelve("shackle", ["shackles.csv"], r => new Shackle(
            r.Info(), r.Number("size"), r.Number("insideLength"), r.Text("pin"), r.Number("workingLoad"), r.Number("breaking")));
        Turnbuckles = Shelve("turnbuckle", ["turnbuckles.csv"], r => new Turnbuckle(
            r.Info(), r.Number("thread"), r.Text("ends"), r.Number("takeUp"), r.Number("closedLength"), r.Number("workingLoad"), r.Number("breaking")));
        Thimbles = Shelve("thimble", ["thimbles.csv"], r => new Thimble(
            r.Info(), r.Number("strand"), r.Flag("heavy"), r.Number("insideLength"), r.Number("insideWidth")));
        Clips = Shelve("clip", ["clips.csv"], r => new Clip(
            r.Info(), r.Number("rope"), r.Count("clipsForRope"), r.Count("clipsForStrand"), r.Number("turnBack"), r.Number("torque"), r.Number("efficiency")));
        Grips = Shelve("end fitting", ["grips.csv"], r => new Grip(
            r.Info(), r.Number("strand"), r.Number("length"), r.Number("efficiency")));
        StrainInsulators = Shelve("strain insulator", ["strain-insulators.csv"], r => new StrainInsulator(
            r.Info(),
            r.Text("kind"),
            r.Number("strength"),
            r.Number("length"),
            r.Number("diameter"),
            r.NumberOrNull("hole"),
            r.Number("dryFlashover"),
            r.Number("wetFlashover"),
            r.Number("leakage"),
            r.Number("capacitance"),
            r.Number("mass")));
        BaseInsulators = Shelve("base insulator", ["base-insulators.csv"], r => new BaseInsulator(
            r.Info(),
            r.Text("kind"),
            r.Number("compression"),
            r.Number("height"),
            r.Number("diameter"),
            r.Number("capacitance"),
            r.Number("dryFlashover"),
            r.Number("wetFlashover"),
            r.Number("impulse"),
            r.Number("leakage"),
            r.Number("mass")));
        Bars = Shelve("reinforcing bar", ["bars.csv"], r => new Bar(r.Info(), r.Number("diameter"), r.Number("yield")));
        Concretes = Shelve("concrete", ["concretes.csv"], r => new Concrete(r.Info(), r.Number("cylinderStrength"), r.Number("density")));
        ScrewAnchors = Shelve("screw anchor", ["screw-anchors.csv"], r => new ScrewAnchorPart(
            r.Info(), r.Count("helices"), r.Number("helixDiameter"), r.Number("length"), r.Number("rated"), r.Number("torqueFactor")));
        Wires = Shelve("wire", ["wires.csv"], r => new Wire(r.Info(), r.Number("diameter"), r.Text("metal")));
        ElectricalSoils = Shelve("soil (electrical)", ["soils-electrical.csv"], r => new ElectricalSoil(
            r.Info(), r.Number("relativePermittivity"), r.Number("conductivity")));
        MechanicalSoils = Shelve("soil (mechanical)", ["soils-mechanical.csv"], r => new MechanicalSoil(
            r.Info(),
            r.NumberOrNull("bearing"),
            r.NumberOrNull("lateral"),
            r.NumberOrNull("baseFriction"),
            r.NumberOrNull("baseAdhesion"),
            r.Number("unitWeight"),
            r.NumberOrNull("frictionAngle"),
            r.NumberOrNull("undrainedShear")));
        Capacitors = Shelve("capacitor", ["capacitors.csv"], r => new Capacitor(
            r.Info(), r.Text("kind"), r.Number("minimum"), r.Number("maximum"), r.Number("peakVoltage"), r.Number("current"), r.Number("quality")));
        Lines = Shelve("feed line", ["lines.csv"], r => new Line(
            r.Info(), r.Number("impedance"), r.Number("velocityFactor"), r.Number("lossRoot"), r.Number("lossLinear"), r.Number("peakVoltage"), r.Number("diameter")));
        Cores = Shelve("ferrite core", ["cores.csv"], r => new Core(
            r.Info(), r.Number("outer"), r.Number("inner"), r.Number("height"), r.Number("permeability"), r.Number("relaxation")));
    }

    /// <summary>The catalogue that comes with the program; read once, on first use.</summary>
    public static Catalogue Default => Loaded.Value;

    /// <summary>Steel guy strand, e.g. <c>"1/4 in EHS"</c>.</summary>
    public Shelf<Strand> Strands { get; }

    /// <summary>Synthetic guy rope, e.g. <c>"8 mm aramid"</c>.</summary>
    public Shelf<Rope> Ropes { get; }

    /// <summary>Metals and coats, e.g. <c>"6061-T6"</c>.</summary>
    public Shelf<Metal> Metals { get; }

    /// <summary>Tubes, e.g. <c>"114.3x4.5 steel"</c>, <c>"2 in pipe schedule 40"</c>.</summary>
    public Shelf<Tube> Tubes { get; }

    /// <summary>Lattice sections (invented samples), e.g. <c>"tri-300-steel"</c>.</summary>
    public Shelf<Lattice> Lattices { get; }

    /// <summary>Shackles, e.g. <c>"1/2 in screw-pin shackle"</c>.</summary>
    public Shelf<Shackle> Shackles { get; }

    /// <summary>Turnbuckles, e.g. <c>"1/2x12 in jaw-eye turnbuckle"</c>.</summary>
    public Shelf<Turnbuckle> Turnbuckles { get; }

    /// <summary>Thimbles, e.g. <c>"1/4 in heavy thimble"</c>.</summary>
    public Shelf<Thimble> Thimbles { get; }

    /// <summary>U-bolt clips, e.g. <c>"1/4 in U-bolt clip"</c>.</summary>
    public Shelf<Clip> Clips { get; }

    /// <summary>Strand end fittings, e.g. <c>"1/4 in preformed grip"</c>.</summary>
    public Shelf<Grip> Grips { get; }

    /// <summary>Guy insulators, e.g. <c>"ANSI 54-2"</c>.</summary>
    public Shelf<StrainInsulator> StrainInsulators { get; }

    /// <summary>Base insulators (invented samples), e.g. <c>"base-post-60kN"</c>.</summary>
    public Shelf<BaseInsulator> BaseInsulators { get; }

    /// <summary>Reinforcing bars, e.g. <c>"#5 bar"</c>, <c>"16 mm bar"</c>.</summary>
    public Shelf<Bar> Bars { get; }

    /// <summary>Concretes, e.g. <c>"3000 psi concrete"</c>, <c>"C25/30 concrete"</c>.</summary>
    public Shelf<Concrete> Concretes { get; }

    /// <summary>Screw anchors (generic), e.g. <c>"screw anchor 200 mm"</c>.</summary>
    public Shelf<ScrewAnchorPart> ScrewAnchors { get; }

    /// <summary>Wires, e.g. <c>"14 AWG copper"</c>.</summary>
    public Shelf<Wire> Wires { get; }

    /// <summary>Soils for radio waves, e.g. <c>"average land"</c>.</summary>
    public Shelf<ElectricalSoil> ElectricalSoils { get; }

    /// <summary>Soils for footings and anchors, e.g. <c>"sandy gravel"</c>.</summary>
    public Shelf<MechanicalSoil> MechanicalSoils { get; }

    /// <summary>Capacitors (generic).</summary>
    public Shelf<Capacitor> Capacitors { get; }

    /// <summary>Feed lines (generic).</summary>
    public Shelf<Line> Lines { get; }

    /// <summary>Ferrite rings for chokes (generic), e.g. <c>"ring 61 mm NiZn 850"</c>.</summary>
    public Shelf<Core> Cores { get; }

    private static Shelf<T> Shelve<T>(string kind, ImmutableArray<string> files, Func<DataFile.Row, T> make)
        where T : Part =>
        new(kind, [.. files.SelectMany(f => DataFile.Read(f, make))]);
}
