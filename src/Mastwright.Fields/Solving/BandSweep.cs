using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Numerics.Approximation;

namespace Mastwright.Fields.Solving;

/// <summary>
/// Port impedances as smooth functions of frequency over a band: a rational fit with common poles through a few exact solutions,
/// placed where two successive fits differ most. All solutions share one mesh, cut for the upper end of the band.
/// </summary>
public sealed class BandSweep
{
    // A band narrower than this ratio of its ends begins with three solutions instead of five.
    private const double NarrowBand = 1.15;

    private readonly RationalFit? _fit;
    private readonly int _feeds;

    private BandSweep(double fromHz, double toHz, int feeds, RationalFit? fit, ImmutableArray<double> solvedHz, double errorEstimate, bool converged, ImmutableArray<Finding> findings)
    {
        FromHz = fromHz;
        ToHz = toHz;
        _feeds = feeds;
        _fit = fit;
        SolvedHz = solvedHz;
        ErrorEstimate = errorEstimate;
        Converged = converged;
        Findings = findings;
    }

    /// <summary>Lower end of the band, hertz.</summary>
    public double FromHz { get; }

    /// <summary>Upper end of the band, hertz.</summary>
    public double ToHz { get; }

    /// <summary>Frequencies that were solved exactly, ascending, hertz.</summary>
    public ImmutableArray<double> SolvedHz { get; }

    /// <summary>Largest estimated error of any impedance, relative to its magnitude (or to 1 % of its largest value, if that is more).</summary>
    public double ErrorEstimate { get; }

    /// <summary>Whether the estimate met the tolerance and the last solutions came out as predicted.</summary>
    public bool Converged { get; }

    /// <summary>What is wrong with the model; the sweep holds no values when any of these is an error.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Whether there are values.</summary>
    public bool HasValues => _fit is not null;

    /// <summary>Sweeps a band.</summary>
    /// <param name="model">Wires, feeds, loads and ground; at least one feed.</param>
    /// <param name="fromHz">Lower end, hertz, positive.</param>
    /// <param name="toHz">Upper end, hertz, above the lower.</param>
    /// <param name="tolerance">Wanted relative error of every port impedance.</param>
    /// <param name="options">How to solve; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="progress">Told the number of solutions so far.</param>
    public static BandSweep Run(
        WireModel model, double fromHz, double toHz, double tolerance = 2e-3, SolverOptions? options = null,
        CancellationToken cancellation = default, IProgress<int>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!(fromHz > 0 && toHz > fromHz))
            throw new ArgumentException("The band must begin above zero and end above its beginning.");
        var (mesh, findings) = WireMesh.Build(model, toHz, (options ?? SolverOptions.Default).Mesh);
        if (mesh is null || model.Feeds.Length == 0)
            return new(fromHz, toHz, model.Feeds.Length, null, [], double.PositiveInfinity, false, findings);
        var count = 0;
        try
        {
            var sweep = AdaptiveSweep.Run(
                f =>
                {
                    var solved = WireSolver.Solve(mesh, f, cancellation);
                    progress?.Report(++count);
                    return solved.Solution is { } solution ? Upper(solution.PortImpedances) : throw new Unsolvable(solved.Findings);
                },
                fromHz, toHz, new(Tolerance: tolerance, FirstSamples: toHz < NarrowBand * fromHz ? 3 : 5), cancellation);
            return new(fromHz, toHz, model.Feeds.Length, sweep.Fit, sweep.Points, sweep.ErrorEstimate, sweep.Converged, findings);
        }
        catch (Unsolvable unsolvable)
        {
            return new(fromHz, toHz, model.Feeds.Length, null, [], double.PositiveInfinity, false, findings.AddRange(unsolvable.Findings));
        }
    }

    /// <summary>Open-circuit impedances between all feeds at a frequency inside the band, ohms.</summary>
    /// <exception cref="InvalidOperationException">The sweep holds no values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the band.</exception>
    public Complex[,] PortImpedances(double frequencyHz)
    {
        if (_fit is null)
            throw new InvalidOperationException("The sweep holds no values; see its findings.");
        ArgumentOutOfRangeException.ThrowIfLessThan(frequencyHz, FromHz);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(frequencyHz, ToHz);
        var values = _fit.Evaluate(frequencyHz);
        var matrix = new Complex[_feeds, _feeds];
        var at = 0;
        for (var i = 0; i < _feeds; i++)
        {
            for (var j = i; j < _feeds; j++)
            {
                matrix[i, j] = values[at];
                matrix[j, i] = values[at++];
            }
        }

        return matrix;
    }

    /// <summary>The impedance of one feed, all others open, ohms.</summary>
    public Complex FeedImpedance(double frequencyHz, int feed = 0) => PortImpedances(frequencyHz)[feed, feed];

    private static Complex[] Upper(Complex[,] z)
    {
        var n = z.GetLength(0);
        var values = new List<Complex>();
        for (var i = 0; i < n; i++)
            for (var j = i; j < n; j++)
                values.Add(z[i, j]);
        return [.. values];
    }

    // Carries a failed solution out of the sampler; never leaves this class.
    private sealed class Unsolvable(ImmutableArray<Finding> findings) : Exception
    {
        public ImmutableArray<Finding> Findings { get; } = findings;
    }
}
