using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Wires;

/// <summary>
/// Insulation around a wire. It changes the radial voltage of the wire's own charge: q/(2πε₀)·(1/εj − 1/εm)·ln(b/a) between the metal's
/// radius a and the jacket's outer radius b, εm belonging to the medium outside. In air the wire looks a little longer; in soil the jacket
/// keeps the charge from leaking away, and the wire behaves like a cable with the soil for its sheath.
/// Source: King and Smith, Antennas in Matter, 1981 (from memory).
/// </summary>
/// <param name="ThicknessM">Radial thickness, metres.</param>
/// <param name="RelativePermittivity">About 2.3 for polyethylene, 3 to 4 for PVC (from memory).</param>
/// <param name="LossTangent">tan δ: about 0.0003 for polyethylene, 0.02 to 0.05 for PVC (from memory).</param>
public sealed record Jacket(double ThicknessM, double RelativePermittivity, double LossTangent = 0)
{
    /// <summary>Complex relative permittivity εr(1 − j tan δ).</summary>
    public Complex ComplexPermittivity => new(RelativePermittivity, -RelativePermittivity * LossTangent);

    /// <summary>
    /// What the jacket adds to the radial voltage for each ampere of current that turns into charge over one metre, Ω·m:
    /// (1/εj − 1/εm)·ln(b/a)/(j2πωε₀).
    /// </summary>
    /// <param name="radiusM">Radius of the metal, metres.</param>
    /// <param name="outside">Complex relative permittivity of the medium outside.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public Complex RadialImpedanceOhmM(double radiusM, Complex outside, double frequencyHz) =>
        Factor(radiusM, frequencyHz) * ((1 / ComplexPermittivity) - (1 / outside));

    /// <summary>The real part that heats the jacket itself, Ω·m.</summary>
    internal double LossOhmM(double radiusM, double frequencyHz) => (Factor(radiusM, frequencyHz) / ComplexPermittivity).Real;

    private Complex Factor(double radiusM, double frequencyHz) =>
        new(0, -Math.Log(1 + (ThicknessM / radiusM)) / (4 * Math.PI * Math.PI * frequencyHz * Vacuum.PermittivityFPerM));
}
