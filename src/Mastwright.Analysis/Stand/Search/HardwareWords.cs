using System.Globalization;
using System.Reflection;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>The fittings of a guy as the design file writes them, in braces; what is at its default is left out.</summary>
internal static class HardwareWords
{
    /// <summary>The value of the field “hardware”.</summary>
    public static string Of(GuyHardware hardware)
    {
        var plain = new GuyHardware();
        var fields = new List<string> { $"shackle: {hardware.Shackle}", $"turnbuckle: {hardware.Turnbuckle}" };
        void Add<T>(string key, T value, T usual, string words)
        {
            if (!Equals(value, usual))
            {
                fields.Add($"{key}: {words}");
            }
        }

        Add("shackle-length", hardware.ShackleLengthM, null, Mm(hardware.ShackleLengthM ?? 0));
        Add("turnbuckle-length", hardware.TurnbuckleLengthM, null, Mm(hardware.TurnbuckleLengthM ?? 0));
        Add("pins-secured", hardware.PinsSecured, plain.PinsSecured, YesNo(hardware.PinsSecured));
        Add("turnbuckle-open", hardware.TurnbuckleOpen, plain.TurnbuckleOpen, Number(hardware.TurnbuckleOpen));
        Add("turnbuckle-locked", hardware.TurnbuckleLocked, plain.TurnbuckleLocked, YesNo(hardware.TurnbuckleLocked));
        Add("end-fitting", hardware.EndFitting, plain.EndFitting, Word(hardware.EndFitting));
        Add("clips", hardware.Clips, plain.Clips, Number(hardware.Clips));
        Add("clip-torque", hardware.ClipTorqueNm, null, Torque(hardware.ClipTorqueNm ?? 0));
        Add("side-loaded", hardware.SideLoaded, plain.SideLoaded, YesNo(hardware.SideLoaded));
        Add("metal", hardware.Metal, plain.Metal, Word(hardware.Metal));
        Add("back-up-clip", hardware.BackUpClip, plain.BackUpClip, YesNo(hardware.BackUpClip));
        Add("thimbles", hardware.Thimbles, plain.Thimbles, Word(hardware.Thimbles));
        if (hardware.Lug is { } lug)
        {
            fields.Add($"lug: {{ thickness: {Mm(lug.ThicknessM)}, width: {Mm(lug.WidthM)}, hole: {Mm(lug.HoleM)}{(lug.PinM is { } pin ? $", pin: {Mm(pin)}" : "")}{(lug.EndDistanceM is { } end ? $", end-distance: {Mm(end)}" : "")}, metal: {lug.Metal} }}");
        }

        return "{ " + string.Join(", ", fields) + " }";
    }

    /// <summary>The word of an enumeration value in the design file.</summary>
    public static string Word<T>(T value)
        where T : struct, Enum => typeof(T).GetField(value.ToString())!.GetCustomAttribute<WordAttribute>()!.Word;

    private static string YesNo(bool value) => value ? "yes" : "no";

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A torque.</summary>
    public static string Torque(double torqueNm) => Number(torqueNm) + " N·m";

    /// <summary>A short length.</summary>
    public static string Mm(double lengthM) => (1000 * lengthM).ToString("0.###", CultureInfo.InvariantCulture) + " mm";
}
