using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Match;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>One frequency of a smooth sweep.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="FeedOhm">Impedance the network sees, Ω.</param>
/// <param name="BareSwr">Standing wave ratio on the line without a network.</param>
/// <param name="MatchedSwr">With the network chosen for the band's frequency; null without one.</param>
public readonly record struct ImpedancePoint(double FrequencyHz, Complex FeedOhm, double BareSwr, double? MatchedSwr);

/// <summary>A mast's impedance across a band, over the real soil.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="Points">Evenly spaced points.</param>
/// <param name="Solved">Frequencies solved exactly.</param>
/// <param name="ErrorEstimate">Largest estimated relative error of the curve between them.</param>
/// <param name="Converged">Whether the estimate met what was asked.</param>
/// <param name="Network">The network; null without one.</param>
/// <param name="Bandwidth">Where the standing wave ratio with the network stays at or under 2; null without a network.</param>
public sealed record BandImpedance(
    string Mast, Band Band, ImmutableArray<ImpedancePoint> Points, int Solved, double ErrorEstimate, bool Converged, string? Network, MatchBandwidth? Bandwidth);

/// <summary>Impedance and standing wave ratio as smooth curves over every band, from a few exact solutions over the real soil.</summary>
public static class BandImpedanceRun
{
    private const int Shown = 61;

    /// <summary>Relative error asked of the curve.</summary>
    internal const double Tolerance = 0.005;

    /// <summary>Every mast on every band.</summary>
    public static (ImmutableArray<BandImpedance> Bands, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = SoilModels.Of(station);
        var findings = new List<Finding>(soil.Findings);
        var bands = ImmutableArray.CreateBuilder<BandImpedance>();
        foreach (var (band, b) in station.Bands.Select((band, b) => (band, b)))
        {
            void Tell(int solved) => progress?.Report(new AnalysisStep($"Sweeping {band.Title}, {solved} frequencies solved", (b + Math.Min(0.9, 0.15 * solved)) / station.Bands.Length));
            Tell(0);
            var (low, high) = Edges(band);
            var (sweep, note) = SoilSolver.Sweep(soil.Model, low, high, Tolerance, cancellation, new Counter(Tell));
            findings.AddRange(note is null ? sweep.Findings : [.. sweep.Findings, note]);
            if (sweep.HasValues)
            {
                bands.AddRange(station.Masts.Select((mast, feed) => Of(station, mast, feed, band, sweep, low, high)));
            }
        }

        return (bands.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }

    /// <summary>The edges swept: as stated, else those of the amateur band, else two per cent to either side.</summary>
    public static (double LowHz, double HighHz) Edges(Band band)
    {
        var (low, high) = AmateurBands.EdgesOf(band.FrequencyHz) ?? (0.98 * band.FrequencyHz, 1.02 * band.FrequencyHz);
        return (band.LowHz ?? low, band.HighHz ?? high);
    }

    private sealed class Counter(Action<int> tell) : IProgress<int>
    {
        public void Report(int value) => tell(value);
    }

    private static BandImpedance Of(Station station, Mast mast, int feed, Band band, Fields.Solving.BandSweep sweep, double low, double high)
    {
        var shunt = BandRun.BaseCapacitanceF(station, mast);
        var frequencies = Enumerable.Range(0, Shown).Select(i => Math.Min(high, low + ((high - low) * i / (Shown - 1)))).Append(band.FrequencyHz).Distinct().Order().ToList();
        var load = LoadImpedance.Table([.. frequencies.Select(f => (f, sweep.FeedImpedance(f, feed)))]);
        var problem = FeedProblem.Of(station, band, LoadImpedance.Constant(load.At(band.FrequencyHz)[0, 0]), shunt);
        var chosen = NetworkChoice.Of(station, mast.Name, band, problem).Chosen?.Match;
        var match = chosen is null ? null : new MatchCandidate(chosen.TopologyId, chosen.Title, chosen.Ladder, problem with { Load = load, Band = (low, high) });
        return new(
            mast.Name, band, [.. frequencies.Select(f =>
            {
                var seen = 1 / ((1 / load.At(f)[0, 0]) + new Complex(0, 2 * Math.PI * f * shunt));
                return new ImpedancePoint(f, seen, Mismatch.Swr(seen, station.Feed.LineOhm), match?.SwrAt(f));
            })],
            sweep.SolvedHz.Length, sweep.ErrorEstimate, sweep.Converged, match?.Title, match?.Bandwidth);
    }
}
