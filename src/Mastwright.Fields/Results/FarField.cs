using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Results;

/// <summary>Far field in one direction, with the factor exp(−jkr)/r taken out; volts RMS.</summary>
/// <param name="Theta">Component along rising zenith angle.</param>
/// <param name="Phi">Component along rising azimuth.</param>
public readonly record struct FarFieldSample(Complex Theta, Complex Phi)
{
    /// <summary>|E|² r² in V².</summary>
    public double SquaredV2 => Square(Theta) + Square(Phi);

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}

/// <summary>
/// Radiation of a driven model in free space, over perfect ground, or over real soil (then the sky wave: direct and reflected ray by
/// Fresnel's coefficients, and what buried wires send up through the surface; it vanishes along the ground). Directions: zenith angle θ from straight up, azimuth φ
/// counter-clockwise from +x, both in radians.
/// </summary>
public sealed class FarField
{
    private readonly CurrentElements _elements;
    private readonly double _waveNumber;
    private readonly bool _halfSpace;
    private readonly Complex? _soil;
    private readonly double _inputPowerW;
    private readonly Lazy<double> _radiatedPowerW;

    private FarField(DrivenWires driven)
    {
        _elements = driven.Elements;
        _waveNumber = Vacuum.WaveNumber(driven.FrequencyHz);
        _halfSpace = driven.Mesh.Model.Ground is not Ground.Empty;
        _soil = driven.Mesh.Model.Ground is Ground.HalfSpace half ? half.Soil.ComplexPermittivity(driven.FrequencyHz) : null;
        _inputPowerW = driven.InputPowerW;
        _radiatedPowerW = new(IntegratePower);
    }

    /// <summary>The far field of a driven model; the radiated power is integrated when first asked for.</summary>
    public static FarField Of(DrivenWires driven)
    {
        ArgumentNullException.ThrowIfNull(driven);
        return new(driven);
    }

    /// <summary>
    /// Power through the far hemisphere (sphere, in free space), watts, by Gauss quadrature of the pattern. Over real soil everything
    /// lost in the ground, near and far, is missing from it.
    /// </summary>
    public double RadiatedPowerW => _radiatedPowerW.Value;

    /// <summary>Radiated power over power into the feeds, 0 to 1.</summary>
    public double RadiationEfficiency => RadiatedPowerW / _inputPowerW;

    /// <summary>The field in a direction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public FarFieldSample At(double thetaRad, double phiRad)
    {
        if (_halfSpace && thetaRad > (Math.PI / 2) + 1e-12)
            return default;
        if (_soil is not null)
            return SoilFarField.At(_elements, _waveNumber, _soil.Value, thetaRad, phiRad);
        var (sinT, cosT) = Math.SinCos(thetaRad);
        var (sinP, cosP) = Math.SinCos(phiRad);
        double ux = sinT * cosP, uy = sinT * sinP, uz = cosT;
        double xr = 0, xi = 0, yr = 0, yi = 0, zr = 0, zi = 0;
        var positions = _elements.Positions;
        for (var e = 0; e < positions.Length; e++)
        {
            var p = positions[e];
            var (sin, cos) = Math.SinCos(_waveNumber * ((ux * p.X) + (uy * p.Y) + (uz * p.Z)));
            Complex mx = _elements.MomentX[e], my = _elements.MomentY[e], mz = _elements.MomentZ[e];
            xr += (mx.Real * cos) - (mx.Imaginary * sin);
            xi += (mx.Real * sin) + (mx.Imaginary * cos);
            yr += (my.Real * cos) - (my.Imaginary * sin);
            yi += (my.Real * sin) + (my.Imaginary * cos);
            zr += (mz.Real * cos) - (mz.Imaginary * sin);
            zi += (mz.Real * sin) + (mz.Imaginary * cos);
        }

        Complex x = new(xr, xi), y = new(yr, yi), z = new(zr, zi);
        var factor = new Complex(0, -_waveNumber * Vacuum.WaveImpedanceOhm / (4 * Math.PI));
        return new(
            factor * ((cosT * cosP * x) + (cosT * sinP * y) - (sinT * z)),
            factor * ((cosP * y) - (sinP * x)));
    }

    /// <summary>Gain over an isotropic radiator fed with the same power, as a ratio; losses in wires and loads count.</summary>
    public double Gain(double thetaRad, double phiRad) => 4 * Math.PI * At(thetaRad, phiRad).SquaredV2 / (Vacuum.WaveImpedanceOhm * _inputPowerW);

    /// <summary>Directivity as a ratio: gain without any loss.</summary>
    public double Directivity(double thetaRad, double phiRad) => 4 * Math.PI * At(thetaRad, phiRad).SquaredV2 / (Vacuum.WaveImpedanceOhm * RadiatedPowerW);

    /// <summary>
    /// Field at the ground 1 km away, V/m RMS, for a given power into the feeds, without the weakening by real soil on the way
    /// (the cymomotive force in volts over 1000 m; ITU-R BS.561). <see cref="GroundWave"/> adds that weakening.
    /// </summary>
    public double FieldAt1KmVPerM(double powerW, double azimuthRad)
    {
        var squared = _soil is { } soil
            ? Math.Pow(SoilFarField.GroundWaveSource(_elements, _waveNumber, soil, azimuthRad).Magnitude, 2)
            : At(Math.PI / 2, azimuthRad).SquaredV2;
        return Math.Sqrt(squared * powerW / _inputPowerW) / 1000;
    }

    // Gauss in cos θ, midpoint in φ (spectrally accurate for a periodic pattern); orders follow the size in wavelengths.
    private double IntegratePower()
    {
        double reach = 0, height = 0;
        foreach (var p in _elements.Positions)
        {
            reach = Math.Max(reach, Math.Sqrt((p.X * p.X) + (p.Y * p.Y)));
            height = Math.Max(height, p.Length);
        }

        var azimuths = 8 + (int)(2.5 * _waveNumber * reach);
        var zeniths = GaussRule.Of(12 + (int)(1.6 * _waveNumber * height));
        var span = _halfSpace ? 1.0 : 2.0;
        var rings = new double[zeniths.Nodes.Length];
        Parallel.For(0, rings.Length, i =>
        {
            var theta = Math.Acos(1 - (span * zeniths.Nodes[i]));
            for (var j = 0; j < azimuths; j++)
                rings[i] += At(theta, 2 * Math.PI * (j + 0.5) / azimuths).SquaredV2;
            rings[i] *= zeniths.Weights[i] * span * 2 * Math.PI / azimuths;
        });
        return rings.Sum() / Vacuum.WaveImpedanceOhm;
    }
}
