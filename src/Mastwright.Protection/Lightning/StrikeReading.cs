using System.Collections.Immutable;
using Mastwright.Circuits.Transient;
using Mastwright.Model.Trails;
using Mastwright.Protection.Earthing;
using static System.FormattableString;

namespace Mastwright.Protection.Lightning;

/// <summary>Reads a finished run into results, checks and findings.</summary>
internal sealed class StrikeReading(StrikeScenario scenario, RadialEarth earth, Trail? spark, TransientResult raw)
{
    private const int DrawnPoints = 600;
    private static readonly Source Run = Source.Derived("docs/theory/lightning.md");
    private readonly Trail _crest = Trail.Given("crest of the stroke", "I", scenario.Stroke.CrestA, QuantityKind.PeakCurrent, scenario.Stroke.Source);

    public StrikeResult Read()
    {
        Trail[] electrodes = [earth.RadialsOhm, .. new[] { earth.RodsOhm, earth.RingOhm }.OfType<Trail>()];
        var plate = Volts("rise of the plate", "Up", raw.HighestVoltage(StrikeCircuit.Plate).Value, [_crest, .. electrodes]);
        var fired = raw.Events.FirstOrDefault(e => e.Part == StrikeCircuit.GapPart && e.Kind == TransientEventKind.Fired);
        var parts = Parts();
        var basePeak = parts[0].PeakV;
        var (share, peakShare) = CableShares();
        return new(
            fired is null ? null : Trail.Computed("time at which the gap fires", "tf", fired.TimeS, QuantityKind.Time, "∫(|u| − Us)dt = Us·lag", Run, spark!),
            scenario.Gap is null ? null : GapPeak(fired),
            fired is null ? null : Trail.Computed("impulse ratio", "ki", GapPeak(fired).Value / spark!.Value, QuantityKind.Ratio, "ki = Uf/Us", Run, GapPeak(fired), spark),
            fired is null ? null : ArcDrop(),
            fired is null ? null : Trail.Computed("energy in the arc", "Wa", raw.EnergyJ(StrikeCircuit.GapPart), QuantityKind.Energy, "Wa = ∫u·i dt", Run, _crest),
            plate, parts, share, peakShare, House(), SideFlash.JumpDistance(basePeak),
            GroundPotential.Along(earth.Solved, plate, Math.PI / EarthElectrodes.ArmsOf(scenario.Earth), [0.5, 1, 2, 3, 5, 8, 12, 20]), Waves(), Checks(parts, fired), Findings(fired), raw);
    }

    private Trail GapPeak(TransientEvent? fired)
    {
        var across = raw.VoltageAcross(StrikeCircuit.GapPart);
        var until = fired?.TimeS ?? double.PositiveInfinity;
        var peak = Enumerable.Range(0, across.Count).Where(i => raw.TimesS[i] <= until).Select(i => Math.Abs(across[i])).DefaultIfEmpty(0).Max();
        return Volts("gap voltage at firing", "Uf", peak, spark!, _crest);
    }

    private Trail ArcDrop()
    {
        var current = raw.Current(StrikeCircuit.GapPart);
        var across = raw.VoltageAcross(StrikeCircuit.GapPart);
        var at = Enumerable.Range(0, current.Count).MaxBy(i => Math.Abs(current[i]));
        return Volts("arc voltage at the crest", "Ua", Math.Abs(across[at]), _crest,
            Trail.Given("burning voltage", "Ub", scenario.Gap!.ArcVolts, QuantityKind.PeakVoltage, Source.CommonPractice),
            Trail.Given("Toepler's constant", "kT", scenario.Gap.ToeplerVsPerM, QuantityKind.Ratio, Source.FromMemory("Toepler, 1906 and 1927; published 0.004 to 0.02 V·s/m")));
    }

    private ImmutableArray<StruckPart> Parts()
    {
        List<string> names = ["base insulator", StrikeCircuit.StrapPart, .. scenario.Feed.Select(p => p.Name)];
        if (scenario.Cable is { } cable)
        {
            names.Add(StrikeCircuit.CableInner);
            if (cable.ArresterSparkoverV is not null)
                names.Add(StrikeCircuit.Arrester);
            if (cable.HouseArresterSparkoverV is not null)
                names.Add(StrikeCircuit.HouseArrester);
        }

        return [.. names.Select(Part)];
    }

