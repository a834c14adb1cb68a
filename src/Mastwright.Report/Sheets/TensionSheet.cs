using System.Globalization;
using Mastwright.Analysis.Stand;
using Mastwright.Build.Tension;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.People;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Report.Studies;
using Mastwright.Structure.Batch;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Report.Sheets;

/// <summary>Tensioning day: what to read by which method, at which temperature, in which order.</summary>
public static class TensionSheet
{
    private const double LightWindMPerS = 3;
    private const int WindBearings = 8;
    private const int Temperatures = 8;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("tighten", "Tensioning day: readings by gauge, pulse, swing, pitch and sag, and the order of tightening", input =>
    {
        var document = new DocumentBuilder("Tensioning", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station, input.Cancellation);
        return document.Build();
    });

    /// <summary>Writes the sheet.</summary>
    public static void Write(DocumentBuilder document, Station station, CancellationToken cancellation)
    {
        foreach (var mast in station.Masts)
        {
            document.Section($"Tensions of mast {mast.Name}");
            if (StandingGuys.Of(station, mast, cancellation) is not { } standing)
            {
                document.Text("The mast does not stand in still air with these tensions, so there is nothing to set. Mend that first: mastwright check shows what to change.");
                continue;
            }

            if (standing.Unbalanced(m => document.Show(m, QuantityKind.FineLength, 2)) is { } unlike)
            {
                document.Add(new Note(NoteKind.Assumption, unlike));
            }

            Targets(document, standing);
            ByTemperature(document, standing, cancellation);
            LightWind(document, standing, cancellation);
            Order(document, standing);
            Record(document, standing);
        }

        document.Caution(WorkCautions.Tension).Caution(TurnPlan.Caution);
    }

    private static IEnumerable<(ModelGuy First, string Names)> Alike(StandingGuys standing, Func<ModelGuy, double> value) => standing.Model.Guys
        .GroupBy(g => (g.Level, Value: Math.Round(value(g) / 2)))
        .Select(g => (g.First(), g.Count() == standing.Model.Guys.Count(x => x.Level == g.Key.Level) && g.Count() > 1 ? $"level {g.Key.Level}, every anchor" : string.Join("; ", g.Select(x => x.Guy.Name))));

    private static void Targets(DocumentBuilder document, StandingGuys standing)
    {
        document.Text($"Readings for {document.Show(standing.Station.Site.TensioningTemperatureK, QuantityKind.Temperature, 3)} in calm air. Use two methods on every guy and believe neither until they agree within a tenth. " +
            "Pulse: strike the guy sharply with a stick near the anchor and time ten returns felt by hand. Swing: push it sideways in time at the middle of its reach and count twenty whole swings. " +
            "Sag: the drop below the straight line at half the level distance. Sight: look along the guy from the anchor; the straight line of its lower end meets the mast this far below the attachment.");
        document.Table("What to read at the set tension", ["Guy", "#Spring gauge in line", "#10 pulse returns", "#20 swings", "#Pitch", "#Sag at half distance", "#Sight below attachment"], Alike(standing, g => standing.Span(g).ChordM * 1000).Select(pair =>
        {
            var reading = TensionTargets.For(standing.Span(pair.First), standing.Wanted(pair.First));
            return reading.Value is { } t
                ? new Cell[] { pair.Names, document.Show(t.GaugeReading), document.Show(t.PulseTime, 3), document.Show(t.SwingTime, 3), document.Show(t.TunedPitch, 3) + (t.TunedPitch.Value < 20 ? ", not heard" : ""), document.Show(t.MidSag, 3), document.Show(t.TangentIntercept.Value, QuantityKind.FineLength, 3) }
                : [pair.Names, document.Show(standing.Wanted(pair.First)), reading.Findings[0].Message, "", "", "", ""];
        }));
        document.Add(new Note(NoteKind.Remark, "Insulators are counted as mass along the guy; their stiffness against a pulse is not, so a guy with many heavy insulators returns a blurred pulse: prefer gauge or sight there."));
    }

