using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>How far parts, soil and weather stray.</summary>
public sealed record FeedTolerance
{
    /// <summary>Whether the networks are tuned after building.</summary>
    [Field("tuned-on-site", "Whether the networks are tuned after building, so that only drift is left.", Default = "yes", Why = "taps and variable capacitors are set with an analyser")]
    public bool TunedOnSite { get; init; } = true;

    /// <summary>Tolerance of coils.</summary>
    [Field("coil", "Tolerance of wound coils, when they are not tuned on site.", Default = "5 %", Why = "wound by hand to a drawing; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0, 0.5)]
    public double Coil { get; init; } = 0.05;

    /// <summary>Tolerance of capacitors.</summary>
    [Field("capacitor", "Tolerance of capacitors, when they are not tuned on site.", Default = "5 %", Why = "a transmitting part of usual grade; use the maker's figure")]
    [Quantity(QuantityKind.Ratio, 0, 0.5)]
    public double Capacitor { get; init; } = 0.05;

    /// <summary>Tolerance of lengths of line.</summary>
    [Field("length", "Tolerance of lengths of line and stubs, when they are not tuned on site.", Default = "1 %", Why = "the velocity factor of coax is no better known; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0, 0.2)]
    public double Length { get; init; } = 0.01;

    /// <summary>Conductivity of wet soil over that stated.</summary>
    [Field("wet-soil", "Conductivity of the soil when wet over that stated.", Default = "2", Why = "common practice, no source; measure yours over the seasons")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double WetSoil { get; init; } = 2;

    /// <summary>Conductivity of dry soil over that stated.</summary>
    [Field("dry-soil", "Conductivity of the soil when dry or frozen over that stated.", Default = "0.5", Why = "common practice, no source; measure yours over the seasons")]
    [Quantity(QuantityKind.Ratio, 0.05, 1)]
    public double DrySoil { get; init; } = 0.5;

    /// <summary>Share of days with wet soil.</summary>
    [Field("wet-days", "Share of the days on which the soil is wet.", Default = "25 %", Why = "one day in four; your climate differs")]
    [Quantity(QuantityKind.Ratio, 0, 1)]
    public double WetDays { get; init; } = 0.25;

    /// <summary>Share of days with dry soil.</summary>
    [Field("dry-days", "Share of the days on which the soil is dry or frozen.", Default = "25 %", Why = "one day in four; your climate differs")]
    [Quantity(QuantityKind.Ratio, 0, 1)]
    public double DryDays { get; init; } = 0.25;

    /// <summary>Temperature coefficient of coils, 1/K.</summary>
    [Field("coil-per-kelvin", "Change of a coil's inductance for each kelvin.", Default = "0.00005", Why = "copper on plastic bars; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0, 0.01)]
    public double CoilPerK { get; init; } = 50e-6;

    /// <summary>Temperature coefficient of capacitors, 1/K.</summary>
    [Field("capacitor-per-kelvin", "Change of a capacitor's value for each kelvin.", Default = "0.0001", Why = "mica and air stay below; a ceramic of class 2 does not; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 0, 0.05)]
    public double CapacitorPerK { get; init; } = 100e-6;
}

/// <summary>A receiver on the line.</summary>
public sealed record ReceiverSpec
{
    /// <summary>Input resistance, Ω.</summary>
    [Field("impedance", "Its input resistance.", Default = "50 Ω", Why = "the usual receiver")]
    [Quantity(QuantityKind.Resistance, 5, 5000)]
    public double InputOhm { get; init; } = 50;

    /// <summary>Power it stands, W.</summary>
    [Field("limit", "The most power its input stands.", Default = "0.1 W", Why = "common practice, no source: some stand only a tenth of it; use the maker's figure")]
    [Quantity(QuantityKind.Power, 1e-6, 100)]
    public double LimitW { get; init; } = 0.1;
}

/// <summary>The choke on the cable.</summary>
public sealed record ChokeSpec
{
    /// <summary>Current allowed on the outside of the cable over the base current.</summary>
    [Field("current-share", "Current allowed on the outside of the cable over the base current of the mast.", Default = "1 %", Why = "40 dB down keeps pattern and noise; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1e-5, 0.5)]
    public double CurrentShare { get; init; } = 0.01;

    /// <summary>Resistance of the path along the outside of the cable, Ω.</summary>
    [Field("path", "Resistance of the path along the outside of the cable without a choke, its reactance taken as tuned out.", Default = "50 Ω", Why = "a cable on the ground; common practice, no source")]
    [Quantity(QuantityKind.Resistance, 1, 5000)]
    public double PathOhm { get; init; } = 50;

    /// <summary>Core, catalogue name; null to have one chosen.</summary>
    [Field("core", "The ferrite ring to wind it on (see `mastwright list cores`).", Default = "the smallest that serves")]
    [CatalogueName("cores")]
    public string? Core { get; init; }

    /// <summary>Bend of the cable, outside diameter, m.</summary>
    [Field("cable-diameter", "Outside diameter of the cable wound on the core.", Default = "5 mm", Why = "a short piece of thin coax in the choke")]
    [Quantity(QuantityKind.FineLength, 0.001, 0.05)]
    public double CableDiameterM { get; init; } = 0.005;
}

/// <summary>How a group is fed.</summary>
public sealed record GroupFeedSpec
{
    /// <summary>The way.</summary>
    [Field("way", "The way it is fed.", Default = "best: the way with least error, loss and parts")]
    public GroupWay Way { get; init; }

    /// <summary>Line from box to masts, catalogue name.</summary>
    [Field("feeder", "The line from the phasing box to the masts (see `mastwright list lines`).", Default = "RG-11", Why = "75 Ω line is the usual one for current forcing")]
    [CatalogueName("lines")]
    public string Feeder { get; init; } = "RG-11";

    /// <summary>Lengths of the lines, m.</summary>
    [Field("feeder-lengths", "Length of the line to each mast fed, in the order of the masts, where the lines are laid already.", Default = "as short as reaches every mast from the middle of the group")]
    [Quantity(QuantityKind.Length, 0.1, 500)]
    public System.Collections.Immutable.ImmutableArray<double> FeederLengthsM { get; init; } = [];
}

/// <summary>Ways of feeding a group.</summary>
public enum GroupWay
{
    /// <summary>Best.</summary>
    [Word("best", "the way with least error, loss and parts")]
    Best,

    /// <summary>Current forcing.</summary>
    [Word("current-forcing", "quarter waves of line that force the currents")]
    CurrentForcing,

    /// <summary>Hybrid.</summary>
    [Word("hybrid", "a quadrature hybrid with a dump resistor")]
    Hybrid,

    /// <summary>Feeders with L networks.</summary>
    [Word("phasing-lines", "lines of whatever length, with an L network a mast in the box")]
    PhasingLines,

    /// <summary>Two lines of equal voltage.</summary>
    [Word("cut-lines", "two lines cut so that their ends can be joined")]
    CutLines,

    /// <summary>Independent networks.</summary>
    [Word("independent", "one network a mast, solved for the demanded currents")]
    Independent,
}