    private StruckPart Part(string name)
    {
        // At the mast the cable shows as its first capacitance; what goes along it flows through its first inductance. A line in the network carries most
        // where it carries most: at the short of a stub, not where it begins.
        var carrier = name == StrikeCircuit.CableInner ? StrikeCircuit.FirstInner
            : LineOf(name) is { } line ? StrikeCircuit.PiecesOf(line).Along.MaxBy(piece => raw.HighestCurrent(piece).Value)! : name;
        var across = Across(name);
        var peak = across.Max(Math.Abs);
        var above = 0.0;
        for (var i = 1; i < across.Count; i++)
        {
            if (Math.Abs(across[i]) > 0.5 * peak)
                above += raw.TimesS[i] - raw.TimesS[i - 1];
        }

        return new(name,
            Volts($"peak voltage, {name}", "U", peak, _crest),
            Trail.Computed($"peak current, {name}", "I", raw.HighestCurrent(carrier).Value, QuantityKind.PeakCurrent, "transient run", Run, _crest),
            Trail.Computed($"energy, {name}", "W", LineOf(name) is { } l ? EnergyIn(l) : name == carrier ? raw.EnergyJ(name) : EnergyAlongCable(), QuantityKind.Energy, "W = ∫u·i dt", Run, _crest),
            Trail.Computed($"time above half, {name}", "t½", above, QuantityKind.Time, "transient run", Run, _crest));
    }

    private FeedPart? LineOf(string name) => scenario.Feed.FirstOrDefault(p => p.IsLine && p.Name == name);

    // Along a line the voltage is looked at where it is highest.
    private IReadOnlyList<double> Across(string name) => LineOf(name) is { } line
        ? StrikeCircuit.PiecesOf(line).Across.Select(raw.VoltageAcross).MaxBy(v => v.Max(Math.Abs))!
        : raw.VoltageAcross(name);

    private double EnergyIn(FeedPart line)
    {
        var (across, along, dampings) = StrikeCircuit.PiecesOf(line);
        return across.Concat(along).Concat(dampings).Sum(raw.EnergyJ);
    }

    private double EnergyAlongCable()
    {
        var volts = raw.VoltageAcross(StrikeCircuit.CableInner);
        var amperes = raw.Current(StrikeCircuit.FirstInner);
        return Enumerable.Range(1, Math.Max(0, volts.Count - 1)).Sum(i => 0.5 * ((volts[i] * amperes[i]) + (volts[i - 1] * amperes[i - 1])) * (raw.TimesS[i] - raw.TimesS[i - 1]));
    }

    private (Trail Charge, Trail Peak) CableShares()
    {
        var charge = scenario.Cable is null ? 0 : raw.ChargeC(StrikeCircuit.FirstShield) / raw.ChargeC("stroke");
        var peak = scenario.Cable is null ? 0 : raw.HighestCurrent(StrikeCircuit.FirstShield).Value / scenario.Stroke.CrestA;
        return (Trail.Computed("share of the charge along the cable", "qs", charge, QuantityKind.Ratio, "qs = ∫|i| dt of the shield / of the stroke", Run, _crest, earth.RadialsOhm),
            Trail.Computed("peak current along the cable over the crest", "is", peak, QuantityKind.Ratio, "is = max|i| / I", Run, _crest, earth.RadialsOhm));
    }

    private StruckHouseEnd? House()
    {
        if (scenario.House is null)
            return null;
        var entry = raw.Voltage(StrikeCircuit.Entry);
        var mains = raw.Voltage(StrikeCircuit.Mains);
        return new(
            Volts("shield at the entry", "Ue", entry.Max(Math.Abs), _crest),
            Volts("voltage across the radio's path", "Uq", Enumerable.Range(0, entry.Count).Max(i => Math.Abs(entry[i] - mains[i])), _crest),
            Trail.Computed("current through the radio's path", "Iq", raw.HighestCurrent(StrikeCircuit.Equipment).Value, QuantityKind.PeakCurrent, "transient run", Run, _crest),
            Trail.Computed("charge through the radio's path", "Qq", raw.ChargeC(StrikeCircuit.Equipment), QuantityKind.Charge, "∫|i| dt", Run, _crest))
        {
            RadioPeakV = Volts("voltage at the radio, conductor to shield", "Ur", raw.HighestVoltageAcross(StrikeCircuit.Radio).Value, _crest)
                .Within("the radio taken as the cable's impedance"),
            RadioEnergyJ = Trail.Computed("energy into the radio", "Wr", raw.EnergyJ(StrikeCircuit.Radio), QuantityKind.Energy, "Wr = ∫u·i dt", Run, _crest)
                .Within("the radio taken as the cable's impedance"),
        };
    }

