using System.Collections.Immutable;

namespace Mastwright.Structure.Loads;

/// <summary>Every wind method there is, registered here and nowhere else.</summary>
public static class WindMethods
{
    /// <summary>All methods, newest edition of each standard first.</summary>
    public static ImmutableArray<IWindMethod> All { get; } =
        [AsceWind.Edition2022, AsceWind.Edition2016, new EurocodeWind(), new StatedPressure()];

    /// <summary>The method of a name, or null; case and surrounding spaces do not matter.</summary>
    public static IWindMethod? Find(string name) =>
        All.FirstOrDefault(m => string.Equals(m.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
}
