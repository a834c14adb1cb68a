using System.Collections.Immutable;
using Mastwright.Circuits.Transient;
using Mastwright.Model.Trails;
using Mastwright.Protection.Earthing;

namespace Mastwright.Protection.Lightning;

/// <summary>What one part went through.</summary>
/// <param name="Name">Name.</param>
/// <param name="PeakV">Highest voltage across it.</param>
/// <param name="PeakA">Highest current through it.</param>
/// <param name="EnergyJ">Energy it took in, net of what it gave back.</param>
/// <param name="AboveHalfS">Time for which the voltage stood above half its peak.</param>
public sealed record StruckPart(string Name, Trail PeakV, Trail PeakA, Trail EnergyJ, Trail AboveHalfS);

/// <summary>The house end in a strike.</summary>
/// <param name="EntryPeakV">Highest voltage of the shield at the entry against remote earth.</param>
/// <param name="EquipmentPeakV">Highest voltage across the path through the radio.</param>
/// <param name="EquipmentPeakA">Highest current through the radio and its mains lead.</param>
/// <param name="EquipmentChargeC">Charge through the same path.</param>
public sealed record StruckHouseEnd(Trail EntryPeakV, Trail EquipmentPeakV, Trail EquipmentPeakA, Trail EquipmentChargeC)
{
    /// <summary>Highest voltage between conductor and shield at the radio.</summary>
    public required Trail RadioPeakV { get; init; }

    /// <summary>Energy into the radio between conductor and shield.</summary>
    public required Trail RadioEnergyJ { get; init; }
}

/// <summary>A wave to draw.</summary>
/// <param name="Name">Name.</param>
/// <param name="Kind">Voltage or current.</param>
/// <param name="TimeS">Times in seconds, not evenly spaced.</param>
/// <param name="Value">Values in SI units.</param>
public sealed record StrikeWave(string Name, QuantityKind Kind, ImmutableArray<double> TimeS, ImmutableArray<double> Value);

/// <summary>A strike followed through the station.</summary>
/// <param name="FiredAtS">When the gap fired; null when it did not, or when there is none.</param>
/// <param name="GapPeakV">Voltage to which the gap rose before it fired; null without a gap.</param>
/// <param name="ImpulseRatio">That voltage over the static spark voltage: the impulse ratio to set the gap with; null when it did not fire.</param>
/// <param name="ArcDropV">Voltage of the arc at the crest of its current; null when it did not fire.</param>
/// <param name="ArcEnergyJ">Energy in the arc; null when it did not fire.</param>
/// <param name="PlatePeakV">Highest rise of the plate over remote earth.</param>
/// <param name="Parts">Base insulator, gap strap, feed parts, cable, arresters, in that order.</param>
/// <param name="CableShare">Charge that goes along the cable's shield over the whole charge; 0 without a cable.</param>
/// <param name="CablePeakShare">Highest current in the shield over the crest of the stroke.</param>
/// <param name="House">The house end; null without one.</param>
/// <param name="SideFlashM">Air distance the base's voltage may jump.</param>
/// <param name="Ground">Step and touch voltages around the mast, midway between two radials, at the highest rise of the plate.</param>
/// <param name="Waves">Waves to draw.</param>
/// <param name="Checks">Checks: strengths and heating.</param>
/// <param name="Findings">Remarks; faults of the input, or why the run stopped early.</param>
/// <param name="Raw">Every voltage and current of the run.</param>
public sealed record StrikeResult(
    Trail? FiredAtS, Trail? GapPeakV, Trail? ImpulseRatio, Trail? ArcDropV, Trail? ArcEnergyJ, Trail PlatePeakV, ImmutableArray<StruckPart> Parts,
    Trail CableShare, Trail CablePeakShare, StruckHouseEnd? House, Trail SideFlashM, ImmutableArray<GroundVoltage> Ground, ImmutableArray<StrikeWave> Waves,
    ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings, TransientResult Raw);
