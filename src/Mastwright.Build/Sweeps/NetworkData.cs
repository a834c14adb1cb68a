using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Build.Sweeps;

/// <summary>The kind of network parameter a sweep holds.</summary>
public enum NetworkParameter
{
    /// <summary>Scattering parameters, pure numbers tied to a reference resistance.</summary>
    S,

    /// <summary>Admittance parameters in siemens.</summary>
    Y,

    /// <summary>Impedance parameters in ohms.</summary>
    Z,

    /// <summary>Hybrid parameters of a two-port: h11 in ohms, h12 and h21 pure numbers, h22 in siemens.</summary>
    H,

    /// <summary>Inverse hybrid parameters of a two-port: g11 in siemens, g12 and g21 pure numbers, g22 in ohms.</summary>
    G,
}

/// <summary>The matrix of a network at one frequency.</summary>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="Matrix">Entries row by row (11, 12, ..., 1n, 21, ...), n² of them, in the SI unit of the parameter: never normalised.</param>
public sealed record NetworkPoint(double FrequencyHz, ImmutableArray<Complex> Matrix);

/// <summary>One line of the noise data of a two-port.</summary>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="MinimumNoiseFigureDb">Least noise figure in dB.</param>
/// <param name="OptimumReflection">Source reflection that gives it, against the reference of port 1.</param>
/// <param name="NoiseResistanceOhm">Effective noise resistance in ohms.</param>
public sealed record NoisePoint(double FrequencyHz, double MinimumNoiseFigureDb, Complex OptimumReflection, double NoiseResistanceOhm);

/// <summary>Network parameters over frequency, as a vector analyser measures them.</summary>
/// <param name="Parameter">What the matrices are.</param>
/// <param name="ReferenceOhm">Reference resistance of each port, ohms; its length is the number of ports.</param>
/// <param name="Points">Matrices in rising order of frequency.</param>
/// <param name="Noise">Noise data of a two-port; empty when there is none.</param>
public sealed record NetworkData(
    NetworkParameter Parameter,
    ImmutableArray<double> ReferenceOhm,
    ImmutableArray<NetworkPoint> Points,
    ImmutableArray<NoisePoint> Noise)
{
    /// <summary>Number of ports.</summary>
    public int Ports => ReferenceOhm.Length;

    /// <summary>A one-port from frequencies and values.</summary>
    public static NetworkData OnePort(NetworkParameter parameter, double referenceOhm, IEnumerable<(double FrequencyHz, Complex Value)> points) =>
        new(parameter, [referenceOhm], [.. points.Select(p => new NetworkPoint(p.FrequencyHz, [p.Value]))], []);
}
