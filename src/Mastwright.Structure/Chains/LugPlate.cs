using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Chains;

/// <summary>A plate with a hole for a pin or shackle: a guy lug on the mast, an anchor plate, an equaliser plate (ANSI/AISC 360-16 section D5).</summary>
/// <param name="ThicknessM">Thickness t, m.</param>
/// <param name="WidthM">Width w across the pull, m.</param>
/// <param name="HoleM">Diameter of the hole, m.</param>
/// <param name="PinM">Diameter of the pin in it, m.</param>
/// <param name="EndDistanceM">Distance a from the edge of the hole to the end of the plate, along the pull, m.</param>
/// <param name="Metal">Metal of the plate.</param>
public sealed record LugPlate(double ThicknessM, double WidthM, double HoleM, double PinM, double EndDistanceM, MemberMetal Metal)
{
    private const double EffectiveAllowanceM = 0.016;

    private double EdgeM => (WidthM - HoleM) / 2;

    private double EffectiveEdgeM => Math.Max(0, Math.Min((2 * ThicknessM) + EffectiveAllowanceM, EdgeM));

    /// <summary>Nominal strength at which it gives way, no factor taken; for an <see cref="AnchorEye"/> or a <see cref="MastAttachment"/> of a chain.</summary>
    public double BreakingN => Math.Min(Math.Min(TensionN, ShearN), Math.Min(BearingN, YieldN));

    private double TensionN => Metal.UltimatePa * 2 * ThicknessM * EffectiveEdgeM;

    private double ShearN => 0.6 * Metal.UltimatePa * 2 * ThicknessM * (EndDistanceM + (PinM / 2));

    private double BearingN => 1.8 * Metal.YieldPa * ThicknessM * PinM;

    private double YieldN => Metal.YieldPa * ThicknessM * WidthM;

    /// <summary>The plate against a pull in its plane, away from the end distance.</summary>
    /// <param name="part">Which plate; goes into the check's name.</param>
    /// <param name="pullN">Greatest pull, N.</param>
    /// <param name="factors">Factors of the member rules in use.</param>
    /// <param name="governingCase">The case, in words.</param>
    public Check Examine(string part, double pullN, ResistanceFactors factors, string governingCase)
    {
        var t = Given("thickness", "t", ThicknessM);
        var edge = Given("effective edge beside the hole, at most 2·t + 16 mm", "be", EffectiveEdgeM);
        var end = Given("end distance", "a", EndDistanceM);
        var pin = Given("pin diameter", "d", PinM);
        var width = Given("width", "w", WidthM);
        var rupture = Factor("rupture and bearing", "φu", factors.Rupture);
        var yielding = Factor("yielding", "φy", factors.Yielding);
        Trail[] ways =
        [
            Way("tearing beside the hole", factors.Rupture * TensionN, "R = φu·Fu·2·t·be", rupture, Metal.Ultimate, t, edge),
            Way("shearing out behind the hole", factors.Rupture * ShearN, "R = φu·0.6·Fu·2·t·(a + d/2)", rupture, Metal.Ultimate, t, end, pin),
            Way("bearing of the pin", factors.Rupture * BearingN, "R = φu·1.8·Fy·t·d", rupture, Metal.Yield, t, pin),
            Way("yielding across the plate", factors.Yielding * YieldN, "R = φy·Fy·t·w", yielding, Metal.Yield, t, width),
        ];
        var least = ways.MinBy(w => w.Value)!;
        var fits = HoleM >= PinM && EndDistanceM >= 1.33 * EffectiveEdgeM;
        return Check.AtMost(
            $"stand.guy.lug[{part}]", Trade.Stand, $"Lug plate: {least.Name} governs", Trail.Given("pull on the plate", "T", pullN, QuantityKind.Force, new("second-order analysis of the mast", SourceKind.Derived)),
            Trail.Computed("strength of the plate", "R", least.Value, QuantityKind.Force, "R = least of four ways to give way", Section, ways)
                .Within("end distance at least 1.33·be, pull in the plane of the plate, hole within 1 mm of the pin", fits ? null : "The end distance is too short or the pin does not fit the hole, so the section's formulas do not hold."),
            governingCase, "Make the plate thicker or the pin larger, and keep the hole away from the edges.", ChainAnalysis.Caution);
    }

    private static Source Section { get; } = Source.FromMemory("ANSI/AISC 360, section D5", "2016");

    private static Trail Given(string name, string symbol, double valueM) => Trail.Given(name, symbol, valueM, QuantityKind.FineLength, InputSource.Design);

    private static Trail Factor(string name, string symbol, double value) => Trail.Given($"factor on {name}", symbol, value, QuantityKind.Ratio, Section, "changeable");

    private static Trail Way(string name, double value, string formula, params Trail[] inputs) => Trail.Computed(name, "R", value, QuantityKind.Force, formula, Section, inputs);
}
