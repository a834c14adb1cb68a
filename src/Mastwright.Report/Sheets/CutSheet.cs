using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Build.Cutting;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.People;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Sheets;

/// <summary>What to cut: every piece of every guy, the radials, and how to take them from reels with least waste.</summary>
public static class CutSheet
{
    private const double RadialEndM = 0.3;
    private const int RadialSpares = 2;
    private const long SearchNodes = 20_000;
    private static readonly double[] MetricReelsM = [50, 100, 250, 500];
    private static readonly double[] UsReelsFt = [100, 250, 500, 1000];

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("cut", "Cut list of mast sections, every guy piece and radial, with the reels to take them from", input =>
    {
        var document = new DocumentBuilder("Cut list", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station, input.Cancellation);
        return document.Build();
    });

    /// <summary>Cut lists of all guys of a mast, with the guy each belongs to; findings where a guy cannot be made.</summary>
    public static (ImmutableArray<(GuyToCut Guy, GuyCutList List)> Lists, ImmutableArray<Finding> Findings) Lists(StandingGuys standing)
    {
        var read = standing.Model.Guys.Select(g => GuyMakeUp.Of(standing, g)).Select(g => (Guy: g, Reading: GuyCutList.For(g))).ToList();
        return ([.. read.Where(r => r.Reading.Value is not null).Select(r => (r.Guy, r.Reading.Value!))], [.. read.SelectMany(r => r.Reading.Findings)]);
    }

    /// <summary>Writes the sheet.</summary>
    public static void Write(DocumentBuilder document, Station station, CancellationToken cancellation)
    {
        var (set, cut) = (station.Site.TensioningTemperatureK, station.Site.CuttingTemperatureK ?? station.Site.TensioningTemperatureK);
        document.Text($"Between bearing points: unstressed strand at the tensioning temperature of {document.Show(set, QuantityKind.Temperature, 3)}. To cut: lying straight and unloaded at the cutting temperature of {document.Show(cut, QuantityKind.Temperature, 3)}, allowances included. Mark the bearing points before cutting; cut one guy, hang it, and look before you cut the rest. " +
            "A turnbuckle takes up what strand gives as it beds in and what a tape gets wrong.");
        foreach (var mast in station.Masts)
        {
            MastPieces.Write(document, mast);
        }

        var strands = new List<(string Strand, PieceWanted Piece)>();
        foreach (var mast in station.Masts)
        {
            document.Section($"Guys of mast {mast.Name}");
            if (StandingGuys.Of(station, mast, cancellation) is not { } standing)
            {
                document.Text("The mast does not stand in still air with these tensions, so there is nothing to cut to. Mend that first: mastwright check shows what to change.");
                continue;
            }

            Guys(document, standing, strands);
        }

        document.Section("Strand from the reel");
        foreach (var strand in strands.GroupBy(s => s.Strand))
        {
            Reels(document, station, strand.Key, [.. strand.Select(s => s.Piece)], cancellation);
        }

        document.Section("Radials");
        foreach (var mast in station.Masts)
        {
            Radials(document, station, mast, cancellation);
        }

        document.Caution(WorkCautions.Tension);
    }

    private static void Guys(DocumentBuilder document, StandingGuys standing, List<(string Strand, PieceWanted Piece)> strands)
    {
        if (standing.Unbalanced(m => document.Show(m, QuantityKind.FineLength, 2)) is { } unlike)
        {
            document.Add(new Note(NoteKind.Assumption, unlike));
        }

        var (lists, findings) = Lists(standing);
        document.Findings(findings);
        var solved = GuyMakeUp.SolvedFrom(standing, [.. lists.Select(l => (l.Guy, (ImmutableArray<double>)[.. l.List.Pieces.Select(p => p.Unstressed.Value)]))]);

        // Guys that are the same to the millimetre are one line.
        foreach (var level in standing.Model.Guys.GroupBy(g => g.Level))
        {
            var design = standing.Mast.Guys[level.Key - 1];
            var rows = new List<Cell[]>();
            foreach (var alike in lists.Where(l => level.Any(g => g.Guy.Name == l.Guy.Guy)).GroupBy(l => string.Join('/', l.List.Pieces.Select(p => Math.Round(p.CutLength.Value, 3)))))
            {
                var names = string.Join(", ", alike.Select(a => level.First(g => g.Guy.Name == a.Guy.Guy).Anchor.Name));
                var (guy, list) = alike.First();
                var pieces = list.Pieces.Reverse().ToList();
                for (var p = 0; p < pieces.Count; p++)
                {
                    var place = (p == 0 ? "at the mast" : p == pieces.Count - 1 ? "at the anchor" : "between") + (pieces.Count == 1 ? " to the anchor" : "");
                    rows.Add([p == 0 ? names : "", $"{pieces[p].Piece}, {place}", Count(alike.Count()), Tape(document, pieces[p].Unstressed.Value), Tape(document, pieces[p].CutLength.Value)]);
                    strands.Add((design.Strand, new PieceWanted($"{standing.Mast.Name} level {level.Key} {pieces[p].Piece}", pieces[p].CutLength.Value, alike.Count())));
                }

                var tension = solved.TryGetValue(guy.Guy, out var t) ? document.Show(t, QuantityKind.Force) : "not stable";
                var (step, words) = document.Units == UnitSystem.Us ? (0.0254 / 16, "1/16 in") : (1e-3, "1 mm");

                // One guy alone moves the mast and its neighbours; all of a level together cannot.
                var alone = (standing.Influence?.ChangeN(guy.Guy, guy.Guy, step)) ?? 0;
                rows.Add(["", $"whole guy: the solver gives back {tension} at the anchor, asked {document.Show(guy.AnchorTension)}; {words} too short alone adds {document.Show(alone, QuantityKind.Force, 2)}, every guy of the level so {document.Show(list.TensionPerMillimetre.Value * step, QuantityKind.Force, 2)}", "", "", Tape(document, list.StrandTotal.Value)]);
            }

            document.Table($"Level {level.Key}: {design.Strand}", ["To anchor", "Piece", "#Cut", "#Between bearing points", "#Length to cut"], rows);
        }

        MakeUpNotes(document, standing);
    }

