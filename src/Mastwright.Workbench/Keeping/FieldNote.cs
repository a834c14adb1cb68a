namespace Mastwright.Workbench.Keeping;

/// <summary>One line of an inspection as it was entered outdoors.</summary>
public sealed record FieldLook
{
    /// <summary>Key of the checklist item.</summary>
    public string? Key { get; init; }

    /// <summary>good, watch, bad or not-seen.</summary>
    public string? State { get; init; }

    /// <summary>Free words.</summary>
    public string? Remark { get; init; }
}

/// <summary>
/// An entry as it was typed outdoors, with units as written. The phone makes the key, so the same entry sent again is the
/// same entry.
/// </summary>
public sealed record FieldNote
{
    /// <summary>Key, made where it was entered, never used twice.</summary>
    public Guid Id { get; init; }

    /// <summary>tension, inspection, storm, photo or note.</summary>
    public string? Kind { get; init; }

    /// <summary>When, with the offset of the phone's clock, e.g. <c>2026-05-01T14:30:00+02:00</c>.</summary>
    public string? At { get; init; }

    /// <summary>The mast; empty for the whole station.</summary>
    public string? Mast { get; init; }

    /// <summary>Who noted it.</summary>
    public string? Author { get; init; }

    /// <summary>Free words.</summary>
    public string? Text { get; init; }

    /// <summary>Air temperature with its unit.</summary>
    public string? Temperature { get; init; }

    /// <summary>Wind with its unit.</summary>
    public string? Wind { get; init; }

    /// <summary>Weather in words.</summary>
    public string? Weather { get; init; }

    /// <summary>The guy of a tension, by level and anchor.</summary>
    public string? Guy { get; init; }

    /// <summary>How the tension was read: gauge, pulse, swing, pitch, sag or tangent.</summary>
    public string? Way { get; init; }

    /// <summary>The reading as written, e.g. <c>10 in 2.79 s</c>.</summary>
    public string? Reading { get; init; }

    /// <summary>The lines of an inspection.</summary>
    public IReadOnlyList<FieldLook>? Items { get; init; }

    /// <summary>Strongest gust of a storm with its unit.</summary>
    public string? Gust { get; init; }

    /// <summary>Radial ice of a storm with its unit.</summary>
    public string? Ice { get; init; }

    /// <summary>Whether lightning struck here or near.</summary>
    public bool Lightning { get; init; }

    /// <summary>When a storm ended.</summary>
    public string? Ended { get; init; }

    /// <summary>Name or path of a photo's file; the photo itself stays where it is.</summary>
    public string? Path { get; init; }

    /// <summary>Digest of the photo in hexadecimal; empty when not taken.</summary>
    public string? Sha256 { get; init; }

    /// <summary>The entry the photo belongs to.</summary>
    public Guid? About { get; init; }
}

/// <summary>What came of one entry that was sent.</summary>
/// <param name="Id">Its key.</param>
/// <param name="State">kept, already, refused, or later: not taken for a reason that is none of the entry's, so that it is to be sent again.</param>
/// <param name="Says">What the reader should know: the tension found and how it stands to the table, or why it was refused.</param>
/// <param name="Field">The field a refusal is about; empty when it is about none.</param>
public sealed record FieldAnswer(Guid Id, string State, string Says, string Field);