    private static void ByTemperature(DocumentBuilder document, StandingGuys standing, CancellationToken cancellation)
    {
        var site = standing.Station.Site;
        var kelvin = Enumerable.Range(0, Temperatures + 1).Select(i => site.ColdestK + ((site.HottestK - site.ColdestK) * i / Temperatures)).ToList();
        var rows = TensionSetting.Table(standing.Prepared, kelvin, cancellation);
        if (rows.Count == 0)
        {
            return;
        }

        var columns = Alike(standing, g => rows[0].AnchorTensionN[g.Guy.Name]).ToList();
        document.Table("Tension at the anchor by temperature of the steel, calm air", ["#Temperature", .. columns.Select(c => "#" + c.Names)], rows.Select(r =>
            columns.Select(c => (Cell)document.Show(r.AnchorTensionN[c.First.Guy.Name], QuantityKind.Force)).Prepend(document.Show(r.TemperatureK, QuantityKind.Temperature, 3)).ToArray()));
        document.Table("Time of 10 pulse returns by temperature", ["#Temperature", .. columns.Select(c => "#" + c.Names)], rows.Select(r =>
            columns.Select(c => (Cell)(GuyCurve.ForAnchorTension(standing.Span(c.First), r.AnchorTensionN[c.First.Guy.Name]) is { } curve ? document.Show(10 * curve.PulseReturnS, QuantityKind.Time, 3) : "slack"))
                .Prepend(document.Show(r.TemperatureK, QuantityKind.Temperature, 3)).ToArray()));
        var (kind, unit) = (QuantityKind.Force, Model.Units.QuantityFormat.UnitFor(1, QuantityKind.Force, document.Units));
        var degrees = Model.Units.QuantityFormat.UnitFor(1, QuantityKind.Temperature, document.Units);
        document.Add(Plots.Curves($"Tension against temperature, mast {standing.Mast.Name}", "Tension at the anchor against temperature in calm air.", $"temperature, {degrees.Symbol}", $"tension, {unit.Symbol}",
            [.. columns.Select((c, i) => new Curve(c.Names, [.. rows.Select(r => (degrees.FromSi(r.TemperatureK), unit.FromSi(r.AnchorTensionN[c.First.Guy.Name])))], Plots.Dash(i)))]));
    }

    // The station's own load cases, with a light wind put in the place of the design wind and no ice.
    private static void LightWind(DocumentBuilder document, StandingGuys standing, CancellationToken cancellation)
    {
        var site = standing.Station.Site;
        var light = standing.Station with
        {
            Site = site with
            {
                Wind = site.Wind with { Method = WindMethod.StatedPressure, PressurePa = 0.5 * 1.225 * LightWindMPerS * LightWindMPerS },
                Ice = new Ice(),
                ColdestK = site.TensioningTemperatureK,
                HottestK = site.TensioningTemperatureK,
            },
            Limits = standing.Station.Limits with { WindLoadFactor = 1 },
        };
        var cases = LoadCases.Of(light, standing.Model, WindBearings).Where(c => c is { WindPerM: not null, WindFromRad: not null }).ToList();
        var prepared = MastSolver.Prepare(standing.Model.Structure, cases.Select(c => c.Case));
        var solved = CaseBatch.Run(prepared, [.. cases.Select(c => c.Case)], cancellation: cancellation).Zip(cases).Where(s => s.First.IsStable)
            .GroupBy(s => Math.Round(s.Second.WindFromRad!.Value, 6)).Select(g => (FromRad: g.Key, Solution: g.First().First)).OrderBy(s => s.FromRad).ToList();
        if (solved.Count == 0)
        {
            return;
        }

        var guys = standing.Model.Guys;
        document.Table($"What a light wind of {document.Show(LightWindMPerS, QuantityKind.Speed, 2)} adds to a reading: take it off", ["#Wind from", .. guys.Select(g => "#" + g.Guy.Name)], solved.Select(s =>
            guys.Select(g => (Cell)Signed(document, s.Solution.Guy(g.Guy.Name).AnchorTensionN - standing.Still.Guy(g.Guy.Name).AnchorTensionN)).Prepend(document.Show(s.FromRad, QuantityKind.Angle, 3)).ToArray()));
        document.Text("The correction goes with the square of the wind: half the wind, a quarter of it. Gusts make it uncertain by its own size, so average the readings of guys on opposite sides as well. In more wind than rustles leaves, wait.");
    }

