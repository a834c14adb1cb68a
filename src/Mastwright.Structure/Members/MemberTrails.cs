using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>Trail leaves that all member rules share.</summary>
internal static class MemberTrails
{
    public static Trail Factor(string name, string symbol, double value, Source source) => Trail.Given(name, symbol, value, QuantityKind.Ratio, source, "changeable");

    public static Trail Area(RoundMember m) => Trail.Given("cross-section", "A", m.Section.AreaM2, QuantityKind.SectionArea, InputSource.Design);

    public static Trail Slenderness(RoundMember m) => Trail.Computed(
        "slenderness", "Lc/r", m.EffectiveLength.Value / m.Section.RadiusOfGyrationM, QuantityKind.Ratio, "Lc/r", Source.Literature("Euler columns"),
        m.EffectiveLength, Trail.Given("radius of gyration", "r", m.Section.RadiusOfGyrationM, QuantityKind.FineLength, InputSource.Design));

    public static Trail WallSlenderness(RoundMember m) => Trail.Given(
        "diameter over wall", "D/t", m.Section.IsSolid ? 2 : m.Section.OuterDiameterM / m.Section.WallM, QuantityKind.Ratio, InputSource.Design);

    public static Trail ElasticModulus(RoundMember m) => Trail.Given("elastic section modulus", "S", m.Section.ElasticModulusM3, QuantityKind.SectionModulus, InputSource.Design);

    public static Trail PlasticModulus(RoundMember m) => Trail.Given("plastic section modulus", "Z", m.Section.PlasticModulusM3, QuantityKind.SectionModulus, InputSource.Design);

    public static Trail WeldedShare(RoundMember m) => Trail.Given("share of the section within 25 mm of a weld", "w", m.WeldedShare, QuantityKind.Ratio, InputSource.Design);

    public static (Trail Axial, Trail Moment) Forces(MemberForces forces) => (
        Trail.Given(forces.AxialN >= 0 ? "compression" : "tension", "N", Math.Abs(forces.AxialN), QuantityKind.Force, FromAnalysis),
        Trail.Given("bending moment, resultant", "M", Math.Abs(forces.MomentNm), QuantityKind.Moment, FromAnalysis));

    /// <summary>A weighted strength: the part near the weld with the weld's strength, the rest with the parent's.</summary>
    public static double Weighted(RoundMember m, double parent, double welded) => ((1 - m.WeldedShare) * parent) + (m.WeldedShare * Math.Min(parent, welded));

    public static void DemandFamily(RoundMember member, IMemberRules rules)
    {
        if (member.Metal.Family != rules.Family)
        {
            throw new ArgumentException($"{rules.Name} is not for {member.Metal.Name}.", nameof(member));
        }
    }

    private static Source FromAnalysis { get; } = new("second-order analysis of the mast", SourceKind.Derived);
}
