using Mastwright.Model.Trails;

namespace Mastwright.Journal;

/// <summary>Whether something was done; when not, the one message that says why.</summary>
/// <param name="Problem">What went wrong; null when it was done.</param>
public sealed record Outcome(Finding? Problem)
{
    /// <summary>Done.</summary>
    public static Outcome Success { get; } = new((Finding?)null);

    /// <summary>Whether it was done.</summary>
    public bool Done => Problem is null;
}

/// <summary>A value, or the one message that says why there is none.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
/// <param name="Value">The value; null when there is a problem.</param>
/// <param name="Problem">What went wrong; null when there is a value.</param>
public sealed record Outcome<T>(T? Value, Finding? Problem)
    where T : class
{
    /// <summary>Whether there is a value.</summary>
    public bool Done => Problem is null;

    /// <summary>A value.</summary>
    public static implicit operator Outcome<T>(T value) => new(value, null);

    /// <summary>A problem.</summary>
    public static implicit operator Outcome<T>(Finding problem) => new(null, problem);
}
