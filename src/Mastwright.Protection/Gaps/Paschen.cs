using Mastwright.Model.Trails;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// Paschen's law for air, V = B·pd/ln(A·pd/ln(1 + 1/γ)) with Townsend's constants A = 15/(cm·torr), B = 365 V/(cm·torr). It shows that no gap, however
/// small, fires below some three hundred volts. It is not used for gaps of millimetres, where it is too high.
/// </summary>
public static class Paschen
{
    private const double A = 15;
    private const double B = 365;
    private const double Gamma = 0.01;
    private static readonly Source Townsend = Source.Literature("Paschen's law with Townsend's constants, any gas-discharge text", "as reprinted");

    /// <summary>Breakdown voltage at a product of pressure and distance in torr·cm; infinite left of the branch where no avalanche suffices.</summary>
    public static double Volts(double torrCm)
    {
        var log = Math.Log(A * torrCm / Math.Log(1 + (1 / Gamma)));
        return log <= 0 ? double.PositiveInfinity : B * torrCm / log;
    }

    /// <summary>The least breakdown voltage at any distance: e·B·ln(1 + 1/γ)/A.</summary>
    public static Trail Minimum { get; } = Trail.Computed("least spark voltage of any gap", "Vmin", Math.E * B * Math.Log(1 + (1 / Gamma)) / A, QuantityKind.PeakVoltage,
        "Vmin = e·B·ln(1 + 1/γ)/A", Townsend)
        .Remark("Measured in air: about 327 V at 0.567 torr·cm.");
}
