using System.Collections.Immutable;

namespace Mastwright.Circuits.Capacitors;

/// <summary>Preferred number series of IEC 60063 (values from memory; E6, E12 and E24 are common knowledge).</summary>
public static class PreferredValues
{
    /// <summary>Six to the decade, 20 %.</summary>
    public static ImmutableArray<double> E6 { get; } = [1.0, 1.5, 2.2, 3.3, 4.7, 6.8];

    /// <summary>Twelve to the decade, 10 %.</summary>
    public static ImmutableArray<double> E12 { get; } = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

    /// <summary>Twenty-four to the decade, 5 %.</summary>
    public static ImmutableArray<double> E24 { get; } = [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];

    /// <summary>The value of a series nearest in ratio.</summary>
    /// <param name="series">One decade, rising from 1.</param>
    /// <param name="value">Above zero.</param>
    public static double Nearest(ImmutableArray<double> series, double value)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(Guard.Positive(value))));
        return series.Select(s => s * decade).Append(10 * decade).MinBy(s => Math.Abs(Math.Log(s / value)));
    }
}
