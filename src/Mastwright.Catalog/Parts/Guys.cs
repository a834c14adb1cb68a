namespace Mastwright.Catalog;

/// <summary>Steel guy strand of several equal wires.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Grade">Grade, e.g. <c>"EHS"</c>.</param>
/// <param name="DiameterM">Nominal outside diameter.</param>
/// <param name="Wires">Number of wires.</param>
/// <param name="WireDiameterM">Diameter of one wire.</param>
/// <param name="MassPerLengthKgPerM">Mass per length.</param>
/// <param name="BreakingN">Minimum breaking strength.</param>
/// <param name="ModulusPa">Modulus of elasticity referred to the metallic area.</param>
/// <param name="ExpansionPerK">Coefficient of thermal expansion.</param>
public sealed record Strand(
    RowInfo Info, string Grade, double DiameterM, int Wires, double WireDiameterM, double MassPerLengthKgPerM, double BreakingN, double ModulusPa, double ExpansionPerK)
    : Part(Info)
{
    /// <summary>Metallic area: the sum of the wires' cross-sections.</summary>
    public double MetallicAreaM2 => Wires * Math.PI / 4 * WireDiameterM * WireDiameterM;

    /// <summary>Axial stiffness EA of one metre per metre of stretch, in newtons.</summary>
    public double AxialStiffnessN => ModulusPa * MetallicAreaM2;
}

/// <summary>Synthetic guy rope.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Fibre">Fibre, <c>"aramid"</c> or <c>"polyester"</c>.</param>
/// <param name="DiameterM">Outside diameter.</param>
/// <param name="MassPerLengthKgPerM">Mass per length.</param>
/// <param name="BreakingN">Breaking strength.</param>
/// <param name="ModulusPa">Modulus referred to the whole outside area.</param>
/// <param name="ExpansionPerK">Coefficient of thermal expansion; aramid shrinks when warmed.</param>
public sealed record Rope(
    RowInfo Info, string Fibre, double DiameterM, double MassPerLengthKgPerM, double BreakingN, double ModulusPa, double ExpansionPerK)
    : Part(Info)
{
    /// <summary>The whole outside area, to which the modulus refers.</summary>
    public double AreaM2 => Math.PI / 4 * DiameterM * DiameterM;

    /// <summary>Axial stiffness EA in newtons.</summary>
    public double AxialStiffnessN => ModulusPa * AreaM2;
}

/// <summary>Bow shackle.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="SizeM">Diameter of the bow.</param>
/// <param name="InsideLengthM">From the pin to the inside of the bow.</param>
/// <param name="Pin">How the pin is held: <c>"screw pin"</c> or <c>"bolt, nut and cotter"</c>.</param>
/// <param name="WorkingLoadN">Working load limit, pulled in line.</param>
/// <param name="BreakingN">Minimum breaking load.</param>
public sealed record Shackle(RowInfo Info, double SizeM, double InsideLengthM, string Pin, double WorkingLoadN, double BreakingN) : Part(Info);

/// <summary>Turnbuckle.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="ThreadM">Thread diameter.</param>
/// <param name="Ends">Ends, e.g. <c>"jaw-eye"</c>.</param>
/// <param name="TakeUpM">Total change of length between fully out and fully in.</param>
/// <param name="ClosedLengthM">Between the bearing points of its ends, fully in.</param>
/// <param name="WorkingLoadN">Working load limit.</param>
/// <param name="BreakingN">Minimum breaking load.</param>
public sealed record Turnbuckle(RowInfo Info, double ThreadM, string Ends, double TakeUpM, double ClosedLengthM, double WorkingLoadN, double BreakingN) : Part(Info);

/// <summary>Thimble.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="StrandM">Strand diameter its groove fits.</param>
/// <param name="Heavy">Whether it is of the heavy pattern.</param>
/// <param name="InsideLengthM">Length of the eye.</param>
/// <param name="InsideWidthM">Width of the eye.</param>
public sealed record Thimble(RowInfo Info, double StrandM, bool Heavy, double InsideLengthM, double InsideWidthM) : Part(Info);

/// <summary>U-bolt clip, used in sets.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="RopeM">Rope or strand diameter it fits.</param>
/// <param name="ClipsForRope">Least number of clips on wire rope.</param>
/// <param name="ClipsForStrand">Least number on stiff 7-wire guy strand (common practice).</param>
/// <param name="TurnBackM">Length of rope turned back.</param>
/// <param name="TorqueNm">Torque on the nuts.</param>
/// <param name="Efficiency">Share of the rope's strength that the set holds.</param>
public sealed record Clip(RowInfo Info, double RopeM, int ClipsForRope, int ClipsForStrand, double TurnBackM, double TorqueNm, double Efficiency) : Part(Info);

/// <summary>Strand end fitting: a preformed grip or a swaged fitting.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="StrandM">Strand diameter it fits.</param>
/// <param name="LengthM">Length of the fitting.</param>
/// <param name="Efficiency">Share of the strand's strength that it holds.</param>
public sealed record Grip(RowInfo Info, double StrandM, double LengthM, double Efficiency) : Part(Info);
