using Mastwright.Circuits.Transient;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Earthing;

namespace Mastwright.Protection.Lightning;

/// <summary>
/// Radials, rods and buried ring as a distributed earth: all radials alike and in parallel, cut into sections of series inductance and shunt leakage with
/// capacitance. Every electrode's leakage is fitted to what it carries in the low-frequency solution of all of them together, so that crowding at the plate
/// and the mutual effect of the electrodes are counted; leakage grows where the soil breaks down (Sunde's sheath of radius ρi/(2πl·Es)).
/// </summary>
public sealed class RadialEarth
{
    private const int Sections = 6;
    private const double LeastShare = 0.2; // ionisation is not followed below a fifth of the low-current resistance
    private const double LeadRadiusM = 0.004; // the wire from the plate to a rod: 50 mm²

    private static readonly Source Page = Source.Derived("docs/theory/earth.md");

    private readonly StruckEarth _earth;
    private readonly double _criticalField;

    /// <summary>Solves the earth at low frequency.</summary>
    /// <param name="earth">Plate, radials, rods and ring.</param>
    /// <param name="criticalField">Critical field of the soil, e.g. <see cref="SoilIonisation.CriticalFieldCigre"/>.</param>
    public RadialEarth(StruckEarth earth, Trail criticalField)
    {
        _earth = earth;
        _criticalField = criticalField.Value;
        List<IReadOnlyList<Wire>> groups = [.. new[] { EarthElectrodes.Radials(earth), EarthElectrodes.Rods(earth), EarthElectrodes.Ring(earth) }.Where(g => g.Count > 0)];
        Solved = BuriedConductors.SolveGroups(groups, earth.SoilOhmM, EarthElectrodes.SegmentM(earth));
        RadialsOhm = Among("radials", "Rr", 0,
            Trail.Given("number of radials", "n", earth.Radials, QuantityKind.Count, Source.DesignFile),
            Trail.Given("length", "L", earth.RadialLengthM, QuantityKind.Length, Source.DesignFile))
            .Within("uniform soil; up to 24 radials solved", earth.Radials > EarthElectrodes.MostArms ? "More than 24 radials are taken as 24: the true resistance is a little lower." : null);
        RodsOhm = earth.Rods <= 0 ? null : Among("rods", "Rs", 1,
            Trail.Given("number of rods", "n", earth.Rods, QuantityKind.Count, Source.DesignFile),
            Trail.Given("length", "L", earth.RodLengthM, QuantityKind.Length, Source.DesignFile));
        RingOhm = earth.Ring is null ? null : Among("buried ring", "Rg", groups.Count - 1,
            Trail.Given("ring diameter", "D", earth.Ring.DiameterM, QuantityKind.Length, Source.DesignFile));
    }

    /// <summary>The solved electrodes, for potentials of the soil around the mast.</summary>
    public BuriedConductors Solved { get; }

    /// <summary>Low-frequency resistance that all radials together show among the other electrodes.</summary>
    public Trail RadialsOhm { get; }

    /// <summary>Low-frequency resistance that the rods together show among the other electrodes; null without rods.</summary>
    public Trail? RodsOhm { get; }

    /// <summary>Low-frequency resistance that the buried ring shows among the other electrodes; null without a ring.</summary>
    public Trail? RingOhm { get; }

    internal TransientCircuit AddTo(TransientCircuit circuit, string plate)
    {
        var n = _earth.Radials;
        var sectionM = _earth.RadialLengthM / Sections;

        // Far-return inductance of one radial of the whole length, shared by n in parallel.
        var henry = StraightInductance.Wire(_earth.RadialLengthM, _earth.RadialRadiusM).Value / n / Sections;
        var sectionOhm = RadialsOhm.Value * Sections;
        var farad = Vacuum.PermittivityFPerM * _earth.RelativePermittivity * _earth.SoilOhmM / sectionOhm;
        var b = Slenderness(RadialsOhm.Value, n * _earth.RadialLengthM);
        var previous = plate;
        for (var k = 1; k <= Sections; k++)
        {
            var node = $"radials {k}";
            circuit = circuit
                .Inductor($"radials {k} L", previous, node, henry)
                .Resistor($"radials {k} R", node, TransientCircuit.Ground, i => sectionOhm * Share(i, n * sectionM, _earth.RadialRadiusM, b))
                .Capacitor($"radials {k} C", node, TransientCircuit.Ground, farad);
            previous = node;
        }

        if (RodsOhm is { } rods)
        {
            var limit = SoilIonisation.LimitCurrentA(rods.Value * _earth.Rods, _earth.SoilOhmM, _criticalField) * _earth.Rods;
            var lead = StraightInductance.Wire(_earth.RodLengthM, _earth.RodRadiusM).Value + StraightInductance.Wire(_earth.RodDistanceM, LeadRadiusM).Value;
            circuit = circuit
                .Inductor("rods L", plate, "rods", lead / _earth.Rods)
                .Resistor("rods R", "rods", TransientCircuit.Ground, i => rods.Value / Math.Sqrt(1 + (Math.Abs(i) / limit)));
        }

        return AddRing(circuit, plate, sectionM);
    }

    // The ring hangs on the radials where it crosses them: on the section's end nearest to it. Fed from many sides its own inductance hardly counts.
    private TransientCircuit AddRing(TransientCircuit circuit, string plate, double sectionM)
    {
        if (RingOhm is not { } ohm || _earth.Ring is not { } ring)
            return circuit;
        var k = (int)Math.Clamp(Math.Round(ring.DiameterM / 2 / sectionM), 0, Sections);
        var length = Math.PI * ring.DiameterM;
        var b = Slenderness(ohm.Value, length);
        return circuit.Resistor("ring R", k == 0 ? plate : $"radials {k}", TransientCircuit.Ground, i => ohm.Value * Share(i, length, ring.WireRadiusM, b));
    }

    // R = ρ/(2πL)·B: the part of B that hangs on the wire radius falls as the sheath grows.
    private double Slenderness(double ohm, double lengthM) => ohm * 2 * Math.PI * lengthM / _earth.SoilOhmM;

    private double Share(double currentA, double lengthM, double radiusM, double b)
    {
        var sheath = _earth.SoilOhmM * Math.Abs(currentA) / (2 * Math.PI * lengthM * _criticalField);
        return sheath <= radiusM ? 1 : Math.Max(LeastShare, 1 - (Math.Log(sheath / radiusM) / b));
    }

    private Trail Among(string name, string symbol, int group, params ReadOnlySpan<Trail> inputs) =>
        Trail.Computed($"resistance of the {name}", symbol, Solved.GroupOhm(group), QuantityKind.Resistance, "line sources on every electrode, one potential: that potential over the electrode's own current", Page,
            [Trail.Given("soil resistivity", "ρ", _earth.SoilOhmM, QuantityKind.Resistivity, Source.DesignFile), .. inputs])
            .Remark("Solved together with the other electrodes: all of them in parallel give the whole earth.");
}
