using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.People;

/// <summary>Something that could be touched and its radio-frequency voltage to ground.</summary>
/// <param name="Name">Name, e.g. <c>"mast base"</c>, <c>"lowest guy section"</c>.</param>
/// <param name="RmsV">Voltage to ground, rms, at full power, with its trail.</param>
/// <param name="HeightM">Height of its lowest point a person could reach in metres.</param>
public sealed record TouchablePart(string Name, Trail RmsV, double HeightM);

/// <summary>Burns from touching metal at radio-frequency voltage, and the fence that prevents them.</summary>
public static class RfBurn
{
    /// <summary>Goes with every figure about burns and fences.</summary>
    public const string Caution =
        "Radio-frequency burns are deep and are not felt at once. Never energise an antenna without a locked fence or cover that keeps children and visitors out of reach, " +
        "and post the warning your local code asks for. Switch off, lock out and earth the mast before anyone goes inside.";

    /// <summary>Height above which a standing person cannot reach, in metres (common practice).</summary>
    public const double ReachHeightM = 2.5;

    /// <summary>Distance from a fence at which an arm through or over it ends, in metres (common practice).</summary>
    public const double ArmM = 1.0;

    private const double BodyOhm = 500;

    private static readonly Source Contact = Source.Literature("ICNIRP contact-current reference levels 2010, as given in Bioelectromagnetism (handbook), table 7.4", "2010");

    /// <summary>Limit of contact current in A rms: 20 mA public, 40 mA occupational, stated for 0.1 to 10 MHz and held above it too.</summary>
    public static Trail ContactLimit(Population population, double frequencyHz) =>
        Trail.Given("contact current limit", "Ilim", population == Population.Public ? 0.020 : 0.040, QuantityKind.RmsCurrent, Contact)
            .Within("0.1 to 10 MHz", frequencyHz is < 1e5 or > 1e7 ? "The contact-current limit is stated for 0.1 to 10 MHz; it is held outside that too." : null);

    /// <summary>Limit of the current through any limb in A rms: 45 mA public, 100 mA occupational, 0.1 to 110 MHz, averaged over 6 minutes (ICNIRP 2020 table 9).</summary>
    public static Trail LimbLimit(Population population) =>
        Trail.Given("limb current limit", "Il", population == Population.Public ? 0.045 : 0.100, QuantityKind.RmsCurrent,
            Source.FromMemory("ICNIRP Guidelines for limiting exposure to electromagnetic fields, table 9", "2020"));

    /// <summary>Current through a person who grasps the part: U/500 Ω. Feet on wet ground are the worst; the source is taken as stiff.</summary>
    public static Trail ContactCurrent(Trail rmsV) =>
        Trail.Computed("contact current", "I", rmsV.Value / BodyOhm, QuantityKind.RmsCurrent, "I = U/Zb", Source.Derived("docs/theory/exposure.md"), rmsV,
            Trail.Assumed("body impedance", "Zb", BodyOhm, QuantityKind.Resistance, "a grasping hand to wet feet at high frequency, rounded down"));

    /// <summary>A check for every part within reach. A fence or cover cures it; power does not, in practice.</summary>
    public static ImmutableArray<Check> Checks(ImmutableArray<TouchablePart> parts, Population population, double frequencyHz, bool fenced) =>
    [
        .. parts.Where(p => p.HeightM < ReachHeightM).Select(p =>
        {
            var check = Check.AtMost($"survive.burn[{p.Name}]", Trade.Survive, $"Touching {p.Name} does not burn", ContactCurrent(p.RmsV), ContactLimit(population, frequencyHz),
                p.Name, "Put a locked fence or an insulating cover round it, with a warning.", Caution);
            return check.Verdict != Verdict.Fail || !fenced ? check
                : check with { Verdict = Verdict.Caution, Cure = "The fence is what keeps people from a burn: keep it locked and whole." };
        }),
    ];

