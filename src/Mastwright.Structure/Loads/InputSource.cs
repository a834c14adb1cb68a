using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Where the inputs of these models come from when they do not carry a source of their own.</summary>
internal static class InputSource
{
    /// <summary>Dimensions and strengths as the design states them or its catalogue parts give them.</summary>
    public static Source Design { get; } = new("design and its catalogue parts", SourceKind.Design);
}
