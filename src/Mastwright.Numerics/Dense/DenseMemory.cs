using System.Globalization;

namespace Mastwright.Numerics.Dense;

/// <summary>Memory a dense solve will take, known before any of it is taken.</summary>
/// <param name="Order">Order of the matrix.</param>
/// <param name="MatrixBytes">The matrix itself.</param>
/// <param name="FactorBytes">What factoring takes beyond the matrix: the factor and the packed panels.</param>
/// <param name="AvailableBytes">What the machine lets this process use and does not use yet.</param>
public sealed record DenseMemory(int Order, long MatrixBytes, long FactorBytes, long AvailableBytes)
{
    /// <summary>Matrix and factor together.</summary>
    public long TotalBytes => MatrixBytes + FactorBytes;

    /// <summary>Whether <see cref="FactorBytes"/> fit beside a matrix that already exists.</summary>
    public bool FactorFits => FactorBytes <= AvailableBytes;

    /// <summary>Whether matrix and factor fit, before either exists.</summary>
    public bool Fits => TotalBytes <= AvailableBytes && Order <= PlanarStorage<double>.LargestOrder;

    /// <summary>The estimate for a square matrix.</summary>
    /// <param name="order">Order of the matrix.</param>
    /// <param name="options">How it will be factored; null for the default.</param>
    public static DenseMemory ForFactor(int order, LuOptions? options = null)
    {
        options ??= LuOptions.Default;
        var matrix = PlanarStorage<double>.Bytes(order, order);
        var factor = (options.Overwrite ? 0 : matrix) + PlanarLu.WorkBytes(order, options.ThreadCount, sizeof(double));

        // Garbage counts as taken until it is collected; that is worth the while only when memory looks short.
        var available = Available(collect: false);
        return new(order, matrix, factor, available > matrix + factor ? available : Available(collect: true));
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Order} unknowns: matrix {MatrixBytes / 1048576.0:F0} MiB, factoring {FactorBytes / 1048576.0:F0} MiB, available {AvailableBytes / 1048576.0:F0} MiB.");

    private static long Available(bool collect)
    {
        var taken = GC.GetTotalMemory(forceFullCollection: collect);
        var info = GC.GetGCMemoryInfo();
        return Math.Max(0, info.TotalAvailableMemoryBytes - Math.Max(taken, info.MemoryLoadBytes));
    }
}
