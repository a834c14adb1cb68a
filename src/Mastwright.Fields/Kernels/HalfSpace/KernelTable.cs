using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>
/// The remainders of one region as an adaptive table: rectangles in (ρ, height) that carry a Chebyshev interpolant and split until
/// it agrees with the integrals at points between its nodes. Cells are made when first asked for, so only what a model needs is
/// computed. Safe to use from many threads.
/// </summary>
internal sealed class KernelTable
{
    private readonly SommerfeldIntegrator _integrator;
    private readonly Cell _root;
    private readonly double _tolerance;
    private double _worst;
    private int _cells;

    /// <summary>A table for distances up to <paramref name="rhoMax"/> and heights up to <paramref name="heightMax"/>, units of 1/k₀.</summary>
    /// <param name="region">Air or soil.</param>
    /// <param name="medium">The soil.</param>
    /// <param name="rhoMax">Largest horizontal distance.</param>
    /// <param name="heightMax">Largest sum of heights (or depths).</param>
    /// <param name="tolerance">Largest error allowed, as a share of 1/R + 1/5.</param>
    public KernelTable(Region region, HalfSpaceMedium medium, double rhoMax, double heightMax, double tolerance)
    {
        _integrator = new(region, medium);
        _tolerance = tolerance;
        _root = new(0, Math.Max(rhoMax, 1e-3) * 1.0001, 0, Math.Max(heightMax, 1e-3) * 1.0001);
    }

    /// <summary>Worst error seen at the test points, as a share of 1/R + 1/5.</summary>
    public double WorstError => _worst;

    /// <summary>Cells made so far.</summary>
    public int CellCount => _cells;

    /// <summary>The remainders at a place; outside the table's extent the nearest edge's polynomial is continued.</summary>
    public KernelRemainder At(double rho, double height)
    {
        var cell = _root;
        while (true)
        {
            if (!cell.Ready)
                Make(cell);
            if (cell.Children is not { } children)
                return cell.Interpolate(rho, height);
            cell = children[(cell.SplitsRho && rho > cell.RhoMid ? 1 : 0) + (cell.SplitsHeight && height > cell.HeightMid ? 2 : 0)];
        }
    }

    private void Make(Cell cell)
    {
        lock (cell)
        {
            if (cell.Ready)
                return;
            var error = cell.Fill(_integrator);
            Interlocked.Increment(ref _cells);
            if (error > _tolerance && cell.Size > 2e-3)
                cell.Split();
            else if (error > _worst)
                _worst = error;
            cell.Ready = true;
        }
    }

    private sealed class Cell(double rhoLow, double rhoHigh, double heightLow, double heightHigh)
    {
        private const int Order = 7;
        private static readonly double[] Nodes = [.. Enumerable.Range(0, Order).Select(i => -Math.Cos(Math.PI * (i + 0.5) / Order))];
        private static readonly double[] Weights = [.. Enumerable.Range(0, Order).Select(i => (i % 2 == 0 ? 1 : -1) * Math.Sin(Math.PI * (i + 0.5) / Order))];

        // Midway between nodes, near the rim and near the middle, where Chebyshev interpolation errs most.
        private static readonly double[] Tests = [0.5 * (Nodes[0] + Nodes[1]), 0.5 * (Nodes[3] + Nodes[4])];

        private double[] _values = [];

        public volatile bool Ready;

        public Cell[]? Children { get; private set; }

        public double RhoMid { get; } = 0.5 * (rhoLow + rhoHigh);

        public double HeightMid { get; } = 0.5 * (heightLow + heightHigh);

        // A long flat cell is first cut across its length only.
        public bool SplitsRho => rhoHigh - rhoLow > 0.4 * (heightHigh - heightLow);

        public bool SplitsHeight => heightHigh - heightLow > 0.4 * (rhoHigh - rhoLow);

        public double Size => Math.Max(rhoHigh - rhoLow, heightHigh - heightLow);

