using System.Collections.Immutable;

namespace Mastwright.Structure.Loads;

/// <summary>Every ice method there is, registered here and nowhere else.</summary>
public static class IceMethods
{
    /// <summary>All methods, newest edition of each standard first.</summary>
    public static ImmutableArray<IIceMethod> All { get; } =
        [AsceIce.Edition2022, AsceIce.Edition2016, AsceIce.Edition2010, new IsoGlaze(), new StatedIce()];

    /// <summary>The method of a name, or null; case and surrounding spaces do not matter.</summary>
    public static IIceMethod? Find(string name) =>
        All.FirstOrDefault(m => string.Equals(m.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
