using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>
/// Steel round members by EN 1993-1-1:2005: sections 6.2 and 6.3 with buckling curve a (hot finished) or c (cold formed);
/// stainless ones by EN 1993-1-4:2006, whose curve for hollow sections starts to fall at 0.40.
/// Moments come from a second-order analysis, so the interaction takes them without further amplification.
/// </summary>
public sealed class EurocodeSteelRules : IMemberRules
{
    private EurocodeSteelRules(MetalFamily family, ResistanceFactors factors)
    {
        Family = family;
        Factors = factors;
    }

    /// <summary>Carbon steel by EN 1993-1-1 with the recommended partial factors γM0 = γM1 = 1.00, γM2 = 1.25.</summary>
    public static EurocodeSteelRules Carbon { get; } = new(MetalFamily.Steel, new(1, 1 / 1.25, 1, 1));

    /// <summary>Stainless steel by EN 1993-1-4 with the recommended partial factors γM0 = γM1 = 1.10, γM2 = 1.25.</summary>
    public static EurocodeSteelRules Stainless { get; } = new(MetalFamily.Stainless, new(1 / 1.1, 1 / 1.25, 1 / 1.1, 1 / 1.1));

    /// <inheritdoc/>
    public string Name => IsStainless ? "EN 1993-1-4" : "EN 1993-1-1";

    /// <inheritdoc/>
    public MetalFamily Family { get; }

    /// <inheritdoc/>
    public ResistanceFactors Factors { get; }

    private bool IsStainless => Family == MetalFamily.Stainless;

    /// <inheritdoc/>
    public IMemberRules With(ResistanceFactors factors) => new EurocodeSteelRules(Family, factors);

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
            "use of the member", "u", (n.Value / axial.Value) + (m.Value / strength.Bending.Value), QuantityKind.Ratio, "u = N/NRd + k·M/MRd, k = 1", Code("eq. 6.61"), n, axial, m, strength.Bending)
            .Remark("k = 1 because M already holds the second-order effect");
    }

    private Trail Compression(RoundMember m)
    {
        var fy = m.Metal.Yield;
        var slenderness = MemberTrails.Slenderness(m);
        var relative = Trail.Computed(
            "relative slenderness", "λ̄", slenderness.Value / Math.PI * Math.Sqrt(fy.Value / m.Metal.ModulusPa), QuantityKind.Ratio, "λ̄ = (Lc/r)/π·√(fy/E)", Code("eq. 6.50"), slenderness, fy, m.Metal.Modulus);
        var hot = m.HotFinished && !IsStainless;
        var alpha = Trail.Given(
            hot ? "imperfection factor, curve a (hot finished)" : "imperfection factor (cold formed or solid)", "α", hot ? 0.21 : 0.49, QuantityKind.Ratio, Code(IsStainless ? "table 5.3" : "tables 6.1 and 6.2"));
        var chi = BucklingReduction.Of(relative, alpha, IsStainless ? 0.4 : 0.2, Code(IsStainless ? "eq. 5.10" : "eq. 6.49"));
        var a = MemberTrails.Area(m);
        var factor = MemberTrails.Factor("factor on buckling", "1/γM1", Factors.Compression, Code("section 6.1"));
        return Trail.Computed("buckling resistance", "NRd", factor.Value * chi.Value * a.Value * fy.Value, QuantityKind.Force, "NRd = χ·A·fy/γM1", Code("eq. 6.47"), chi, a, fy, factor)
            .Within("wall of class 1 to 3: D/t up to 90·235/fy", ClassWarning(m));
    }

    private Trail Tension(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var net = Trail.Given("net over gross area", "Anet/A", m.NetAreaShare, QuantityKind.Ratio, InputSource.Design);
        var value = Math.Min(Factors.Yielding * m.Metal.YieldPa * a.Value, Factors.Rupture * 0.9 * m.Metal.UltimatePa * a.Value * net.Value);
        return Trail.Computed(
            "tension resistance", "NtRd", value, QuantityKind.Force, "NtRd = smaller of A·fy/γM0 and 0.9·Anet·fu/γM2", Code("section 6.2.3"),
            a, m.Metal.Yield, MemberTrails.Factor("factor on yielding", "1/γM0", Factors.Yielding, Code("section 6.1")),
            net, m.Metal.Ultimate, MemberTrails.Factor("factor on rupture", "1/γM2", Factors.Rupture, Code("section 6.1")));
    }

    private Trail Bending(RoundMember m)
    {
        var wall = MemberTrails.WallSlenderness(m);
        var plastic = m.Section.IsSolid || wall.Value <= 70 * 235e6 / m.Metal.YieldPa;
        var modulus = plastic ? MemberTrails.PlasticModulus(m) : MemberTrails.ElasticModulus(m);
        var factor = MemberTrails.Factor("factor on bending", "1/γM0", Factors.Bending, Code("section 6.1"));
        return Trail.Computed(
            "bending resistance", "MRd", factor.Value * modulus.Value * m.Metal.YieldPa, QuantityKind.Moment, plastic ? "MRd = Wpl·fy/γM0 (class 1 or 2)" : "MRd = Wel·fy/γM0 (class 3)", Code("section 6.2.5"),
            modulus, m.Metal.Yield, factor, wall)
            .Within("wall of class 1 to 3: D/t up to 90·235/fy", ClassWarning(m));
    }

    private static string? ClassWarning(RoundMember m) => !m.Section.IsSolid && m.Section.OuterDiameterM / m.Section.WallM > 90 * 235e6 / m.Metal.YieldPa
        ? "The wall is of class 4 and may buckle locally before it yields; EN 1993-1-6 is needed."
        : null;

    private Source Code(string where) => Source.FromMemory($"{Name}, {where}", IsStainless ? "2006" : "2005");
}
