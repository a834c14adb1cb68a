using System.Collections.Immutable;
using System.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Build.Sweeps;

/// <summary>
/// Turns network parameters into one another. Everything passes through S: with F = diag(√R),
/// Z = F (1 + S)(1 − S)⁻¹ F and Y = F⁻¹ (1 − S)(1 + S)⁻¹ F⁻¹ (power waves with real references;
/// Pozar, Microwave Engineering, ch. 4, from memory). H and G go through their defining equations.
/// </summary>
public static class NetworkConversion
{
    /// <summary>The same network in another parameter, with the same references.</summary>
    /// <exception cref="ArgumentException">H or G asked of a network that is not a two-port.</exception>
    /// <remarks>A matrix that does not exist at a frequency (an ideal series element has no Z) yields entries that are not finite.</remarks>
    public static NetworkData To(this NetworkData data, NetworkParameter target)
    {
        if (data.Parameter == target) return data;
        if (target is NetworkParameter.H or NetworkParameter.G && data.Ports != 2)
            throw new ArgumentException("Hybrid parameters belong to two-ports.", nameof(target));
        return data with { Parameter = target, Points = [.. data.Points.Select(p => p with { Matrix = Convert(p.Matrix, data.Parameter, target, data.ReferenceOhm) })] };
    }

    /// <summary>The same network seen from other reference resistances, as S.</summary>
    public static NetworkData WithReference(this NetworkData data, ImmutableArray<double> referenceOhm)
    {
        if (referenceOhm.Length != data.Ports) throw new ArgumentException("One reference for each port.", nameof(referenceOhm));
        return data with { Parameter = NetworkParameter.S, ReferenceOhm = referenceOhm, Points = [.. data.Points.Select(Renormalise)] };

        // Written with waves rather than through Z, which need not exist.
        NetworkPoint Renormalise(NetworkPoint point)
        {
            var n = data.Ports;
            var s = ToMatrix(Convert(point.Matrix, data.Parameter, NetworkParameter.S, data.ReferenceOhm), n);
            // Old waves a = (V + R I)/(2√R), b = (V − R I)/(2√R); new waves are sums of them: a' = p a + q b, b' = q a + p b.
            var p = Diagonal(n, i => (referenceOhm[i] + data.ReferenceOhm[i]) / (2 * Math.Sqrt(referenceOhm[i] * data.ReferenceOhm[i])));
            var q = Diagonal(n, i => (data.ReferenceOhm[i] - referenceOhm[i]) / (2 * Math.Sqrt(referenceOhm[i] * data.ReferenceOhm[i])));
            return point with { Matrix = FromMatrix((q + (p * s)) * (p + (q * s)).Inverse()) };
        }
    }

    private static ImmutableArray<Complex> Convert(ImmutableArray<Complex> m, NetworkParameter from, NetworkParameter to, ImmutableArray<double> reference)
    {
        if (from == to) return m;
        if (m.Length == 1) return [OnePort(m[0], from, to, reference[0])];
        var n = reference.Length;
        var s = from switch
        {
            NetworkParameter.S => ToMatrix(m, n),
            NetworkParameter.Z => ScatteringFromImpedance(ToMatrix(m, n), reference),
            NetworkParameter.Y => -ScatteringFromImpedance(ToMatrix(m, n), [.. reference.Select(r => 1 / r)]),
            NetworkParameter.H => ScatteringFromHybrid(m, reference, inverse: false),
            _ => ScatteringFromHybrid(m, reference, inverse: true),
        };
        return to switch
        {
            NetworkParameter.S => FromMatrix(s),
            NetworkParameter.Z => FromMatrix(ImpedanceFromScattering(s, reference)),
            NetworkParameter.Y => FromMatrix(ImpedanceFromScattering(-s, [.. reference.Select(r => 1 / r)])),
            NetworkParameter.H => HybridFromScattering(s, reference, inverse: false),
            _ => HybridFromScattering(s, reference, inverse: true),
        };
    }

    private static Complex OnePort(Complex value, NetworkParameter from, NetworkParameter to, double r)
    {
        var s = from switch
        {
            NetworkParameter.S => value,
            NetworkParameter.Z => (value - r) / (value + r),
            NetworkParameter.Y => (1 - (value * r)) / (1 + (value * r)),
            _ => throw new ArgumentException("Hybrid parameters belong to two-ports.", nameof(from)),
        };
        return to switch
        {
            NetworkParameter.S => s,
            NetworkParameter.Z => r * (1 + s) / (1 - s),
            _ => (1 - s) / (1 + s) / r,
        };
    }

    private static Matrix<Complex> ScatteringFromImpedance(Matrix<Complex> z, ImmutableArray<double> r)
    {
        var n = r.Length;
        var f = Diagonal(n, i => 1 / Math.Sqrt(r[i]));
        var normal = f * z * f;
        var one = Matrix<Complex>.Build.DenseIdentity(n);
        return (normal - one) * (normal + one).Inverse();
    }

    private static Matrix<Complex> ImpedanceFromScattering(Matrix<Complex> s, ImmutableArray<double> r)
    {
        var n = r.Length;
        var f = Diagonal(n, i => Math.Sqrt(r[i]));
        var one = Matrix<Complex>.Build.DenseIdentity(n);
        return f * (one + s) * (one - s).Inverse() * f;
    }

    // A two-port in hybrid form is port 1 seen as an impedance and port 2 as an admittance (or the reverse for G):
    // turning the wave of the admittance port over (b → −b) turns h into the same shape as a normalised Z.
    private static Matrix<Complex> ScatteringFromHybrid(ImmutableArray<Complex> m, ImmutableArray<double> r, bool inverse)
    {
        var (one, two) = inverse ? (1 / r[0], r[1]) : (r[0], 1 / r[1]);
        var mixed = ScatteringFromImpedance(ToMatrix(m, 2), [one, two]);
        return FlipPort(mixed, inverse ? 0 : 1);
    }

    private static ImmutableArray<Complex> HybridFromScattering(Matrix<Complex> s, ImmutableArray<double> r, bool inverse)
    {
        var (one, two) = inverse ? (1 / r[0], r[1]) : (r[0], 1 / r[1]);
        return FromMatrix(ImpedanceFromScattering(FlipPort(s, inverse ? 0 : 1), [one, two]));
    }

    // At the flipped port current and voltage change places, so its outgoing wave changes sign: its row turns over.
    private static Matrix<Complex> FlipPort(Matrix<Complex> s, int port)
    {
        var flipped = s.Clone();
        for (var j = 0; j < 2; j++) flipped[port, j] = -flipped[port, j];
        return flipped;
    }

    private static Matrix<Complex> Diagonal(int n, Func<int, double> entry) =>
        Matrix<Complex>.Build.DenseDiagonal(n, n, i => entry(i));

    private static Matrix<Complex> ToMatrix(ImmutableArray<Complex> m, int n) =>
        Matrix<Complex>.Build.Dense(n, n, (i, j) => m[(i * n) + j]);

    private static ImmutableArray<Complex> FromMatrix(Matrix<Complex> m) => [.. m.ToRowMajorArray()];
}
