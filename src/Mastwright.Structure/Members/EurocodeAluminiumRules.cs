using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>
/// Aluminium round members by EN 1999-1-1:2007: sections 6.1.4 (class of the wall), 6.2 and 6.3 for buckling class A alloys (T6),
/// with the softened zone near welds.
/// </summary>
public sealed class EurocodeAluminiumRules : IMemberRules
{
    /// <summary>The recommended partial factors γM1 = 1.10, γM2 = 1.25.</summary>
    public EurocodeAluminiumRules()
        : this(new(1 / 1.1, 1 / 1.25, 1 / 1.1, 1 / 1.1))
    {
    }

    private EurocodeAluminiumRules(ResistanceFactors factors) => Factors = factors;

    /// <inheritdoc/>
    public string Name => "EN 1999-1-1";

    /// <inheritdoc/>
    public MetalFamily Family => MetalFamily.Aluminium;

    /// <inheritdoc/>
    public ResistanceFactors Factors { get; }

    /// <inheritdoc/>
    public IMemberRules With(ResistanceFactors factors) => new EurocodeAluminiumRules(factors);

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
        var exponent = forces.AxialN >= 0 ? 0.8 : 1.0;
        var value = Math.Pow(n.Value / axial.Value, exponent) + Math.Pow(m.Value / strength.Bending.Value, 1.02);
        return Trail.Computed(
            "use of the member", "u", value, QuantityKind.Ratio,
            forces.AxialN >= 0 ? "u = (N/NRd)^0.8 + (M/MRd)^1.02" : "u = N/NtRd + (M/MRd)^1.02", Code("eq. 6.62, hollow sections"), n, axial, m, strength.Bending);
    }

    private Trail Compression(RoundMember m)
    {
        var fo = m.Metal.Yield;
        var slenderness = MemberTrails.Slenderness(m);
        var area = EffectiveArea(m);
        var relative = Trail.Computed(
            "relative slenderness", "λ̄", slenderness.Value / Math.PI * Math.Sqrt(fo.Value / m.Metal.ModulusPa * area.Value / m.Section.AreaM2), QuantityKind.Ratio,
            "λ̄ = (Lc/r)/π·√(fo/E·Aeff/A)", Code("eq. 6.51"), slenderness, fo, m.Metal.Modulus, area);
        var alpha = Trail.Given("imperfection factor, buckling class A", "α", 0.20, QuantityKind.Ratio, Code("table 6.6"));
        var chi = BucklingReduction.Of(relative, alpha, 0.1, Code("eq. 6.50"));
        var factor = MemberTrails.Factor("factor on yielding and buckling", "1/γM1", Factors.Compression, Code("section 6.1.3"));
        var weld = WeldFactor(m);
        var buckling = factor.Value * chi.Value * area.Value * fo.Value * (m.WeldAwayFromEnds ? weld.Value : 1);
        // At a welded end the softened zone must still carry the force as a section.
        var section = Factors.Rupture * m.Section.AreaM2 * MemberTrails.Weighted(m, m.Metal.UltimatePa, m.Metal.WeldedUltimatePa);
        return Trail.Computed(
            "buckling resistance", "NRd", Math.Min(buckling, section), QuantityKind.Force,
            m.WeldAwayFromEnds ? "NRd = χ·κ·Aeff·fo/γM1, not above the weld zone's A·fu,haz/γM2" : "NRd = χ·Aeff·fo/γM1, not above the weld zone's A·fu,haz/γM2", Code("eq. 6.49"),
            chi, area, fo, factor, weld, m.Metal.WeldedUltimate);
    }

    private Trail Tension(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var net = Trail.Given("net over gross area", "Anet/A", m.NetAreaShare, QuantityKind.Ratio, InputSource.Design);
        var yielding = Factors.Yielding * m.Metal.YieldPa * a.Value;
        var rupture = Factors.Rupture * Math.Min(0.9 * net.Value * m.Metal.UltimatePa, MemberTrails.Weighted(m, m.Metal.UltimatePa, m.Metal.WeldedUltimatePa)) * a.Value;
        return Trail.Computed(
            "tension resistance", "NtRd", Math.Min(yielding, rupture), QuantityKind.Force, "NtRd = smallest of A·fo/γM1, 0.9·Anet·fu/γM2 and Aeff·fu,haz/γM2", Code("section 6.2.3"),
            a, m.Metal.Yield, MemberTrails.Factor("factor on yielding", "1/γM1", Factors.Yielding, Code("section 6.1.3")),
            net, m.Metal.Ultimate, m.Metal.WeldedUltimate, MemberTrails.Factor("factor on rupture", "1/γM2", Factors.Rupture, Code("section 6.1.3")), MemberTrails.WeldedShare(m));
    }

    private Trail Bending(RoundMember m)
    {
        var beta = WallParameter(m);
        var limits = Limits(m);
        var full = m.Section.PlasticModulusM3 / m.Section.ElasticModulusM3;
        var shape = beta.Value <= limits.Two ? full
            : beta.Value <= limits.Three ? 1 + ((limits.Three - beta.Value) / (limits.Three - limits.Two) * (full - 1))
            : EffectiveArea(m).Value / m.Section.AreaM2;
        var alpha = Trail.Computed("shape factor", "αs", shape, QuantityKind.Ratio, "αs = Wpl/Wel in class 1 and 2, falling to 1 in class 3, below 1 in class 4", Code("table 6.4"), beta);
        var s = MemberTrails.ElasticModulus(m);
        var weld = WeldFactor(m);
        var factor = MemberTrails.Factor("factor on bending", "1/γM1", Factors.Bending, Code("section 6.1.3"));
        return Trail.Computed(
            "bending resistance", "MRd", factor.Value * alpha.Value * s.Value * m.Metal.YieldPa * weld.Value, QuantityKind.Moment, "MRd = αs·Wel·κ·fo/γM1", Code("eq. 6.25"), alpha, s, m.Metal.Yield, weld, factor);
    }

    private static Trail WeldFactor(RoundMember m) => Trail.Computed(
        "weld zone factor", "κ", MemberTrails.Weighted(m, 1, m.Metal.WeldedYieldPa / m.Metal.YieldPa), QuantityKind.Ratio, "κ = 1 - w·(1 - fo,haz/fo)", Code("section 6.1.6"),
        MemberTrails.WeldedShare(m), m.Metal.WeldedYield, m.Metal.Yield);

    private static Trail EffectiveArea(RoundMember m)
    {
        var a = MemberTrails.Area(m);
        var beta = WallParameter(m);
        var limits = Limits(m);
        if (beta.Value <= limits.Three)
        {
            return a;
        }

        var (c1, c2) = m.WeldedShare > 0 ? (29.0, 198.0) : (32.0, 220.0);
        var x = beta.Value / limits.Epsilon;
        var rho = Math.Min(1, (c1 / x) - (c2 / (x * x)));
        return Trail.Computed("effective area (class 4)", "Aeff", rho * a.Value, QuantityKind.SectionArea, "Aeff = ρc·A, ρc = C1/(β/ε) - C2/(β/ε)²", Code("eq. 6.11 and table 6.3"), a, beta);
    }

    private static Trail WallParameter(RoundMember m) => Trail.Computed(
        "wall slenderness", "β", m.Section.IsSolid ? 0 : 3 * Math.Sqrt((m.Section.OuterDiameterM - m.Section.WallM) / m.Section.WallM), QuantityKind.Ratio, "β = 3·√(D/t), D to mid-wall", Code("eq. 6.10"),
        MemberTrails.WallSlenderness(m));

    private static (double Two, double Three, double Epsilon) Limits(RoundMember m)
    {
        var epsilon = Math.Sqrt(250e6 / m.Metal.YieldPa);
        return m.WeldedShare > 0 ? (13 * epsilon, 18 * epsilon, epsilon) : (16 * epsilon, 22 * epsilon, epsilon);
    }

    private static Source Code(string where) => Source.FromMemory($"EN 1999-1-1, {where}", "2007");
}