    /// <summary>What each guy should read just after its own turn, so that all are right when the last is set; null when the guys do not act on one another in a way that can be undone.</summary>
    /// <param name="standing">The mast.</param>
    /// <param name="startShare">Share of the set tension at which all guys start.</param>
    public static IReadOnlyList<(string Guy, double ReadN, double TakeUpM)>? Turns(StandingGuys standing, double startShare)
    {
        if (standing.Influence is not { } influence)
        {
            return null;
        }

        var names = standing.Model.Guys.Select(g => g.Guy.Name).ToList();
        var index = names.Select(n => influence.GuyNames.ToList().IndexOf(n)).ToList();
        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(names.Count, names.Count, (i, j) => influence.NPerM[index[i], index[j]]);
        var set = names.Select(n => standing.Still.Guy(n).AnchorTensionN).ToArray();
        // Guys of a level rise and fall together on a pivot, so the matrix can be all but singular: the smallest take-ups that serve are the ones that keep the mast plumb.
        var takeUp = matrix.PseudoInverse() * MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense([.. set.Select(t => (1 - startShare) * t)]);
        if (takeUp.Any(u => !double.IsFinite(u)))
        {
            return null;
        }

        return [.. names.Select((n, i) => (n, (startShare * set[i]) + Enumerable.Range(0, i + 1).Sum(j => matrix[i, j] * takeUp[j]), takeUp[i]))];
    }

    private static void Order(DocumentBuilder document, StandingGuys standing)
    {
        const double start = 0.7;
        if (standing.Influence is not { } influence || Turns(standing, start) is not { } turns)
        {
            return;
        }

        document.Add(new Heading(3, "Order of tightening"));
        document.Text($"Keep the mast plumb by instrument, not by gauge: on a pivot the guys of a level rise and fall together and do not tell how it leans. Bring every guy to about {100 * start:0} % of its tension, level by level from the bottom, going round so that the mast stays plumb. Then go round once more in the order below. " +
            "Each guy slackens or tightens those set before it, so it is first set to the reading given here, not to its target; when the last is done all stand at their targets, as far as small changes add up. Check all again, and correct by the table under it.");
        document.Table("Last round", ["#Turn", "Guy", "#Take up about", "#Set to this reading", "#Ends at"], turns.Select((t, i) => new Cell[]
        {
            (i + 1).ToString(CultureInfo.InvariantCulture), t.Guy, document.Show(t.TakeUpM, QuantityKind.FineLength, 2), document.Show(t.ReadN, QuantityKind.Force, 3), document.Show(standing.Still.Guy(t.Guy).AnchorTensionN, QuantityKind.Force, 3),
        }));
        var us = document.Units == Model.Units.UnitSystem.Us;
        var step = us ? 0.0254 / 8 : 0.001;
        document.Table($"What taking up {(us ? "1/8 in" : "1 mm")} on one guy does to each", ["Taken up on", .. influence.GuyNames.Select(n => "#" + n)], influence.GuyNames.Select((n, j) =>
            influence.GuyNames.Select((_, i) => (Cell)Signed(document, influence.NPerM[i, j] * step)).Prepend(n).ToArray()));
    }

    private static string Signed(DocumentBuilder document, double newtons)
    {
        var text = document.Show(Math.Abs(newtons), QuantityKind.Force, 2);
        return Math.Abs(newtons) < 0.05 ? "0" : newtons < 0 ? "−" + text : "+" + text;
    }

    private static void Record(DocumentBuilder document, StandingGuys standing)
    {
        document.Table("Record of the day: temperature ______  wind ______  date ______  gauge ______", ["Guy", "#Target", "First reading", "Turned", "Second reading", "Turned", "Last reading", "Locked"],
            standing.Model.Guys.Select(g => new Cell[] { g.Guy.Name, document.Show(standing.Wanted(g)), "", "", "", "", "", "" }));
        document.Text("From readings to turns: `mastwright journal readings DESIGN --sheet readings.csv` writes this record as a table; filled in and given back with `--from readings.csv`, every reading is kept and the next turns of every turnbuckle are told. `mastwright turns DESIGN --measured \"1/north=1.8 kN, ...\"` does so without a journal.");
        document.Table("Plumb, sighted from two sides at right angles", ["Height", "#Allowed", "East or west", "North or south"], standing.Mast.Guys.Select(l => l.HeightM).Append(standing.Mast.TopM).Distinct().Select(h => new Cell[]
        {
            document.Show(h, QuantityKind.Length), document.Show((h - standing.Mast.Base.HeightM) / StandingGuys.PlumbOneIn, QuantityKind.FineLength, 2), "", "",
        }));
        document.Add(new Note(NoteKind.Remark, $"Plumb allowed here: height over {StandingGuys.PlumbOneIn:0}, common practice, no source; your code or the mast's maker may ask for less."));
    }
}
