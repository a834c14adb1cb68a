using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Mastwright.Numerics.Banded;
using Mastwright.Numerics.Special;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Bench;

/// <summary>The small numerics against Math.NET, each on one thread, best of many short runs.</summary>
internal static class SmallBench
{
    public static int Run()
    {
        Console.WriteLine("| job                                | ours, µs | Math.NET, µs | ratio |");
        Console.WriteLine("|------------------------------------|---------:|-------------:|------:|");
        foreach (var x in (double[])[3, 15, 30])
        {
            Compare(
                FormattableString.Invariant($"J0 and J1 at {x}"),
                () => Bessel.J0J1(x).J0,
                () => SpecialFunctions.BesselJ(0, x) + SpecialFunctions.BesselJ(1, x));
            var z = new Complex(x, 1);
            Compare(
                FormattableString.Invariant($"J0 and J1 at {x} + i"),
                () => Bessel.J0J1(z).J0.Real,
                () => (SpecialFunctions.BesselJ(0, z) + SpecialFunctions.BesselJ(1, z)).Real);
        }

        const int Order = 300;
        const int Half = 12;
        var band = new SymmetricBand(Order, Half);
        var dense = Matrix<double>.Build.Dense(Order, Order);
        for (var i = 0; i < Order; i++)
        {
            for (var j = Math.Max(0, i - Half); j <= i; j++)
                dense[i, j] = dense[j, i] = band[i, j] = i == j ? 30 : Math.Cos((3 * i) + (7 * j));
        }

        Compare(
            $"factor a band, {Order} x {Order}, half {Half}",
            () => BandLdl.TryFactor(band, out _)!.SmallestPivotRatio,
            () => dense.Cholesky().DeterminantLn);
        return 0;
    }

    private static void Compare(string job, Func<double> ours, Func<double> theirs)
    {
        var (a, b) = (Best(ours), Best(theirs));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {job,-34} | {a,8:F2} | {b,12:F2} | {b / a,5:F1} |"));
    }

    private static double Best(Func<double> body)
    {
        var sink = 0.0;
        var best = double.PositiveInfinity;
        var spent = Stopwatch.StartNew();
        var calls = 1;
        while (spent.ElapsedMilliseconds < 1200)
        {
            var clock = Stopwatch.StartNew();
            for (var i = 0; i < calls; i++)
                sink += body();
            var each = clock.Elapsed.TotalMicroseconds / calls;
            best = Math.Min(best, each);

            // Runs of about 0.2 ms fit between the interruptions of a busy machine.
            calls = (int)Math.Clamp(200 / each, 1, 100_000);
        }

        GC.KeepAlive(sink);
        return best;
    }
}