    /// <summary>A check that the fence as built is wide enough.</summary>
    /// <param name="builtM">Least distance of the fence from the mast, with its trail.</param>
    /// <param name="neededM">What <see cref="FenceRadius"/> asks for.</param>
    public static Check FenceCheck(Trail builtM, Trail neededM) => Check.AtLeast("survive.fence", Trade.Survive, "The fence keeps people far enough from the mast",
        builtM, neededM, "highest of all limits", "Widen the fence, or lower the power or the duty.", Caution);

    /// <summary>Height below which a grown person bends over a fence, in metres (common practice).</summary>
    public const double LeanHeightM = 1.5;

    /// <summary>Least height of a fence round conductors above 1000 V by the rule most codes resemble, in metres: 7 ft.</summary>
    public const double CodeHeightM = 7 * 0.3048;

    /// <summary>
    /// How far a person reaches beyond a fence: an arm through or over it, and the length by which a low fence is bent over.
    /// </summary>
    /// <param name="heightM">Height of the fence in metres; null when it is not known.</param>
    public static Trail ReachOver(double? heightM)
    {
        var lean = heightM is { } h ? Math.Max(0, LeanHeightM - h) : 0;
        var arm = Trail.Given("arm", "a", ArmM, QuantityKind.Length, Source.CommonPractice);
        return Trail.Computed("reach beyond the fence", "a'", ArmM + lean, QuantityKind.Length, "a' = a + max(0, 1.5 m − h)", Source.CommonPractice,
            heightM is { } known ? [arm, Trail.Given("height of the fence", "h", known, QuantityKind.Length, Source.DesignFile)] : [arm]);
    }

    /// <summary>A check of the fence's height where the base carries more than 1000 V; a lower fence is a caution, as local codes differ.</summary>
    /// <param name="heightM">Height of the fence in metres.</param>
    /// <param name="baseRmsV">Highest base voltage, rms.</param>
    public static Check? HeightCheck(double heightM, Trail baseRmsV)
    {
        if (baseRmsV.Value <= 1000)
            return null;
        var check = Check.AtLeast("survive.fence.height", Trade.Survive, "The fence is not climbed or reached over by chance",
            Trail.Given("height of the fence", "h", heightM, QuantityKind.Length, Source.DesignFile),
            Trail.Given("height round conductors above 1000 V", "hmin", CodeHeightM, QuantityKind.Length, Source.FromMemory("NFPA 70, National Electrical Code, 110.31: 7 ft, or 6 ft and a foot of barbed wire", "2020")),
            "base voltage above 1000 V", "Raise the fence to 7 ft, or as your local code asks.", Caution);
        return check.Verdict == Verdict.Fail ? check with { Verdict = Verdict.Caution } : check;
    }

    /// <summary>
    /// Radius of the fence round the base: beyond every exposure distance for the public, and an arm's length beyond anything that burns.
    /// </summary>
    /// <param name="exposure">Public exposure distances, near-field where solved.</param>
    /// <param name="burnReachM">Farthest horizontal distance of a part that burns and lies within reach, in metres; 0 for the base alone.</param>
    /// <param name="reach">How far a person reaches beyond the fence, see <see cref="ReachOver"/>; null for an arm.</param>
    public static Trail FenceRadius(ImmutableArray<Trail> exposure, double burnReachM, Trail? reach = null)
    {
        var burn = Trail.Given("reach of parts that burn", "rb", burnReachM, QuantityKind.Length, Source.DesignFile);
        var arm = reach ?? ReachOver(null);
        var worst = exposure.IsDefaultOrEmpty ? 0 : exposure.Max(t => t.Value);
        return Trail.Computed("fence radius", "Rfence", Math.Max(worst, burnReachM + arm.Value), QuantityKind.Length, "Rfence = max(R of every limit, rb + a)", Source.Derived("docs/theory/exposure.md"),
            [.. exposure.IsDefault ? [] : exposure, burn, arm])
            .Remark("Where the fence would have to stand on a neighbour's ground, lower the power or the duty instead.");
    }
}
