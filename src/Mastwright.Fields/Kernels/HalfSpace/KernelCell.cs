using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>One rectangle of a kernel table: values at Chebyshev nodes, or the smaller rectangles it was cut into.</summary>
internal sealed class KernelCell(double rhoLow, double rhoHigh, double heightLow, double heightHigh, Depths depths)
{
    private const int Order = 7;
    private const int Functions = SommerfeldIntegrator.Functions;
    private static readonly Chebyshev Rule = new(Order);

    // Midway between nodes, near the rim and near the middle, where Chebyshev interpolation errs most.
    private static readonly double[] Tests = [0.5 * (Rule.Nodes[0] + Rule.Nodes[1]), 0.5 * (Rule.Nodes[3] + Rule.Nodes[4])];

    private double[] _values = [];
    private double[] _atCommonDepth = [];

    /// <summary>Set once the cell has values or children.</summary>
    public volatile bool Ready;

    /// <summary>The smaller cells, or null for a cell with values.</summary>
    public KernelCell[]? Children { get; private set; }

    public double RhoMid { get; } = 0.5 * (rhoLow + rhoHigh);

    public double HeightMid { get; } = 0.5 * (heightLow + heightHigh);

    public double Size => Math.Max(rhoHigh - rhoLow, heightHigh - heightLow);

    // A long flat cell is first cut across its length only.
    private bool SplitsRho => rhoHigh - rhoLow > 0.4 * (heightHigh - heightLow);

    private bool SplitsHeight => heightHigh - heightLow > 0.4 * (rhoHigh - rhoLow);

    /// <summary>The smaller cell that holds a place.</summary>
    public KernelCell Child(double rho, double height) =>
        Children![(SplitsRho && rho > RhoMid ? 1 : 0) + (SplitsHeight && height > HeightMid ? 2 : 0)];

    /// <summary>Computes the values and returns the worst error at the test points as a share of 1/R + 1/5.</summary>
    public double Fill(SommerfeldIntegrator integrator)
    {
        double[] x = [.. Rule.Nodes, .. Tests], depth = [.. depths.Values, .. depths.Test];
        var rho = x.Select(t => RhoMid + (0.5 * (rhoHigh - rhoLow) * t)).ToArray();
        var height = x.Select(t => HeightMid + (0.5 * (heightHigh - heightLow) * t)).ToArray();
        var all = new Complex[x.Length * x.Length * depth.Length * Functions];
        integrator.Evaluate(rho, height, depth, all);
        ReadOnlySpan<Complex> At(int i, int j, int d) => all.AsSpan(((((i * x.Length) + j) * depth.Length) + d) * Functions, Functions);

        var stored = depths.Values.Length;
        var values = new Complex[Order * Order * stored * Functions];
        for (var i = 0; i < Order; i++)
            for (var j = 0; j < Order; j++)
                for (var d = 0; d < stored; d++)
                    At(i, j, d).CopyTo(values.AsSpan(((((i * Order) + j) * stored) + d) * Functions));
        _values = MemoryMarshal.Cast<Complex, double>(values).ToArray();
        _atCommonDepth = double.IsNaN(depths.Common) ? [] : AtDepth(depths.Common);

        var scale = (1 / Math.Sqrt((rhoHigh * rhoHigh) + (heightHigh * heightHigh))) + 0.2;
        var worst = 0.0;
        for (var i = Order; i < x.Length; i++)
            for (var j = Order; j < x.Length; j++)
                for (var d = stored == 1 ? 0 : stored; d < depth.Length; d++)
                    worst = Math.Max(worst, Difference(Interpolate(rho[i], height[j], depth[d]), At(i, j, d)));
        return worst / scale;
    }

    /// <summary>Gives up the values for smaller cells.</summary>
    public void Split()
    {
        _values = _atCommonDepth = [];
        double right = SplitsRho ? RhoMid : rhoHigh, middle = SplitsHeight ? HeightMid : heightHigh;
        Children =
        [
            new(rhoLow, right, heightLow, middle, depths), new(right, rhoHigh, heightLow, middle, depths),
            new(rhoLow, right, middle, heightHigh, depths), new(right, rhoHigh, middle, heightHigh, depths),
        ];
    }

    /// <summary>The interpolated remainders.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public KernelRemainder Interpolate(double rho, double height, double depth)
    {
        Span<double> acrossRho = stackalloc double[Order];
        Span<double> acrossHeight = stackalloc double[Order];
        Span<double> acrossDepth = stackalloc double[8];
        var common = Math.Abs(depth - depths.Common) <= 1e-12 * depth;
        Rule.Weights((rho - RhoMid) / (0.5 * (rhoHigh - rhoLow)), acrossRho);
        Rule.Weights((height - HeightMid) / (0.5 * (heightHigh - heightLow)), acrossHeight);
        if (common)
            acrossDepth[0] = 1;
        else
            depths.Weights(depth, acrossDepth);
        acrossDepth = acrossDepth[..(common ? 1 : depths.Values.Length)];
        Vector256<double> low = default, high = default;
        var values = MemoryMarshal.Cast<double, Vector256<double>>((common ? _atCommonDepth : _values).AsSpan());
        var at = 0;
        for (var i = 0; i < Order; i++)
        {
            for (var j = 0; j < Order; j++)
            {
                var plane = acrossRho[i] * acrossHeight[j];
                foreach (var d in acrossDepth)
                {
                    var w = Vector256.Create(plane * d);
                    low += w * values[at++];
                    high += w * values[at++];
                }
            }
        }

        return new(new(low[0], low[1]), new(low[2], low[3]), new(high[0], high[1]), new(high[2], high[3]));
    }

    // The values of all nodes at one depth.
    private double[] AtDepth(double depth)
    {
        Span<double> weights = stackalloc double[8];
        depths.Weights(depth, weights);
        const int numbers = 2 * Functions;
        var stored = depths.Values.Length;
        var result = new double[Order * Order * numbers];
        for (var place = 0; place < Order * Order; place++)
            for (var d = 0; d < stored; d++)
                for (var f = 0; f < numbers; f++)
                    result[(place * numbers) + f] += weights[d] * _values[(((place * stored) + d) * numbers) + f];
        return result;
    }

    private static double Difference(in KernelRemainder found, ReadOnlySpan<Complex> exact) => Math.Max(
        Math.Max((found.Horizontal - exact[0]).Magnitude, (found.Charge - exact[1]).Magnitude),
        Math.Max((found.Vertical - exact[2]).Magnitude, (found.Turning - exact[3]).Magnitude));
}
