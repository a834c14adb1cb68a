using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Lines;

/// <summary>How much choking the outside of a feed cable needs at the base of a mast.</summary>
/// <param name="DriveVoltage">RMS voltage that drives the outside of the cable, V.</param>
/// <param name="BareCurrent">RMS current on the outside without a choke, A.</param>
/// <param name="NeededOhm">Resistance the choke must show, ohms; zero when none is needed.</param>
/// <param name="Heat">Heat in that choke, W.</param>
/// <param name="PathOhm">Resistance of the path along the cable, ohms.</param>
/// <param name="AllowedA">Current allowed on the outside, A RMS.</param>
public sealed record CommonModeChoke(Trail DriveVoltage, Trail BareCurrent, Trail NeededOhm, Trail Heat, double PathOhm, double AllowedA)
{
    /// <summary>
    /// Works out the choke. The voltage is the base current through the impedance of the radial field to distant earth:
    /// the cable's outside lies between the two. The choke is asked for as a resistance, because a reactance may tune out
    /// the path instead of blocking it.
    /// </summary>
    /// <param name="baseCurrentA">RMS base current, amperes.</param>
    /// <param name="radialFieldOhm">Impedance of the radial field to distant earth, ohms.</param>
    /// <param name="pathOhm">Resistance of the path along the outside of the cable without a choke, ohms; its reactance is taken as tuned out, the worst case.</param>
    /// <param name="allowedA">RMS current allowed on the outside, amperes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CommonModeChoke Of(double baseCurrentA, double radialFieldOhm, double pathOhm, double allowedA)
    {
        var page = Source.Derived("docs/theory/circuits-lines.md");
        var stated = new Source("the problem as stated", SourceKind.Design);
        var i = Trail.Given("base current", "I", Guard.Positive(baseCurrentA), QuantityKind.RmsCurrent, stated);
        var z = Trail.Given("impedance of the radial field to distant earth", "Zg", Guard.NotNegative(radialFieldOhm, nameof(radialFieldOhm)), QuantityKind.Resistance, stated);
        var r = Trail.Given("resistance of the path along the cable", "Rp", Guard.Positive(pathOhm), QuantityKind.Resistance, stated);
        var a = Trail.Given("current allowed on the outside", "Ia", Guard.Positive(allowedA), QuantityKind.RmsCurrent, stated);
        var v = Trail.Computed("voltage driving the outside of the cable", "Vc", baseCurrentA * radialFieldOhm, QuantityKind.RmsVoltage, "Vc = I·Zg", page, i, z)
            .Within("cable leaving the radial field at the base; a cable in the near field of the mast picks up more along its way");
        var bare = Trail.Computed("current on the outside without a choke", "Ib", v.Value / pathOhm, QuantityKind.RmsCurrent, "Ib = Vc/Rp", page, v, r);
        var need = Math.Max(0, (v.Value / allowedA) - pathOhm);
        var choke = Trail.Computed("choke resistance needed", "Rc", need, QuantityKind.Resistance, "Rc = Vc/Ia - Rp, at least 0", page, v, a, r);
        var current = v.Value / (pathOhm + need);
        return new(v, bare, choke, Trail.Computed("heat in the choke", "P", current * current * need, QuantityKind.Power, "P = (Vc/(Rp + Rc))²·Rc", page, v, r, choke), pathOhm, allowedA);
    }
}
