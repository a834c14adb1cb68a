using System.Numerics;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>How far a model reaches, which sizes the tables; metres.</summary>
/// <param name="SidewaysM">Largest horizontal distance between two points of the model.</param>
/// <param name="HeightM">Highest point.</param>
/// <param name="DepthM">Deepest point, positive; zero when nothing is buried.</param>
/// <param name="CommonDepthM">Depth of most buried points; zero when nothing is buried.</param>
internal readonly record struct ModelReach(double SidewaysM, double HeightM, double DepthM, double CommonDepthM = 0)
{
    /// <summary>The reach of a set of points.</summary>
    public static ModelReach Of(IEnumerable<Vec3> points)
    {
        double west = double.MaxValue, east = double.MinValue, south = double.MaxValue, north = double.MinValue, high = 0, low = 0;
        var depths = new Dictionary<double, int>();
        foreach (var point in points)
        {
            (west, east) = (Math.Min(west, point.X), Math.Max(east, point.X));
            (south, north) = (Math.Min(south, point.Y), Math.Max(north, point.Y));
            (low, high) = (Math.Min(low, point.Z), Math.Max(high, point.Z));
            if (point.Z < 0)
                depths[-point.Z] = depths.GetValueOrDefault(-point.Z) + 1;
        }

        return new(Math.Sqrt(((east - west) * (east - west)) + ((north - south) * (north - south))), high, -low, depths.Count == 0 ? 0 : depths.MaxBy(d => d.Value).Key);
    }
}

/// <summary>
/// The half-space kernels of one soil at one frequency, in metres. Each kernel is an image in closed form, integrated by the routines
/// for free space, plus a remainder from a table.
/// </summary>
internal sealed class HalfSpaceKernels
{
    private readonly KernelTable _air;
    private readonly KernelTable _soil;
    private readonly KernelTable _across;

    public HalfSpaceKernels(Complex indexSquared, double waveNumber, ModelReach reach, double tolerance)
    {
        WaveNumber = waveNumber;
        Medium = new(indexSquared);
        double rho = waveNumber * reach.SidewaysM, height = waveNumber * reach.HeightM, depth = waveNumber * reach.DepthM;
        _air = new(Region.Air, Medium, rho, 2 * height, 0, tolerance);
        _soil = new(Region.Soil, Medium, rho, 2 * depth, 0, tolerance);
        _across = new(Region.Across, Medium, rho, height, depth, tolerance, waveNumber * reach.CommonDepthM);
    }

    /// <summary>Free-space wave number, rad/m.</summary>
    public double WaveNumber { get; }

    /// <summary>The soil in units of the free-space wave number.</summary>
    public HalfSpaceMedium Medium { get; }

    /// <summary>Wave number in the soil, rad/m, imaginary part negative.</summary>
    public Complex SoilWaveNumber => WaveNumber * Medium.Index;

    /// <summary>Worst interpolation error found between table nodes, as a share of 1/R + k/5.</summary>
    public double WorstError => Math.Max(_air.WorstError, Math.Max(_soil.WorstError, _across.WorstError));

    /// <summary>Table cells computed so far.</summary>
    public int CellCount => _air.CellCount + _soil.CellCount + _across.CellCount;

    /// <summary>
    /// Remainders for two points, 1/m, given their horizontal distance and heights (negative in the soil). The turning kernel is
    /// whole: its quasi-static part −Q·ρ/(R(R + h)), h the sum of both distances from the surface, is added in closed form.
    /// </summary>
    public KernelRemainder At(Region region, double rhoM, double firstZ, double secondZ)
    {
        double rho = WaveNumber * rhoM, a = WaveNumber * Math.Abs(firstZ), b = WaveNumber * Math.Abs(secondZ);
        var r = region switch
        {
            Region.Air => _air.At(rho, a + b),
            Region.Soil => _soil.At(rho, a + b),
            _ => firstZ > secondZ ? _across.At(rho, a, b) : _across.At(rho, b, a),
        };
        var slant = Math.Sqrt((rho * rho) + ((a + b) * (a + b)));
        var turning = r.Turning;
        if (slant > 0)
            turning -= Medium.ImageFactor * (rho / (slant * (slant + a + b)));
        return new(WaveNumber * r.Horizontal, WaveNumber * r.Charge, WaveNumber * r.Vertical, WaveNumber * turning);
    }
}
