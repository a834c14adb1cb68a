using System.Numerics;
using System.Runtime.CompilerServices;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>
/// The spectral densities of the half-space kernels in mixed-potential form with one scalar kernel for all charges, so that no
/// point charges appear where a wire bends or crosses the interface (form C of Michalski and Zheng 1990, from memory; derived again
/// on the theory page). With u₀ = √(λ² − 1), u₁ = √(λ² − n²), P = (n²u₀ + u₁)(u₀ + u₁):
/// U = ∫ 2λ/(u₀+u₁)·E·J₀, V = ∫ 2λ/(n²u₀+u₁)·E·J₀, ∂T/∂ρ = −∫ 2(n²−1)λ²/P·E·J₁, and the vertical kernel.
/// What is integrated numerically is each density less its large-λ limit, whose integral is an image in closed form.
/// </summary>
internal readonly struct SommerfeldSpectrum
{
    private readonly Complex _horizontal;
    private readonly Complex _charge;
    private readonly Complex _vertical;
    private readonly Complex _turning;
    private readonly Complex _imageCharge;
    private readonly Complex _image;
    private readonly Complex _imageTurning;

    private SommerfeldSpectrum(Complex u0, Complex u1, Complex horizontal, Complex charge, Complex vertical, Complex turning, Complex image, Complex imageCharge, Complex imageTurning)
    {
        U0 = u0;
        U1 = u1;
        _horizontal = horizontal;
        _charge = charge;
        _vertical = vertical;
        _turning = turning;
        _image = image;
        _imageCharge = imageCharge;
        _imageTurning = imageTurning;
    }

    /// <summary>Vertical decay in the air.</summary>
    public Complex U0 { get; }

    /// <summary>Vertical decay in the soil.</summary>
    public Complex U1 { get; }

    /// <summary>The densities at one λ, times the quadrature weight.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static SommerfeldSpectrum At(Region region, Complex n2, double lambda, Complex u0, double weight)
    {
        var u1 = Complex.Sqrt((lambda * lambda) - n2);
        Complex sum = u0 + u1, magnetic = (n2 * u0) + u1, p = magnetic * sum, contrast = n2 - 1, plus = n2 + 1;
        var q = contrast / plus;
        var turning = -2 * contrast * lambda * lambda / p * weight;
        var turningImage = q * weight;
        switch (region)
        {
            case Region.Air:
                {
                    var s = weight * lambda / u0;
                    return new(
                        u0, u1,
                        contrast / (sum * sum) * s,
                        2 * contrast / (plus * p) * s,
                        contrast / (plus * p) * ((2 * n2) + (contrast * (((n2 + 2) * u0) + u1) / sum)) * s,
                        turning, 0, 0, turningImage);
                }

            case Region.Soil:
                {
                    var s = weight * lambda / u1;
                    return new(
                        u0, u1,
                        -contrast / (sum * sum) * s,
                        -2 * n2 * contrast / (plus * p) * s,
                        -contrast / (plus * p) * ((2 * n2) - (contrast * ((n2 * ((2 * u1) + u0)) + u1) / sum)) * s,
                        turning, 0, 0, turningImage);
                }

            default:
                {
                    var both = 2 * weight * lambda / sum;
                    var image = -weight * lambda / u0;
                    return new(u0, u1, both, 2 * weight * lambda / magnetic, both, turning, image, 2 / plus * image, turningImage);
                }
        }
    }

    /// <summary>The four weighted densities with their decay; the last goes with J₁, the others with J₀.</summary>
    /// <param name="decay">exp(−u₀z − u₁d) of the actual path.</param>
    /// <param name="imageDecay">exp(−u₀(z + d)), needed across the interface only.</param>
    /// <param name="staticDecay">exp(−λ·total height).</param>
    /// <param name="densities">Receives four values.</param>
    public void Write(Complex decay, Complex imageDecay, double staticDecay, Span<Complex> densities)
    {
        densities[0] = (_horizontal * decay) + (_image * imageDecay);
        densities[1] = (_charge * decay) + (_imageCharge * imageDecay);
        densities[2] = (_vertical * decay) + (_image * imageDecay);
        densities[3] = (_turning * decay) + (_imageTurning * staticDecay);
    }
}
