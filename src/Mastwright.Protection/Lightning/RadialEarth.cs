using Mastwright.Circuits.Transient;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Numerics;
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
    private const int RingSides = 12;
    private const double LeastShare = 0.2; // ionisation is not followed below a fifth of the low-current resistance
    private const double LeadRadiusM = 0.004; // the wire from the plate to a rod: 50 mm²

    internal const int MostArmsSolved = 24;

    // The leakage changes fastest next to the hub, where the radials crowd each other: shorter sources there.
    private static readonly double[] HubCutsM = [0.3, 1, 3];
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

        // Beyond some two dozen radials the resistance hardly falls; the fields of more would only cost time.
        var arms = Math.Min(earth.Radials, MostArmsSolved);
        var groups = new List<IReadOnlyList<Wire>> { Arms(earth, arms) };
        if (earth.Rods > 0)
            groups.Add(Rods(earth, arms));
        if (earth.Ring is { } ring)
            groups.Add(Ring(earth, ring));
        Solved = BuriedConductors.SolveGroups(groups, earth.SoilOhmM, earth.RadialLengthM / 6);
        RadialsOhm = Among("radials", "Rr", 0,
            Trail.Given("number of radials", "n", earth.Radials, QuantityKind.Count, Source.DesignFile),
            Trail.Given("length", "L", earth.RadialLengthM, QuantityKind.Length, Source.DesignFile))
            .Within("uniform soil; up to 24 radials solved", earth.Radials > MostArmsSolved ? "More than 24 radials are taken as 24: the true resistance is a little lower." : null);
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

    private static List<Wire> Arms(StruckEarth earth, int arms)
    {
        var wires = new List<Wire>();
        double[] cuts = [0, .. HubCutsM.Where(c => c < 0.6 * earth.RadialLengthM), earth.RadialLengthM];
        for (var i = 0; i < arms; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / arms);
            for (var k = 1; k < cuts.Length; k++)
                wires.Add(new(new(cuts[k - 1] * c, cuts[k - 1] * s, -earth.DepthM), new(cuts[k] * c, cuts[k] * s, -earth.DepthM), earth.RadialRadiusM));
        }

        return wires;
    }

    // Between two radials, so that no rod pierces a wire; one rod stands close to the plate.
    private static List<Wire> Rods(StruckEarth earth, int arms)
    {
        var radius = earth.Rods == 1 ? Math.Min(earth.RodDistanceM, 0.3) : earth.RodDistanceM;
        return [.. Enumerable.Range(0, earth.Rods).Select(k =>
        {
            var (s, c) = Math.SinCos((Math.PI / arms) + (2 * Math.PI * k / earth.Rods));
            return new Wire(new(radius * c, radius * s, 0), new(radius * c, radius * s, -earth.RodLengthM), earth.RodRadiusM);
        })];
    }

    private static List<Wire> Ring(StruckEarth earth, StruckRing ring)
    {
        // A ring at the radials' own depth would lie in them: a hand's breadth apart the thin-wire sources stay apart too.
        var depth = Math.Abs(ring.DepthM - earth.DepthM) < 0.05 ? earth.DepthM + 0.05 : ring.DepthM;
        Vec3 Corner(int side)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * (side + 0.25) / RingSides);
            return new(ring.DiameterM / 2 * c, ring.DiameterM / 2 * s, -depth);
        }

        return [.. Enumerable.Range(0, RingSides).Select(k => new Wire(Corner(k), Corner(k + 1), ring.WireRadiusM))];
    }
}
