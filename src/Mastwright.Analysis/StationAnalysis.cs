using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Site;
using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Survive;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.People;

namespace Mastwright.Analysis;

/// <summary>The single door to the physics: a design goes in, the whole station's result comes out.</summary>
public static class StationAnalysis
{
    /// <summary>Analyses a design that was read without errors.</summary>
    /// <param name="reading">The design with its assumptions.</param>
    /// <param name="progress">Told what is being done; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="stood">Told what is known once the structure is solved; null for nobody.</param>
    /// <exception cref="ArgumentException">The design has errors: show its findings instead.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StationResult Run(DesignReading reading, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default, Action<StandStage>? stood = null)
    {
        var station = reading.Station ?? throw new ArgumentException("The design has errors.", nameof(reading));
        return new Work(station, reading, [.. reading.Findings], progress, cancellation, stood).Result();
    }

    private sealed class Work(Station station, DesignReading reading, List<Finding> findings, IProgress<AnalysisStep>? progress, CancellationToken cancellation, Action<StandStage>? stood)
    {
        private readonly List<Check> checks = [];
        private readonly List<NamedTrail> quantities = [];
        private double told;

        public StationResult Result()
        {
            checks.AddRange(SiteRun.Of(station));
            findings.AddRange(SiteRun.Unsaid(station));
            var model = WireModels.Of(station);
            var standing = new StandAnswer[station.Masts.Length];
            SweepResult? sweep = null;
            if (stood is null)
            {
                // Neither trade needs the other's answer before both are known.
                // A loop of two: stopped half-way it says so, where Invoke trips over its own queue.
                Parallel.For(0, 2, Together(), trade =>
                {
                    if (trade == 0)
                    {
                        StandAll(standing);
                    }
                    else
                    {
                        sweep = Sweep(model);
                    }
                });
            }
            else
            {
                // Somebody waits for the structure: it gets both cores first.
                StandAll(standing);
            }

            var stands = station.Masts.Select((m, i) => Stand(m, standing[i])).ToList();
            stood?.Invoke(new StandStage(station, Fingerprint.Of(station), [.. stands], [.. checks]));
            var solutions = Solved(sweep ?? Sweep(model));
            var soil = EarthChoice.IsExact(station) && solutions.Count > 0 ? OverSoil() : [];
            var groups = Groups(solutions, soil);
            var resonances = Resonances(model, solutions);
            var groupGuys = GroupRun.Guys(station, solutions, soil);
            var masts = station.Masts.Select((m, i) => Mast(m, stands[i], resonances[i], Bands(m, i, solutions, soil, groupGuys[i]), groups)).ToImmutableArray();
            checks.AddRange(MetalsRun.Checks(station));
            return new StationResult
            {
                Station = station,
                Fingerprint = Fingerprint.Of(station),
                Masts = masts,
                Groups = groups,
                Checks = [.. checks],
                Assumptions = reading.Assumptions,
                Findings = [.. findings.DistinctBy(f => (f.Code, f.Message)).Select(f => WirePlaces.At(f, station, reading.Places))],
                Quantities = [.. quantities],
                Cautions = [.. Cautions()],
            };
        }

        private ParallelOptions Together() => new() { CancellationToken = cancellation };

        private void StandAll(StandAnswer[] answers)
        {
            Tell("Loading the masts with wind and ice", 0.1);
            Parallel.For(0, answers.Length, Together(), i => answers[i] = StandRun.Of(station, station.Masts[i], cancellation));
        }

        private StandResult Stand(Mast mast, StandAnswer answer)
        {
            checks.AddRange(answer.Checks);
            findings.AddRange(answer.Findings);
            quantities.AddRange(answer.Result.GuyTensions);
            Name($"stand.{mast.Name}.base-compression", Trade.Stand, answer.Result.BaseCompressionN);
            if (answer.Result.BucklingFactor is { } buckling)
            {
                Name($"stand.{mast.Name}.buckling-factor", Trade.Stand, buckling);
            }

            foreach (var (frequency, n) in answer.Result.MastFrequencies.Select((f, n) => (f, n + 1)))
            {
                Name($"stand.{mast.Name}.mast-frequency-{n}", Trade.Stand, frequency);
            }

            return answer.Result;
        }

