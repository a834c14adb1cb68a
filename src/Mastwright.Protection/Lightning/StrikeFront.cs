using System.Collections.Immutable;

namespace Mastwright.Protection.Lightning;

/// <summary>When and at what voltage a gap fires on a front.</summary>
/// <param name="TimeS">Time from the start of the stroke in seconds.</param>
/// <param name="Volts">Voltage across the gap at that time.</param>
public readonly record struct GapFiring(double TimeS, double Volts);

/// <summary>
/// The voltage that would stand across a gap if it never fired, over time. Every static spark voltage and lag have their point on it: the volt-time curve
/// of a gap under that stroke.
/// </summary>
/// <param name="Name">The stroke.</param>
/// <param name="TimeS">Times in seconds, rising, not evenly spaced.</param>
/// <param name="Volts">Voltage at each time.</param>
public sealed record StrikeFront(string Name, ImmutableArray<double> TimeS, ImmutableArray<double> Volts)
{
    /// <summary>A straight front for hand checks: equal area gives Uf = Us + √(2·S·Us·lag).</summary>
    /// <param name="name">Name.</param>
    /// <param name="voltsPerS">Steepness S.</param>
    /// <param name="endS">Where it ends.</param>
    public static StrikeFront Straight(string name, double voltsPerS, double endS) => new(name, [0, endS], [0, voltsPerS * endS]);

    /// <summary>
    /// Where a gap fires by the equal-area rule ∫(|u| − Us)dt = Us·lag (Kind 1958, from memory); null when the front ends before.
    /// </summary>
    /// <param name="staticV">Us, the static spark voltage in volts.</param>
    /// <param name="lagS">Formative and statistical lag together in seconds.</param>
    public GapFiring? Fires(double staticV, double lagS)
    {
        var wanted = staticV * lagS;
        var area = 0.0;
        for (var i = 1; i < TimeS.Length; i++)
        {
            var (t0, t1, u0, u1) = (TimeS[i - 1], TimeS[i], Math.Abs(Volts[i - 1]) - staticV, Math.Abs(Volts[i]) - staticV);
            if (t1 <= t0 || (u0 <= 0 && u1 <= 0))
                continue;
            var slope = (u1 - u0) / (t1 - t0);

            // Only the part of the step above the static voltage counts.
            var from = u0 < 0 ? t0 - (u0 / slope) : t0;
            var to = u1 < 0 ? t0 - (u0 / slope) : t1;
            var (start, end) = (Math.Max(u0, 0), Math.Max(u1, 0));
            var piece = 0.5 * (start + end) * (to - from);
            if (area + piece >= wanted)
            {
                var rest = wanted - area;

                // start·x + slope·x²/2 = rest, in the form that stays exact for small slopes.
                var x = 2 * rest / (start + Math.Sqrt(Math.Max(0, (start * start) + (2 * slope * rest))));
                return double.IsFinite(x) ? new(from + x, staticV + start + (slope * x)) : new(from, staticV + start);
            }

            area += piece;
        }

        return null;
    }
}
