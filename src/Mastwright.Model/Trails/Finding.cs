namespace Mastwright.Model.Trails;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Should be looked at; the work goes on.</summary>
    Warning,

    /// <summary>The input cannot be used, or the thing asked for cannot be done.</summary>
    Error,
}

/// <summary>A place in a text: file, one-based line and column, and the dotted path of the field.</summary>
/// <param name="File">File name as the user gave it.</param>
/// <param name="Line">One-based line; 0 when unknown.</param>
/// <param name="Column">One-based column; 0 when unknown.</param>
/// <param name="Path">Dotted field path, e.g. <c>"masts[0].guys[1].height"</c>.</param>
public sealed record Place(string File, int Line, int Column, string Path)
{
    /// <inheritdoc/>
    public override string ToString() => Line > 0 ? $"{File}:{Line}:{Column}" : File;
}

/// <summary>One message to the user: what is wrong, where, what is allowed and the way out.</summary>
/// <param name="Code">Stable name, e.g. <c>"guy-above-mast"</c>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">What is wrong, one sentence.</param>
/// <param name="Place">Where; null when it belongs to no place in a file.</param>
/// <param name="Value">The value found, as written; null when there is none.</param>
/// <param name="Allowed">What would be allowed; null when that makes no sense.</param>
/// <param name="WayOut">What to do about it.</param>
public sealed record Finding(
    string Code,
    Severity Severity,
    string Message,
    Place? Place = null,
    string? Value = null,
    string? Allowed = null,
    string? WayOut = null);
