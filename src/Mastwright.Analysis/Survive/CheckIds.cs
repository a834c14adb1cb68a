namespace Mastwright.Analysis.Survive;

/// <summary>Names of checks that belong to one mast.</summary>
internal static class CheckIds
{
    /// <summary><c>"survive.corona[ring, storm]"</c> of mast A becomes <c>"survive.corona[A, ring, storm]"</c>.</summary>
    public static string Of(string id, string mast) =>
        id.Contains('[', StringComparison.Ordinal) ? id.Replace("[", $"[{mast}, ", StringComparison.Ordinal) : $"{id}[{mast}]";
}
