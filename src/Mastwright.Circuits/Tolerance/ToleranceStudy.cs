using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Numerics.Sampling;

namespace Mastwright.Circuits.Tolerance;

/// <summary>Draws parts, temperature and weather at random and counts the days inside a standing wave ratio.</summary>
public static class ToleranceStudy
{
    /// <summary>Runs the study.</summary>
    /// <param name="candidate">The network; its load is the one it was tuned on.</param>
    /// <param name="spec">What varies.</param>
    /// <param name="trials">Number of trials, at least one.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <param name="swrLimit">The limit.</param>
    /// <param name="progress">Told the share done; null for none.</param>
    /// <param name="cancel">Stops the study.</param>
    public static ToleranceResult Run(MatchCandidate candidate, ToleranceSpec spec, int trials = 2000, int seed = 1, double swrLimit = 2, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        var scenarios = spec.Scenarios.IsEmpty ? [new LoadScenario("as designed", 1, candidate.Problem.Load)] : spec.Scenarios;
        var all = Draw(candidate, spec, scenarios, Cause.All, trials, seed, progress, cancel);
        var swr = all.Select(t => t.Swr).Order().ToImmutableArray();
        var inside = all.Count(t => t.Swr <= swrLimit);
        var by = all.GroupBy(t => t.Scenario).OrderBy(g => g.Key).Select(g => (scenarios[g.Key].Name, (double)g.Count(t => t.Swr <= swrLimit) / g.Count()));
        var few = Math.Max(100, trials / 5);
        var causes = Enum.GetValues<Cause>().Where(c => c is not (Cause.None or Cause.All))
            .Select(c => (Words(c), Quantile([.. Draw(candidate, spec, scenarios, c, few, seed, null, cancel).Select(t => t.Swr).Order()], 0.9)))
            .OrderByDescending(c => c.Item2);
        return new(trials, seed, swrLimit, (double)inside / trials, Wilson(inside, trials), Quantile(swr, 0.5), Quantile(swr, 0.9), [.. by], [.. causes], swr);
    }

    [Flags]
    private enum Cause
    {
        None = 0,
        Parts = 1,
        Temperature = 2,
        Scenario = 4,
        Scatter = 8,
        All = 15,
    }

    private static string Words(Cause cause) => cause switch
    {
        Cause.Parts => "tolerance of the parts",
        Cause.Temperature => "temperature",
        Cause.Scenario => "soil and weather",
        _ => "scatter of the load",
    };

    private static List<(double Swr, int Scenario)> Draw(MatchCandidate candidate, ToleranceSpec spec, ImmutableArray<LoadScenario> scenarios, Cause causes, int trials, int seed, IProgress<double>? progress, CancellationToken cancel)
    {
        var random = new SeededRandom((ulong)seed);
        var problem = candidate.Problem;
        var outcome = new List<(double, int)>(trials);
        for (var t = 0; t < trials; t++)
        {
            cancel.ThrowIfCancellationRequested();

            // Every number is drawn in every trial, so that switching a cause off leaves the others as they were.
            var warmer = random.NextNormal() * (causes.HasFlag(Cause.Temperature) ? spec.TemperatureK : 0);
            var which = Pick(scenarios, random.NextDouble());
            if (!causes.HasFlag(Cause.Scenario))
                which = 0;
            var (dr, dx) = (random.NextNormal(), random.NextNormal());
            var sections = candidate.Ladder.Sections.ToBuilder();
            for (var i = 0; i < sections.Count; i++)
            {
                var even = (2 * random.NextDouble()) - 1;
                var (tolerance, drift) = Of(sections[i], spec);
                var off = spec.TunedOnSite || !causes.HasFlag(Cause.Parts) ? 0 : even * tolerance;
                if (off != 0 || drift * warmer != 0)
                    sections[i] = sections[i].WithValue(sections[i].Value * (1 + off) * (1 + (drift * warmer)));
            }

            var load = causes.HasFlag(Cause.Scenario) ? scenarios[which].Load : problem.Load;
            var z = load.At(problem.FrequencyHz)[0, 0];
            if (causes.HasFlag(Cause.Scatter))
                z = new Complex(z.Real * Math.Max(0.05, 1 + (spec.LoadResistance * dr)), z.Imaginary + (spec.LoadReactanceOhm * dx));
            var network = new Ladder(sections.ToImmutable()).Build(problem with { Load = LoadImpedance.Constant(z) });
            outcome.Add((network.TrySolve(problem.FrequencyHz, out var s, out _) ? s.Swr(Ladder.Transmitter, problem.LineOhm) : double.PositiveInfinity, which));
            if (progress is not null && t % 100 == 0)
                progress.Report((double)t / trials);
        }

        return outcome;
    }

    private static (double Tolerance, double PerK) Of(LadderSection section, ToleranceSpec spec) => section.ValueKind switch
    {
        QuantityKind.Inductance => (spec.Coil, spec.CoilPerK),
        QuantityKind.Capacitance => (spec.Capacitor, spec.CapacitorPerK),
        QuantityKind.Length => (spec.Length, spec.LengthPerK),
        _ => (0, 0),
    };

    private static int Pick(ImmutableArray<LoadScenario> scenarios, double at)
    {
        var left = at * scenarios.Sum(s => s.Weight);
        for (var k = 0; k < scenarios.Length - 1; k++)
            if ((left -= scenarios[k].Weight) < 0)
                return k;
        return scenarios.Length - 1;
    }

    private static double Quantile(ImmutableArray<double> sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];

    private static (double Low, double High) Wilson(int inside, int trials)
    {
        const double Z = 1.959963985;
        var (n, p) = ((double)trials, (double)inside / trials);
        var middle = (p + (Z * Z / (2 * n))) / (1 + (Z * Z / n));
        var half = Z * Math.Sqrt((p * (1 - p) / n) + (Z * Z / (4 * n * n))) / (1 + (Z * Z / n));
        return (middle - half, middle + half);
    }
}
