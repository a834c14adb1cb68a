using Mastwright.Model.Trails;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

/// <summary>Metals typed by hand in ksi or MPa, independent of the catalogue.</summary>
internal static class Metals
{
    public const double Ksi = 6.894757e6;

    public static MemberMetal Steel50 { get; } = new("50 ksi steel", MetalFamily.Steel, 29000 * Ksi, 50 * Ksi, 65 * Ksi, 7850, Source.FromMemory("AISC"));

    public static MemberMetal Pipe35 { get; } = new("A53B", MetalFamily.Steel, 29000 * Ksi, 35 * Ksi, 60 * Ksi, 7850, Source.FromMemory("AISC"));

    public static MemberMetal S355 { get; } = new("S355", MetalFamily.Steel, 210e9, 355e6, 470e6, 7850, Source.FromMemory("EN 1993-1-1"));

    public static MemberMetal Al6061 { get; } = new("6061-T6", MetalFamily.Aluminium, 10100 * Ksi, 35 * Ksi, 38 * Ksi, 2700, Source.FromMemory("ADM"))
    {
        WeldedYieldPa = 15 * Ksi,
        WeldedUltimatePa = 24 * Ksi,
    };

    public static MemberMetal Al6082 { get; } = new("6082-T6", MetalFamily.Aluminium, 70e9, 250e6, 290e6, 2700, Source.FromMemory("EN 1999-1-1"))
    {
        WeldedYieldPa = 125e6,
        WeldedUltimatePa = 185e6,
    };

    public static MemberMetal Stainless { get; } = new("1.4301", MetalFamily.Stainless, 200e9, 210e6, 520e6, 7900, Source.FromMemory("EN 1993-1-4 table 2.1"));

    public static MemberMetal Of(MetalFamily family) => family switch
    {
        MetalFamily.Steel => S355,
        MetalFamily.Aluminium => Al6061,
        _ => Stainless,
    };
}
