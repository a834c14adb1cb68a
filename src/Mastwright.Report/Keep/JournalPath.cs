namespace Mastwright.Report.Keep;

/// <summary>Where the journal of a design lies.</summary>
public static class JournalPath
{
    /// <summary>Ending of a journal's file.</summary>
    public const string Ending = ".journal";

    /// <summary>The journal's file for a design: beside it, with its own ending.</summary>
    /// <param name="designPath">The design file; null for the built-in station.</param>
    public static string For(string? designPath) => designPath is null ? "station" + Ending : Path.ChangeExtension(designPath, Ending);
}
