using Mastwright.Circuits.Transient;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Protection.Earthing;

namespace Mastwright.Protection.Lightning;

/// <summary>
/// Radials and rods as a distributed earth: all radials alike and in parallel, cut into sections of series inductance and shunt leakage with capacitance.
/// The sum of the leakage is fitted to the solved low-frequency resistance of the whole star, so that crowding at the plate is counted; leakage grows
/// where the soil breaks down (Sunde's sheath of radius ρi/(2πl·Es)).
/// </summary>
public sealed class RadialEarth
{
    private const int Sections = 6;
    private const double LeastShare = 0.2; // ionisation is not followed below a fifth of the low-current resistance
    private const double VacuumPermittivity = AxisymmetricElectrostatics.VacuumPermittivity;
    internal const int MostArmsSolved = 24;

    // The leakage changes fastest next to the hub, where the radials crowd each other: shorter sources there.
    private static readonly double[] HubCutsM = [0.3, 1, 3];

    private readonly StruckEarth _earth;
    private readonly double _criticalField;

    /// <summary>Solves the earth at low frequency.</summary>
    /// <param name="earth">Plate, radials and rods.</param>
    /// <param name="criticalField">Critical field of the soil, e.g. <see cref="SoilIonisation.CriticalFieldCigre"/>.</param>
    public RadialEarth(StruckEarth earth, Trail criticalField)
    {
        _earth = earth;
        _criticalField = criticalField.Value;
        // Beyond some two dozen radials the resistance hardly falls; the fields of more would only cost time.
        var arms = Math.Min(earth.Radials, MostArmsSolved);
        var wires = new List<Wire>();
        double[] cuts = [0, .. HubCutsM.Where(c => c < 0.6 * earth.RadialLengthM), earth.RadialLengthM];
        for (var i = 0; i < arms; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / arms);
            for (var k = 1; k < cuts.Length; k++)
                wires.Add(new(new(cuts[k - 1] * c, cuts[k - 1] * s, -earth.DepthM), new(cuts[k] * c, cuts[k] * s, -earth.DepthM), earth.RadialRadiusM));
        }

        Solved = BuriedConductors.Solve(wires, earth.SoilOhmM, earth.RadialLengthM / 6);
        RadialsOhm = Trail.Computed("resistance of the radials", "Rr", Solved.ResistanceOhm, QuantityKind.Resistance, "line sources on every radial, one potential", Source.Derived("docs/theory/earth.md"),
            Trail.Given("soil resistivity", "ρ", earth.SoilOhmM, QuantityKind.Resistivity, Source.DesignFile),
            Trail.Given("number of radials", "n", earth.Radials, QuantityKind.Count, Source.DesignFile),
            Trail.Given("length", "L", earth.RadialLengthM, QuantityKind.Length, Source.DesignFile))
            .Within("uniform soil; up to 24 radials solved", earth.Radials > MostArmsSolved ? "More than 24 radials are taken as 24: the true resistance is a little lower." : null);
    }

    /// <summary>The solved radials, for potentials of the soil around the mast.</summary>
    public BuriedConductors Solved { get; }

    /// <summary>Low-frequency resistance of all radials together, rods apart.</summary>
    public Trail RadialsOhm { get; }

    /// <summary>Low-frequency resistance of the rods, taken as independent of each other; null without rods.</summary>
    public Trail? RodsOhm => _earth.Rods <= 0 ? null : EarthElectrode.Rod(_earth.SoilOhmM, _earth.RodLengthM, _earth.RodRadiusM) is { } one
        ? Trail.Computed("resistance of the rods", "Rs", one.Value / _earth.Rods, QuantityKind.Resistance, "Rs = R/n", Source.Derived("docs/theory/earth.md"), one,
            Trail.Given("number of rods", "n", _earth.Rods, QuantityKind.Count, Source.DesignFile)).Remark("Mutual effect of rods and radials neglected.")
        : null;

    internal TransientCircuit AddTo(TransientCircuit circuit, string plate)
    {
        var n = _earth.Radials;
        var sectionM = _earth.RadialLengthM / Sections;
        // Far-return inductance of one radial of the whole length, shared by n in parallel.
        var henry = StraightInductance.Wire(_earth.RadialLengthM, _earth.RadialRadiusM).Value / n / Sections;
        var sectionOhm = RadialsOhm.Value * Sections;
        var farad = VacuumPermittivity * _earth.RelativePermittivity * _earth.SoilOhmM / sectionOhm;
        // R = ρ/(2πnL)·B: the part of B that hangs on the wire radius falls as the sheath grows.
        var b = RadialsOhm.Value * 2 * Math.PI * n * _earth.RadialLengthM / _earth.SoilOhmM;
        var previous = plate;
        for (var k = 1; k <= Sections; k++)
        {
            var node = $"radials {k}";
            circuit = circuit
                .Inductor($"radials {k} L", previous, node, henry)
                .Resistor($"radials {k} R", node, TransientCircuit.Ground, i => sectionOhm * Share(i, n * sectionM, b))
                .Capacitor($"radials {k} C", node, TransientCircuit.Ground, farad);
            previous = node;
        }

        if (RodsOhm is { } rods)
        {
            var limit = SoilIonisation.LimitCurrentA(rods.Value * _earth.Rods, _earth.SoilOhmM, _criticalField) * _earth.Rods;
            circuit = circuit
                .Inductor("rods L", plate, "rods", StraightInductance.Wire(_earth.RodLengthM, _earth.RodRadiusM).Value / _earth.Rods)
                .Resistor("rods R", "rods", TransientCircuit.Ground, i => rods.Value / Math.Sqrt(1 + (Math.Abs(i) / limit)));
        }

        return circuit;
    }

    private double Share(double currentA, double lengthM, double b)
    {
        var sheath = _earth.SoilOhmM * Math.Abs(currentA) / (2 * Math.PI * lengthM * _criticalField);
        return sheath <= _earth.RadialRadiusM ? 1 : Math.Max(LeastShare, 1 - (Math.Log(sheath / _earth.RadialRadiusM) / b));
    }
}
