using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Quantities;

namespace Mastwright.Circuits.Match;

/// <summary>A match at one frequency, with the transmitter giving its stated power.</summary>
/// <param name="FrequencyHz">Frequency, hertz.</param>
/// <param name="InputOhm">What the line sees, ohms.</param>
/// <param name="Reflection">Reflection coefficient on the line.</param>
/// <param name="Swr">Standing wave ratio on the line.</param>
/// <param name="LossDb">Network loss, dB.</param>
/// <param name="HighestVoltage">Highest crest voltage across any part.</param>
public sealed record SweepPoint(double FrequencyHz, Complex InputOhm, Complex Reflection, double Swr, double LossDb, PeakVolts HighestVoltage);

/// <summary>Sweeps a match over frequency, for plots and files.</summary>
public static class MatchSweep
{
    /// <summary>Evenly spaced frequencies, ends included.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz, above the first.</param>
    /// <param name="points">How many, at least two.</param>
    public static ImmutableArray<SweepPoint> Of(MatchCandidate candidate, double lowHz, double highHz, int points = 101) =>
        [.. Frequencies(lowHz, highHz, points).Select(f => At(candidate, f))];

    internal static IEnumerable<double> Frequencies(double lowHz, double highHz, int points)
    {
        Guard.Positive(lowHz);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(highHz, lowHz);
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        return Enumerable.Range(0, points).Select(i => lowHz + ((highHz - lowHz) * i / (points - 1)));
    }

    private static SweepPoint At(MatchCandidate candidate, double f)
    {
        var s = candidate.Network.Solve(f).AtInputPower(candidate.Problem.PowerW);
        var z = s.InputImpedanceOhm(Ladder.Transmitter);
        var reflection = Mismatch.Reflection(z, candidate.Problem.LineOhm);
        var highest = s.Parts.Where(p => p.Part.Role == PartRole.Passive).Select(p => p.PeakVoltage).DefaultIfEmpty().Max();
        return new(f, z, reflection, Mismatch.Swr(reflection.Magnitude), s.LossDb, highest);
    }
}
