using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The feed line and the matching network.</summary>
public sealed record Feed
{
    /// <summary>Line impedance, Ω.</summary>
    [Field("line-impedance", "Impedance of the feed line the mast is matched to.", Default = "50 Ω", Why = "the usual coaxial line")]
    [Quantity(QuantityKind.Resistance, 5, 1000)]
    public double LineOhm { get; init; } = 50;

    /// <summary>Coil quality.</summary>
    [Field("coil-q", "Quality of the matching coils.", Default = "300", Why = "a large air coil in its cabinet; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 10, 5000)]
    public double CoilQ { get; init; } = 300;

    /// <summary>Capacitor quality.</summary>
    [Field("capacitor-q", "Quality of the matching capacitors.", Default = "2000", Why = "air, vacuum or mica; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 10, 100000)]
    public double CapacitorQ { get; init; } = 2000;

    /// <summary>Feed line, catalogue name.</summary>
    [Field("cable", "The feed line from the transmitter to the base (see `mastwright list lines`).", Default = "not described; its loss is not counted")]
    [CatalogueName("lines")]
    public string? Cable { get; init; }

    /// <summary>Length of the feed line, m.</summary>
    [Field("cable-length", "Length of the feed line.", Default = "30 m", Why = "from a house to a mast in its garden; measure yours")]
    [Quantity(QuantityKind.Length, 0.5, 2000)]
    public double CableLengthM { get; init; } = 30;

    /// <summary>Peak voltage an open relay contact stands, V.</summary>
    [Field("relay-voltage", "Peak radio-frequency voltage an open relay contact stands, from its maker.", Default = "10 kV", Why = "a small vacuum relay; use the maker's figure")]
    [Quantity(QuantityKind.PeakVoltage, 100, 200e3)]
    public double RelayPeakV { get; init; } = 10e3;

    /// <summary>RMS current a closed relay contact carries, A.</summary>
    [Field("relay-current", "RMS radio-frequency current a closed relay contact carries, from its maker.", Default = "15 A", Why = "a small vacuum relay; use the maker's figure")]
    [Quantity(QuantityKind.RmsCurrent, 0.1, 500)]
    public double RelayCurrentA { get; init; } = 15;

    /// <summary>Largest coil diameter the cabinet takes, m.</summary>
    [Field("box-diameter", "Largest coil diameter the cabinet takes.", Default = "150 mm", Why = "a cabinet of 300 mm depth, the coil kept half its diameter from the walls")]
    [Quantity(QuantityKind.FineLength, 0.02, 2)]
    public double BoxDiameterM { get; init; } = 0.15;

    /// <summary>Largest coil length the cabinet takes, m.</summary>
    [Field("box-length", "Largest coil length the cabinet takes.", Default = "300 mm", Why = "a cabinet half a metre wide")]
    [Quantity(QuantityKind.FineLength, 0.02, 3)]
    public double BoxLengthM { get; init; } = 0.3;

    /// <summary>Stray capacitance across the base besides the insulator, F.</summary>
    [Field("stray-capacitance", "Stray capacitance across the base besides the insulator: lead-in, cabinet, arc balls.", Default = "20 pF", Why = "a short lead and a pair of gap balls; common practice, no source")]
    [Quantity(QuantityKind.Capacitance, 0, 5e-9)]
    public double StrayCapacitanceF { get; init; } = 20e-12;

    /// <summary>Capacitance across an open relay contact, F.</summary>
    [Field("relay-capacitance", "Capacitance across an open relay contact.", Default = "1 pF", Why = "a small vacuum relay; use the maker's figure")]
    [Quantity(QuantityKind.Capacitance, 0, 1e-10)]
    public double RelayOpenF { get; init; } = 1e-12;

    /// <summary>Networks chosen by the builder.</summary>
    [Field("networks", "The network you chose for a band; bands not named take the best that can be built.", Default = "none: the best that can be built is taken on every band")]
    public ImmutableArray<NetworkSpec> Networks { get; init; } = [];

    /// <summary>What varies.</summary>
    [Field("tolerance", "How far parts, soil and weather stray, for the share of days within SWR 2.", Default = "all of its own defaults")]
    public FeedTolerance Tolerance { get; init; } = new();

    /// <summary>A receiver on the line; null when there is none of its own.</summary>
    [Field("receiver", "A receiver behind its own contact on the feed line, or on the feed line of a neighbouring mast.", Default = "none of its own: the transmitter's relay parts it from the line; neighbouring masts are held against the usual limit")]
    public ReceiverSpec? Receiver { get; init; }

    /// <summary>The choke on the cable.</summary>
    [Field("choke", "The choke that keeps current off the outside of the cable.", Default = "all of its own defaults")]
    public ChokeSpec Choke { get; init; } = new();

    /// <summary>What parts cost.</summary>
    [Field("prices", "What parts of networks cost you, to rank networks by price.", Default = "none: networks are not ranked by price")]
    public ImmutableArray<PartPrice> Prices { get; init; } = [];
}
