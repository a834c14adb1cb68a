using Mastwright.Catalog;
using Mastwright.Fields.Shapes;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Numerics;
using Wire = Mastwright.Fields.Wires.Wire;

namespace Mastwright.Analysis.Radiate;

/// <summary>
/// Turns the station into wires as radio frequency sees it: every mast with its lead, its top wires and its guys cut by
/// their insulators, over a perfect ground. One feed for each mast, between the earth plate (or the hub of elevated radials) and the
/// lead, in the order of the design.
/// </summary>
public static class WireModels
{
    /// <summary>The wires of the whole station.</summary>
    public static WireModel Of(Station station)
    {
        var model = WireModel.Over(Ground.Perfect);
        foreach (var mast in station.Masts)
        {
            model = AddMast(model, mast);
            model = mast.Radials.Lay == RadialLay.Elevated ? SoilModels.AddElevated(model, station, mast) : model;
        }

        return AddMetal(model, station);
    }

    /// <summary>A mast by itself, its lattice as stated here, without guys, top wires and neighbours.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="lattice">How its lattice is taken.</param>
    internal static WireModel Bare(Station station, Mast mast, LatticeModel lattice) => Of(station with
    {
        Masts = [mast with { Guys = [], TopWires = null, LatticeAs = lattice, Radials = mast.Radials with { StatedLay = RadialLay.Surface, HeightM = null } }],
        NearbyMetal = [],
    });

    /// <summary>How the wires of nearby metal begin.</summary>
    internal const string MetalPrefix = "metal ";

    // Metal that is not earthed stands this far off the ground.
    private const double UnearthedM = 0.1;

    private static WireModel AddMetal(WireModel model, Station station)
    {
        foreach (var metal in station.NearbyMetal)
        {
            double Up(double heightM) => metal.Earthed || heightM >= UnearthedM ? heightM : UnearthedM;
            var from = new Vec3(metal.EastM, metal.NorthM, Up(metal.HeightM));
            var to = new Vec3(metal.EndEastM ?? metal.EastM, metal.EndNorthM ?? metal.NorthM, Up(metal.EndHeightM));
            model = model.With(new Wire(MetalPrefix + metal.Name, from, to, metal.DiameterM / 2, Conductor.Zinc));
        }

        return model;
    }

    /// <summary>Name of the wire that carries the feed of a mast.</summary>
    public static string LeadOf(string mast) => $"lead of {mast}";

    /// <summary>What the wires of a guy are called, before the number of the piece.</summary>
    public static string GuyName(string mast, int level, string anchor) => $"guy {level} of {mast} to {anchor}";

    /// <summary>The radius of a round conductor that stands for a section at radio frequency, m; of a tapered tube that at its bottom.</summary>
    public static double RadiusM(Section section)
    {
        if (section.Tube is { } tube)
        {
            return tube.DiameterM / 2;
        }

        var lattice = Catalogue.Default.Lattices[section.Lattice!];
        return EquivalentRadius.Lattice(lattice.Legs, lattice.LegDiameterM / 2, lattice.FaceWidthM).Value;
    }

    /// <summary>The radius at the upper end of a section, m: smaller than <see cref="RadiusM"/> where a tube tapers.</summary>
    public static double TopRadiusM(Section section) => section.Tube?.TopDiameterM is { } top ? top / 2 : RadiusM(section);

    private static WireModel AddMast(WireModel model, Mast mast)
    {
        var foot = new Vec3(mast.EastM, mast.NorthM, 0);
        var at = foot + (mast.Base.HeightM * Vec3.Up);
        var terminal = mast.Radials.Lay == RadialLay.Elevated ? foot with { Z = mast.Radials.HeightM!.Value } : foot;
        model = model.With(new Wire(LeadOf(mast.Name), terminal, at, mast.Base.LeadDiameterM / 2, Conductor.Copper)).WithFeed(mast.Name, LeadOf(mast.Name));
        for (var s = 0; s < mast.Sections.Length; s++)
        {
            var next = at + (mast.Sections[s].LengthM * Vec3.Up);
            model = mast.LatticeAs == LatticeModel.Legs && mast.Sections[s].Lattice is not null
                ? LatticeWires.Add(model, mast, s, at, next)
                : model.With(new Wire($"mast {mast.Name}, run {s + 1}", at, next, RadiusM(mast.Sections[s]), TopRadiusM(mast.Sections[s]), MetalOf(mast.Sections[s])));
            at = next;
        }

        model = AddTopWires(model, mast, at);
        return AddGuys(model, mast, foot);
    }

