using MathNet.Numerics.Distributions;

namespace Mastwright.Numerics.Sampling;

/// <summary>
/// Random numbers that are the same on every machine and in every version, for Monte Carlo runs that can be repeated. Give each
/// trial its own stream and trials may run in any order on any thread.
/// </summary>
/// <remarks>
/// The 128-bit permuted congruential generator XSL-RR: M. E. O'Neill, "PCG: A family of simple fast space-efficient
/// statistically good algorithms for random number generation", Harvey Mudd College HMC-CS-2014-0905, 2014. Not for secrets.
/// One instance must not be used from two threads at once.
/// </remarks>
public sealed class SeededRandom
{
    private static readonly UInt128 Multiplier = new(2549297995355413924, 4865540595714422341);
    private readonly UInt128 _increment;
    private UInt128 _state;

    /// <summary>A generator.</summary>
    /// <param name="seed">Any number; the same seed and stream give the same numbers.</param>
    /// <param name="stream">Different streams of one seed are independent.</param>
    public SeededRandom(ulong seed, ulong stream = 0)
    {
        _increment = ((UInt128)stream << 1) | 1;
        Step();
        _state += seed;
        Step();
    }

    /// <summary>64 random bits.</summary>
    public ulong NextBits()
    {
        Step();
        return ulong.RotateRight((ulong)(_state >> 64) ^ (ulong)_state, (int)(_state >> 122));
    }

    /// <summary>Uniform from 0, included, to 1, excluded.</summary>
    public double NextDouble() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform from <paramref name="low"/>, included, to <paramref name="high"/>.</summary>
    public double NextUniform(double low, double high) => low + ((high - low) * NextDouble());

    /// <summary>Uniform whole number from 0 to <paramref name="count"/> - 1.</summary>
    public int NextInt(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return (int)((UInt128)NextBits() * (ulong)count >> 64);
    }

    /// <summary>Normal variate, by the inverse of the distribution: one uniform number each.</summary>
    /// <param name="mean">Mean.</param>
    /// <param name="standardDeviation">Standard deviation, not negative.</param>
    public double NextNormal(double mean = 0, double standardDeviation = 1) =>
        mean + (standardDeviation * Normal.InvCDF(0, 1, ((NextBits() >> 11) + 0.5) * (1.0 / (1UL << 53))));

    private void Step() => _state = unchecked((_state * Multiplier) + _increment);
}
