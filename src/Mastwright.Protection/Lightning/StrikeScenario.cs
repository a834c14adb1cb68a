using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Lightning;

/// <summary>The mast a strike comes down.</summary>
/// <param name="HeightM">Height in metres.</param>
/// <param name="RadiusM">Equivalent radius in metres.</param>
/// <param name="BaseCapacitanceF">Capacitance across the base insulator in farads.</param>
public sealed record StruckMast(double HeightM, double RadiusM, double BaseCapacitanceF = 20e-12);

/// <summary>The base gap and the straps on it; a mast that stands bonded to its plate has no gap.</summary>
/// <param name="Electrodes">The electrodes.</param>
/// <param name="SpacingM">Spacing in metres.</param>
/// <param name="Air">The densest air.</param>
/// <param name="StrapLengthM">Length of all strap in the gap's path, mast to plate, in metres.</param>
/// <param name="StrapWidthM">Width of the strap in metres.</param>
/// <param name="StrapThicknessM">Thickness of the strap in metres.</param>
/// <param name="StrapMetal">Metal of the strap.</param>
public sealed record StruckGap(
    GapElectrodes Electrodes, double SpacingM, AirState Air, double StrapLengthM, double StrapWidthM, double StrapThicknessM, StrikeMetal StrapMetal)
{
    /// <summary>
    /// Formative lag in seconds, as the equal-area rule has it: ∫(|u| − U₀)dt = U₀·lag. 100 ns makes a gap fire within 500 ns at 20 % over its static
    /// voltage (common practice, no source, says: within about 500 ns).
    /// </summary>
    public double FormativeLagS { get; init; } = 100e-9;

    /// <summary>Statistical lag in seconds, waited for a first electron, counted into the same area; small where the gap sees daylight.</summary>
    public double StatisticalLagS { get; init; }

    /// <summary>Toepler's constant in V·s/m; published values for air run from 0.004 to 0.02.</summary>
    public double ToeplerVsPerM { get; init; } = 0.01;

    /// <summary>Voltage of the burning arc in volts: a few hundred even at tens of kiloamperes (common practice, no source).</summary>
    public double ArcVolts { get; init; } = 300;
}

/// <summary>The earth under the mast: plate, radials and rods.</summary>
/// <param name="SoilOhmM">Soil resistivity in Ω·m.</param>
/// <param name="Radials">Number of equal radials; at least 1.</param>
/// <param name="RadialLengthM">Length of a radial in metres.</param>
/// <param name="RadialRadiusM">Radius of the radial wire in metres.</param>
/// <param name="DepthM">Depth in metres; radials on the turf count as 2 cm.</param>
/// <param name="Rods">Number of rods at the plate.</param>
/// <param name="RodLengthM">Length of a rod in metres.</param>
/// <param name="RodRadiusM">Radius of a rod in metres.</param>
/// <param name="RelativePermittivity">Relative permittivity of the soil.</param>
public sealed record StruckEarth(
    double SoilOhmM, int Radials, double RadialLengthM, double RadialRadiusM, double DepthM,
    int Rods = 0, double RodLengthM = 2.4, double RodRadiusM = 0.008, double RelativePermittivity = 10)
{
    /// <summary>Distance of the rods from the mast's axis in metres; they stand evenly spread, and are joined to the plate by leads of that length.</summary>
    public double RodDistanceM { get; init; } = 2.4;

    /// <summary>A buried ring, bonded to every radial that crosses it; null without one.</summary>
    public StruckRing? Ring { get; init; }

    /// <summary>Metal of the radials.</summary>
    public StrikeMetal RadialMetal { get; init; } = StrikeMetal.Copper;
}

/// <summary>A ring of bare wire in the soil round the base.</summary>
/// <param name="DiameterM">Diameter in metres.</param>
/// <param name="WireRadiusM">Radius of its wire in metres.</param>
/// <param name="DepthM">Depth in metres.</param>
public sealed record StruckRing(double DiameterM, double WireRadiusM, double DepthM);

/// <summary>What a feed part is.</summary>
public enum FeedElement
{
    /// <summary>An inductance in henries.</summary>
    Coil,

    /// <summary>A capacitance in farads.</summary>
    Capacitor,

    /// <summary>A resistance in ohms.</summary>
    Resistor,

    /// <summary>A length of line in the path, its shield on the plate; the value is its delay in seconds.</summary>
    Line,

    /// <summary>A line from the path, open at its end; the value is its delay in seconds.</summary>
    OpenStub,

    /// <summary>A line from the path, shorted at its end; the value is its delay in seconds.</summary>
    ShortedStub,
}

