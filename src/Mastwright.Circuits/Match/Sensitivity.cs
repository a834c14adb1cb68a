using System.Collections.Immutable;

namespace Mastwright.Circuits.Match;

/// <summary>How the match suffers when one thing is off.</summary>
/// <param name="What">The section's reference name, or the load's part.</param>
/// <param name="SwrLow">Standing wave ratio with it lower by the step.</param>
/// <param name="SwrHigh">Standing wave ratio with it higher by the step.</param>
/// <param name="Step">The step in words, e.g. <c>"1 %"</c>.</param>
public sealed record Detuning(string What, double SwrLow, double SwrHigh, string Step)
{
    /// <summary>The worse of the two.</summary>
    public double Worst => Math.Max(SwrLow, SwrHigh);

    /// <summary>Every section's value, the load's resistance and its reactance, moved one at a time; the worst first.</summary>
    /// <param name="candidate">The network.</param>
    /// <param name="relativeStep">Step of the values and of the load's resistance and reactance, as a share.</param>
    public static ImmutableArray<Detuning> Of(MatchCandidate candidate, double relativeStep = 0.01)
    {
        var step = FormattableString.Invariant($"{relativeStep * 100:0.##} %");
        var rows = ImmutableArray.CreateBuilder<Detuning>();
        for (var i = 0; i < candidate.Ladder.Sections.Length; i++)
        {
            double Moved(double factor) =>
                candidate.With(new Ladder(candidate.Ladder.Sections.SetItem(i, candidate.Ladder.Sections[i].WithValue(candidate.Ladder.Sections[i].Value * factor)))).Swr;
            rows.Add(new(candidate.Ladder.NameOf(i), Moved(1 - relativeStep), Moved(1 + relativeStep), step));
        }

        var z = candidate.Problem.Load.At(candidate.Problem.FrequencyHz)[0, 0];
        double WithLoad(System.Numerics.Complex load) =>
            new MatchCandidate(candidate.TopologyId, candidate.Title, candidate.Ladder, candidate.Problem with { Load = Ac.LoadImpedance.Constant(load) }).Swr;
        rows.Add(new("load resistance", WithLoad(new(z.Real * (1 - relativeStep), z.Imaginary)), WithLoad(new(z.Real * (1 + relativeStep), z.Imaginary)), step));
        rows.Add(new("load reactance", WithLoad(new(z.Real, z.Imaginary * (1 - relativeStep))), WithLoad(new(z.Real, z.Imaginary * (1 + relativeStep))), step));
        rows.Sort((a, b) => b.Worst.CompareTo(a.Worst));
        return rows.ToImmutable();
    }
}
