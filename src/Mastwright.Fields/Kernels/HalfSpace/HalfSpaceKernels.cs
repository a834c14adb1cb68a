using Mastwright.Fields.Earth;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>The half-space kernels of one soil at one frequency, in metres: closed-form images and tabulated remainders.</summary>
internal sealed class HalfSpaceKernels
{
    private readonly KernelTable _air;

    /// <summary>Kernels for a model that reaches <paramref name="reachM"/> sideways and <paramref name="heightM"/> up.</summary>
    public HalfSpaceKernels(Soil soil, double frequencyHz, double reachM, double heightM, double tolerance)
    {
        WaveNumber = Vacuum.WaveNumber(frequencyHz);
        Medium = new(soil.ComplexPermittivity(frequencyHz));
        _air = new(Region.Air, Medium, WaveNumber * reachM, WaveNumber * 2 * heightM, tolerance);
    }

    /// <summary>Free-space wave number, rad/m.</summary>
    public double WaveNumber { get; }

    /// <summary>The soil in units of the free-space wave number.</summary>
    public HalfSpaceMedium Medium { get; }

    /// <summary>Worst interpolation error found between table nodes, as a share of the kernel itself.</summary>
    public double WorstError => _air.WorstError;

    /// <summary>Table cells computed so far.</summary>
    public int CellCount => _air.CellCount;

    /// <summary>
    /// Remainders for two points in the air, 1/m; <paramref name="heightM"/> is the sum of their heights. The turning kernel is whole:
    /// its quasi-static part −Q·ρ/(R(R + h)) is added here in closed form.
    /// </summary>
    public KernelRemainder Air(double rhoM, double heightM)
    {
        double rho = WaveNumber * rhoM, height = WaveNumber * heightM;
        var r = _air.At(rho, height);
        var slant = Math.Sqrt((rho * rho) + (height * height));
        var turning = r.Turning - (Medium.ImageFactor * (rho / (slant * (slant + height))));
        return new(WaveNumber * r.Horizontal, WaveNumber * r.Charge, WaveNumber * r.Vertical, WaveNumber * turning);
    }
}
