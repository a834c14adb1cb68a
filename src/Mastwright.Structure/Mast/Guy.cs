using Mastwright.Numerics;

namespace Mastwright.Structure.Mast;

/// <summary>One guy: one cable from an anchor to the mast.</summary>
/// <param name="Name">Unique name, used to address loads and results.</param>
/// <param name="AnchorM">The anchor eye, in the coordinates of the foot.</param>
/// <param name="AttachmentHeightM">Attachment height above the foot.</param>
/// <param name="Cable">The strand.</param>
/// <param name="Setting">How its length is fixed: directly or by a tension.</param>
/// <param name="AttachmentRadiusM">Distance of the attachment from the mast axis; 0 attaches on the axis.</param>
/// <param name="AttachmentTurnRad">Where on that circle: 0 is the point facing the anchor, positive turns from x towards y. Two guys of one anchor set at plus and minus this angle make a torsion-stiff pair.</param>
public sealed record Guy(
    string Name,
    Vec3 AnchorM,
    double AttachmentHeightM,
    GuyCable Cable,
    GuySetting Setting,
    double AttachmentRadiusM = 0,
    double AttachmentTurnRad = 0)
{
    /// <summary>
    /// The pieces the guy is made of, from the anchor up; empty for an even cable as described by <see cref="Cable"/>.
    /// With pieces, their stiffness, weight and expansion count instead of the cable's, and the longest piece gives or
    /// takes what the setting of the length asks for.
    /// </summary>
    public IReadOnlyList<GuyPiece> Pieces { get; init; } = [];

    /// <summary>The horizontal arm from the axis to the attachment on the undeformed mast.</summary>
    public Vec3 Arm(Vec3 footM)
    {
        if (AttachmentRadiusM == 0)
        {
            return Vec3.Zero;
        }

        var azimuth = Math.Atan2(AnchorM.Y - footM.Y, AnchorM.X - footM.X) + AttachmentTurnRad;
        return new(AttachmentRadiusM * Math.Cos(azimuth), AttachmentRadiusM * Math.Sin(azimuth), 0);
    }

    /// <summary>From the anchor to the attachment on the undeformed mast.</summary>
    public Vec3 UndeformedChord(Vec3 footM) => footM + (AttachmentHeightM * Vec3.Up) + Arm(footM) - AnchorM;
}

/// <summary>The strand of a guy.</summary>
/// <param name="AreaM2">Metallic area.</param>
/// <param name="ModulusPa">Modulus of the strand, which is below that of its wire.</param>
/// <param name="DiameterM">Outer diameter.</param>
/// <param name="WeightNPerM">Weight per unstressed metre, fittings and insulators spread along it.</param>
/// <param name="ThermalExpansionPerK">Thermal expansion coefficient.</param>
public sealed record GuyCable(double AreaM2, double ModulusPa, double DiameterM, double WeightNPerM, double ThermalExpansionPerK = 0)
{
    /// <summary>EA.</summary>
    public double AxialStiffnessN => AreaM2 * ModulusPa;
}

/// <summary>How the length of a guy is fixed.</summary>
public readonly record struct GuySetting
{
    private GuySetting(double value, bool isTension)
    {
        Value = value;
        IsTension = isTension;
    }

    /// <summary>Unstressed length in metres, or tension at the anchor in newtons.</summary>
    public double Value { get; }

    /// <summary>Whether <see cref="Value"/> is a tension.</summary>
    public bool IsTension { get; }

    /// <summary>The unstressed length at the installation temperature.</summary>
    public static GuySetting OfLength(double unstressedLengthM) => new(unstressedLengthM, false);

    /// <summary>
    /// The tension at the anchor in still air at the installation temperature, the mast held straight at its
    /// undeformed height. Once released the mast shortens a little under its load and the guys lose some of it.
    /// </summary>
    public static GuySetting OfAnchorTension(double tensionN) => new(tensionN, true);
}
