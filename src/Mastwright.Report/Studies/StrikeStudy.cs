using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Lightning;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>A lightning stroke followed through mast, gap, earth, network, cable and house.</summary>
public static class StrikeStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("strike", "A lightning stroke followed through mast, gap, earth, network, cable and house", Make)
    {
        Choice = new("level", "Protection level of IEC 62305-1 whose currents are followed", ["as-designed", "i", "ii", "iii", "iv"]),
    };

    private static Document Make(StudyInput input)
    {
        var station = input.Chosen is "i" or "ii" or "iii" or "iv"
            ? input.Station with { Lightning = input.Station.Lightning with { Level = Enum.Parse<StrikeLevel>(input.Chosen, true) } }
            : input.Station;
        var document = new DocumentBuilder("A strike", station.Name, station.UnitSystem).Caution(StrikeCautions.Storm);
        document.Text("Each stroke enters at the top. The mast is a line; the gap fires by the equal-area rule and its arc follows Toepler's law; radials, rods and buried ring are a distributed earth whose soil breaks down; cables across the base stand beside the gap, network and cable behind it, and the inner conductor is followed to the radio.");
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var (mast, result) = (station.Masts[m], input.Result.Masts[m]);
            document.Section($"Mast {mast.Name}");
            var report = StrikeRun.Of(station, mast, result, input.Progress, input.Cancellation);
            document.Findings(report.Findings);
            if (report.Cases.IsEmpty)
            {
                continue;
            }

            document.Checks("What the strike asks of the parts, the worst stroke of each", report.Checks);
            Strokes(document, report);
            Networks(document, report);
            Earth(document, report);
            foreach (var one in report.Cases)
            {
                Parts(document, one);
            }

            Waves(document, report);
            Cable(document, station, report);
            Arresters(document, report);
            Conductors(document, station, mast, report);
            Ground(document, report);
        }

        return document.Build();
    }

    private static void Strokes(DocumentBuilder document, StrikeReport report)
    {
        document.Table("The strokes", ["Stroke", "#Crest", "#Charge", "#Specific energy", "#Gap fires after", "#at", "#Impulse ratio", "#Arc at crest", "#Energy in the arc", "#Rise of the plate"],
            report.Cases.Select(c => new Cell[]
            {
                c.Scenario.Stroke.Name, document.Show(c.Scenario.Stroke.CrestA, QuantityKind.PeakCurrent, 3), document.Show(c.Scenario.Stroke.ChargeC(), QuantityKind.Charge, 3),
                document.Show(c.Scenario.Stroke.SpecificEnergyJPerOhm(), QuantityKind.SpecificEnergy, 3),
                Or(document, c.Result.FiredAtS, "does not fire"), Or(document, c.Result.GapPeakV, "no gap"), Or(document, c.Result.ImpulseRatio), Or(document, c.Result.ArcDropV), Or(document, c.Result.ArcEnergyJ),
                document.Show(c.Result.PlatePeakV, 3),
            }));
        foreach (var finding in report.Cases.SelectMany(c => c.Result.Findings).DistinctBy(f => f.Message))
        {
            document.Findings([finding]);
        }

        if (report.StrapCost is { } cost)
        {
            document.Text($"A longer strap costs {document.Show(cost, 3)} more across the base for each metre of it, in the first negative stroke: keep gap, mast and plate together.");
        }
    }

    private static void Networks(DocumentBuilder document, StrikeReport report)
    {
        if (report.Networks.IsEmpty)
        {
            return;
        }

        document.Table("Every band's network in the steepest stroke, the worst first", ["Network in circuit", "Part that fares worst", "#Peak voltage", "#Above half for", "#Strength", "#Peak over strength"], report.Networks.Select(n => new Cell[]
        {
            n.Network.Band, n.Worst?.Name ?? "–", n.Worst is { } w ? document.Show(w.PeakV, 3) : "–", n.Worst is { } d ? document.Show(d.AboveHalfS, 3) : "–",
            n.WorstStrengthV is { } s ? document.Show(s, QuantityKind.PeakVoltage, 3) : "not stated",
            n.WorstStrengthV is null ? "–" : n.Use > 1 ? new Cell(Model.Units.QuantityFormat.Digits(n.Use, 3), Verdict.Caution) : Model.Units.QuantityFormat.Digits(n.Use, 3),
        }));
    }

    private static void Earth(DocumentBuilder document, StrikeReport report)
    {
        if (report.Earth is not { } earth || (earth.RodsOhm is null && earth.RingOhm is null))
        {
            return;
        }

        var rows = new[] { earth.RadialsOhm, earth.RodsOhm, earth.RingOhm }.OfType<Trail>().Select(t => new Cell[] { t.Name, document.Show(t, 3) })
            .Append(["all together", document.Show(earth.Solved.ResistanceOhm, QuantityKind.Resistance, 3)]);
        document.Table("What each electrode shows among the others, low current", ["Electrode", "#Resistance"], rows);
    }

    private static void Arresters(DocumentBuilder document, StrikeReport report)
    {
        if (report.Arresters.IsEmpty)
        {
            return;
        }

        document.Table("What arresters between conductor and shield are worth, steepest stroke", ["Arrester", "#Conductor at the mast", "#At the radio", "#Energy into the radio"], report.Arresters.Select(a => new Cell[]
        {
            a.Name, document.Show(a.Case.Result.Parts.Single(p => p.Name == "cable inner").PeakV, 3),
            a.Case.Result.House is { } h ? document.Show(h.RadioPeakV, 3) : "–", a.Case.Result.House is { } e ? document.Show(e.RadioEnergyJ, 2) : "–",
        }));
        document.Text("The radio is taken as the cable's impedance. What the arrester at the mast lets through before it fires, and what the current on the shield drives into the conductor through the shield's resistance, is left for the one at the house.");
    }

    private static void Parts(DocumentBuilder document, StrikeCase one) =>
        document.Table($"Every part in the {one.Scenario.Stroke.Name}", ["Part", "#Peak voltage", "#Above half for", "#Peak current", "#Energy"], one.Result.Parts.Select(p => new Cell[]
        {
            p.Name, document.Show(p.PeakV, 3), document.Show(p.AboveHalfS, 3), document.Show(p.PeakA, 3), Math.Abs(p.EnergyJ.Value) < 0.5 ? "under 0.5 J" : document.Show(p.EnergyJ, 3),
        }));

    private static void Waves(DocumentBuilder document, StrikeReport report)
    {
        var steep = report.Cases.MaxBy(c => c.Scenario.Stroke.GreatestSteepnessAPerS())!;
        Curve Of(StrikeWave wave, int n) => new(Short(wave.Name), [.. wave.TimeS.Zip(wave.Value, (t, v) => (t * 1e6, Math.Abs(v) * 1e-3))], Plots.Dash(n));
        var volts = steep.Result.Waves.Where(w => w.Kind == QuantityKind.PeakVoltage).Select(Of);
        var amperes = steep.Result.Waves.Where(w => w.Kind == QuantityKind.PeakCurrent).Select(Of);
        document.Add(Plots.Curves($"Voltages, {steep.Scenario.Stroke.Name}", $"Voltages in the {steep.Scenario.Stroke.Name}, size in kilovolts over time in microseconds, both by decades",
            new PlotAxis("time, µs", true), new PlotAxis("voltage, kV", true), [.. volts.Select(v => Above(v, 1e-3))]));
        document.Add(Plots.Curves($"Currents, {steep.Scenario.Stroke.Name}", $"Currents in the {steep.Scenario.Stroke.Name}, size in kiloamperes over time in microseconds, both by decades",
            new PlotAxis("time, µs", true), new PlotAxis("current, kA", true), [.. amperes.Select(a => Above(a, 1e-3))]));
    }

    // Decades that say nothing are left out at the lower and the early end.
    private static Curve Above(Curve curve, double least) => curve with { Points = [.. curve.Points.Where(p => p.Y >= least && p.X >= 0.01)] };

    private static string Short(string name) => name.Replace("voltage, ", "", StringComparison.Ordinal).Replace("voltage across the ", "", StringComparison.Ordinal)
        .Replace("rise of the ", "", StringComparison.Ordinal).Replace("current along the ", "", StringComparison.Ordinal).Replace("current through the ", "", StringComparison.Ordinal);

    private static void Cable(DocumentBuilder document, Station station, StrikeReport report)
    {
        if (station.Cable is not { } cable)
        {
            return;
        }

        IEnumerable<(string Name, StrikeCase? Case)> cases = report.Cases.Select(c => (Name: "as designed, " + c.Scenario.Stroke.Name, Case: (StrikeCase?)c))
            .Append(("panel bonded, first negative stroke", report.PanelBonded)).Append(("panel not bonded, first negative stroke", report.PanelMissing))
            .Append(("cable buried, first negative stroke", report.CableBuried)).Append(("cable on the ground, first negative stroke", report.CableOnGround));
        document.Table($"The cable to the house: {cable.Line}, {document.Show(cable.LengthM, QuantityKind.Length, 3)}",
            ["Case", "#Charge along the cable", "#Peak along the cable", "#Shield at the entry", "#Across the radio's path", "#Through the radio's path", "#Charge there"],
            cases.Where(c => c.Case?.Result.House is not null).Select(c => new Cell[]
            {
                c.Name, StudyWords.Percent(c.Case!.Result.CableShare.Value), StudyWords.Percent(c.Case.Result.CablePeakShare.Value), document.Show(c.Case.Result.House!.EntryPeakV, 3),
                document.Show(c.Case.Result.House.EquipmentPeakV, 3), document.Show(c.Case.Result.House.EquipmentPeakA, 3), document.Show(c.Case.Result.House.EquipmentChargeC, 3),
            }));
        document.Text(cable.ArresterV is { } volts
            ? $"The arrester between conductor and shield at the mast strikes at {document.Show(volts, QuantityKind.PeakVoltage)}; leave it in place, and inspect it after every storm."
            : "No arrester is named between conductor and shield at the mast: the cable's inner conductor then carries what the network lets through.");
        document.Text(cable.HouseArresterV is { } house
            ? $"The arrester at the house strikes at {document.Show(house, QuantityKind.PeakVoltage)}; it protects only while the panel it sits on is bonded."
            : "No arrester is named where the cable enters the house.");
    }

    private static void Conductors(DocumentBuilder document, Station station, Mast mast, StrikeReport report)
    {
        var level = StrikeRun.LevelOf(station);
        var energy = LightningCurrents.SpecificEnergy(level);
        var spec = station.Lightning;
        var rows = new (string Name, StrikeMetal Metal, double AreaM2, Trail Energy)[]
        {
            ("gap strap, the whole current", StrikeRun.MetalOf(spec.StrapMetal), spec.StrapWidthM * spec.StrapThicknessM, energy),
            ("one radial, its even share", StrikeRun.MetalOf(station.Earth.RadialMetal), Math.PI / 4 * mast.Radials.WireDiameterM * mast.Radials.WireDiameterM,
                Trail.Computed("specific energy in one radial", "W/R", energy.Value / mast.Radials.Count / mast.Radials.Count, QuantityKind.SpecificEnergy, "(W/R)/n²", Source.Derived("docs/theory/lightning.md"), energy)),
            ("one radial, half the current", StrikeRun.MetalOf(station.Earth.RadialMetal), Math.PI / 4 * mast.Radials.WireDiameterM * mast.Radials.WireDiameterM,
                Trail.Computed("specific energy of half the current", "W/R", energy.Value / 4, QuantityKind.SpecificEnergy, "(W/R)/4", Source.Derived("docs/theory/lightning.md"), energy)),
        };
        document.Table($"Heat in the conductors by hand: specific energy of the first positive stroke of level {level}", ["Conductor", "Metal", "#Section", "#Specific energy", "#Rise", "Melts"], rows.Select(r =>
        {
            var rise = ConductorHeating.Rise(r.Metal, r.AreaM2, r.Energy);
            var melts = ConductorHeating.Melts(r.Metal, r.AreaM2, r.Energy);
            return new Cell[] { r.Name, r.Metal.Name, document.Show(r.AreaM2, QuantityKind.SectionArea, 3), document.Show(r.Energy, 3), document.Show(rise, 3), melts ? new Cell("melts", Verdict.Caution) : new Cell("no", Verdict.Pass) };
        }));
        document.Table("Side flash", ["What", "#Distance"],
        [
            ["may jump, from the base voltage of the worst stroke (500 kV/m)", document.Show(report.Cases.MaxBy(c => c.Result.SideFlashM.Value)!.Result.SideFlashM, 3)],
            [$"by hand, IEC 62305-3, through air along the mast ({document.Show(mast.TopM, QuantityKind.Length, 3)}), one conductor", document.Show(SideFlash.Distance(level, 1, mast.TopM, SeparationMedium.Air), 3)],
            ["the same through wood, brick or concrete", document.Show(SideFlash.Distance(level, 1, mast.TopM, SeparationMedium.Solid), 3)],
            [$"rolling sphere of level {level}", document.Show(LightningCurrents.RollingSphereM(level), 3)],
        ]);
    }

    private static void Ground(DocumentBuilder document, StrikeReport report)
    {
        var worst = report.Cases.MaxBy(c => c.Result.PlatePeakV.Value)!;
        document.Table($"Step and touch around the base in the {worst.Scenario.Stroke.Name}, between two radials", ["#Distance", "#Soil", "#Step of a metre", "#Touch"], worst.Result.Ground.Select(g => new Cell[]
        {
            document.Show(g.DistanceM, QuantityKind.Length, 3), document.Show(g.SurfaceV, 3), document.Show(g.StepV, 3), document.Show(g.TouchV, 3),
        }));
        document.Text("No standard gives limits for the microseconds of a strike. The figures say only this: nobody may be there.");
    }

    private static string Or(DocumentBuilder document, Trail? trail, string otherwise = "–") => trail is null ? otherwise : document.Show(trail, 3);

}
