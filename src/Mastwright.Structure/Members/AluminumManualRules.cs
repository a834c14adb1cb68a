using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>
/// Aluminium round members by the Aluminum Design Manual 2015, part I: chapters D, E, F and H and section B.5, for artificially aged
/// tempers (T5, T6), with the reduction within 25 mm of welds.
/// </summary>
public sealed class AluminumManualRules : IMemberRules
{
    private AluminumManualRules(string format, ResistanceFactors factors)
    {
        Name = $"ADM 2015 {format}";
        Factors = factors;
    }

    /// <summary>Load and resistance factor design: φ.</summary>
    public static AluminumManualRules Lrfd { get; } = new("LRFD", new(0.90, 0.75, 0.90, 0.90));

    /// <summary>Allowable strength design for building-type structures: 1/Ω.</summary>
    public static AluminumManualRules Asd { get; } = new("ASD", new(1 / 1.65, 1 / 1.95, 1 / 1.65, 1 / 1.65));

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public MetalFamily Family => MetalFamily.Aluminium;

    /// <inheritdoc/>
    public ResistanceFactors Factors { get; }

    /// <inheritdoc/>
    public IMemberRules With(ResistanceFactors factors) => new AluminumManualRules(Name[(Name.LastIndexOf(' ') + 1)..], factors);

    /// <inheritdoc/>
    public MemberStrength Strength(RoundMember member)
    {
        MemberTrails.DemandFamily(member, this);
        return new(Compression(member), Tension(member), Bending(member));
    }

    /// <inheritdoc/>
    public Trail Use(RoundMember member, MemberForces forces)
    {
        var strength = Strength(member);
        var (n, m) = MemberTrails.Forces(forces);
        var axial = forces.AxialN >= 0 ? strength.Compression : strength.Tension;
        return Trail.Computed(
            "use of the member", "u", (n.Value / axial.Value) + (m.Value / strength.Bending.Value), QuantityKind.Ratio, "u = N/Nc + M/Mc", Manual("eq. H.1-1"), n, axial, m, strength.Bending);
    }

    private Trail Compression(RoundMember m)
    {
        var slenderness = MemberTrails.Slenderness(m);
        var parent = BucklingConstants.Aged(m.Metal);
        var welded = BucklingConstants.Annealed(m.Metal);
        var whole = parent.Column(slenderness.Value);
        var column = Trail.Computed(
            "member buckling stress", "Fc", m.WeldAwayFromEnds ? MemberTrails.Weighted(m, whole, welded.Column(slenderness.Value)) : whole, QuantityKind.Stress,
            "Fc = Fcy up to λ1; (Bc - Dc·λ)·(0.85 + 0.15·(Cc - λ)/(Cc - λ1)) to Cc; 0.85·π²·E/λ² above", Manual("section E.2"), slenderness, m.Metal.Yield, m.Metal.Modulus)
            .Remark(m.WeldAwayFromEnds ? "weld away from the ends: the part near it counts with the weld zone's curve (section E.4)" : "welds at the ends only do not lower member buckling (section E.4)");
        var rb = MidRadiusOverWall(m);
        var local = Trail.Computed(
            "local buckling stress of the wall", "Fl", MemberTrails.Weighted(m, parent.TubeCompression(rb.Value), welded.TubeCompression(rb.Value)), QuantityKind.Stress,
            "Fl = Fcy; Bt - Dt·√(Rb/t); π²·E/(16·(Rb/t)·(1 + √(Rb/t)/35)²), the weld zone by its share", Manual("sections B.5.4.5 and E.4"),
            rb, m.Metal.Yield, m.Metal.WeldedYield, MemberTrails.WeldedShare(m));
        var a = MemberTrails.Area(m);
        var phi = MemberTrails.Factor("factor on compression", "φc", Factors.Compression, Manual("section E.1"));
        return Trail.Computed(
            "compressive strength", "Nc", phi.Value * Math.Min(column.Value, local.Value) * a.Value, QuantityKind.Force, "Nc = φc·min(Fc, Fl)·A", Manual("chapter E"), phi, column, local, a);
    }

    private Trail Tension(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var net = Trail.Given("net over gross area", "An/A", m.NetAreaShare, QuantityKind.Ratio, InputSource.Design);
        var yielding = Factors.Yielding * MemberTrails.Weighted(m, m.Metal.YieldPa, m.Metal.WeldedYieldPa) * a.Value;
        var rupture = Factors.Rupture * MemberTrails.Weighted(m, m.Metal.UltimatePa, m.Metal.WeldedUltimatePa) * a.Value * net.Value;
        // Welds across the ends yield locally without making the member long, so yield counts there only when the weld lies away from the ends.
        var value = m.WeldAwayFromEnds ? Math.Min(yielding, rupture) : Math.Min(Factors.Yielding * m.Metal.YieldPa * a.Value, rupture);
        return Trail.Computed(
            "tensile strength", "Nt", value, QuantityKind.Force, "Nt = smaller of φy·Fty·A and φu·Ftu·An, the weld zone by its share", Manual("chapter D"),
            MemberTrails.Factor("factor on yielding", "φy", Factors.Yielding, Manual("section D.1")), m.Metal.Yield, m.Metal.WeldedYield, a,
            MemberTrails.Factor("factor on rupture", "φu", Factors.Rupture, Manual("section D.1")), m.Metal.Ultimate, m.Metal.WeldedUltimate, net, MemberTrails.WeldedShare(m));
    }

    private Trail Bending(RoundMember m)
    {
        var s = MemberTrails.ElasticModulus(m);
        var z = MemberTrails.PlasticModulus(m);
        var rb = MidRadiusOverWall(m);
        var yielding = Math.Min(z.Value, 1.5 * s.Value);
        var yieldMoment = MemberTrails.Weighted(m, yielding * m.Metal.YieldPa, yielding * m.Metal.WeldedYieldPa);
        var localMoment = s.Value * MemberTrails.Weighted(
            m, BucklingConstants.Aged(m.Metal).TubeBending(rb.Value), BucklingConstants.Annealed(m.Metal).TubeBending(rb.Value));
        var ruptureMoment = z.Value * MemberTrails.Weighted(m, m.Metal.UltimatePa, m.Metal.WeldedUltimatePa);
        var value = Math.Min(Factors.Bending * Math.Min(yieldMoment, localMoment), Factors.Rupture * ruptureMoment);
        return Trail.Computed(
            "bending strength", "Mc", value, QuantityKind.Moment, "Mc = smallest of φb·Fcy·min(Z, 1.5·S), φb·Fb·S with Fb = Btb - Dtb·√(Rb/t), φu·Ftu·Z, the weld zone by its share", Manual("chapter F and section B.5.5"),
            MemberTrails.Factor("factor on bending", "φb", Factors.Bending, Manual("section F.1")), MemberTrails.Factor("factor on rupture", "φu", Factors.Rupture, Manual("section F.1")),
            m.Metal.Yield, m.Metal.Ultimate, m.Metal.WeldedYield, m.Metal.WeldedUltimate, s, z, rb, MemberTrails.WeldedShare(m));
    }

    private static Trail MidRadiusOverWall(RoundMember m) => Trail.Given(
        "mid-wall radius over wall", "Rb/t", m.Section.IsSolid ? 1 : (m.Section.OuterDiameterM - m.Section.WallM) / 2 / m.Section.WallM, QuantityKind.Ratio, InputSource.Design);

    private static Source Manual(string where) => Source.FromMemory($"Aluminum Design Manual part I, {where}", "2015");
}
