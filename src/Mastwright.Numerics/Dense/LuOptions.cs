namespace Mastwright.Numerics.Dense;

/// <summary>The instruction set a dense factorisation runs on.</summary>
public enum VectorPath
{
    /// <summary>The widest the machine has.</summary>
    Widest,

    /// <summary>512-bit vectors with fused multiply-add.</summary>
    Bits512,

    /// <summary>256-bit vectors with fused multiply-add.</summary>
    Bits256,

    /// <summary>Portable vectors, any machine.</summary>
    Portable,
}

/// <summary>How to factor a dense matrix. The default is right for almost everybody.</summary>
/// <param name="Threads">Threads to use; 0 means one a core.</param>
/// <param name="Overwrite">Factor inside the matrix's own memory: half the memory, but the matrix is empty (1 x 1, zero) afterwards.</param>
/// <param name="Path">The instruction set; a path the machine lacks falls back to the widest it has.</param>
public sealed record LuOptions(int Threads = 0, bool Overwrite = false, VectorPath Path = VectorPath.Widest)
{
    /// <summary>All cores, matrix kept, widest vectors.</summary>
    public static LuOptions Default { get; } = new();

    /// <summary>Columns of a panel, for tuning; 0 means chosen by size. A multiple of 48 in double, of 96 in single precision.</summary>
    internal int PanelWidth { get; init; }

    internal int ThreadCount => Threads > 0 ? Threads : Environment.ProcessorCount;
}
