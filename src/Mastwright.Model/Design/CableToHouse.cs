using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The cable from the network to the house, as a strike sees it.</summary>
public sealed record CableToHouse
{
    /// <summary>Cable, catalogue name.</summary>
    [Field("line", "The cable (see `mastwright list lines`).", Required = true)]
    [CatalogueName("lines")]
    public string Line { get; init; } = "RG-213";

    /// <summary>Length, m.</summary>
    [Field("length", "Its length from the mast to the house.", Required = true)]
    [Quantity(QuantityKind.Length, 1, 1000)]
    public double LengthM { get; init; } = 30;

    /// <summary>How it runs.</summary>
    [Field("route", "How it runs.", Default = "on-ground", Why = "the file does not say; a buried cable gives part of a strike to the soil on its way")]
    public CableRun Route { get; init; } = CableRun.OnGround;

    /// <summary>Resistance of the shield, Ω/m.</summary>
    [Field("shield-resistance", "Resistance of the shield for each metre.", Default = "0.005 Ω", Why = "a single copper braid of a 10 mm cable; common practice, no source")]
    [Quantity(QuantityKind.Resistance, 1e-5, 1)]
    public double ShieldOhmPerM { get; init; } = 0.005;

    /// <summary>Sparkover of the arrester at the mast, V.</summary>
    [Field("arrester", "Sparkover voltage of an arrester between conductor and shield at the mast.", Default = "no arrester")]
    [Quantity(QuantityKind.PeakVoltage, 50, 20e3)]
    public double? ArresterV { get; init; }

    /// <summary>Sparkover of the arrester at the house, V.</summary>
    [Field("house-arrester", "Sparkover voltage of an arrester between conductor and shield where the cable enters the house.", Default = "no arrester")]
    [Quantity(QuantityKind.PeakVoltage, 50, 20e3)]
    public double? HouseArresterV { get; init; }

    /// <summary>Whether the shield is bonded at an entry panel.</summary>
    [Field("panel-bonded", "Whether the shield is bonded, where it enters the house, to a panel with its own earth that is bonded to the mains earth.", Default = "no", Why = "the file does not say; without it a strike goes to earth through the radio and its mains lead")]
    public bool PanelBonded { get; init; }

    /// <summary>Resistance of the panel's earth, Ω.</summary>
    [Field("panel-earth", "Resistance of the panel's own earth.", Default = "20 Ω", Why = "one or two rods in average soil; measure yours")]
    [Quantity(QuantityKind.Resistance, 0.01, 10e3)]
    public double PanelEarthOhm { get; init; } = 20;

    /// <summary>Strap from the panel to its earth, m.</summary>
    [Field("panel-strap", "Length of the strap from the panel to its earth.", Default = "1 m", Why = "a panel low on the outer wall; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.05, 100)]
    public double PanelStrapM { get; init; } = 1;

    /// <summary>Resistance of the mains earth, Ω.</summary>
    [Field("mains-earth", "Resistance of the earth of the mains.", Default = "15 Ω", Why = "a house electrode; measure yours")]
    [Quantity(QuantityKind.Resistance, 0.01, 10e3)]
    public double MainsEarthOhm { get; init; } = 15;

    /// <summary>Bond from panel to mains earth, m.</summary>
    [Field("bond-length", "Length of the bond from the panel to the mains earth.", Default = "6 m", Why = "along one wall; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.05, 200)]
    public double BondLengthM { get; init; } = 6;

    /// <summary>Path through the radio, m.</summary>
    [Field("radio-path", "Length of the path through the radio and its mains lead to the mains earth.", Default = "8 m", Why = "a room's wiring; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.05, 200)]
    public double RadioPathM { get; init; } = 8;
}

/// <summary>How a cable runs.</summary>
public enum CableRun
{
    /// <summary>On the ground.</summary>
    [Word("on-ground", "laid on the ground")]
    OnGround,

    /// <summary>Buried.</summary>
    [Word("buried", "buried")]
    Buried,

    /// <summary>Overhead.</summary>
    [Word("overhead", "hung between posts")]
    Overhead,
}
