using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Members;

/// <summary>Forces on a mast section, from a second-order analysis.</summary>
/// <param name="AxialN">Axial force; compression positive.</param>
/// <param name="MomentNm">Resultant bending moment.</param>
/// <param name="ShearN">Resultant shear force.</param>
/// <param name="TorqueNm">Torque.</param>
public sealed record SectionForces(double AxialN, double MomentNm, double ShearN, double TorqueNm = 0);

/// <summary>Checks of mast members: a tube as a whole, a lattice by its worst leg and brace.</summary>
public static class MemberChecks
{
    private static readonly Source Page = Source.Derived("docs/theory/members.md");

    /// <summary>A mast tube between guys, or any single round member.</summary>
    /// <param name="part">Which, in words; goes into the check's name, e.g. <c>"mast A, 6 to 12 m"</c>.</param>
    /// <param name="rules">Member rules for its metal.</param>
    /// <param name="member">The member.</param>
    /// <param name="forces">Forces on it.</param>
    /// <param name="governingCase">Load case and direction, in words.</param>
    public static Check Tube(string part, IMemberRules rules, RoundMember member, MemberForces forces, string governingCase) => AtMostOne(
        $"stand.mast.tube[{part}]", "Mast tube in compression and bending", rules.Use(member, forces), governingCase,
        "Take a larger or thicker tube there, add a guy level, or lower the guy tension.");

    /// <summary>The worst leg of a lattice over one panel: compression side and, where it comes to that, tension side.</summary>
    public static Check Leg(string part, IMemberRules rules, LatticeSection lattice, SectionForces forces, string governingCase)
    {
        var n = Trail.Given("axial force on the mast", "N", forces.AxialN, QuantityKind.Force, FromAnalysis);
        var m = Trail.Given("bending moment on the mast, resultant", "M", Math.Abs(forces.MomentNm), QuantityKind.Moment, FromAnalysis);
        var r = Trail.Given("distance of a leg from the middle", "R", lattice.LegRadiusM, QuantityKind.Length, InputSource.Design);
        var bending = 2 * Math.Abs(forces.MomentNm) / (lattice.Legs * lattice.LegRadiusM);
        var push = (forces.AxialN / lattice.Legs) + bending;
        var pull = (forces.AxialN / lattice.Legs) - bending;
        var member = LegMember(lattice);
        var pushUse = rules.Use(member, new(push, 0));
        var use = pushUse;
        var force = push;
        if (pull < 0 && rules.Use(member, new(pull, 0)) is { } pullUse && pullUse.Value > pushUse.Value)
        {
            (use, force) = (pullUse, pull);
        }

        var leg = Trail.Computed("force in the worst leg", "Nl", force, QuantityKind.Force, "Nl = N/n ± 2·M/(n·R), moment towards the worst leg", Page, n, m, r);
        return AtMostOne(
            $"stand.mast.leg[{part}]", "Lattice leg between bracing points", Trail.Computed("use of the leg", "u", use.Value, QuantityKind.Ratio, "u from the force in the leg and its strength", use.Source, leg, use), governingCase,
            "Take a section with stronger legs or shorter panels there, add a guy level, or lower the guy tension.");
    }

    /// <summary>The worst diagonal of a lattice, from shear and torque and the least shear that steadies the legs.</summary>
    public static Check Brace(string part, IMemberRules rules, LatticeSection lattice, SectionForces forces, string governingCase)
    {
        var n = Trail.Given("axial force on the mast", "N", Math.Max(0, forces.AxialN), QuantityKind.Force, FromAnalysis);
        var applied = Trail.Given("shear force on the mast, resultant", "V", Math.Abs(forces.ShearN), QuantityKind.Force, FromAnalysis);
        var v = Trail.Computed(
            "shear on the bracing", "Vb", Math.Max(applied.Value, 0.02 * n.Value), QuantityKind.Force, "Vb = larger of V and 2 % of N", Source.FromMemory("ANSI/AISC 360, section E6.2: lacing carries 2 % of the axial strength", "2016"), applied, n);
        var t = Trail.Given("torque on the mast", "T", Math.Abs(forces.TorqueNm), QuantityKind.Moment, FromAnalysis);
        var inFace = (2.0 / lattice.Legs * v.Value) + (t.Value * lattice.FaceWidthM / (2 * lattice.EnclosedAreaM2));
        var force = inFace * lattice.DiagonalLengthM / lattice.FaceWidthM / lattice.DiagonalsPerPanel;
        var cross = lattice.Pattern == Bracing.Cross;
        var member = new RoundMember(lattice.Diagonal, lattice.Metal, lattice.DiagonalLengthM)
        {
            // Crossing diagonals hold each other in the middle.
            EffectiveLengthFactor = cross ? 0.5 : 1.0,
            WeldedShare = lattice.Welded ? 1 : 0,
        };
        var brace = Trail.Computed(
            "force in the worst diagonal", "Nd", force, QuantityKind.Force,
            cross ? "Nd = (2·Vb/n + T·b/(2·Ae))·d/b, shared by two diagonals" : "Nd = (2·Vb/n + T·b/(2·Ae))·d/b", Page, v, t);
        // It may be pushed or pulled; the weaker way counts.
        var push = rules.Use(member, new(force, 0));
        var pull = rules.Use(member, new(-force, 0));
        var use = push.Value >= pull.Value ? push : pull;
        return AtMostOne(
            $"stand.mast.brace[{part}]", "Lattice bracing", Trail.Computed("use of the diagonal", "u", use.Value, QuantityKind.Ratio, "u from the force in the diagonal and its strength", use.Source, brace, use), governingCase,
            "Take a section with stronger bracing there, or a guy attachment that brings less torque.");
    }

    /// <summary>The leg as a member over one panel, with the share of its section that the bracing welds soften.</summary>
    public static RoundMember LegMember(LatticeSection lattice)
    {
        // Two diagonals (and two horizontals) meet a leg at a node; each weld softens its own width and 25 mm on either side.
        var around = 2 * (lattice.Diagonal.OuterDiameterM + 0.050) / (Math.PI * lattice.Leg.OuterDiameterM);
        return new(lattice.Leg, lattice.Metal, lattice.PanelHeightM) { WeldedShare = lattice.Welded ? Math.Min(1, around) : 0 };
    }

    private static Source FromAnalysis { get; } = new("second-order analysis of the mast", SourceKind.Derived);

    private static Check AtMostOne(string id, string title, Trail use, string governingCase, string cure) => Check.AtMost(
        id, Trade.Stand, title, use, Trail.Given("limit of use", "1", 1, QuantityKind.Ratio, use.Source), governingCase, cure,
        "Rules, maker's data and local codes come first; have a licensed engineer look at any mast that could hurt someone.");
}
