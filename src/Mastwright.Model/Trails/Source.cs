namespace Mastwright.Model.Trails;

/// <summary>How firmly a source stands behind a number.</summary>
public enum SourceKind
{
    /// <summary>A published standard, code or regulation.</summary>
    Standard,

    /// <summary>A textbook, handbook or paper.</summary>
    Literature,

    /// <summary>A maker's data sheet.</summary>
    MakerData,

    /// <summary>A rule of the trade with no source that can be cited.</summary>
    CommonPractice,

    /// <summary>Recalled from the named work but not looked up: check before relying on the last digit.</summary>
    FromMemory,

    /// <summary>Derived here from first principles; the theory page shows how.</summary>
    Derived,

    /// <summary>Written by the user in the design file.</summary>
    Design,

    /// <summary>Filled in by this program because the design file is silent.</summary>
    Assumed,
}

/// <summary>Where a formula or a value comes from.</summary>
/// <param name="Title">The work, e.g. <c>"Irvine, Cable Structures, ch. 1"</c>.</param>
/// <param name="Kind">How firmly it stands.</param>
/// <param name="Edition">Edition or year where it matters; null otherwise.</param>
public sealed record Source(string Title, SourceKind Kind, string? Edition = null)
{
    /// <summary>A rule of the trade: says so instead of naming a work.</summary>
    public static Source CommonPractice { get; } = new("common practice, no source", SourceKind.CommonPractice);

    /// <summary>A value the user wrote in the design file.</summary>
    public static Source DesignFile { get; } = new("design file", SourceKind.Design);

    /// <summary>A textbook, handbook or paper.</summary>
    public static Source Literature(string title, string? edition = null) => new(title, SourceKind.Literature, edition);

    /// <summary>A published standard, code or regulation.</summary>
    public static Source Standard(string title, string? edition = null) => new(title, SourceKind.Standard, edition);

    /// <summary>A value recalled from a named work but not looked up.</summary>
    public static Source FromMemory(string title, string? edition = null) => new(title, SourceKind.FromMemory, edition);

    /// <summary>Derived from first principles; <paramref name="theoryPage"/> is a page of docs/theory.</summary>
    public static Source Derived(string theoryPage) => new(theoryPage, SourceKind.Derived);

    /// <inheritdoc/>
    public override string ToString()
    {
        var edition = Edition is null ? "" : $" ({Edition})";
        var memory = Kind == SourceKind.FromMemory ? ", from memory" : "";
        return Title + edition + memory;
    }
}
