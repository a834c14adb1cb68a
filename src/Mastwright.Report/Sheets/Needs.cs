using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Build.Materials;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Units;
using Mastwright.Structure.Chains;

namespace Mastwright.Report.Sheets;

/// <summary>Everything a design needs to be bought, part by part.</summary>
public static class Needs
{
    private const double StrandWaste = 0.04;
    private const double WireWaste = 0.02;
    private const double BarWaste = 0.05;
    private const double ConcreteKgPerM3 = 2400;
    private const double RadialEndM = 0.3;

    /// <summary>The needs of a station; a part needed at several places comes several times.</summary>
    public static IReadOnlyList<MaterialNeed> Of(Station station, StationResult result)
    {
        var list = new List<MaterialNeed>();
        foreach (var (mast, n) in station.Masts.Select((m, n) => (m, n)))
        {
            Mast(list, station, mast);
            Guys(list, station, mast);
            Anchors(list, station.UnitSystem, mast);
            Earth(list, station, mast);
            list.AddRange(CabinetParts.Of(station, mast, result.Masts[n]));
        }

        Concrete(list, ConcreteSheet.Bodies(station, result));

        return [.. list.OrderBy(x => Array.IndexOf(Order, x.Group))];
    }

    private static readonly string[] Order = ["mast", "guys", "anchors and footings", "earth", "cabinet, feed and protection"];

    private static void Mast(List<MaterialNeed> list, Station station, Mast mast)
    {
        foreach (var section in mast.Sections)
        {
            if (section.Tube is { } tube)
            {
                var run = MastSections.Of(mast).First(r => r.Tube is { } t && t.OuterDiameterM == tube.DiameterM && t.WallM == tube.WallM);
                list.Add(new MaterialNeed(MastPieces.TubeName(tube, station.UnitSystem), "mast", section.LengthM, MaterialUnit.Metre, 0.03, MassKgPerUnit: run.MassKgPerM, PriceAs: $"tube {tube.Metal}"));
            }
            else
            {
                var row = Catalogue.Default.Lattices[section.Lattice!];
                list.Add(new MaterialNeed(row.Name, "mast", Math.Ceiling((section.LengthM / row.SectionLengthM) - 1e-9), MaterialUnit.Each, MassKgPerUnit: row.SectionLengthM * row.MassPerLengthKgPerM,
                    Remark: $"sections of {QuantityFormat.Show(row.SectionLengthM, Model.Trails.QuantityKind.Length, station.UnitSystem)}"));
            }
        }

        foreach (var joint in MastPieces.Of(mast, station.UnitSystem).Select(p => p.Above).OfType<MastJoint>())
        {
            list.Add(new MaterialNeed("section bolt with lock nut", "mast", joint.Bolts, MaterialUnit.Each, Spares: 0.1 * joint.Bolts, Remark: "size and grade as the maker of the sections says"));
            if (joint.SleeveM > 0)
            {
                list.Add(new MaterialNeed($"sleeve inside {joint.SleeveFor}", "mast", joint.SleeveM, MaterialUnit.Metre, 0.03, PriceAs: "tube sleeve"));
            }
        }

        var insulator = Catalogue.Default.BaseInsulators[mast.Base.Insulator];
        list.Add(new MaterialNeed(insulator.Name, "mast", 1, MaterialUnit.Each, MassKgPerUnit: insulator.MassKg));
        list.Add(new MaterialNeed($"base pivot, {Drawings.Words.Pivot(mast.Base.Pivot)}", "mast", 1, MaterialUnit.Each, PriceAs: "base pivot"));
        foreach (var thing in mast.Attachments)
        {
            list.Add(new MaterialNeed(thing.Name, "mast", 1, MaterialUnit.Each, MassKgPerUnit: thing.MassKg));
        }

        if (mast.TopWires is { PartOfGuys: false } wires)
        {
            list.Add(Wire(wires.WireDiameterM, wires.Count * wires.LengthM, "mast", station.UnitSystem, "top wires"));
        }
    }

