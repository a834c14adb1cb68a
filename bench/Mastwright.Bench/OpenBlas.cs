using System.Runtime.InteropServices;

namespace Mastwright.Bench;

/// <summary>The baseline from Debian's libopenblas0. It is linked here and nowhere in the product.</summary>
internal sealed unsafe class OpenBlas
{
    private readonly delegate* unmanaged<int*, int*, double*, int*, int*, int*, void> _zgetrf;
    private readonly delegate* unmanaged<int*, int*, double*, int*, int*, double*, int*, int*, void> _zgesv;

    private readonly delegate* unmanaged<byte*, int*, int*, double*, int*, int*, double*, int*, int*, nint, void> _zgetrs;

    private OpenBlas(nint library, int threads)
    {
        _zgetrf = (delegate* unmanaged<int*, int*, double*, int*, int*, int*, void>)NativeLibrary.GetExport(library, "zgetrf_");
        _zgesv = (delegate* unmanaged<int*, int*, double*, int*, int*, double*, int*, int*, void>)NativeLibrary.GetExport(library, "zgesv_");
        _zgetrs = (delegate* unmanaged<byte*, int*, int*, double*, int*, int*, double*, int*, int*, nint, void>)NativeLibrary.GetExport(library, "zgetrs_");
        ((delegate* unmanaged<int, void>)NativeLibrary.GetExport(library, "openblas_set_num_threads"))(threads);
        Kernel = Text(library, "openblas_get_corename");
        Version = Text(library, "openblas_get_config");
    }

    /// <summary>The kernel family it picked for this machine.</summary>
    public string Kernel { get; }

    public string Version { get; }

    public static OpenBlas? TryLoad(int threads, out string whyNot)
    {
        // Overrides meant for other programs would keep it from picking its best kernel. The library reads the process's
        // own environment while it loads, which the managed environment does not reach.
        foreach (var name in (string[])["OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE", "OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"])
            Unset(name);
        foreach (var file in (string[])["libopenblas.so.0", "libopenblas"])
        {
            if (NativeLibrary.TryLoad(file, out var library))
            {
                whyNot = "";
                return new(library, threads);
            }
        }

        whyNot = "libopenblas.so.0 is not on this machine (Debian package libopenblas0)";
        return null;
    }

    /// <summary>Factors an interleaved column-major matrix in place.</summary>
    public void Factor(double* a, int n, int* pivots)
    {
        int info;
        _zgetrf(&n, &n, a, &n, pivots, &info);
        Check(info);
    }

    /// <summary>Factors and solves for one right-hand side in place.</summary>
    public void Solve(double* a, int n, int* pivots, double* b)
    {
        int info;
        var one = 1;
        _zgesv(&n, &one, a, &n, pivots, b, &n, &info);
        Check(info);
    }

    /// <summary>Solves for many right-hand sides in place with a factor.</summary>
    public void SolveMany(double* factor, int n, int* pivots, double* b, int columns)
    {
        int info;
        var no = (byte)'N';
        _zgetrs(&no, &n, &columns, factor, &n, pivots, b, &n, &info, 1);
        Check(info);
    }

    private static void Check(int info)
    {
        if (info != 0)
            throw new InvalidOperationException($"The baseline refused the matrix: info {info}.");
    }

    private static string Text(nint library, string function) =>
        Marshal.PtrToStringAnsi(((delegate* unmanaged<nint>)NativeLibrary.GetExport(library, function))()) ?? "unknown";

    private static void Unset(string name)
    {
        if (NativeLibrary.TryLoad("libc.so.6", out var c) && NativeLibrary.TryGetExport(c, "unsetenv", out var unset))
        {
            var text = Marshal.StringToHGlobalAnsi(name);
            _ = ((delegate* unmanaged<nint, int>)unset)(text);
            Marshal.FreeHGlobal(text);
        }
    }
}
