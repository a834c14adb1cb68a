using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Design;

/// <summary>The whole station as its design file tells it, in SI units, defaults filled in.</summary>
public sealed record Station
{
    /// <summary>The format version this program writes.</summary>
    public const int CurrentVersion = 1;

    /// <summary>Format version of the file.</summary>
    [Field("mastwright", "Version of this file format.", Required = true)]
    public int Version { get; init; } = CurrentVersion;

    /// <summary>What the station is called.</summary>
    [Field("name", "What you call the station.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Free remarks.</summary>
    [Field("notes", "Anything you want to remember about this design.", Default = "")]
    public string Notes { get; init; } = "";

    /// <summary>The units results are shown in.</summary>
    [Field("units", "Units in which results are shown; the file itself may mix units freely.", Default = "metric")]
    public ShownUnits Units { get; init; }

    /// <summary>Where the station stands.</summary>
    [Field("site", "Where the station stands: wind, ice, temperature, soil, what is near.", Required = true)]
    public Site Site { get; init; } = new();

    /// <summary>The masts.</summary>
    [Field("masts", "The mast radiators, one or several.", Required = true)]
    public ImmutableArray<Mast> Masts { get; init; } = [];

    /// <summary>Frequencies and powers.</summary>
    [Field("bands", "The frequencies the station works on, with the power on each.", Required = true)]
    public ImmutableArray<Band> Bands { get; init; } = [];

    /// <summary>Masts fed together.</summary>
    [Field("groups", "Masts fed together with stated currents to steer the pattern.", Default = "none")]
    public ImmutableArray<Group> Groups { get; init; } = [];

    /// <summary>Line and matching.</summary>
    [Field("feed", "The feed line and how the mast is matched to it.", Default = "all of its own defaults")]
    public Feed Feed { get; init; } = new();

    /// <summary>Gap and what stands behind it.</summary>
    [Field("protection", "The base spark gap and the weakest parts behind it.", Default = "all of its own defaults")]
    public ProtectionSpec Protection { get; init; } = new();

    /// <summary>Lightning.</summary>
    [Field("lightning", "The lightning the station is held against, and the straps through the base gap.", Default = "all of its own defaults")]
    public LightningSpec Lightning { get; init; } = new();

    /// <summary>The earth at each mast.</summary>
    [Field("earth", "The earth at each mast besides its radials: rods, ring, surface layer, bonds.", Default = "all of its own defaults")]
    public EarthSystem Earth { get; init; } = new();

    /// <summary>The cable to the house; null when not stated.</summary>
    [Field("cable", "The cable from the network to the house, as a strike sees it.", Default = "not stated; a strike is followed without one")]
    public CableToHouse? Cable { get; init; }

    /// <summary>Static and corona.</summary>
    [Field("statics", "What drains static from the masts, and how quiet they shall be.", Default = "all of its own defaults")]
    public StaticsSpec Statics { get; init; } = new();

    /// <summary>Metals in contact.</summary>
    [Field("metals", "Metals that touch, the air they touch in, and ropes in the sun.", Default = "all of its own defaults")]
    public MetalsSpec Metals { get; init; } = new();

    /// <summary>The fence; null when not stated.</summary>
    [Field("fence", "The fence that keeps people from each base.", Default = "not stated")]
    public Fence? Fence { get; init; }

    /// <summary>Metal near the masts.</summary>
    [Field("nearby-metal", "Straight conductors near the masts that radio frequency will find: flagpole, gutter, steel fence rail.", Default = "none")]
    public ImmutableArray<NearbyMetal> NearbyMetal { get; init; } = [];

    /// <summary>Factors and limits the checks use.</summary>
    [Field("limits", "Safety factors and limits the checks hold the design to.", Default = "all of their own defaults")]
    public Limits Limits { get; init; } = new();

    /// <summary>The unit system results are shown in.</summary>
    public UnitSystem UnitSystem => Units == ShownUnits.Us ? UnitSystem.Us : UnitSystem.Metric;
}

/// <summary>Units for showing results.</summary>
public enum ShownUnits
{
    /// <summary>Metric.</summary>
    [Word("metric", "metres, newtons, °C")]
    Metric,

    /// <summary>US customary.</summary>
    [Word("us", "feet, pounds, °F")]
    Us,
}

/// <summary>One frequency with its power.</summary>
public sealed record Band
{
    /// <summary>The frequency, Hz.</summary>
    [Field("frequency", "The frequency results are given for.", Required = true)]
    [Quantity(QuantityKind.Frequency, 0.1e6, 60e6)]
    public double FrequencyHz { get; init; }

    /// <summary>Transmitter power, W RMS of the carrier or crest of the envelope.</summary>
    [Field("power", "Transmitter output: carrier power, or peak envelope power for speech.", Required = true)]
    [Quantity(QuantityKind.Power, 1e-3, 100e3)]
    public double PowerW { get; init; }

    /// <summary>What the band is called.</summary>
    [Field("name", "What you call the band.", Default = "the amateur wavelength band that holds the frequency, else the frequency")]
    public string? Name { get; init; }

    /// <summary>Long-term mean over peak power of the mode and the operating habit.</summary>
    [Field("duty", "Mean power over peak power while operating, for heating and exposure.", Default = "0.4", Why = "speech or Morse with pauses between calls; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0.01, 1)]
    public double Duty { get; init; } = 0.4;

    /// <summary>Lowest frequency used, Hz.</summary>
    [Field("low", "Lowest frequency used on the band.", Default = "half a per cent below the frequency")]
    [Quantity(QuantityKind.Frequency, 0.1e6, 60e6)]
    public double? LowHz { get; init; }

    /// <summary>Highest frequency used, Hz.</summary>
    [Field("high", "Highest frequency used on the band.", Default = "half a per cent above the frequency")]
    [Quantity(QuantityKind.Frequency, 0.1e6, 60e6)]
    public double? HighHz { get; init; }

    /// <summary>Crest with modulation over crest of the stated power.</summary>
    [Field("modulation-peak", "Crest voltage with modulation over crest at the stated power: 1 for speech at its peak envelope power and Morse, 2 for AM counted from the carrier.", Default = "1", Why = "the power is the peak envelope power")]
    [Quantity(QuantityKind.Ratio, 1, 3)]
    public double ModulationPeak { get; init; } = 1;

    /// <summary>The name, given or found from the frequency.</summary>
    public string Title => Name ?? AmateurBands.NameOf(FrequencyHz);
}

/// <summary>Masts fed together.</summary>
public sealed record Group
{
    /// <summary>What the group is called.</summary>
    [Field("name", "What you call the group.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>The frequency the group works on, Hz.</summary>
    [Field("frequency", "The frequency the group works on.", Required = true)]
    [Quantity(QuantityKind.Frequency, 0.1e6, 60e6)]
    public double FrequencyHz { get; init; }

    /// <summary>Total transmitter power, W.</summary>
    [Field("power", "Transmitter output shared by the group.", Required = true)]
    [Quantity(QuantityKind.Power, 1e-3, 100e3)]
    public double PowerW { get; init; }

    /// <summary>The steering positions.</summary>
    [Field("directions", "The switch positions: which way each fires and what current each mast gets.", Required = true)]
    public ImmutableArray<Direction> Directions { get; init; } = [];

    /// <summary>How it is fed.</summary>
    [Field("feed", "How the group is fed.", Default = "all of its own defaults")]
    public GroupFeedSpec Feed { get; init; } = new();
}

/// <summary>One switch position of a group.</summary>
public sealed record Direction
{
    /// <summary>What the position is called.</summary>
    [Field("name", "What the switch position is called.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Compass bearing of the wanted lobe, rad.</summary>
    [Field("bearing", "Compass bearing of the wanted lobe, from north through east.", Required = true)]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double BearingRad { get; init; }

    /// <summary>The base currents.</summary>
    [Field("currents", "Base current of each mast, relative size and phase.", Required = true)]
    public ImmutableArray<MastCurrent> Currents { get; init; } = [];
}

/// <summary>The base current one mast of a group is asked to carry.</summary>
public sealed record MastCurrent
{
    /// <summary>The mast.</summary>
    [Field("mast", "Name of the mast.", Required = true)]
    public string Mast { get; init; } = "";

    /// <summary>Relative size.</summary>
    [Field("size", "Size of the current relative to the others.", Default = "1", Why = "equal currents")]
    [Quantity(QuantityKind.Ratio, 0, 1000)]
    public double Size { get; init; } = 1;

    /// <summary>Phase, rad; positive leads.</summary>
    [Field("phase", "Phase of the current; positive leads.", Default = "0 °", Why = "the reference phase")]
    [Quantity(QuantityKind.Angle, -4 * Math.PI, 4 * Math.PI)]
    public double PhaseRad { get; init; }
}
