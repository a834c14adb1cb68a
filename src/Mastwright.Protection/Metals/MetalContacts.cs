using System.Collections.Immutable;
using Mastwright.Model.Trails;
using static System.FormattableString;

namespace Mastwright.Protection.Metals;

/// <summary>Checks every pair of metals that touch, and what the trade knows besides the table. One check for each contact, rule and rope.</summary>
public static class MetalContacts
{
    private static readonly Source IndexRule = Source.Literature("Anodic index table and its limits of 0.15, 0.25 and 0.50 V (MIL-STD-889 and MIL-F-14072 practice), as reprinted");

    private static readonly ImmutableArray<Func<MetalContact, Check?>> TradeRules =
    [
        AluminiumInConcrete, StainlessThreadInAluminium, CopperAboveZinc, CopperBondedToZincInSoil,
    ];

    /// <summary>Checks contacts and ropes.</summary>
    /// <param name="contacts">Contacts.</param>
    /// <param name="ropes">Ropes in the sun.</param>
    public static ImmutableArray<Check> All(ImmutableArray<MetalContact> contacts, ImmutableArray<RopeInSun> ropes) =>
    [
        .. contacts.SelectMany(For),
        .. ropes.Select(Rope),
    ];

    /// <summary>Every check of one contact: the pair by the table where two metals touch, and each trade rule that applies.</summary>
    public static IEnumerable<Check> For(MetalContact contact)
    {
        if (contact.Joint != JointKind.InConcrete)
            yield return Pair(contact);
        foreach (var rule in TradeRules)
        {
            if (rule(contact) is { } check)
                yield return check;
        }
    }

    /// <summary>Greatest difference of anodic index that is borne, in volts.</summary>
    public static double AllowedV(ContactEnvironment environment) => environment switch
    {
        ContactEnvironment.Indoor => 0.25,
        ContactEnvironment.Controlled => 0.50,
        _ => 0.15,
    };

    private static Check Pair(MetalContact c)
    {
        var first = Trail.Given($"anodic index of {c.First.Name}", "V1", c.First.AnodicIndexV, QuantityKind.PeakVoltage, c.First.Source);
        var second = Trail.Given($"anodic index of {c.Second.Name}", "V2", c.Second.AnodicIndexV, QuantityKind.PeakVoltage, c.Second.Source);
        var difference = Trail.Computed("difference of anodic index", "ΔV", Math.Round(Math.Abs(c.First.AnodicIndexV - c.Second.AnodicIndexV), 6), QuantityKind.PeakVoltage, "ΔV = |V1 − V2|", IndexRule, first, second)
            .Remark("Published tables differ by up to 0.15 V and in order; the rule is for orientation.");
        var allowed = Trail.Given("allowed difference", "ΔVa", AllowedV(c.Environment), QuantityKind.PeakVoltage, IndexRule);
        var eaten = c.First.AnodicIndexV >= c.Second.AnodicIndexV ? c.First : c.Second;
        var check = Check.AtMost($"survive.metals[{c.Where}]", Trade.Survive, $"{c.First.Name} on {c.Second.Name} at {c.Where}", difference, allowed,
            c.Environment.ToString().ToLowerInvariant(), Cure(c, eaten));
        // A barrier does not change the table; it turns a failing pair into one to be inspected.
        return check.Verdict == Verdict.Fail && c.Barrier != JointBarrier.None && c.Barrier != JointBarrier.AntiSeize
            ? check with { Verdict = Verdict.Caution, Cure = $"Keep the {Words(c.Barrier)} whole: inspect it each year. {eaten.Name} is the metal that goes." }
            : check;
    }

    private static string Cure(MetalContact c, ContactMetal eaten)
    {
        var pair = (c.First.Family, c.Second.Family);
        var area = Area(c, eaten) is { } ratio && ratio < 0.1
            ? Invariant($" The area of {eaten.Name} is small beside the other's, which makes it go fast.")
            : "";
        var cure = pair switch
        {
            (MetalFamily.Copper, MetalFamily.Aluminium) or (MetalFamily.Aluminium, MetalFamily.Copper) =>
                "Use a tinned or bimetal lug, joint compound, and a seal; aluminium uppermost.",
            (MetalFamily.Copper, MetalFamily.Zinc) or (MetalFamily.Zinc, MetalFamily.Copper) =>
                "Put a stainless plate or clamp between copper and galvanised steel, and seal the joint.",
            (MetalFamily.Stainless, MetalFamily.Aluminium) or (MetalFamily.Aluminium, MetalFamily.Stainless) =>
                "Small stainless screws in much aluminium serve for years with joint compound and a seal; large stainless faces need an insulating washer.",
            (MetalFamily.Copper, MetalFamily.Steel) or (MetalFamily.Steel, MetalFamily.Copper) =>
                "Braze or weld the joint and coat it, or put stainless between.",
            _ => "Choose metals closer in the table, or separate them and keep the water out with joint compound and a seal.",
        };
        return $"{cure} {eaten.Name} is the metal that goes.{area}";
    }