    private ImmutableArray<Check> Checks(ImmutableArray<StruckPart> parts, TransientEvent? fired)
    {
        var checks = ImmutableArray.CreateBuilder<Check>();
        void Strength(string name, double? strength)
        {
            if (strength is not { } volts)
                return;
            checks.Add(Check.AtMost($"survive.strike.voltage[{name}]", Trade.Survive, $"{name} withstands the strike", parts.Single(p => p.Name == name).PeakV,
                Trail.Given($"strength of {name}", "Us", volts, QuantityKind.PeakVoltage, Source.DesignFile), scenario.Stroke.Name,
                "Narrow the gap, shorten its straps, add an arrester, or fit a stronger part.", StrikeCautions.Storm));
        }

        Strength("base insulator", scenario.InsulatorStrengthPeakV);
        foreach (var part in scenario.Feed)
            Strength(part.Name, part.StrengthPeakV);
        if (scenario.Cable is { } cable)
            Strength(StrikeCircuit.CableInner, cable.CableStrengthPeakV);
        if (scenario.Gap is { } gap && fired is not null)
        {
            var action = Trail.Computed("specific energy in the gap strap", "W/R", raw.ActionA2S(StrikeCircuit.StrapPart), QuantityKind.SpecificEnergy, "∫i² dt", Run, _crest);
            checks.Add(ConductorHeating.Check("gap strap", gap.StrapMetal, gap.StrapWidthM * gap.StrapThicknessM, action));
        }

        var radial = Trail.Computed("specific energy in one radial", "W/R", raw.ActionA2S("radials 1 L") / (scenario.Earth.Radials * (double)scenario.Earth.Radials),
            QuantityKind.SpecificEnergy, "∫(i/n)² dt", Run, _crest);
        checks.Add(ConductorHeating.Check("radials", scenario.Earth.RadialMetal, Math.PI * scenario.Earth.RadialRadiusM * scenario.Earth.RadialRadiusM, radial));
        return checks.ToImmutable();
    }

    private ImmutableArray<Finding> Findings(TransientEvent? fired)
    {
        var findings = raw.Findings.ToBuilder();
        if (scenario.Gap is not null && fired is null)
        {
            findings.Add(new("gap-did-not-fire", Severity.Warning, "The gap did not fire: the current found another way, through the network.",
                WayOut: "Narrow the gap, or check whether a coil of the network leads to the plate."));
        }

        if (scenario.House is { PanelBonded: false })
        {
            findings.Add(new("no-entry-panel", Severity.Warning, "The cable enters the house without a bonded panel: the current on its shield goes through the radio to the mains earth.",
                WayOut: "Bond the shield at a panel where it enters, with a short strap to an earth that is bonded to the mains earth."));
        }

        if (scenario is { Cable: { ArresterSparkoverV: null, HouseArresterSparkoverV: null } })
        {
            findings.Add(new("no-arrester", Severity.Warning, "No arrester stands between conductor and shield of the cable: what the network lets through reaches the radio.",
                WayOut: "Fit one at the mast and one at the entry panel, each with its leads as short as they can be."));
        }

        foreach (var warning in earth.RadialsOhm.RangeWarnings().Concat(spark?.RangeWarnings() ?? []))
            findings.Add(new("strike-model-range", Severity.Warning, warning));
        if (scenario.Cable is { } cable)
        {
            var (ohm, speed) = StrikeCircuit.Route(cable.Route);
            findings.Add(new("cable-over-earth", Severity.Note, Invariant($"The shield over earth is taken as {ohm} Ω at {speed:0.##} of the speed of light (assumed for this route); its leakage into the soil is left out.")));
        }

        return findings.ToImmutable();
    }

    private ImmutableArray<StrikeWave> Waves()
    {
        List<StrikeWave> waves =
        [
            Wave("stroke current", QuantityKind.PeakCurrent, raw.Current("stroke")),
            Wave("voltage across the base", QuantityKind.PeakVoltage, raw.VoltageAcross("base insulator")),
            Wave("rise of the plate", QuantityKind.PeakVoltage, raw.Voltage(StrikeCircuit.Plate)),
        ];
        if (scenario.Gap is not null)
            waves.Add(Wave("gap current", QuantityKind.PeakCurrent, raw.Current(StrikeCircuit.GapPart)));
        foreach (var part in scenario.Feed)
            waves.Add(Wave($"voltage, {part.Name}", QuantityKind.PeakVoltage, Across(part.Name)));
        if (scenario.Cable is not null)
            waves.Add(Wave("current along the cable", QuantityKind.PeakCurrent, raw.Current(StrikeCircuit.FirstShield)));
        if (scenario.House is not null)
        {
            waves.Add(Wave("current through the radio's path", QuantityKind.PeakCurrent, raw.Current(StrikeCircuit.Equipment)));
            waves.Add(Wave("voltage, radio input", QuantityKind.PeakVoltage, raw.VoltageAcross(StrikeCircuit.Radio)));
        }
        return [.. waves];
    }

    // Every k-th step, and the highest of each stretch, so that no peak is lost in drawing.
    private StrikeWave Wave(string name, QuantityKind kind, IReadOnlyList<double> values)
    {
        var stride = Math.Max(1, values.Count / DrawnPoints);
        var picked = new List<int>();
        for (var from = 0; from < values.Count; from += stride)
        {
            var to = Math.Min(values.Count, from + stride);
            picked.Add(Enumerable.Range(from, to - from).MaxBy(i => Math.Abs(values[i])));
        }

        return new(name, kind, [.. picked.Select(i => raw.TimesS[i])], [.. picked.Select(i => values[i])]);
    }

    private static Trail Volts(string name, string symbol, double value, params ReadOnlySpan<Trail> inputs) =>
        Trail.Computed(name, symbol, value, QuantityKind.PeakVoltage, "transient run", Run, inputs);
}