/// <summary>One part of the network between the mast and the cable, in order from the mast.</summary>
/// <param name="Name">Name, unique.</param>
/// <param name="Element">What it is.</param>
/// <param name="InSeries">True in series; false from the line to the plate.</param>
/// <param name="Value">Value in SI units.</param>
/// <param name="StrengthPeakV">Strength in volts peak; null when unknown.</param>
public sealed record FeedPart(string Name, FeedElement Element, bool InSeries, double Value, double? StrengthPeakV = null)
{
    /// <summary>Impedance of a line in ohms; without meaning for other parts.</summary>
    public double LineOhm { get; init; } = 50;

    /// <summary>Whether it is a length of line.</summary>
    internal bool IsLine => Element is FeedElement.Line or FeedElement.OpenStub or FeedElement.ShortedStub;
}

/// <summary>How the cable to the house runs.</summary>
public enum CableRoute
{
    /// <summary>On the ground: 150 Ω and 0.7 of the speed of light for the shield over earth (assumed).</summary>
    OnGround,

    /// <summary>Buried: 80 Ω and 0.4 (assumed).</summary>
    Buried,

    /// <summary>Overhead: 400 Ω and 0.95 (assumed).</summary>
    Overhead,
}

/// <summary>The cable to the house.</summary>
/// <param name="LengthM">Length in metres.</param>
/// <param name="Route">How it runs.</param>
/// <param name="ImpedanceOhm">Impedance between conductor and shield.</param>
/// <param name="ShieldOhmPerM">Resistance of the shield in Ω/m.</param>
/// <param name="ArresterSparkoverV">Sparkover of an arrester between conductor and shield at the mast; null without one.</param>
/// <param name="CableStrengthPeakV">Strength between conductor and shield in volts peak; null when unknown.</param>
public sealed record StruckCable(
    double LengthM, CableRoute Route, double ImpedanceOhm = 50, double ShieldOhmPerM = 0.005, double? ArresterSparkoverV = null, double? CableStrengthPeakV = null)
{
    /// <summary>Sparkover of an arrester between conductor and shield where the cable enters the house; null without one.</summary>
    public double? HouseArresterSparkoverV { get; init; }

    /// <summary>Speed of the wave inside the cable over that of light.</summary>
    public double VelocityFactor { get; init; } = 0.66;
}

/// <summary>The house end.</summary>
/// <param name="PanelBonded">Whether the shield is bonded at an entry panel to the panel's own earth and to the mains earth.</param>
/// <param name="PanelEarthOhm">Resistance of the panel's earth.</param>
/// <param name="PanelStrapM">Length of the strap from panel to its earth in metres.</param>
/// <param name="MainsEarthOhm">Resistance of the mains earth.</param>
/// <param name="BondLengthM">Length of the bond from panel to mains earth in metres.</param>
/// <param name="EquipmentPathM">Length of the path through the radio and its mains lead to the mains earth in metres.</param>
public sealed record StruckHouse(
    bool PanelBonded, double PanelEarthOhm = 20, double PanelStrapM = 1, double MainsEarthOhm = 15, double BondLengthM = 6, double EquipmentPathM = 8);

/// <summary>A strike to follow.</summary>
/// <param name="Stroke">The current.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Gap">The base gap; null when the mast is bonded to the plate.</param>
/// <param name="Earth">The earth.</param>
/// <param name="Feed">Parts of the network from the mast on; may be empty.</param>
/// <param name="Cable">The cable; null when there is none.</param>
/// <param name="House">The house end; null when the cable's far end stands open.</param>
public sealed record StrikeScenario(
    HeidlerStroke Stroke, StruckMast Mast, StruckGap? Gap, StruckEarth Earth, ImmutableArray<FeedPart> Feed, StruckCable? Cable, StruckHouse? House)
{
    /// <summary>Strength of the base insulator in volts peak; null when unknown.</summary>
    public double? InsulatorStrengthPeakV { get; init; }

    /// <summary>Impedance of the line a network ends in when no cable is described, in ohms; null leaves its end open.</summary>
    public double? LineOhm { get; init; }

    /// <summary>Surge impedance of the lightning channel beside the current source, in ohms (about 1 kΩ; assumed).</summary>
    public double ChannelOhm { get; init; } = 1000;

    /// <summary>Time to follow in seconds; null takes five tails of the stroke, at most 2 ms.</summary>
    public double? EndS { get; init; }

    /// <summary>Faults of the scenario; empty when it can be run.</summary>
    public ImmutableArray<Finding> Faults() => StrikeRules.Faults(this);
}