    private static WireModel AddTopWires(WireModel model, Mast mast, Vec3 top)
    {
        // Top wires that are part of the guys come with the guys.
        if (mast.TopWires is not { PartOfGuys: false } wires)
        {
            return model;
        }

        for (var i = 0; i < wires.Count; i++)
        {
            var bearing = wires.FirstBearingRad + (2 * Math.PI * i / wires.Count);
            var out_ = wires.LengthM * Math.Cos(wires.SlopeRad);
            var end = top + new Vec3(out_ * Math.Sin(bearing), out_ * Math.Cos(bearing), -wires.LengthM * Math.Sin(wires.SlopeRad));
            model = model.With(new Wire($"top wire {i + 1} of {mast.Name}", top, end, wires.WireDiameterM / 2, Conductor.Copper));
        }

        if (wires.Rim && wires.Count > 2)
        {
            var ends = model.Wires.TakeLast(wires.Count).Select(w => w.End).ToList();
            model = model.With([.. ends.Select((e, i) => new Wire($"top rim {i + 1} of {mast.Name}", e, ends[(i + 1) % ends.Count], wires.WireDiameterM / 2, Conductor.Copper))]);
        }

        return model;
    }

    private static WireModel AddGuys(WireModel model, Mast mast, Vec3 foot)
    {
        foreach (var (level, l) in mast.Guys.Select((g, l) => (g, l + 1)))
        {
            // Rope does not conduct; strand does, and is cut by its insulators into pieces.
            if (!Catalogue.Default.Strands.Find(level.Strand).Found)
            {
                continue;
            }

            var anchors = level.Anchors.IsEmpty ? mast.Anchors : [.. mast.Anchors.Where(a => level.Anchors.Contains(a.Name))];
            foreach (var anchor in anchors)
            {
                model = AddGuy(model, mast, foot, level, l, anchor);
            }
        }

        return model;
    }

    private static WireModel AddGuy(WireModel model, Mast mast, Vec3 foot, GuyLevel level, int l, Anchor anchor)
    {
        var strand = Catalogue.Default.Strands[level.Strand];
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
        var high = foot + (level.HeightM * Vec3.Up);
        var low = foot + new Vec3(anchor.DistanceM * Math.Sin(anchor.BearingRad), anchor.DistanceM * Math.Cos(anchor.BearingRad), anchor.RiseM);
        if (low.Z < 0)
        {
            // The flat earth of the model ends the guy where it would enter the ground.
            low = high + (high.Z / (high.Z - low.Z) * (low - high));
            low = low with { Z = 0 };
        }

        var along = (low - high).Unit();
        var length = (low - high).Length;
        var name = GuyName(mast.Name, l, anchor.Name);
        var points = Cuts(mast, level, l, length).Prepend(0).Append(length).ToList();
        for (var p = 0; p + 1 < points.Count; p++)
        {
            var from = high + (points[p] * along);
            var to = p + 2 == points.Count ? low : high + (points[p + 1] * along);
            var piece = $"{name}, piece {p + 1}";
            model = model.With(new Wire(piece, from, to, strand.DiameterM / 2, Conductor.Zinc));
            if (p > 0)
            {
                model = model.WithLoad($"insulator {p} in {name}", piece, 0, new LoadElement.ParallelRlc(null, null, insulator.CapacitanceF));
            }
        }

        return model;
    }

    // Where insulators cut a guy, measured from the mast. Top wires that are the upper ends of the top guys are cut off at
    // their own length. An insulator nearer to the axis than three mast radii would sit inside the reach of the fat mast's
    // kernel: it is moved out to there.
    private static List<double> Cuts(Mast mast, GuyLevel level, int l, double lengthM)
    {
        var nearest = 3 * mast.Sections.Max(s => Math.Max(RadiusM(s), TopRadiusM(s)));
        var asked = level.InsulatorsAtM.IsEmpty ? [nearest] : level.InsulatorsAtM.AsEnumerable();
        if (mast.TopWires is { PartOfGuys: true } wires && l == mast.Guys.Length)
        {
            asked = asked.Where(d => d > wires.LengthM + 0.05).Append(wires.LengthM);
        }

        return [.. asked.Where(d => d < lengthM - 0.05).Select(d => Math.Max(d, nearest)).Distinct().Order()];
    }

    /// <summary>The metal the current flows in.</summary>
    internal static Conductor MetalOf(Section section)
    {
        var name = section.Tube?.Metal ?? Catalogue.Default.Lattices[section.Lattice!].Metal;
        var metal = Catalogue.Default.Metals[name];

        // Structural steel is hot-dip galvanised, and at radio frequency the current flows in the zinc.
        return metal.Family == "steel" ? Conductor.Zinc : new Conductor(metal.Name, metal.ConductivitySPerM, metal.RelativePermeability);
    }
}
