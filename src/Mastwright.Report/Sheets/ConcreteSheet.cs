using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Build.Concrete;
using Mastwright.Build.Cutting;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Sheets;

/// <summary>What to cast: volumes with waste, and the bars of every footing, block and beam to cut and bend.</summary>
public static class ConcreteSheet
{
    /// <summary>Concrete ordered over what the forms hold: uneven holes and spill.</summary>
    public const double Waste = 0.08;

    // Allowable-stress pulls to factored ones: ASCE 7, wind 1.0 W against 0.6 W.
    private const double LoadFactor = 1.6;
    private const double YardM = 0.9144;
    private const long SearchNodes = 20_000;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("concrete", "What to cast: volumes with waste, and the bars to cut and bend", input =>
    {
        var document = new DocumentBuilder("Concrete and bars", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station, input.Result, input.Cancellation);
        return document.Build();
    });

    /// <summary>Every body of concrete of the station with its bars; bodies that are alike count once.</summary>
    public static ImmutableArray<ReinforcedBody> Bodies(Station station, StationResult result)
    {
        var us = station.UnitSystem == UnitSystem.Us;
        var sizes = Catalogue.Default.Bars.All.Where(b => b.Name.StartsWith('#') == us).Select(b => new RebarSize(b.Name, b.DiameterM, b.YieldPa)).ToList();
        return [.. station.Masts.Zip(result.Masts).SelectMany(m => Of(m.First, m.Second, station.Masts.Length > 1))
            .GroupBy(b => (b.Shape, b.LengthM, b.WidthM, b.HeightM, Pull: Math.Round((b.PullN ?? 0) / 100)))
            .Select(g => g.First() with { Name = string.Join(", ", g.Select(b => b.Name)), Count = g.Count() })
            .Select(b => Reinforcement.For(b, sizes, Grade(station).CylinderStrengthPa))];
    }

    /// <summary>Writes the sheet.</summary>
    public static void Write(DocumentBuilder document, Station station, StationResult result, CancellationToken cancellation)
    {
        var bodies = Bodies(station, result);
        document.Text($"Concrete of grade {Grade(station).Name} or better, cast against undisturbed soil, cover {document.Show(Reinforcement.CoverM, QuantityKind.FineLength, 2)} on every bar (ACI 318-19, 20.5.1.3.1, from memory). Order the sum once, not footing by footing.");
        document.Table("Concrete", ["What", "#How many", "#Size of one", "#Volume of one", "#Volume in all"], bodies.Select(b => new Cell[]
        {
            b.Body.Name, Count(b.Body.Count), Size(document, b.Body), Volume(document, b.Body.VolumeM3), Volume(document, b.Body.Count * b.Body.VolumeM3),
        }).Append(["in all", "", "", "", Volume(document, bodies.Sum(b => b.Body.Count * b.Body.VolumeM3))])
            .Append([$"to order, with {100 * Waste:0} % for uneven holes and spill", "", "", "", Volume(document, (1 + Waste) * bodies.Sum(b => b.Body.Count * b.Body.VolumeM3))]));
        document.Findings(bodies.SelectMany(b => b.Findings));
        foreach (var body in bodies.Where(b => !b.Bars.IsEmpty))
        {
            document.Table($"Bars of {(body.Body.Count > 1 ? "each of " : "")}{body.Body.Name}", ["Mark", "Where", "Bend", "Bar", "#In one", "#At most apart", "#Length to cut", "#To cut in all"], body.Bars.Select(r => new Cell[]
            {
                r.Mark, r.Where, r.Bend, r.Bar.Name, Count(r.Count), document.Show(r.SpacingM, QuantityKind.FineLength, 3), TapeText.Of(r.LengthM, document.Units), Count(r.Count * body.Body.Count),
            }));
            document.Text($"Needed: {document.Show(body.Needed!, 3)} ({body.Needed!.Formula}; {body.Needed.Source}). Steel in one: {document.Show(body.SteelKg, QuantityKind.Mass, 3)}.");
        }

        Stock(document, bodies, cancellation);
        document.Add(new Note(NoteKind.Assumption, "This is the least reinforcement: against shrinkage in blocks and footings, and the bending of a buried beam held evenly by the soil and pulled at its middle with 1.6 times the largest sum of its guys. Shear, the anchor rod's hold in the concrete, and frost are not in it: an engineer draws those."));
        document.Caution("Deep holes cave in: shore or slope them, and let nobody work alone in one. Wet concrete burns skin and eyes. Cap every bar end that someone could fall on. Have buried services marked before you dig.");
    }

