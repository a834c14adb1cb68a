using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Transient;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Protection.Lightning;

/// <summary>Builds the circuit of a strike. Node and part names are the ones the results are read by.</summary>
internal static class StrikeCircuit
{
    public const string Top = "top";
    public const string Base = "base";
    public const string Plate = "plate";
    public const string Entry = "entry";
    public const string Mains = "mains";
    public const string GapPart = "gap";
    public const string StrapPart = "gap strap";
    public const string CableInner = "cable inner";
    public const string Equipment = "equipment";
    public const string FirstShield = "shield 1 L";
    public const string FirstInner = "inner 1 L";
    public const string Radio = "radio input";
    public const string Arrester = "arrester at the mast";
    public const string HouseArrester = "arrester at the house";

    private const int MastSections = 4;
    private const int ShieldSections = 4;
    internal const double LineDamping = 8; // a line in a box does not radiate: damped just enough for its sections not to ring
    private const double ArresterLeadH = 50e-9; // some 5 cm of lead
    private const double ArresterOhm = 0.05; // a gas arrester that burns

    /// <summary>Surge impedance of an upright cylinder: 60 (ln(2√2·h/r) − 1) (Sargent and Darveniza 1969, from memory).</summary>
    public static Trail MastSurgeImpedance(StruckMast mast) =>
        Trail.Computed("surge impedance of the mast", "Zm", 60 * (Math.Log(2 * Math.Sqrt(2) * mast.HeightM / mast.RadiusM) - 1), QuantityKind.Resistance,
            "Zm = 60 (ln(2√2·h/r) − 1)", Source.FromMemory("Sargent and Darveniza, Tower surge impedance, IEEE Trans. PAS-88", "1969"),
            Trail.Given("height", "h", mast.HeightM, QuantityKind.Length, Source.DesignFile), Trail.Given("radius", "r", mast.RadiusM, QuantityKind.FineLength, Source.DesignFile));

    public static TransientCircuit Build(StrikeScenario s, RadialEarth earth, Trail? spark)
    {
        var circuit = new TransientCircuit()
            .CurrentSource("stroke", TransientCircuit.Ground, Top, Waveform.Of(s.Stroke.CurrentA))
            .Resistor("channel", Top, TransientCircuit.Ground, s.ChannelOhm);
        circuit = Ladder(circuit, "mast", Top, Base, TransientCircuit.Ground, MastSurgeImpedance(s.Mast).Value, s.Mast.HeightM / Vacuum.SpeedOfLightMPerS, MastSections);
        circuit = circuit.Capacitor("base insulator", Base, Plate, s.Mast.BaseCapacitanceF);
        circuit = s.Gap is { } gap
            ? Gap(circuit, gap, spark!)
            : circuit.Inductor(StrapPart, Base, Plate, 0.2e-6);
        circuit = earth.AddTo(circuit, Plate);
        (circuit, var inner) = Feed(circuit, s);
        if (s.Cable is { } cable)
            return House(Cable(circuit, cable, inner), cable, s.House);
        return s.LineOhm is { } ohm ? circuit.Resistor("feed line", inner, Plate, ohm) : circuit;
    }

    public static (double Ohm, double Share) Route(CableRoute route) => route switch
    {
        CableRoute.OnGround => (150, 0.7),
        CableRoute.Buried => (80, 0.4),
        _ => (400, 0.95),
    };

    private static TransientCircuit Gap(TransientCircuit circuit, StruckGap gap, Trail spark)
    {
        var onset = new PeakVolts(spark.Value);
        var area = spark.Value * (gap.FormativeLagS + gap.StatisticalLagS);
        var arc = new ArcsInSeries(new ToeplerArc(gap.ToeplerVsPerM, gap.SpacingM, 1e-4), new BurningArc(gap.ArcVolts));
        return circuit
            .Inductor(StrapPart, Base, "gap top", StraightInductance.Strap(gap.StrapLengthM, gap.StrapWidthM, gap.StrapThicknessM).Value)
            .Gap(GapPart, "gap top", Plate, new GapModel(new DisruptiveEffect(onset, 1, area), arc, 2e-12));
    }

    private static (TransientCircuit Circuit, string Inner) Feed(TransientCircuit circuit, StrikeScenario s)
    {
        var node = Base;
        foreach (var part in s.Feed)
        {
            var next = part.InSeries ? $"after {part.Name}" : Plate;
            circuit = part.Element switch
            {
                FeedElement.Coil => circuit.Inductor(part.Name, node, next, part.Value),
                FeedElement.Capacitor => circuit.Capacitor(part.Name, node, next, part.Value),
                FeedElement.Line => Ladder(circuit, part.Name, node, next, Plate, part.LineOhm, part.Value, LineSections(part), LineDamping),
                FeedElement.OpenStub => Ladder(circuit, part.Name, node, $"end of {part.Name}", Plate, part.LineOhm, part.Value, LineSections(part), LineDamping),
                FeedElement.ShortedStub => Ladder(circuit, part.Name, node, Plate, Plate, part.LineOhm, part.Value, LineSections(part), LineDamping),
                _ => circuit.Resistor(part.Name, node, next, part.Value),
            };
            if (part.InSeries)
                node = next;
        }

        return (circuit, node);
    }

    // Sections short against the front of the steepest stroke, some 200 ns; sixteen reach to 320 ns, more than any length a network is cut to.
    private static int LineSections(FeedPart line) => (int)Math.Clamp(Math.Ceiling(line.Value / 20e-9), 2, 16);