        public double Fill(SommerfeldIntegrator integrator)
        {
            double[] x = [.. Nodes, .. Tests];
            var rho = x.Select(t => RhoMid + (0.5 * (rhoHigh - rhoLow) * t)).ToArray();
            var height = x.Select(t => HeightMid + (0.5 * (heightHigh - heightLow) * t)).ToArray();
            var all = new Complex[x.Length * x.Length * SommerfeldIntegrator.Functions];
            integrator.Evaluate(rho, height, [0], all);
            ReadOnlySpan<Complex> At(int i, int j) => all.AsSpan(((i * x.Length) + j) * SommerfeldIntegrator.Functions, SommerfeldIntegrator.Functions);
            var values = new Complex[Order * Order * SommerfeldIntegrator.Functions];
            for (var i = 0; i < Order; i++)
                for (var j = 0; j < Order; j++)
                    At(i, j).CopyTo(values.AsSpan(((i * Order) + j) * SommerfeldIntegrator.Functions));
            _values = MemoryMarshal.Cast<Complex, double>(values).ToArray();
            var scale = (1 / Math.Sqrt((rhoHigh * rhoHigh) + (heightHigh * heightHigh))) + 0.2;
            var worst = 0.0;
            for (var i = Order; i < x.Length; i++)
            {
                for (var j = Order; j < x.Length; j++)
                {
                    var found = Interpolate(rho[i], height[j]);
                    var exact = At(i, j);
                    worst = Math.Max(worst, (found.Horizontal - exact[0]).Magnitude);
                    worst = Math.Max(worst, (found.Charge - exact[1]).Magnitude);
                    worst = Math.Max(worst, (found.Vertical - exact[2]).Magnitude);
                    worst = Math.Max(worst, (found.Turning - exact[3]).Magnitude);
                }
            }

            return worst / scale;
        }

        public void Split()
        {
            _values = [];
            double right = SplitsRho ? RhoMid : rhoHigh, middle = SplitsHeight ? HeightMid : heightHigh;
            Children =
            [
                new(rhoLow, right, heightLow, middle), new(right, rhoHigh, heightLow, middle),
                new(rhoLow, right, middle, heightHigh), new(right, rhoHigh, middle, heightHigh),
            ];
        }

        public KernelRemainder Interpolate(double rho, double height)
        {
            Span<double> wr = stackalloc double[Order];
            Span<double> wh = stackalloc double[Order];
            Barycentric((rho - RhoMid) / (0.5 * (rhoHigh - rhoLow)), wr);
            Barycentric((height - HeightMid) / (0.5 * (heightHigh - heightLow)), wh);
            Vector256<double> low = default, high = default;
            var at = 0;
            for (var i = 0; i < Order; i++)
            {
                Vector256<double> rowLow = default, rowHigh = default;
                for (var j = 0; j < Order; j++, at += 8)
                {
                    var w = Vector256.Create(wh[j]);
                    rowLow += w * Vector256.Create(_values.AsSpan(at, 4));
                    rowHigh += w * Vector256.Create(_values.AsSpan(at + 4, 4));
                }

                var across = Vector256.Create(wr[i]);
                low += across * rowLow;
                high += across * rowHigh;
            }

            return new(new(low[0], low[1]), new(low[2], low[3]), new(high[0], high[1]), new(high[2], high[3]));
        }

        // Second form of the barycentric formula (Berrut and Trefethen 2004).
        private static void Barycentric(double x, Span<double> weights)
        {
            var sum = 0.0;
            for (var i = 0; i < Order; i++)
            {
                var d = x - Nodes[i];
                if (Math.Abs(d) < 1e-13)
                {
                    weights.Clear();
                    weights[i] = 1;
                    return;
                }

                sum += weights[i] = Weights[i] / d;
            }

            for (var i = 0; i < Order; i++)
                weights[i] /= sum;
        }
    }
}
