using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Structure.Chains;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Analysis.Results;

/// <summary>Everything computed for one mast.</summary>
/// <param name="Name">The mast.</param>
/// <param name="Stand">Whether it stands.</param>
/// <param name="FirstResonanceHz">Lowest frequency at which the feed reactance vanishes; null when none was found in the range searched.</param>
/// <param name="Bands">Band by band.</param>
/// <param name="Gap">The base gap.</param>
public sealed record MastResult(string Name, StandResult Stand, Trail? FirstResonanceHz, ImmutableArray<BandResult> Bands, GapAnswer Gap);

/// <summary>One mast on one band.</summary>
public sealed record BandResult
{
    /// <summary>What the band is called.</summary>
    public required string Name { get; init; }

    /// <summary>Frequency, Hz.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Power at the matched feed point, W.</summary>
    public required double PowerW { get; init; }

    /// <summary>Impedance of the mast itself at its foot, earth loss included, before the insulator's capacitance, Ω.</summary>
    public required Complex MastOhm { get; init; }

    /// <summary>Impedance the network sees: the mast with insulator and stray capacitance across it, Ω.</summary>
    public required Complex FeedOhm { get; init; }

    /// <summary>Resistance the network sees.</summary>
    public required Trail FeedResistance { get; init; }

    /// <summary>Reactance the network sees.</summary>
    public required Trail FeedReactance { get; init; }

    /// <summary>Loss resistance of the earth and the radials, referred to the base.</summary>
    public required Trail EarthLossOhm { get; init; }

    /// <summary>Radiated power over power into the mast.</summary>
    public required Trail Efficiency { get; init; }

    /// <summary>RMS current into the network's antenna side.</summary>
    public required Trail BaseCurrentRms { get; init; }

    /// <summary>Peak voltage across the base.</summary>
    public required Trail BasePeakV { get; init; }

    /// <summary>Voltage across the base, rms.</summary>
    public Trail BaseRmsV => Trail.Computed("base voltage, rms", "U", BasePeakV.Value / Math.Sqrt(2), QuantityKind.RmsVoltage, "U = Vp/√2", Source.Derived("docs/theory/circuits-matching.md"), BasePeakV);

    /// <summary>The matching network chosen, in parts that can be had; null when none can be made.</summary>
    public ChosenNetwork? Network { get; init; }

    /// <summary>Why the load cannot be matched; empty when it can.</summary>
    public ImmutableArray<Finding> Unmatched { get; init; } = [];

    /// <summary>The matching network chosen, solved with its real parts; null when none can be made.</summary>
    public MatchCandidate? Match => Network?.Match;

    /// <summary>Gain over perfect ground at the strongest elevation, earth loss included, dBi.</summary>
    public required Trail GainDbi { get; init; }

    /// <summary>Field at 1 km over perfect ground for the stated power, earth loss included, V/m.</summary>
    public required Trail FieldAt1KmVPerM { get; init; }

    /// <summary>Gain cut through the strongest azimuth and round the strongest elevation.</summary>
    public PatternCuts? Pattern { get; init; }

    /// <summary>Current along each wire at the stated power.</summary>
    public ImmutableArray<WireProfile> Currents { get; init; } = [];
}

/// <summary>Whether and how a mast stands.</summary>
public sealed record StandResult
{
    /// <summary>The load cases, each with what it did to the mast.</summary>
    public required ImmutableArray<CaseResult> Cases { get; init; }

    /// <summary>Largest base compression of all cases, N.</summary>
    public required Trail BaseCompressionN { get; init; }

    /// <summary>Largest guy tension at each level.</summary>
    public required ImmutableArray<NamedTrail> GuyTensions { get; init; }

    /// <summary>Lowest buckling factor; null when nothing is stable or nothing is pressed.</summary>
    public Trail? BucklingFactor { get; init; }

    /// <summary>What follows from the loss of each guy, in still air.</summary>
    public ImmutableArray<GuyLossOutcome> LostGuys { get; init; } = [];

    /// <summary>Natural frequencies of the mast, from the lowest up.</summary>
    public ImmutableArray<Trail> MastFrequencies { get; init; } = [];

    /// <summary>Tension at the anchors in still air, by temperature.</summary>
    public ImmutableArray<TensionRow> Tensions { get; init; } = [];

