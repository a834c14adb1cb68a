using Mastwright.Model.Trails;

namespace Mastwright.Structure.Vibration;

/// <summary>Screens a guy for the two vibrations that wear guys out: aeolian vibration when tight, galloping when iced.</summary>
public static class GuyWindScreen
{
    /// <summary>Initial tension above this share of breaking strength invites aeolian vibration.</summary>
    public const double TightShare = 0.15;

    /// <summary>Initial tension below this share leaves a guy slack enough to gallop and to let the mast sway.</summary>
    public const double LooseShare = 0.07;

    private static readonly Source Range = new("TIA-222, usual range of initial guy tension 7 to 15 % of breaking strength", SourceKind.FromMemory);

    /// <summary>Initial tension against breaking strength: not above 15 %, not below 7 %.</summary>
    /// <param name="guyName">Which guy.</param>
    /// <param name="initialTensionN">Tension at the anchor in still air.</param>
    /// <param name="breakingStrengthN">Breaking strength of the strand.</param>
    public static IReadOnlyList<Check> InitialTension(string guyName, double initialTensionN, double breakingStrengthN)
    {
        var tension = Trail.Given($"initial tension of guy {guyName}", "T₀", initialTensionN, QuantityKind.Force, new Source("still air", SourceKind.Derived));
        var strength = Trail.Given("breaking strength", "T_b", breakingStrengthN, QuantityKind.Force, new Source("the strand's data", SourceKind.MakerData));
        var tight = Trail.Computed("tension above which aeolian vibration is to be expected", "0.15 T_b", TightShare * breakingStrengthN, QuantityKind.Force, "0.15·T_b", Range, strength);
        var loose = Trail.Computed("tension below which galloping and sway are to be expected", "0.07 T_b", LooseShare * breakingStrengthN, QuantityKind.Force, "0.07·T_b", Range, strength);
        return
        [
            Check.AtMost($"stand.guy.aeolian[{guyName}]", Trade.Stand, "Initial tension low enough against aeolian vibration", tension, tight, "still air", "Lower the initial tension or fit dampers near the ends."),
            Check.AtLeast($"stand.guy.slackness[{guyName}]", Trade.Stand, "Initial tension high enough against galloping and sway", tension, loose, "still air", "Raise the initial tension."),
        ];
    }

    /// <summary>Loops into which a steady wind breaks a guy: shedding frequency over string frequency.</summary>
    public static Trail AeolianLoops(GuyVibration guy, double diameterM, double speedMPerS)
    {
        var shedding = WindExcitation.SheddingFrequency(speedMPerS, diameterM);
        return Trail.Computed(
            $"loops of guy {guy.GuyName} in a wind of {speedMPerS:F0} m/s", "n", shedding.Value / guy.OutOfPlaneHz, QuantityKind.Ratio, "n = f/f₁",
            new Source("taut string", SourceKind.Literature), shedding, guy.Explain())
            .Within("steady winds of about 1 to 7 m/s; gusty wind does not lock on");
    }

    /// <summary>Galloping of an iced guy: the onset speed against the wind that goes with the ice.</summary>
    /// <param name="iced">Vibration of the guy with its ice.</param>
    /// <param name="icedDiameterM">Width over the ice.</param>
    /// <param name="windWithIceMPerS">Wind speed that accompanies the ice.</param>
    /// <param name="logDecrement">Damping of the strand, 0.02 for spiral strand in EN 1991-1-4 table F.2 (from memory).</param>
    public static Check Galloping(GuyVibration iced, double icedDiameterM, double windWithIceMPerS, double logDecrement = 0.02)
    {
        var scruton = WindExcitation.Scruton(iced.MassKgPerM, logDecrement, icedDiameterM);
        var onset = WindExcitation.GallopingOnset(scruton, iced.OutOfPlaneHz, icedDiameterM);
        var wind = Trail.Given("wind with ice", "v", windWithIceMPerS, QuantityKind.Speed, new Source("given", SourceKind.Design));
        return Check.AtLeast(
            $"stand.guy.galloping[{iced.GuyName}]", Trade.Stand, "Iced guy does not gallop in the wind that goes with the ice", onset, wind, "ice with wind",
            "Expect galloping in freezing rain with wind: allow room between guys, use forgiving end fittings, tie a weighted rope to the guy as a damper.");
    }
}
