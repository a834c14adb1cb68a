using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Results;

/// <summary>
/// Far field of current elements over real soil. With c = cos θ, w = √(n² − sin²θ): an element in the air sends a direct and a
/// reflected ray, Rv = (n²c − w)/(n²c + w), Rh = (c − w)/(c + w); one at depth d sends a ray through the surface with
/// exp(−jkwd) and the matching transmission factors (reciprocity).
/// </summary>
internal static class SoilFarField
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static FarFieldSample At(CurrentElements elements, double k, Complex n2, double thetaRad, double phiRad)
    {
        var (s, c) = Math.SinCos(thetaRad);
        var (sinP, cosP) = Math.SinCos(phiRad);
        c = Math.Max(c, 0);
        var w = Complex.Sqrt(n2 - (s * s));
        Complex magnetic = (n2 * c) + w, vertical = ((n2 * c) - w) / magnetic, horizontal = (c - w) / (c + w);
        Complex theta = default, phi = default;
        for (var e = 0; e < elements.Positions.Length; e++)
        {
            var p = elements.Positions[e];
            var ray = Complex.FromPolarCoordinates(1, k * s * ((cosP * p.X) + (sinP * p.Y)));
            var along = (cosP * elements.MomentX[e]) + (sinP * elements.MomentY[e]);
            var across = (cosP * elements.MomentY[e]) - (sinP * elements.MomentX[e]);
            if (p.Z >= 0)
            {
                var direct = ray * Complex.FromPolarCoordinates(1, k * p.Z * c);
                var reflected = ray * Complex.FromPolarCoordinates(1, -k * p.Z * c);
                theta += (c * along * (direct - (vertical * reflected))) - (s * elements.MomentZ[e] * (direct + (vertical * reflected)));
                phi += across * (direct + (horizontal * reflected));
            }
            else
            {
                var through = ray * Complex.Exp(new Complex(0, k * p.Z) * w);
                theta += through * 2 * c / magnetic * ((w * along) - (s * elements.MomentZ[e]));
                phi += through * 2 * c / (c + w) * across;
            }
        }

        var factor = new Complex(0, -k * Vacuum.WaveImpedanceOhm / (4 * Math.PI));
        return new(factor * theta, factor * phi);
    }

    /// <summary>
    /// The vertical field along the ground times distance, volts, before Norton's attenuation: vertical moments with the height gain
    /// 1 + jkzΔ, horizontal ones through the wave tilt Δ = √(n² − 1)/n², buried ones weakened on their way up.
    /// </summary>
    public static Complex GroundWaveSource(CurrentElements elements, double k, Complex n2, double azimuthRad)
    {
        var (sinP, cosP) = Math.SinCos(azimuthRad);
        var w = Complex.Sqrt(n2 - 1);
        var tilt = w / n2;
        var sum = Complex.Zero;
        for (var e = 0; e < elements.Positions.Length; e++)
        {
            var p = elements.Positions[e];
            var ray = Complex.FromPolarCoordinates(1, k * ((cosP * p.X) + (sinP * p.Y)));
            var along = (cosP * elements.MomentX[e]) + (sinP * elements.MomentY[e]);
            sum += p.Z >= 0
                ? ray * (1 + (new Complex(0, k * p.Z) * tilt)) * (elements.MomentZ[e] - (tilt * along))
                : ray * Complex.Exp(new Complex(0, k * p.Z) * w) * ((elements.MomentZ[e] / n2) - (tilt * along));
        }

        return new Complex(0, k * Vacuum.WaveImpedanceOhm / (2 * Math.PI)) * sum;
    }
}