    private static void MakeUpNotes(DocumentBuilder document, StandingGuys standing)
    {
        foreach (var (level, n) in standing.Mast.Guys.Select((l, i) => (l, i + 1)))
        {
            document.Add(new Note(NoteKind.Assumption, level.Hardware is { } hardware
                ? $"Level {n}: a shackle counts {document.Show(GuyMakeUp.ShackleM(hardware), QuantityKind.FineLength, 3)} and the turnbuckle {document.Show(GuyMakeUp.TurnbuckleM(hardware), QuantityKind.FineLength, 3)} between its pins, opened {100 * hardware.TurnbuckleOpen:0} % of its take-up. " +
                  $"{(hardware is { ShackleLengthM: not null, TurnbuckleLengthM: not null } ? "Both as measured." : "What was not measured is the catalogue's usual size: measure your own and write shackle-length and turnbuckle-length into the file.")} {EndRule(hardware)} Loops of strand through an egg interlock and add no length."
                : $"Level {n}: the file does not describe the fittings, so the lengths run from pin to pin. Take the length of your shackles and turnbuckle, set half open, off the lowest piece, and add what your end fittings need."));
        }
    }

    private static string EndRule(GuyHardware hardware) => hardware.EndFitting switch
    {
        StrandEnd.Clips => "The length to cut holds the turned-back tail for the clips at both ends.",
        StrandEnd.WrappedGrip => "A wrapped grip takes the strand's end at its crossover mark: trim there when the grip is fitted.",
        _ => "Works-made ends have their own allowance: follow the maker's drawing.",
    };

    private static void Radials(DocumentBuilder document, Station station, Mast mast, CancellationToken cancellation)
    {
        var r = mast.Radials;
        var cut = r.LengthM + RadialEndM;
        document.Text($"Mast {mast.Name}: {r.Count} radials of {document.Show(r.LengthM, QuantityKind.Length)}, cut {document.Show(cut, QuantityKind.Length)} each for the bends at both ends, and {RadialSpares} more for the shelf.");
        Reels(document, station, $"radial wire {document.Show(r.WireDiameterM, QuantityKind.FineLength, 3)}", [new PieceWanted("radial", cut, r.Count, RadialSpares)], cancellation);
    }

    private static void Reels(DocumentBuilder document, Station station, string what, IReadOnlyList<PieceWanted> pieces, CancellationToken cancellation)
    {
        var us = station.UnitSystem == UnitSystem.Us;
        var total = pieces.Sum(p => p.LengthM * (p.Count + p.Spares));
        var longest = pieces.Max(p => p.LengthM);

        // The smallest reel that takes half of all, and the one below it: what a shop would be asked for.
        var sizes = (us ? UsReelsFt.Select(f => f * 0.3048) : MetricReelsM).Where(l => l >= longest).ToList();
        var fit = sizes.Where((l, i) => i == 0 || sizes[i - 1] < total).ToList();
        var reels = fit.Select(l => new Reel($"{document.Show(l, QuantityKind.Length)} reel", l)).ToList();
        var plan = ReelCutting.Plan(pieces, reels, new ReelCuttingOptions(UsefulOffcutM: 3, NodeLimit: SearchNodes), cancellation);
        document.Findings(plan.Findings);
        if (plan.Value is not { } cuts)
        {
            return;
        }

        var grouped = cuts.Reels.GroupBy(c => (c.Reel, string.Join("; ", c.Pieces.Select(p => $"{p.Count} × {document.Show(p.LengthM, QuantityKind.Length, 5)} ({p.Name})")), Math.Round(c.OffcutM, 2)));
        document.Table($"{what}: {document.Show(cuts.ReelLength, 5)} of reel for {document.Show(total, QuantityKind.Length, 5)} of pieces" + (cuts.IsProvenOptimal ? ", no plan opens less" : ""),
            ["#Reels", "Reel", "Cut from each", "#Left over of each"],
            grouped.Select(g => new Cell[] { Count(g.Count()), g.Key.Reel, g.Key.Item2, document.Show(g.Key.Item3, QuantityKind.Length, 3) }));
    }

    // A tape is read to the millimetre or the sixteenth of an inch.
    private static string Tape(DocumentBuilder document, double lengthM) => TapeText.Of(lengthM, document.Units);

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