    private static IEnumerable<ConcreteBody> Of(Mast mast, MastResult result, bool several)
    {
        var of = several ? $" of {mast.Name}" : "";
        yield return new ConcreteBody($"footing{of}", BodyShape.Block, mast.Base.FootingWidthM, mast.Base.FootingWidthM, mast.Base.FootingDepthM);
        foreach (var anchor in mast.Anchors)
        {
            var pull = result.Stand.Cases.Select(c => c.Guys.Where(g => g.Anchor == anchor.Name).Sum(g => g.AnchorTensionN)).DefaultIfEmpty(0).Max();
            ConcreteBody? body = anchor switch
            {
                { Block: { } b } => new ConcreteBody($"block {anchor.Name}{of}", BodyShape.Block, b.LengthM, b.WidthM, b.HeightM),
                { Deadman: { } d } => new ConcreteBody($"beam {anchor.Name}{of}", BodyShape.Beam, d.LengthM, d.ThicknessM, d.HeightM, PullN: pull > 0 ? LoadFactor * pull : null),
                { Post: { } p } => new ConcreteBody($"post hole {anchor.Name}{of}", BodyShape.RoundATube, p.HoleDiameterM, p.HoleDiameterM, p.DepthM),
                _ => null,
            };
            if (body is not null)
            {
                yield return body;
            }
        }
    }

    private static void Stock(DocumentBuilder document, ImmutableArray<ReinforcedBody> bodies, CancellationToken cancellation)
    {
        var us = document.Units == UnitSystem.Us;
        var stock = us ? new[] { 20 * 0.3048, 40 * 0.3048 } : [6, 12];
        foreach (var size in bodies.SelectMany(b => b.Bars.Select(r => (b.Body, Run: r))).GroupBy(r => r.Run.Bar))
        {
            var pieces = size.GroupBy(r => Math.Round(r.Run.LengthM, 4)).Select(g => new PieceWanted(string.Join(", ", g.Select(r => $"{r.Run.Mark} of {r.Body.Name}").Distinct()), g.Key, g.Sum(r => r.Run.Count * r.Body.Count))).ToList();
            var lengths = stock.Where(l => l >= pieces.Max(p => p.LengthM)).Take(1).Select(l => new Reel($"{document.Show(l, QuantityKind.Length)} bar", l)).ToList();
            var plan = ReelCutting.Plan(pieces, lengths, new ReelCuttingOptions(UsefulOffcutM: 1, NodeLimit: SearchNodes), cancellation);
            document.Findings(plan.Findings.Where(f => f.Severity == Severity.Error));
            if (plan.Value is not { } cuts)
            {
                continue;
            }

            document.Table($"{size.Key.Name}: {cuts.Reels.Length} stock lengths, {document.Show(cuts.Reels.Sum(r => r.LengthM) * size.Key.MassKgPerM, QuantityKind.Mass, 3)}" + (cuts.IsProvenOptimal ? ", no plan takes fewer" : ""), ["#Bars", "Stock", "Cut from each", "#Left over of each"],
                cuts.Reels.GroupBy(c => (c.Reel, What: string.Join("; ", c.Pieces.Select(p => $"{p.Count} × {TapeText.Of(p.LengthM, document.Units)} ({p.Name})")), Left: Math.Round(c.OffcutM, 2)))
                    .Select(g => new Cell[] { Count(g.Count()), g.Key.Reel, g.Key.What, document.Show(g.Key.Left, QuantityKind.Length, 3) }));
        }
    }

    private static Concrete Grade(Station station) => Catalogue.Default.Concretes[station.UnitSystem == UnitSystem.Us ? "3000 psi concrete" : "C25/30 concrete"];

    private static string Size(DocumentBuilder document, ConcreteBody body) => body.Shape == BodyShape.RoundATube
        ? $"{TapeText.Of(body.LengthM, document.Units)} across, {TapeText.Of(body.HeightM, document.Units)} deep"
        : $"{TapeText.Of(body.LengthM, document.Units)} × {TapeText.Of(body.WidthM, document.Units)} × {TapeText.Of(body.HeightM, document.Units)}";

    private static string Volume(DocumentBuilder document, double m3) =>
        document.Units == UnitSystem.Us ? QuantityFormat.Digits(m3 / (YardM * YardM * YardM), 3) + " yd³" : document.Show(m3, QuantityKind.Volume, 3);

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