    private static void Guys(List<MaterialNeed> list, Station station, Mast mast)
    {
        var model = StandModel.Of(station, mast);
        foreach (var guy in model.Guys)
        {
            var level = mast.Guys[guy.Level - 1];
            var length = guy.Guy.UndeformedChord(model.Structure.FootM).Length;
            var insulators = GuyPlaces.InsulatorsM(mast, level).Count;
            var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
            var ends = level.Hardware?.EndFitting == StrandEnd.Clips ? (insulators + 1) * 2 * 0.4 : 0;
            list.Add(new MaterialNeed(guy.Strand.Name, "guys", length + ends, MaterialUnit.Metre, StrandWaste, MassKgPerUnit: guy.Strand.MassKgPerM));
            list.Add(new MaterialNeed(insulator.Name, "guys", insulators, MaterialUnit.Each, Spares: 0.1 * insulators, MassKgPerUnit: insulator.MassKg, Remark: "one spare in ten"));
            if (level.Hardware is { } hardware)
            {
                Fittings(list, guy, level, hardware);
            }
        }

        if (mast.Guys.Any(g => g.Hardware is null))
        {
            list.Add(new MaterialNeed("guy fittings not described in the file", "guys", 0, MaterialUnit.Each, Remark: "add “hardware:” to the guy levels to have shackles, turnbuckles, grips and thimbles counted"));
        }
    }

    private static void Fittings(List<MaterialNeed> list, ModelGuy guy, GuyLevel level, GuyHardware hardware)
    {
        foreach (var piece in GuyChains.Of(guy, level, hardware))
        {
            var size = guy.Strand.DiameterM;
            switch (piece)
            {
                case ShacklePiece or TurnbucklePiece:
                    list.Add(new MaterialNeed(piece.Name, "guys", 1, MaterialUnit.Each));
                    break;
                case ThimblePiece thimble:
                    var row = Catalogue.Default.Thimbles.All.Where(t => t.Heavy == thimble.Heavy).MinBy(t => Math.Abs(t.StrandM - size));
                    list.Add(new MaterialNeed(row?.Name ?? thimble.Name, "guys", 1, MaterialUnit.Each, Spares: 0.05));
                    break;
                case EndFitting { Kind: EndFittingKind.Clips } clips:
                    list.Add(new MaterialNeed(ClipFor(size), "guys", clips.Clips, MaterialUnit.Each, Spares: 0.05 * clips.Clips));
                    break;
                case EndFitting { Kind: EndFittingKind.WrappedGrip } grip:
                    list.Add(new MaterialNeed(Catalogue.Default.Grips.All.FirstOrDefault(g => Math.Abs(g.StrandM - size) < 1e-4 && g.Name.Contains("grip", StringComparison.Ordinal))?.Name ?? grip.Name, "guys", 1, MaterialUnit.Each, Spares: 0.05, Remark: "never reuse a grip taken from service"));
                    if (grip.BackUpClip)
                    {
                        list.Add(new MaterialNeed(ClipFor(size), "guys", 1, MaterialUnit.Each, Spares: 0.05));
                    }

                    break;
                case EndFitting other:
                    list.Add(new MaterialNeed($"{other.Name} for {guy.Strand.Name}", "guys", 1, MaterialUnit.Each));
                    break;
            }
        }
    }

    private static string ClipFor(double strandM) => Catalogue.Default.Clips.All.Where(c => c.RopeM >= strandM - 1e-6).MinBy(c => c.RopeM)?.Name ?? "U-bolt clip";

