using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.People;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Structure.Raising;

namespace Mastwright.Report.Sheets;

/// <summary>The plan of the day a mast goes up, and of the days it is first used: steps, hold points, crew, tools, weather.</summary>
public static class RaisingSheet
{
    private const double WindLimitMPerS = 5;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("plan", "Raising and first use: steps with hold points, crew, tools, weather limit", input =>
    {
        var document = new DocumentBuilder("Raising and first use", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station, input.Result);
        return document.Build();
    });

    /// <summary>Writes the plan.</summary>
    public static void Write(DocumentBuilder document, Station station, StationResult result)
    {
        document.Caution(RaisingCaution.Text).Caution(WorkCautions.Climbing);
        foreach (var (mast, n) in station.Masts.Select((m, n) => (m, n)))
        {
            Raising(document, station, mast);
            Commissioning(document, station, mast, result.Masts[n]);
        }
    }

    private static void Raising(DocumentBuilder document, Station station, Mast mast)
    {
        var lift = RaisingRun.Of(station, mast);
        string Force(double n) => document.Show(n, QuantityKind.Force, 3);
        string Long(double m) => document.Show(m, QuantityKind.Length, 3);
        document.Section($"Raising mast {mast.Name}");
        document.Text($"Method: {lift.Method}. Forces include a factor of {mast.Raising.DynamicFactor:0.##} on the weight for starting and stopping. All rigging is to carry at least five times its largest force (common practice, no source), or its marked working load where it has one.");
        document.Table("Largest forces of the lift", ["Where", "#Force", "#Five times"],
        [
            ["haul line and winch", Force(lift.WorstHaul.HaulLineN), Force(5 * lift.WorstHaul.HaulLineN)],
            ["lift line", Force(lift.WorstLift.LiftLineN), Force(5 * lift.WorstLift.LiftLineN)],
            ["pole, pressed", Force(lift.WorstPole.PoleCompressionN), Force(5 * lift.WorstPole.PoleCompressionN)],
            ["hinge", Force(lift.WorstHinge.HingeOnMastN.Length), Force(5 * lift.WorstHinge.HingeOnMastN.Length)],
        ]);
        document.Findings(lift.Findings);
        document.Table("Crew, tools and weather", ["What", "How"],
        [
            ["crew", $"one leader who gives all signals and pulls nothing; one at the winch; one at each of {Math.Max(2, mast.Anchors.Length)} anchors; one at the foot; one who watches the fall circle and the road"],
            ["tools", "winch with brake and marked load, lift and haul lines, slings, shackles, snatch block, pole with head sheave, temporary side and back guys, spirit level or two theodolites, spring gauge, torque wrench, radios, helmets, gloves, first aid, harness for anyone who climbs"],
            ["weather", $"wind below {document.Show(WindLimitMPerS, QuantityKind.Speed, 2)} and falling, no ice, no rain on ropes, no thunder within hearing, daylight to spare (common practice, no source)"],
            ["keep clear", $"a circle of {Long(mast.TopM + 3)} round the foot, and the line of every loaded rope"],
        ]);
        document.Add(new Steps(
        [
            $"Walk the ground: fall circle of {Long(mast.TopM)} clear, power lines farther than that circle from every rope, tape and guy; buried cables marked.",
            "Concrete of footing and anchors at its strength (28 days, or the engineer's word). Anchor eyes measured against the set-out sheet.",
            "Guys made up and labelled by level and anchor, turnbuckles open to the setting on the cut list, every pin wired.",
            "HOLD 1: the leader checks each anchor, each shackle pin, each grip and the foot. Sign ____________",
            "Lay the mast in line with hinge and winch, on trestles. Fit insulator protection: no bending, no blow may reach the ceramic while it is lifted.",
            "Tie side guys to anchors in line with the hinge, so that they neither tighten nor slacken as the mast turns; tie a back line.",
            $"Rig pole and lines. Lift point {Long(mast.Raising.LiftAtM ?? (0.7 * mast.LengthM))} from the foot. Rehearse the signals: up, down, stop, everyone may call stop.",
            "HOLD 2: lift the top by a metre, stop, wait five minutes. Look at hinge, pole, slings, anchors. Lower and mend if anything moved. Sign ____________",
            "Raise steadily without snatching; one guy tender at each side guy, nobody under the mast or in line with a rope.",
            $"From {document.Show(lift.BackLineFromRad, QuantityKind.Angle, 2)} on the lifting line no longer holds the mast back: the back line takes over before that angle.",
            "Upright: make fast the lowest level to its anchors, then the next, all slack but none loose.",
            "HOLD 3: every level made fast to every anchor before any lifting gear is taken off. Sign ____________",
            "Set the foot on its pivot and insulator; look all round that it bears evenly and that the pivot turns.",
            "Bring the guys up by the tensioning sheet, level by level from the bottom, mast plumb at every step.",
            "HOLD 4: tensions read by two methods, plumb sighted from two sides, turnbuckles locked and wired. Sign ____________",
            "Come back after the first wind and after a month: new strand beds in. Read and set again.",
        ]));
    }

    private static void Commissioning(DocumentBuilder document, Station station, Mast mast, MastResult result)
    {
        var gap = result.Gap switch
        {
            GapSetting g => $"Set the gap to {document.Show(g.SpacingM, 3)} (nearest feeler {g.Feeler.InchText}), lock it, and write the date beside it.",
            _ => "No gap setting was found: do not transmit until the gap's findings are mended.",
        };
        var first = station.Bands.OrderBy(b => b.FrequencyHz).FirstOrDefault();
        document.Section($"First use of mast {mast.Name}");
        document.Add(new Steps(
        [
            "Transmitter off and locked out; mast bonded to earth by a hook stick while hands are near it.",
            "Measure the insulation across the base with the network off: many megohms dry. Measure each radial's joint to the ring.",
            gap,
            "Fence closed and locked, warning signs up, static drain fitted, every cable at its single entry with its arrester.",
            "HOLD 5: earthing stick away, nobody inside the fence, cabinet closed. Sign ____________",
            "Sweep the mast's impedance with the analyser on every band and keep the sweep with date and weather; hold it against the band table of this book. A reactance far off says a guy, a joint or the model is wrong: find out which before tuning.",
            first is null ? "Set the network." : $"Set the network on {first.Title} to the values of its drawing, then trim for lowest SWR at a few watts; go up band by band.",
            $"Tenth of full power: touch nothing; look for heat, arcing and corona in the dark; measure fields where people stay{(station.Site.PeopleDistanceM is { } d ? $" ({document.Show(d, QuantityKind.Length, 3)})" : "")}.",
            "HOLD 6: nothing warm, nothing glows, fields within the limit. Sign ____________",
            "Half power for ten minutes, off and locked out, mast earthed: feel coils, capacitors, joints. Then full power the same way.",
            "Write all readings into the journal: they are what every later year is held against.",
        ]));
        document.Caution(RfBurn.Caution);
    }
}
