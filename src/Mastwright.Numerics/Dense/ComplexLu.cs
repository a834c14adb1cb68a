using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// The factorisation P A = L U of a square dense complex matrix, with partial pivoting.
/// </summary>
/// <remarks>
/// <para>
/// <c>ComplexLu.Factor(z).Require().Solve(v)</c> solves one system. Keep the factor to solve for many right-hand sides:
/// factoring costs 8/3 n^3 real operations, each solve 8 n^2. A factor never changes, and several threads may solve with
/// it at once.
/// </para>
/// <para>
/// The pivot of a column is its largest |re| + |im|, as LAPACK's zgetrf has it. The backward error is of the order of the
/// unit round-off times a growth factor that is small in practice (N. J. Higham, Accuracy and Stability of Numerical
/// Algorithms, 2nd ed., chapter 9); <see cref="SolveRefined"/> measures it. To solve once, faster, to the same accuracy,
/// see <see cref="ComplexSolver"/>.
/// </para>
/// </remarks>
public sealed class ComplexLu
{
    private readonly PlanarLu<double> _lu;
    private readonly double _oneNorm;
    private readonly LuOptions _options;
    private readonly Lazy<double> _condition;

    private ComplexLu(PlanarLu<double> lu, double oneNorm, LuOptions options)
    {
        _lu = lu;
        _oneNorm = oneNorm;
        _options = options;
        _condition = new(EstimateCondition);
    }

    /// <summary>Order of the matrix.</summary>
    public int Order => _lu.Order;

    /// <summary>At step k, row k was swapped with row <c>Pivots[k]</c>.</summary>
    public ReadOnlySpan<int> Pivots => _lu.Pivots;

    /// <summary>
    /// Estimate of the 1-norm condition number ||A|| ||inverse of A|| (Higham 1988): a lower bound, almost always within a
    /// factor 3. About log10 of it is the number of digits lost. Costs a few solves, once.
    /// </summary>
    public double ConditionEstimate => _condition.Value;

    /// <summary>Factors a square matrix.</summary>
    /// <param name="matrix">The matrix; kept unless <see cref="LuOptions.Overwrite"/> is set.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="cancellation">Stops the work between panels.</param>
    /// <returns>The factor, or why there is none.</returns>
    /// <exception cref="ArgumentException">The matrix is not square.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; with <see cref="LuOptions.Overwrite"/> the matrix is lost.</exception>
    public static LuOutcome Factor(ComplexMatrix matrix, LuOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        options ??= LuOptions.Default;
        if (matrix.Rows != matrix.Columns)
            throw new ArgumentException($"Only a square matrix can be factored; this one is {matrix.Rows} x {matrix.Columns}.", nameof(matrix));
        var memory = DenseMemory.ForFactor(matrix.Rows, options);
        if (!memory.FactorFits)
            return new LuOutcome.TooLarge(memory);
        if (!TryOneNorm(matrix.Storage, options, out var norm, out var notFinite))
            return new LuOutcome.NotFinite(notFinite);

        var storage = options.Overwrite ? matrix.TakeStorage() : matrix.Storage.Clone();
        var lu = PlanarLu<double>.Factor(storage, options, cancellation, out var failed);
        if (lu is not null)
            return new LuOutcome.Factored(new ComplexLu(lu, norm, options));
        return IsFinite(storage, failed) ? new LuOutcome.Singular(failed) : new LuOutcome.NotFinite(failed);
    }

    /// <summary>Solves A x = b.</summary>
    /// <param name="rhs">b, of length <see cref="Order"/>.</param>
    public Complex[] Solve(ReadOnlySpan<Complex> rhs)
    {
        var x = PlanarVector<double>.From(rhs, CheckedLength(rhs.Length));
        _lu.Solve(x);
        return x.ToComplex();
    }

    /// <summary>Solves A^H x = b, A^H the conjugate transpose.</summary>
    /// <param name="rhs">b, of length <see cref="Order"/>.</param>
    public Complex[] SolveAdjoint(ReadOnlySpan<Complex> rhs)
    {
        var x = PlanarVector<double>.From(rhs, CheckedLength(rhs.Length));
        _lu.SolveAdjoint(x);
        return x.ToComplex();
    }

    /// <summary>Solves A X = B for all columns of B at once.</summary>
    /// <param name="rhs">B, with <see cref="Order"/> rows; kept.</param>
    public ComplexMatrix SolveMany(ComplexMatrix rhs)
    {
        ArgumentNullException.ThrowIfNull(rhs);
        CheckedLength(rhs.Rows);
        var result = rhs.Clone();
        _lu.SolveMany(result.Storage, _options);
        return result;
    }

    /// <summary>
    /// Solves A x = b, then corrects x from the residual until the backward error stops falling
    /// (Higham, Accuracy and Stability, chapter 12).
    /// </summary>
    /// <param name="matrix">The very matrix this is the factor of.</param>
    /// <param name="rhs">b.</param>
    public RefinedSolution SolveRefined(ComplexMatrix matrix, ReadOnlySpan<Complex> rhs)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        if (matrix.Rows != Order || matrix.Columns != Order)
            throw new ArgumentException("This is not the matrix that was factored.", nameof(matrix));
        var b = PlanarVector<double>.From(rhs, CheckedLength(rhs.Length));
        return Refinement.Run(matrix.Storage, _oneNorm, b, _lu.Solve, _options.ThreadCount).ToSolution();
    }

    internal static bool TryOneNorm(PlanarStorage<double> storage, LuOptions options, out double norm, out int notFinite)
    {
        return TryOneNorm(PlanarOps<double>.ColumnSums(storage, options.ThreadCount), out norm, out notFinite);
    }

    internal static bool TryOneNorm(double[] sums, out double norm, out int notFinite)
    {
        notFinite = Array.FindIndex(sums, s => !double.IsFinite(s));
        norm = sums.Max();
        return notFinite < 0;
    }

    private static bool IsFinite(PlanarStorage<double> a, int column) =>
        !a.ReColumn(column).ContainsAnyExceptInRange(double.MinValue, double.MaxValue)
        && !a.ImColumn(column).ContainsAnyExceptInRange(double.MinValue, double.MaxValue);

    private double EstimateCondition() =>
        _oneNorm * ConditionEstimator.InverseOneNorm(Order, _lu.Solve, _lu.SolveAdjoint);

    private int CheckedLength(int length) =>
        length == Order ? length : throw new ArgumentException($"The right-hand side has {length} rows, the matrix {Order}.");
}
