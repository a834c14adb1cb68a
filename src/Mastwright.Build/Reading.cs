using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Build;

/// <summary>What came of reading a text: the thing read, when there is one, and everything worth saying about it.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
/// <param name="Value">The thing read; null when a finding of severity <see cref="Severity.Error"/> made it unusable.</param>
/// <param name="Findings">All findings in the order of the text.</param>
public sealed record Reading<T>(T? Value, ImmutableArray<Finding> Findings)
    where T : class
{
    /// <summary>Whether there is something to work with; there may still be warnings.</summary>
    public bool IsUsable => Value is not null;

    /// <summary>The findings that made the text unusable.</summary>
    public IEnumerable<Finding> Errors => Findings.Where(f => f.Severity == Severity.Error);

    /// <summary>The same findings with what <paramref name="convert"/> makes of the value.</summary>
    public Reading<TOther> Then<TOther>(Func<T, Reading<TOther>> convert)
        where TOther : class
    {
        if (Value is null) return new(null, Findings);
        var next = convert(Value);
        return new(next.Value, Findings.AddRange(next.Findings));
    }
}