        // Every frequency in use, bands and groups alike.
        private List<double> Frequencies() => [.. station.Bands.Select(b => b.FrequencyHz).Concat(station.Groups.Select(g => g.FrequencyHz)).Distinct()];

        private SweepResult Sweep(WireModel model)
        {
            Tell("Solving the currents", 0.45);
            return WireSolver.Sweep(model, Frequencies(), null, cancellation, new Share(s => Tell("Solving the currents", 0.45 + (0.35 * s))));
        }

        private Dictionary<double, WireSolution> Solved(SweepResult sweep)
        {
            findings.AddRange(sweep.Findings);
            if (sweep.Solutions.IsEmpty && sweep.Findings.FirstOrDefault(f => f.Severity == Severity.Error) is { } error)
            {
                // Without currents nothing is known of radiation, feed and voltages: that must not pass for fit.
                checks.Add(new Check("radiate.solved", Trade.Radiate, "The currents can be solved",
                    Trail.Given("wires refused", "n", sweep.Findings.Count(f => f.Severity == Severity.Error), QuantityKind.Count, Source.Derived("docs/theory/fields-wires.md")),
                    Trail.Given("wires that may be refused", "n0", 0, QuantityKind.Count, Source.CommonPractice),
                    double.PositiveInfinity, Verdict.Fail, error.Message, error.WayOut ?? "Correct the wires named in the findings."));
            }

            return sweep.Solutions.IsEmpty ? [] : Frequencies().Zip(sweep.Solutions).ToDictionary(p => p.First, p => p.Second);
        }

        private Dictionary<double, WireSolution> OverSoil()
        {
            var frequencies = Frequencies();
            var soil = SoilModels.Of(station);
            findings.AddRange(soil.Findings);
            var solved = new Dictionary<double, WireSolution>();
            foreach (var (frequency, n) in frequencies.Select((f, n) => (f, n)))
            {
                Tell($"Solving the currents over the soil, {n + 1} of {frequencies.Count}", 0.8 + (0.05 * n / frequencies.Count));
                var result = SoilSolver.Solve(soil.Model, frequency, cancellation);
                findings.AddRange(result.Findings);
                if (result.Solution is { } solution)
                {
                    solved[frequency] = solution;
                }
            }

            return solved;
        }

        private ImmutableArray<GroupResult> Groups(Dictionary<double, WireSolution> solutions, Dictionary<double, WireSolution> soil)
        {
            var results = solutions.Count == 0 ? [] : station.Groups.Select(g => GroupRun.Of(station, g, solutions[g.FrequencyHz], soil.GetValueOrDefault(g.FrequencyHz))).ToImmutableArray();
            foreach (var group in results)
            {
                foreach (var direction in group.Directions)
                {
                    var id = $"radiate.{group.Name}.{direction.Name}";
                    Name($"{id}.gain", Trade.Radiate, direction.GainDbi);
                    Name($"{id}.front-to-back", Trade.Radiate, direction.FrontToBackDb);
                    foreach (var drive in direction.Drives)
                    {
                        Name($"{id}.{drive.Mast}.base-peak-voltage", Trade.Radiate, drive.BasePeakV);
                        Name($"{id}.{drive.Mast}.power", Trade.Radiate, drive.PowerW);
                    }
                }
            }

            return results;
        }

        private Trail?[] Resonances(WireModel model, Dictionary<double, WireSolution> solutions)
        {
            if (solutions.Count == 0)
            {
                return new Trail?[station.Masts.Length];
            }

            Tell("Looking for the first resonance", 0.8);
            var resonance = new Resonance(model, cancellation);
            return [.. station.Masts.Select((m, i) => resonance.First(i, m.TopM + (m.TopWires?.LengthM ?? 0)))];
        }