    /// <summary>The guys as chains of real pieces, the hardest pulled of each level whose fittings the design describes.</summary>
    public ImmutableArray<ChainResult> Chains { get; init; } = [];

    /// <summary>Gust factor worked out for a slow mast; null where the method's own is used.</summary>
    public Trail? GustFactor { get; init; }
}

/// <summary>A guy as a chain of real pieces and what was found about it.</summary>
/// <param name="Level">Its level, from 1.</param>
/// <param name="Chain">The pieces, anchor to mast.</param>
/// <param name="Demand">What is asked of it.</param>
/// <param name="Report">Capacities, weakest link, clear length, checks and findings.</param>
public sealed record ChainResult(int Level, GuyChain Chain, ChainDemand Demand, ChainReport Report);

/// <summary>What follows when one guy is lost in still air.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="Stands">Whether the mast finds a new equilibrium.</param>
/// <param name="LargestGuyPeakN">Largest tension of the others on the way; 0 when it comes down.</param>
/// <param name="LargestFootN">Largest compression at the foot on the way; 0 when it comes down.</param>
/// <param name="LeastFootN">Least compression at the foot on the way; below zero the mast jumps off its seat.</param>
public sealed record GuyLossOutcome(string Guy, bool Stands, double LargestGuyPeakN, double LargestFootN, double LeastFootN);

/// <summary>One load case.</summary>
/// <param name="Name">The case in words.</param>
/// <param name="Stable">Whether an equilibrium was found at full load.</param>
/// <param name="TopDeflectionM">Level movement of the top, m; 0 when unstable.</param>
/// <param name="BaseCompressionN">Compression at the foot, N.</param>
/// <param name="LargestGuyN">Largest guy tension, N.</param>
/// <param name="LargestMomentNm">Largest bending moment in the mast, N·m.</param>
public sealed record CaseResult(string Name, bool Stable, double TopDeflectionM, double BaseCompressionN, double LargestGuyN, double LargestMomentNm)
{
    /// <summary>The case without its wind direction, e.g. <c>"wind, coldest"</c>.</summary>
    public string Kind { get; init; } = Name;

    /// <summary>Temperature of the case, K.</summary>
    public required double TemperatureK { get; init; }

    /// <summary>Compass bearing the wind comes from, rad; null in still air.</summary>
    public double? WindFromRad { get; init; }

    /// <summary>How the axis moved, from the foot up; empty when unstable.</summary>
    public ImmutableArray<AxisMove> Axis { get; init; } = [];

    /// <summary>Every guy under this case; empty when unstable.</summary>
    public ImmutableArray<GuyInCase> Guys { get; init; } = [];
}

/// <summary>A group of masts fed together.</summary>
/// <param name="Name">The group.</param>
/// <param name="Directions">Switch position by switch position.</param>
public sealed record GroupResult(string Name, ImmutableArray<DirectionResult> Directions);

/// <summary>One switch position of a group.</summary>
/// <param name="Name">The position.</param>
/// <param name="Drives">What each mast's base looks like while all are driven.</param>
/// <param name="GainDbi">Gain in the wanted direction at the strongest elevation, earth loss included, dBi.</param>
/// <param name="FrontToBackDb">Wanted over opposite direction at that elevation, dB.</param>
/// <param name="GainOverOneDb">Gain over one of the masts alone, dB.</param>
public sealed record DirectionResult(string Name, ImmutableArray<DriveResult> Drives, Trail GainDbi, Trail FrontToBackDb, Trail GainOverOneDb)
{
    /// <summary>Gain cut through the wanted bearing and round the strongest elevation there.</summary>
    public PatternCuts? Pattern { get; init; }
}

/// <summary>One mast of a driven group.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="DriveOhm">Impedance at its foot with the others driven, earth loss included, Ω.</param>
/// <param name="CurrentRms">Its base current, A RMS.</param>
/// <param name="BasePeakV">Peak voltage across its base.</param>
/// <param name="PowerW">Power it takes, W; negative when it gives power back to the network.</param>
public sealed record DriveResult(string Mast, Complex DriveOhm, Trail CurrentRms, Trail BasePeakV, Trail PowerW);