    /// <summary>The parts a length of line is made of, in order: capacitances across it, at both its ends first and last, and inductances with their dampings.</summary>
    /// <param name="line">The line.</param>
    internal static (string[] Across, string[] Along, string[] Dampings) PiecesOf(FeedPart line)
    {
        var n = Enumerable.Range(1, LineSections(line)).ToArray();
        var last = line.Element == FeedElement.ShortedStub ? n.Length - 1 : n.Length;
        return ([.. Enumerable.Range(0, last + 1).Select(k => $"{line.Name} {k} C")], [.. n.Select(k => $"{line.Name} {k} L")], [.. n.Select(k => $"{line.Name} {k} damping")]);
    }

    private static TransientCircuit ArresterAt(TransientCircuit circuit, string name, string inner, string shield, double? sparkoverV) => sparkoverV is not { } volts
        ? circuit
        : circuit
            .Inductor($"{name} leads", inner, $"{name} top", ArresterLeadH)
            .Gap(name, $"{name} top", shield, new GapModel(new VoltageBreakdown(new PeakVolts(volts)), new ConstantArc(ArresterOhm), 2e-12));

    // The shield over earth and the conductor inside it as π sections. All flux outside the shield links the conductor too: each section of it is a full copy of
    // the shield's inductance, coupled, and then the cable's own. The shield's resistance lies between the conductor's two references and so drives it, as it does
    // in a real cable.
    private static TransientCircuit Cable(TransientCircuit circuit, StruckCable cable, string inner)
    {
        const double coupling = 0.9999;
        var (ohm, share) = Route(cable.Route);
        var delay = cable.LengthM / (share * Vacuum.SpeedOfLightMPerS);
        var own = cable.LengthM / (cable.VelocityFactor * Vacuum.SpeedOfLightMPerS) / ShieldSections;

        // The whole resistance at the near end: it matters only late, when the line is short.
        var from = cable.ShieldOhmPerM > 0 ? "shield 0" : Plate;
        if (cable.ShieldOhmPerM > 0)
            circuit = circuit.Resistor("shield R", Plate, from, cable.ShieldOhmPerM * cable.LengthM);
        circuit = Ladder(circuit, "shield", from, Entry, TransientCircuit.Ground, ohm, delay, ShieldSections);
        circuit = ArresterAt(circuit, Arrester, inner, Plate, cable.ArresterSparkoverV).Capacitor(CableInner, inner, Plate, own / cable.ImpedanceOhm / 2);
        var node = inner;
        for (var k = 1; k <= ShieldSections; k++)
        {
            var last = k == ShieldSections;
            var next = last ? "inner end" : $"inner {k}";
            circuit = circuit
                .Inductor($"inner {k} image", node, $"inner {k} middle", ohm * delay / ShieldSections)
                .Mutual($"inner {k} M", $"shield {k} L", $"inner {k} image", coupling)
                .Inductor($"inner {k} L", $"inner {k} middle", next, cable.ImpedanceOhm * own)
                .Resistor($"inner {k} damping", $"inner {k} middle", next, 2 * cable.ImpedanceOhm)
                .Capacitor($"inner {k} C", next, last ? Entry : $"shield {k}", own / cable.ImpedanceOhm / (last ? 2 : 1));
            node = next;
        }

        return ArresterAt(circuit, HouseArrester, node, Entry, cable.HouseArresterSparkoverV).Resistor(Radio, node, Entry, cable.ImpedanceOhm);
    }

    private static TransientCircuit House(TransientCircuit circuit, StruckCable cable, StruckHouse? house)
    {
        if (house is null)
            return circuit.Capacitor("open end", Entry, TransientCircuit.Ground, 1e-12 * cable.LengthM);
        const double wireM = 2.5e-3;
        circuit = circuit
            .Inductor(Equipment, Entry, "equipment earth", StraightInductance.Wire(house.EquipmentPathM, wireM).Value)
            .Resistor("mains lead", "equipment earth", Mains, 0.1)
            .Resistor("mains earth", Mains, TransientCircuit.Ground, house.MainsEarthOhm);
        return !house.PanelBonded ? circuit : circuit
            .Inductor("panel strap", Entry, "panel earth", StraightInductance.Strap(house.PanelStrapM, 0.05, 0.001).Value)
            .Resistor("panel earth R", "panel earth", TransientCircuit.Ground, house.PanelEarthOhm)
            .Inductor("panel bond", Entry, "bond end", StraightInductance.Wire(house.BondLengthM, wireM).Value)
            .Resistor("panel bond R", "bond end", Mains, 0.01);
    }

    /// <summary>
    /// A line as π sections: unlike a travelling-wave line they do not hold the step down. The resistance beside each inductance damps the resonances of the
    /// sections, which are the model's and not the mast's, and stands in for what a mast radiates.
    /// </summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="name">Its name, before the numbers of the pieces.</param>
    /// <param name="from">Near end.</param>
    /// <param name="to">Far end; the return itself for a short.</param>
    /// <param name="back">The return.</param>
    /// <param name="ohm">Impedance.</param>
    /// <param name="delayS">Delay from end to end in seconds.</param>
    /// <param name="sections">Number of sections.</param>
    /// <param name="damping">Resistance beside each inductance over the impedance.</param>
    internal static TransientCircuit Ladder(TransientCircuit circuit, string name, string from, string to, string back, double ohm, double delayS, int sections, double damping = 2)
    {
        var (henry, farad) = (ohm * delayS / sections, delayS / ohm / sections);
        var node = from;
        circuit = circuit.Capacitor($"{name} 0 C", node, back, farad / 2);
        for (var k = 1; k <= sections; k++)
        {
            var next = k == sections ? to : $"{name} {k}";
            circuit = circuit.Inductor($"{name} {k} L", node, next, henry).Resistor($"{name} {k} damping", node, next, damping * ohm);
            circuit = next == back ? circuit : circuit.Capacitor($"{name} {k} C", next, back, k == sections ? farad / 2 : farad);
            node = next;
        }

        return circuit;
    }
}
