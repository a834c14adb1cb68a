namespace Mastwright.Circuits.Match;

/// <summary>The run of frequencies around the design frequency over which the standing wave ratio stays at or below a limit.</summary>
/// <param name="LowHz">Lower edge, hertz.</param>
/// <param name="HighHz">Upper edge, hertz.</param>
/// <param name="Limit">The limit.</param>
/// <param name="LoadVaries">Whether the antenna's own change with frequency is in it; otherwise the network's alone.</param>
public sealed record MatchBandwidth(double LowHz, double HighHz, double Limit, bool LoadVaries)
{
    // The search goes this far from the design frequency, as a share of it.
    private const double Reach = 0.25;

    /// <summary>Width, hertz.</summary>
    public double WidthHz => HighHz - LowHz;

    /// <summary>Whether an edge was not reached within a quarter of the design frequency, or within the load's table.</summary>
    public bool IsAtLeast { get; init; }

    internal static MatchBandwidth Of(MatchCandidate candidate, double limit = 2)
    {
        var f0 = candidate.Problem.FrequencyHz;
        if (candidate.Swr > limit)
            return new(f0, f0, limit, candidate.Problem.Load.VariesWithFrequency);
        var (low, lowFound) = Edge(candidate, limit, -1);
        var (high, highFound) = Edge(candidate, limit, 1);
        return new(low, high, limit, candidate.Problem.Load.VariesWithFrequency) { IsAtLeast = !(lowFound && highFound) };
    }

    // Steps grow from a thousandth outward until the limit is passed, then are halved.
    private static (double EdgeHz, bool Found) Edge(MatchCandidate candidate, double limit, int side)
    {
        var f0 = candidate.Problem.FrequencyHz;
        var span = candidate.Problem.Load.Span;
        var furthest = Math.Clamp(f0 * (1 + (side * Reach)), Math.Min(f0, span.LowHz), Math.Max(f0, span.HighHz));
        var (inside, step) = (f0, f0 * 0.001);
        while (true)
        {
            var next = inside + (side * step);
            if (side * (next - furthest) >= 0)
                next = furthest;
            if (candidate.SwrAt(next) > limit)
                return (Halve(candidate, limit, inside, next), true);
            if (next == furthest)
                return (furthest, false);
            (inside, step) = (next, step * 1.5);
        }
    }

    private static double Halve(MatchCandidate candidate, double limit, double inside, double outside)
    {
        for (var i = 0; i < 12; i++)
        {
            var middle = (inside + outside) / 2;
            if (candidate.SwrAt(middle) > limit)
                outside = middle;
            else
                inside = middle;
        }

        return inside;
    }
}
