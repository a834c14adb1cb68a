using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>A round member between its points of support: a mast tube between guys, a lattice leg in a panel, a brace.</summary>
/// <param name="Section">Cross-section.</param>
/// <param name="Metal">Metal.</param>
/// <param name="LengthM">Length between points held against sideways movement, m.</param>
public sealed record RoundMember(RoundSection Section, MemberMetal Metal, double LengthM)
{
    /// <summary>Effective length factor K: 1 for pinned ends.</summary>
    public double EffectiveLengthFactor { get; init; } = 1;

    /// <summary>Share of the cross-section within 25 mm of a weld, 0 to 1. Softens aluminium only.</summary>
    public double WeldedShare { get; init; }

    /// <summary>Whether a weld across the member lies away from its ends (beyond 5 % of the length), where it weakens it against buckling too.</summary>
    public bool WeldAwayFromEnds { get; init; }

    /// <summary>Net over gross area where bolt holes cut it; 1 without holes.</summary>
    public double NetAreaShare { get; init; } = 1;

    /// <summary>Whether a steel tube was finished hot (EN 10210); cold-formed otherwise.</summary>
    public bool HotFinished { get; init; }

    internal Trail EffectiveLength => Trail.Computed(
        "effective length", "Lc", EffectiveLengthFactor * LengthM, QuantityKind.Length, "Lc = K·L", Source.Literature("Euler columns"),
        Trail.Given("effective length factor", "K", EffectiveLengthFactor, QuantityKind.Ratio, new Source("pinned ends unless stated", SourceKind.Assumed)),
        Trail.Given("length between supports", "L", LengthM, QuantityKind.Length, InputSource.Design));
}

/// <summary>Forces in a member, from a second-order analysis with the loads that go with the rules (factored for resistance-factor rules, service loads for allowable-strength rules).</summary>
/// <param name="AxialN">Axial force; compression positive, tension negative.</param>
/// <param name="MomentNm">Resultant bending moment, not negative.</param>
public sealed record MemberForces(double AxialN, double MomentNm);

/// <summary>Strengths of a member by one set of rules, factors included.</summary>
/// <param name="Compression">Design or allowable strength in compression, N.</param>
/// <param name="Tension">Design or allowable strength in tension, N.</param>
/// <param name="Bending">Design or allowable strength in bending, N·m.</param>
public sealed record MemberStrength(Trail Compression, Trail Tension, Trail Bending);

/// <summary>
/// Factors on nominal strength, all multipliers: a resistance factor φ, 1/Ω for allowable strength, or 1/γM. Change them with <c>with</c>.
/// </summary>
/// <param name="Yielding">On yielding of the gross section in tension.</param>
/// <param name="Rupture">On rupture of the net section in tension.</param>
/// <param name="Compression">On compression.</param>
/// <param name="Bending">On bending.</param>
public sealed record ResistanceFactors(double Yielding, double Rupture, double Compression, double Bending);

/// <summary>A published set of rules for members. A new one is one new class and one line in <see cref="MemberRules"/>.</summary>
public interface IMemberRules
{
    /// <summary>Name with edition and format, e.g. <c>"AISC 360-16 LRFD"</c>.</summary>
    string Name { get; }

    /// <summary>The metal it is for.</summary>
    MetalFamily Family { get; }

    /// <summary>The factors in use.</summary>
    ResistanceFactors Factors { get; }

    /// <summary>The same rules with other factors.</summary>
    IMemberRules With(ResistanceFactors factors);

    /// <summary>Factored strengths of a member.</summary>
    /// <exception cref="ArgumentException">The metal is not of this family: a fault of the calling code.</exception>
    MemberStrength Strength(RoundMember member);

    /// <summary>Share of capacity used by axial force and bending together; 1 is the limit.</summary>
    Trail Use(RoundMember member, MemberForces forces);
}

/// <summary>Every set of member rules there is, registered here and nowhere else.</summary>
public static class MemberRules
{
    /// <summary>All rules.</summary>
    public static ImmutableArray<IMemberRules> All { get; } =
        [AiscRules.Lrfd, AiscRules.Asd, AluminumManualRules.Lrfd, AluminumManualRules.Asd, EurocodeSteelRules.Carbon, EurocodeSteelRules.Stainless, new EurocodeAluminiumRules()];

    /// <summary>The rules of a name, or null; case and surrounding spaces do not matter.</summary>
    public static IMemberRules? Find(string name) =>
        All.FirstOrDefault(r => string.Equals(r.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