    private static double? Area(MetalContact c, ContactMetal eaten) =>
        c.FirstAreaOverSecond is not { } ratio || ratio <= 0 ? null : ReferenceEquals(eaten, c.First) ? ratio : 1 / ratio;

    private static Check? AluminiumInConcrete(MetalContact c) =>
        c.Joint != JointKind.InConcrete || c.First.Family != MetalFamily.Aluminium ? null : Rule(c, "concrete", "Aluminium kept off wet concrete",
            c.Barrier == JointBarrier.Insulation, "Put half an inch (12 mm) of insulating board or two coats of bitumen between aluminium and concrete: wet cement eats aluminium and the swelling cracks the concrete.");

    private static Check? StainlessThreadInAluminium(MetalContact c) =>
        c.Joint != JointKind.Thread || c.First.Family != MetalFamily.Stainless || c.Second.Family != MetalFamily.Aluminium ? null
            : Rule(c, "thread", "Stainless screw in an aluminium thread can be undone again", c.Barrier == JointBarrier.AntiSeize,
                "Grease the thread with anti-seize compound, or use a stainless insert: bare stainless seizes in aluminium.");

    private static Check? CopperAboveZinc(MetalContact c)
    {
        if (c.Joint != JointKind.RunoffAbove || c.First.Family != MetalFamily.Copper || c.Second.Family is not (MetalFamily.Zinc or MetalFamily.Aluminium))
            return null;
        return Rule(c, "runoff", $"No rain from copper onto {c.Second.Name}", false,
            $"Put the copper below the {c.Second.Name}, or tin it, or lead its drip clear: copper salts in the rain eat the coat below.");
    }

    private static Check? CopperBondedToZincInSoil(MetalContact c)
    {
        var copper = c.First.Family == MetalFamily.Copper || c.Second.Family == MetalFamily.Copper;
        var zinc = c.First.Family is MetalFamily.Zinc or MetalFamily.Steel || c.Second.Family is MetalFamily.Zinc or MetalFamily.Steel;
        return c.Joint != JointKind.BondedThroughSoil || !copper || !zinc ? null
            : Rule(c, "soil", "Galvanised anchor not bonded to copper in the same soil", c.Barrier == JointBarrier.Insulation,
                "Break the path with an insulator in the guy, or bond through tinned copper or galvanised steel earths; dig and inspect the anchor: it is eaten below ground where no one sees it.");
    }

    private static Check Rule(MetalContact c, string rule, string title, bool kept, string cure)
    {
        var demand = Trail.Given("rule asks for", "a", 1, QuantityKind.Count, Source.CommonPractice);
        var found = Trail.Given("rule kept", "b", kept ? 1 : 0, QuantityKind.Count, Source.DesignFile);
        return new($"survive.metals.{rule}[{c.Where}]", Trade.Survive, $"{title} ({c.Where})", demand, found, kept ? 1 : double.PositiveInfinity,
            kept ? Verdict.Pass : Verdict.Fail, "common practice", kept ? "" : cure);
    }

    private static Check Rope(RopeInSun rope)
    {
        // Aramid loses its strength in the sun within a season or two; polyester and others last some years bare.
        var bareYears = rope.Fibre.Contains("aramid", StringComparison.OrdinalIgnoreCase) ? 0.25
            : rope.Fibre.Contains("polyester", StringComparison.OrdinalIgnoreCase) ? 8
            : rope.Fibre.Contains("polypropylene", StringComparison.OrdinalIgnoreCase) ? 1 : 3;
        var years = rope.Jacketed ? 15 : bareYears;
        return Check.AtMost($"survive.rope-sun[{rope.Where}]", Trade.Survive, $"{rope.Fibre} rope at {rope.Where} is not too long in the sun",
            Trail.Given("years in the sun", "t", rope.YearsInUse, QuantityKind.Count, Source.DesignFile),
            Trail.Given("years until replacement", "ta", years, QuantityKind.Count, Source.CommonPractice).Remark("Follow the maker's figure where there is one."),
            rope.Jacketed ? "jacketed" : "bare", rope.Jacketed ? "Replace the rope; look for breaks in the jacket." : "Use jacketed rope, and replace this one.");
    }

    private static string Words(JointBarrier barrier) => barrier switch
    {
        JointBarrier.CompoundAndSeal => "compound and seal",
        JointBarrier.TransitionMetal => "transition metal",
        _ => "insulation",
    };
}
