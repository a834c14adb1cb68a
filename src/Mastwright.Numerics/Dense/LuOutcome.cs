namespace Mastwright.Numerics.Dense;

/// <summary>What came of trying to factor a matrix: a factor, or the reason why there is none.</summary>
public abstract record LuOutcome
{
    private LuOutcome()
    {
    }

    /// <summary>The factor.</summary>
    /// <exception cref="SingularMatrixException">There is none; the message says why.</exception>
    public ComplexLu Require() => this switch
    {
        Factored f => f.Lu,
        Singular s => throw new SingularMatrixException($"The matrix is singular: no usable pivot in column {s.Column} (counted from 0).", s.Column),
        NotFinite n => throw new SingularMatrixException($"The matrix holds an infinite or undefined element in column {n.Column} (counted from 0).", n.Column),
        TooLarge t => throw new InsufficientMemoryException(t.Memory.ToString()),
        _ => throw new InvalidOperationException("Unknown outcome."),
    };

    /// <summary>The factor when there is one.</summary>
    public bool TryGet([System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out ComplexLu? lu)
    {
        lu = (this as Factored)?.Lu;
        return lu is not null;
    }

    /// <summary>Success.</summary>
    /// <param name="Lu">The factor.</param>
    public sealed record Factored(ComplexLu Lu) : LuOutcome;

    /// <summary>A column has no non-zero pivot: the matrix is singular to working precision.</summary>
    /// <param name="Column">The first such column, counted from 0.</param>
    public sealed record Singular(int Column) : LuOutcome;

    /// <summary>The matrix holds infinity or not-a-number, or overflowed while it was factored.</summary>
    /// <param name="Column">The first such column, counted from 0.</param>
    public sealed record NotFinite(int Column) : LuOutcome;

    /// <summary>The factor would not fit the memory; nothing was taken.</summary>
    /// <param name="Memory">What it would have taken and what there is.</param>
    public sealed record TooLarge(DenseMemory Memory) : LuOutcome;
}

/// <summary>A matrix that cannot be factored was required to be.</summary>
/// <param name="message">Why.</param>
/// <param name="column">The column where it showed, counted from 0.</param>
public sealed class SingularMatrixException(string message, int column) : ArithmeticException(message)
{
    /// <summary>The column where it showed, counted from 0.</summary>
    public int Column { get; } = column;
}