    private static void Anchors(List<MaterialNeed> list, UnitSystem units, Mast mast)
    {
        const string group = "anchors and footings";
        string Fine(double m) => QuantityFormat.Show(m, Model.Trails.QuantityKind.FineLength, units, 3);
        string Force(double n) => QuantityFormat.Show(n, Model.Trails.QuantityKind.Force, units, 3);
        foreach (var anchor in mast.Anchors)
        {
            switch (anchor)
            {
                case { Block: not null } or { Deadman: not null }:
                    list.Add(new MaterialNeed("anchor rod with eye, cast in", group, 1, MaterialUnit.Each, Remark: "galvanised, cranked in line with the guys"));
                    break;
                case { Screw: { } s }:
                    list.Add(new MaterialNeed($"screw anchor, plate {Fine(s.DiameterM)}", group, 1, MaterialUnit.Each, Remark: $"rated {Force(s.RatedN)}"));
                    break;
                case { RockBar: { } r }:
                    list.Add(new MaterialNeed($"rock bar {Fine(r.BarDiameterM)}", group, r.BondLengthM + 0.3, MaterialUnit.Metre, 0.02));
                    break;
                case { Post: { } p }:
                    list.Add(new MaterialNeed($"post tube {Fine(p.DiameterM)} × {Fine(p.WallM)}", group, p.DepthM + Math.Max(0, anchor.RiseM) + 0.2, MaterialUnit.Metre, 0.02));
                    break;
                default:
                    list.Add(new MaterialNeed($"anchor rated {Force(anchor.RatedPullN ?? 0)}", group, 1, MaterialUnit.Each));
                    break;
            }
        }
    }

    private static void Concrete(List<MaterialNeed> list, IEnumerable<Build.Concrete.ReinforcedBody> bodies)
    {
        foreach (var body in bodies)
        {
            list.Add(new MaterialNeed("concrete", "anchors and footings", body.Body.Count * body.Body.VolumeM3, MaterialUnit.CubicMetre, ConcreteSheet.Waste, MassKgPerUnit: ConcreteKgPerM3));
            list.AddRange(body.Bars.Select(b => new MaterialNeed(b.Bar.Name, "anchors and footings", body.Body.Count * b.Count * b.LengthM, MaterialUnit.Metre, BarWaste, MassKgPerUnit: b.Bar.MassKgPerM, Remark: "reinforcement, bent to the list")));
        }
    }

    private static void Earth(List<MaterialNeed> list, Station station, Mast mast)
    {
        var r = mast.Radials;
        list.Add(Wire(r.WireDiameterM, r.Count * (r.LengthM + RadialEndM), "earth", station.UnitSystem, "radials", 2 * (r.LengthM + RadialEndM)));
        list.Add(new MaterialNeed("radial lug with bolt", "earth", r.Count, MaterialUnit.Each, Spares: 0.05 * r.Count));
        if (r.DepthM == 0)
        {
            list.Add(new MaterialNeed("wire pin for the grass", "earth", Math.Ceiling(r.Count * r.LengthM), MaterialUnit.Each, 0.05));
        }

        list.Add(new MaterialNeed("earth plate with radial ring", "earth", 1, MaterialUnit.Each));
        list.Add(new MaterialNeed("earth rod with clamp", "earth", 1 + mast.Anchors.Length, MaterialUnit.Each, Remark: "one at the base, one at each metal-guyed anchor"));
    }

    private static MaterialNeed Wire(double diameterM, double lengthM, string group, UnitSystem units, string use, double sparesM = 0)
    {
        var known = Catalogue.Default.Wires.All.FirstOrDefault(w => Math.Abs(w.DiameterM - diameterM) < 0.01 * diameterM);
        var name = known?.Name ?? $"wire {QuantityFormat.Show(diameterM, Model.Trails.QuantityKind.FineLength, units, 3)}";
        return new MaterialNeed(name, group, lengthM, MaterialUnit.Metre, WireWaste, sparesM, Math.PI / 4 * diameterM * diameterM * Catalogue.Default.Metals["copper"].DensityKgPerM3, use + ", weighed as copper", PriceAs: "bare copper wire");
    }
}
