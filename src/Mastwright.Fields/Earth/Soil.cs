using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Earth;

/// <summary>Uniform soil (or water).</summary>
/// <param name="Name">What to call it.</param>
/// <param name="RelativePermittivity">εr, at least 1; not used when <paramref name="Model"/> makes its own.</param>
/// <param name="ConductivitySPerM">σ in S/m, zero or more; at low frequency when <paramref name="Model"/> lets it change.</param>
/// <param name="Model">How both change with frequency; null for not at all.</param>
public sealed record Soil(string Name, double RelativePermittivity, double ConductivitySPerM, SoilDispersion? Model = null)
{
    /// <summary>Complex relative permittivity n² = εr − jσ/(ωε₀) for the time factor exp(+jωt).</summary>
    public Complex ComplexPermittivity(double frequencyHz) => Model is { } model
        ? model.ComplexPermittivity(ConductivitySPerM, frequencyHz)
        : new(RelativePermittivity, -ConductivitySPerM / (2 * Math.PI * frequencyHz * Vacuum.PermittivityFPerM));

    /// <summary>Relative permittivity at a frequency.</summary>
    public double PermittivityAt(double frequencyHz) => ComplexPermittivity(frequencyHz).Real;

    /// <summary>Conductivity at a frequency, S/m.</summary>
    public double ConductivityAt(double frequencyHz) => -ComplexPermittivity(frequencyHz).Imaginary * 2 * Math.PI * frequencyHz * Vacuum.PermittivityFPerM;

    /// <summary>Complex refractive index, the root with positive real part.</summary>
    public Complex RefractiveIndex(double frequencyHz) => Complex.Sqrt(ComplexPermittivity(frequencyHz));

    /// <summary>Surface impedance for waves going straight down, η₀/n, ohms per square.</summary>
    public Complex SurfaceImpedanceOhm(double frequencyHz) => Vacuum.WaveImpedanceOhm / RefractiveIndex(frequencyHz);

    /// <summary>Depth at which the field has fallen to 1/e, metres.</summary>
    public double SkinDepthM(double frequencyHz) => -1 / (Vacuum.WaveNumber(frequencyHz) * RefractiveIndex(frequencyHz).Imaginary);
}

/// <summary>Equal straight radials around a mast's base, lying on or just under the soil and joined at the base.</summary>
/// <param name="Count">How many.</param>
/// <param name="LengthM">Length of each, metres.</param>
/// <param name="WireRadiusM">Wire radius, metres.</param>
/// <param name="HeightM">Height above the soil, metres; negative below it.</param>
public sealed record RadialScreen(int Count, double LengthM, double WireRadiusM, double HeightM = 0)
{
    /// <summary>No radials at all: a ground rod alone.</summary>
    public static RadialScreen None { get; } = new(0, 0, 0.001);

    /// <summary>
    /// Surface impedance of the bare wires at a distance from the base: Zg = jη₀(d/λ)·ln(d/2πc), d = 2πr/N their spacing, c their
    /// radius. Wait and Pope 1954 (from memory). Zero where the wires touch, infinite without wires.
    /// </summary>
    public Complex WireImpedanceOhm(double distanceM, double frequencyHz)
    {
        if (Count == 0)
            return new(0, double.PositiveInfinity);
        var spacingM = 2 * Math.PI * distanceM / Count;
        var logarithm = Math.Log(Math.Max(1, spacingM / (2 * Math.PI * WireRadiusM)));
        return new(0, Vacuum.WaveImpedanceOhm * spacingM / Vacuum.WavelengthM(frequencyHz) * logarithm);
    }

    /// <summary>Soil and wires in parallel: the surface impedance the mast's field meets at a distance from the base, ohms per square.</summary>
    public Complex EffectiveImpedanceOhm(Soil soil, double distanceM, double frequencyHz)
    {
        ArgumentNullException.ThrowIfNull(soil);
        var bare = soil.SurfaceImpedanceOhm(frequencyHz);
        if (Count == 0 || distanceM > LengthM)
            return bare;
        var wires = WireImpedanceOhm(distanceM, frequencyHz);
        return bare * wires / (bare + wires);
    }
}
