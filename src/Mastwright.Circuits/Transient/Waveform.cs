using System.Collections.Immutable;

namespace Mastwright.Circuits.Transient;

/// <summary>A source's value over time, with the times at which it bends sharply so that no step straddles them.</summary>
/// <param name="At">Value at a time in seconds: amperes or volts.</param>
/// <param name="Breaks">Times of jumps and kinks, seconds; empty for a smooth wave.</param>
public sealed record Waveform(Func<double, double> At, ImmutableArray<double> Breaks)
{
    /// <summary>A smooth wave, or one whose kinks are named.</summary>
    public static Waveform Of(Func<double, double> at, params ReadOnlySpan<double> breaks) => new(at, [.. breaks]);

    /// <summary>The same value always.</summary>
    public static Waveform Constant(double value) => new(_ => value, []);

    /// <summary>Nothing until a time, then a value.</summary>
    public static Waveform Step(double value, double atS = 0) => new(t => t > atS ? value : 0, [atS]);

    /// <summary>A sine wave, crest value and phase at time zero.</summary>
    public static Waveform Sine(double peak, double frequencyHz, double phaseRad = 0) =>
        new(t => peak * Math.Sin((2 * Math.PI * frequencyHz * t) + phaseRad), []);

    /// <summary>Straight lines between points; level before the first and after the last.</summary>
    /// <exception cref="ArgumentException">No points, or times that do not rise.</exception>
    public static Waveform Lines(params ImmutableArray<(double TimeS, double Value)> points)
    {
        if (points.IsDefaultOrEmpty || points.Zip(points.Skip(1)).Any(p => !(p.Second.TimeS > p.First.TimeS)))
            throw new ArgumentException("Points must be given with rising times.", nameof(points));
        return new(t => Between(points, t), [.. points.Select(p => p.TimeS)]);
    }

    private static double Between(ImmutableArray<(double TimeS, double Value)> points, double t)
    {
        if (t <= points[0].TimeS)
            return points[0].Value;
        for (var i = 1; i < points.Length; i++)
        {
            var (a, b) = (points[i - 1], points[i]);
            if (t <= b.TimeS)
                return a.Value + ((b.Value - a.Value) * (t - a.TimeS) / (b.TimeS - a.TimeS));
        }

        return points[^1].Value;
    }
}
