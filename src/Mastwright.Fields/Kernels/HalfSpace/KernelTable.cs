namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>
/// The remainders of one region as an adaptive table: rectangles in (ρ, height), across the interface also with a fixed span of
/// depths, that carry a Chebyshev interpolant and split until it agrees with the integrals at points between its nodes. Cells are
/// made when first asked for, so only what a model needs is
/// computed. Safe to use from many threads.
/// </summary>
internal sealed class KernelTable
{
    private readonly SommerfeldIntegrator _integrator;
    private readonly KernelCell _root;
    private readonly double _tolerance;
    private readonly double _smallest;
    private readonly Depths _depths;
    private double _worst;
    private int _cells;

    /// <summary>A table for distances up to <paramref name="rhoMax"/> and heights up to <paramref name="heightMax"/>, units of 1/k₀.</summary>
    /// <param name="region">Air or soil.</param>
    /// <param name="medium">The soil.</param>
    /// <param name="rhoMax">Largest horizontal distance.</param>
    /// <param name="heightMax">Largest sum of heights (or depths).</param>
    /// <param name="depthMax">Largest depth, across the interface only; zero otherwise.</param>
    /// <param name="tolerance">Largest error allowed, as a share of 1/R + 1/5.</param>
    /// <param name="commonDepth">The depth asked for most often, zero for none.</param>
    public KernelTable(Region region, HalfSpaceMedium medium, double rhoMax, double heightMax, double depthMax, double tolerance, double commonDepth = 0)
    {
        _integrator = new(region, medium);
        _tolerance = tolerance;
        _smallest = Math.Max(2e-3, 0.3 * depthMax);
        _depths = new(depthMax, medium, commonDepth);
        _root = new(0, Math.Max(rhoMax, 1e-3) * 1.0001, 0, Math.Max(heightMax, 1e-3) * 1.0001, _depths);
    }

    /// <summary>Worst error seen at the test points, as a share of 1/R + 1/5.</summary>
    public double WorstError => _worst;

    /// <summary>Cells made so far.</summary>
    public int CellCount => _cells;

    /// <summary>The remainders at a place; outside the table's extent the nearest edge's polynomial is continued.</summary>
    public KernelRemainder At(double rho, double height, double depth = 0)
    {
        var cell = _root;
        while (true)
        {
            if (!cell.Ready)
                Make(cell);
            if (cell.Children is null)
                return cell.Interpolate(rho, height, depth);
            cell = cell.Child(rho, height);
        }
    }

    private void Make(KernelCell cell)
    {
        lock (cell)
        {
            if (cell.Ready)
                return;
            var error = cell.Fill(_integrator);
            Interlocked.Increment(ref _cells);
            if (error > _tolerance && cell.Size > _smallest)
                cell.Split();
            else if (error > _worst)
                _worst = error;
            cell.Ready = true;
        }
    }
}
