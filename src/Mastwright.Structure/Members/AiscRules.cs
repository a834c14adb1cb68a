using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>
/// Steel round members by ANSI/AISC 360-16: chapters D (tension), E3 and E7 (compression), F8 and F11 (bending), H1 (together).
/// </summary>
public sealed class AiscRules : IMemberRules
{
    private AiscRules(string format, ResistanceFactors factors)
    {
        Name = $"AISC 360-16 {format}";
        Factors = factors;
    }

    /// <summary>Load and resistance factor design: φ.</summary>
    public static AiscRules Lrfd { get; } = new("LRFD", new(0.90, 0.75, 0.90, 0.90));

    /// <summary>Allowable strength design: 1/Ω.</summary>
    public static AiscRules Asd { get; } = new("ASD", new(1 / 1.67, 1 / 2.00, 1 / 1.67, 1 / 1.67));

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public MetalFamily Family => MetalFamily.Steel;

    /// <inheritdoc/>
    public ResistanceFactors Factors { get; }

    /// <inheritdoc/>
    public IMemberRules With(ResistanceFactors factors) => new AiscRules(Name[(Name.LastIndexOf(' ') + 1)..], factors);

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
        var share = n.Value / axial.Value;
        var high = share >= 0.2;
        var value = high ? share + (8.0 / 9 * m.Value / strength.Bending.Value) : (share / 2) + (m.Value / strength.Bending.Value);
        return Trail.Computed(
            "use of the member", "u", value, QuantityKind.Ratio, high ? "u = N/Nc + 8/9·M/Mc (N/Nc ≥ 0.2)" : "u = N/(2·Nc) + M/Mc (N/Nc < 0.2)",
            Spec("eq. H1-1"), n, axial, m, strength.Bending);
    }

    private Trail Compression(RoundMember m)
    {
        var fy = m.Metal.Yield;
        var e = m.Metal.Modulus;
        var slenderness = MemberTrails.Slenderness(m);
        var fe = Trail.Computed(
            "elastic buckling stress", "Fe", Math.PI * Math.PI * e.Value / Math.Pow(slenderness.Value, 2), QuantityKind.Stress, "Fe = π²·E/(Lc/r)²", Spec("eq. E3-4"), e, slenderness);
        var inelastic = fy.Value / fe.Value <= 2.25;
        var fcr = Trail.Computed(
            "critical stress", "Fcr", inelastic ? Math.Pow(0.658, fy.Value / fe.Value) * fy.Value : 0.877 * fe.Value, QuantityKind.Stress,
            inelastic ? "Fcr = 0.658^(Fy/Fe)·Fy" : "Fcr = 0.877·Fe", Spec(inelastic ? "eq. E3-2" : "eq. E3-3"), fy, fe)
            .Within("Lc/r up to 200", slenderness.Value > 200 ? "The member is slenderer than 200, which the specification advises against." : null);
        var a = EffectiveArea(m);
        var phi = MemberTrails.Factor("factor on compression", "φc", Factors.Compression, Spec("section E1"));
        return Trail.Computed("compressive strength", "Nc", phi.Value * fcr.Value * a.Value, QuantityKind.Force, "Nc = φc·Fcr·Ae", Spec("eq. E3-1"), phi, fcr, a);
    }

    private static Trail EffectiveArea(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var wall = MemberTrails.WallSlenderness(m);
        var ratio = m.Metal.ModulusPa / m.Metal.YieldPa;
        if (m.Section.IsSolid || wall.Value <= 0.11 * ratio)
        {
            return a;
        }

        var share = (0.038 * ratio / wall.Value) + (2.0 / 3);
        return Trail.Computed("effective area", "Ae", share * a.Value, QuantityKind.SectionArea, "Ae = (0.038·E/(Fy·D/t) + 2/3)·A", Spec("eq. E7-7"), a, wall, m.Metal.Modulus, m.Metal.Yield)
            .Within("D/t below 0.45·E/Fy", wall.Value >= 0.45 * ratio ? "The wall is thinner than the specification covers." : null);
    }

    private Trail Tension(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var net = Trail.Given("net over gross area", "An/A", m.NetAreaShare, QuantityKind.Ratio, InputSource.Design);
        var yielding = Factors.Yielding * m.Metal.YieldPa * a.Value;
        var rupture = Factors.Rupture * m.Metal.UltimatePa * a.Value * net.Value;
        return Trail.Computed(
            "tensile strength", "Nt", Math.Min(yielding, rupture), QuantityKind.Force, "Nt = smaller of φy·Fy·A and φu·Fu·An", Spec("section D2"),
            MemberTrails.Factor("factor on yielding", "φy", Factors.Yielding, Spec("section D2")), m.Metal.Yield, a,
            MemberTrails.Factor("factor on rupture", "φu", Factors.Rupture, Spec("section D2")), m.Metal.Ultimate, net);
    }

    private Trail Bending(RoundMember m)
    {
        var s = MemberTrails.ElasticModulus(m);
        var z = MemberTrails.PlasticModulus(m);
        var wall = MemberTrails.WallSlenderness(m);
        var fy = m.Metal.YieldPa;
        var ratio = m.Metal.ModulusPa / fy;
        var phi = MemberTrails.Factor("factor on bending", "φb", Factors.Bending, Spec("section F1"));
        var (nominal, formula, where) = (m.Section.IsSolid, wall.Value) switch
        {
            (true, _) => (Math.Min(fy * z.Value, 1.6 * fy * s.Value), "Mn = Fy·Z, at most 1.6·Fy·S", "section F11"),
            (_, var x) when x <= 0.07 * ratio => (fy * z.Value, "Mn = Fy·Z (compact)", "eq. F8-1"),
            (_, var x) when x <= 0.31 * ratio => (((0.021 * m.Metal.ModulusPa / x) + fy) * s.Value, "Mn = (0.021·E/(D/t) + Fy)·S (noncompact)", "eq. F8-2"),
            (_, var x) => (0.33 * m.Metal.ModulusPa / x * s.Value, "Mn = 0.33·E/(D/t)·S (slender)", "eq. F8-3"),
        };
        var mn = Trail.Computed("nominal bending strength", "Mn", nominal, QuantityKind.Moment, formula, Spec(where), m.Metal.Yield, m.Metal.Modulus, z, s, wall)
            .Within("D/t below 0.45·E/Fy", wall.Value >= 0.45 * ratio ? "The wall is thinner than the specification covers." : null);
        return Trail.Computed("bending strength", "Mc", phi.Value * nominal, QuantityKind.Moment, "Mc = φb·Mn", Spec("section F1"), phi, mn);
    }

    private static Source Spec(string where) => Source.FromMemory($"ANSI/AISC 360, {where}", "2016");
}
