using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Tune;

/// <summary>How much one turn of a turnbuckle takes up.</summary>
public static class TurnbuckleThread
{
    private const double InchM = 0.0254;

    // Threads to the inch of the coarse series, by nominal size in inches.
    private static readonly ImmutableDictionary<double, int> Coarse = new Dictionary<double, int>
    {
        [0.25] = 20,
        [0.3125] = 18,
        [0.375] = 16,
        [0.4375] = 14,
        [0.5] = 13,
        [0.625] = 11,
        [0.75] = 10,
        [0.875] = 9,
        [1] = 8,
        [1.25] = 7,
        [1.5] = 6,
    }.ToImmutableDictionary();

    /// <summary>Where the threads come from.</summary>
    public static Source Source { get; } = Source.FromMemory("ASME B1.1, coarse (UNC) series; federal turnbuckles FF-T-791b carry it, one end left-handed");

    /// <summary>Length taken up by one full turn of the body, both ends threaded: twice the pitch, metres; null for a size not in the series.</summary>
    public static double? MetresPerTurn(double threadM)
    {
        var near = Coarse.Keys.MinBy(k => Math.Abs(k - (threadM / InchM)));
        return Math.Abs(near - (threadM / InchM)) < 0.01 ? 2 * InchM / Coarse[near] : null;
    }
}