        private MastResult Mast(Mast mast, StandResult stand, Trail? resonance, ImmutableArray<BandResult> bands, ImmutableArray<GroupResult> groups)
        {
            if (resonance is not null)
            {
                Name($"radiate.{mast.Name}.first-resonance", Trade.Radiate, resonance);
            }

            var result = new MastResult(mast.Name, stand, resonance, bands, Gap(mast, bands, groups));
            checks.AddRange(SurviveChecks.Of(station, mast, result));
            return result;
        }

        private ImmutableArray<BandResult> Bands(Mast mast, int index, Dictionary<double, WireSolution> solutions, Dictionary<double, WireSolution> soil, ImmutableArray<GuyDrive> groupGuys)
        {
            Tell($"Matching and protecting mast {mast.Name}", 0.85 + (0.1 * index / station.Masts.Length));
            if (solutions.Count == 0)
            {
                return [];
            }

            var answers = new BandAnswer[station.Bands.Length];
            Parallel.For(0, answers.Length, Together(), b =>
                answers[b] = BandRun.Of(station, mast, station.Bands[b], solutions[station.Bands[b].FrequencyHz], index, soil.GetValueOrDefault(station.Bands[b].FrequencyHz)));
            foreach (var answer in answers)
            {
                checks.AddRange(answer.Checks);
                NameBand($"radiate.{mast.Name}.{answer.Result.Name}", answer.Result);
            }

            var guys = answers.Select(a => a.Guys).Concat(groupGuys).ToList();
            checks.AddRange(GuyStress.Checks(mast, guys, station.UnitSystem));
            findings.AddRange(GuyStress.Notes(mast, guys, station.UnitSystem));
            return [.. answers.Select(a => a.Result)];
        }

        private void NameBand(string id, BandResult result)
        {
            Name($"{id}.feed-resistance", Trade.Radiate, result.FeedResistance);
            Name($"{id}.feed-reactance", Trade.Radiate, result.FeedReactance);
            Name($"{id}.earth-loss", Trade.Radiate, result.EarthLossOhm);
            Name($"{id}.efficiency", Trade.Radiate, result.Efficiency);
            Name($"{id}.base-current", Trade.Radiate, result.BaseCurrentRms);
            Name($"{id}.base-peak-voltage", Trade.Radiate, result.BasePeakV);
            Name($"{id}.gain", Trade.Radiate, result.GainDbi);
            Name($"{id}.field-at-1-km", Trade.Radiate, result.FieldAt1KmVPerM);
        }

        private GapAnswer Gap(Mast mast, ImmutableArray<BandResult> bands, ImmutableArray<GroupResult> groups)
        {
            var request = GapRun.Request(station, mast, bands, GapRun.PeaksInGroups(station, mast, groups));
            var answer = GapWindow.Set(request);
            var own = answer switch { GapSetting s => s.Checks, NoGapFits n => n.Checks, _ => [] };
            checks.AddRange(station.Protection.GapM is { } gapM
                ? GapRun.OfSetGap(request, answer, mast.Name, gapM)
                : own.Select(c => c with { Id = $"{c.Id}[{mast.Name}]" }));
            findings.AddRange(answer.Findings);
            if (answer is GapSetting setting)
            {
                Name($"survive.{mast.Name}.gap", Trade.Survive, setting.SpacingM);
                Name($"survive.{mast.Name}.gap-smallest", Trade.Survive, setting.WindowLowM);
                Name($"survive.{mast.Name}.gap-largest", Trade.Survive, setting.WindowHighM);
            }

            return answer;
        }

        private IEnumerable<string> Cautions() => checks.Select(c => c.Caution).OfType<string>()
            .Concat([GapAnswer.Caution, FallCircle.FallCaution, FarFieldExposure.Caution])
            .Append("Figures here help a careful person; they do not replace local codes, the makers' data and a licensed engineer.")
            .Distinct();

        private void Name(string id, Trade trade, Trail trail) => quantities.Add(new NamedTrail(id, trade, trail));

        // Two trades may speak at once; the bar never runs back.
        private void Tell(string words, double done)
        {
            cancellation.ThrowIfCancellationRequested();
            lock (checks)
            {
                told = double.Max(told, done);
                progress?.Report(new AnalysisStep(words, told));
            }
        }
    }

    private sealed class Share(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
