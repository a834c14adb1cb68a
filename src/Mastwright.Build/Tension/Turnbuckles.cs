using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tension;

/// <summary>A guy with a turnbuckle, as measured.</summary>
/// <param name="Name">Name of the guy.</param>
/// <param name="MeasuredN">Tension now, newtons.</param>
/// <param name="TargetN">Tension wanted at this temperature.</param>
/// <param name="ToleranceN">Deviation that is good enough, above 0.</param>
/// <param name="LeastN">Tension it must not fall below while others are turned.</param>
/// <param name="MostN">Tension it must not exceed.</param>
/// <param name="MetresPerTurn">How much one full turn shortens the guy, metres: the pitch, or twice it when both ends are threaded.</param>
/// <param name="CanTakeUpM">Travel left to shorten, metres.</param>
/// <param name="CanPayOutM">Travel left to lengthen, metres.</param>
public sealed record TurnbuckleGuy(
    string Name,
    double MeasuredN,
    double TargetN,
    double ToleranceN,
    double LeastN,
    double MostN,
    double MetresPerTurn,
    double CanTakeUpM,
    double CanPayOutM);

/// <summary>How to turn.</summary>
/// <param name="SmallestTurn">Turns are whole multiples of this: half a turn brings the locking holes back in line.</param>
/// <param name="MostTurnsAtOnce">Most turns on one guy before going on to another.</param>
/// <param name="MostSteps">Longest list.</param>
/// <param name="TurnCost">
/// What a turn on a guy costs, squared and counted like a squared deviation in tolerances; 0 for nothing. Taking up one
/// guy and paying out those across from it leans the mast and hardly changes a tension: readings that cannot all be true
/// ask for many such turns, and this keeps them from being made.
/// </param>
public sealed record TurnOptions(double SmallestTurn = 0.5, double MostTurnsAtOnce = 2, int MostSteps = 200, double TurnCost = 0);

/// <summary>One step: turn this one by so much.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="Turns">Turns; positive shortens (tightens), negative lengthens.</param>
/// <param name="ExpectedN">Tensions of all guys afterwards, in their order.</param>
public sealed record TurnStep(string Guy, double Turns, ImmutableArray<double> ExpectedN);

/// <summary>A list of steps.</summary>
/// <param name="Steps">Steps in order. Measure again after a round; the list is only as good as the influence matrix.</param>
/// <param name="FinalN">Tensions expected at the end, in the order of the guys.</param>
/// <param name="WithinTolerance">Whether every guy is then within its tolerance.</param>
public sealed record TurnPlan(ImmutableArray<TurnStep> Steps, ImmutableArray<double> FinalN, bool WithinTolerance)
{
    /// <summary>The next thing to do; null when nothing is to be done.</summary>
    public TurnStep? Next => Steps.Length > 0 ? Steps[0] : null;

    /// <summary>The caution that belongs on the sheet.</summary>
    public const string Caution = "Never open a turnbuckle to the end of its thread, never leave it unlocked, keep the mast plumb after every step, and keep people out of the fall circle.";
}

/// <summary>
/// From measured tensions to turns of turnbuckles. The influence matrix says how each guy's tension answers to each guy's
/// shortening; the turns wanted are the bounded least squares solution, rounded to what can be locked; they are then
/// dealt out in small steps, each chosen for the greatest gain among those that keep every guy between its limits.
/// </summary>
public static class Turnbuckles
{
    private const int Sweeps = 20_000;

    /// <summary>Plans the turns; none when every guy is within its tolerance already.</summary>
    /// <param name="guys">The guys as measured.</param>
    /// <param name="influenceNPerM">dT[i]/ds[j], N/m: what guy i gains when guy j is shortened.</param>
    /// <param name="options">Steps.</param>
    public static Reading<TurnPlan> Plan(IReadOnlyList<TurnbuckleGuy> guys, double[,] influenceNPerM, TurnOptions? options = null)
    {
        options ??= new();
        var findings = Faults(guys, influenceNPerM, options);
        if (findings.Count > 0) return new(null, [.. findings]);
        var problem = new Problem(guys, influenceNPerM, options);
        // Good enough is left alone: every turn is work, and wears the thread.
        var wanted = guys.All(g => Math.Abs(g.MeasuredN - g.TargetN) <= g.ToleranceN) ? new int[guys.Count] : problem.WholeTurns();
        var plan = problem.Deal(wanted, findings);
        if (!plan.WithinTolerance && findings.Count == 0)
        {
            var worst = guys.Select((g, i) => (g, Off: plan.FinalN[i] - g.TargetN)).MaxBy(x => Math.Abs(x.Off) / x.g.ToleranceN);
            findings.Add(new("turns-not-enough", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"After these turns guy {worst.g.Name} is still {worst.Off:+0;-0} N from its target."), null, null, string.Create(CultureInfo.InvariantCulture, $"within {worst.g.ToleranceN:0} N"), "A turnbuckle is at its end, the smallest turn is too coarse, or the targets do not belong together: check the travel left and the mast's plumb."));
        }
        return new(plan, [.. findings]);
    }

    private static List<Finding> Faults(IReadOnlyList<TurnbuckleGuy> guys, double[,] influence, TurnOptions options)
    {
        var findings = new List<Finding>();
        if (influence.GetLength(0) != guys.Count || influence.GetLength(1) != guys.Count) throw new ArgumentException("The influence matrix has a row and a column for each guy.", nameof(influence));
        if (!(options.SmallestTurn > 0) || options.MostTurnsAtOnce < options.SmallestTurn) throw new ArgumentException("The smallest turn is above 0 and no more than the most at once.", nameof(options));
        void Error(string code, string message, double value, string allowed, string wayOut) => findings.Add(new(code, Severity.Error, message, null, value.ToString(CultureInfo.InvariantCulture), allowed, wayOut));
        for (var i = 0; i < guys.Count; i++)
        {
            var g = guys[i];
            if (!(g.MeasuredN >= 0) || !double.IsFinite(g.MeasuredN)) Error("turn-measured", $"The tension measured at guy {g.Name} cannot be.", g.MeasuredN, "0 N and above", "Measure again.");
            if (!(g.ToleranceN > 0)) Error("turn-tolerance", $"The tolerance of guy {g.Name} cannot be.", g.ToleranceN, "above 0 N", "Enter what is good enough, a few per cent of the tension.");
            if (!(g.LeastN <= g.TargetN && g.TargetN <= g.MostN)) Error("turn-target", $"The target of guy {g.Name} is outside its own limits.", g.TargetN, string.Create(CultureInfo.InvariantCulture, $"{g.LeastN:0} to {g.MostN:0} N"), "Check target and limits.");
            if (!(g.MetresPerTurn > 0) || !(g.CanTakeUpM >= 0) || !(g.CanPayOutM >= 0)) Error("turn-travel", $"The pitch or travel of the turnbuckle of guy {g.Name} cannot be.", g.MetresPerTurn, "pitch above 0, travel 0 and above", "Measure the thread.");
            if (!(influence[i, i] > 0)) Error("turn-influence", $"Shortening guy {g.Name} does not tighten it in the influence matrix.", influence[i, i], "above 0 N/m", "Compute the influence matrix again.");
        }
        return findings;
    }

    private sealed class Problem(IReadOnlyList<TurnbuckleGuy> guys, double[,] influence, TurnOptions options)
    {
        private readonly int count = guys.Count;

        // Newtons at guy i for one smallest turn of guy j.
        private double Unit(int i, int j) => influence[i, j] * guys[j].MetresPerTurn * options.SmallestTurn;

        private int Most(int j) => (int)Math.Floor((guys[j].CanTakeUpM / (guys[j].MetresPerTurn * options.SmallestTurn)) + 1e-9);

        private int Least(int j) => -(int)Math.Floor((guys[j].CanPayOutM / (guys[j].MetresPerTurn * options.SmallestTurn)) + 1e-9);

        // Cost of one smallest turn on a guy that has none yet.
        private double Cost => options.TurnCost * options.SmallestTurn * options.SmallestTurn;

        private double WithCost(int[] turns) => Error(After(turns)) + (Cost * turns.Sum(t => (double)t * t));

        private double Error(IReadOnlyList<double> tensions) => Enumerable.Range(0, count).Sum(i => Math.Pow((tensions[i] - guys[i].TargetN) / guys[i].ToleranceN, 2));

        /// <summary>Smallest turns for each guy: the bounded least squares optimum, rounded and then improved one unit at a time.</summary>
        public int[] WholeTurns()
        {
            var x = new double[count];
            double[] off = [.. guys.Select(g => g.MeasuredN - g.TargetN)];
            double Weight(int i) => 1 / (guys[i].ToleranceN * guys[i].ToleranceN);
            // Coordinate descent reaches the optimum of a convex quadratic with bounds.
            for (var sweep = 0; sweep < Sweeps; sweep++)
            {
                var largest = 0.0;
                for (var j = 0; j < count; j++)
                {
                    var (slope, curve) = (Cost * x[j], Cost);
                    for (var i = 0; i < count; i++)
                    {
                        slope += Weight(i) * off[i] * Unit(i, j);
                        curve += Weight(i) * Unit(i, j) * Unit(i, j);
                    }
                    var move = Math.Clamp(x[j] - (slope / curve), Least(j), Most(j)) - x[j];
                    x[j] += move;
                    for (var i = 0; i < count; i++) off[i] += Unit(i, j) * move;
                    largest = Math.Max(largest, Math.Abs(move));
                }
                if (largest < 1e-7) break;
            }
            var turns = x.Select((v, j) => Math.Clamp((int)Math.Round(v), Least(j), Most(j))).ToArray();
            while (Improve(turns)) { }
            // Doing nothing is better than turning for nothing.
            return Error(After(turns)) < Error([.. guys.Select(g => g.MeasuredN)]) ? turns : new int[count];
        }

        private bool Improve(int[] turns)
        {
            var now = WithCost(turns);
            var (best, change) = (now * (1 - 1e-12), (Guy: -1, By: 0));
            for (var j = 0; j < count; j++)
            {
                foreach (var by in (int[])[-1, 1])
                {
                    if (turns[j] + by < Least(j) || turns[j] + by > Most(j)) continue;
                    turns[j] += by;
                    var error = WithCost(turns);
                    turns[j] -= by;
                    if (error < best) (best, change) = (error, (j, by));
                }
            }
            if (change.Guy < 0) return false;
            turns[change.Guy] += change.By;
            return true;
        }

        private double[] After(int[] turns)
        {
            double[] tensions = [.. guys.Select(g => g.MeasuredN)];
            for (var j = 0; j < count; j++)
                for (var i = 0; i < count; i++) tensions[i] += Unit(i, j) * turns[j];
            return tensions;
        }

        /// <summary>Deals the turns out in steps.</summary>
        public TurnPlan Deal(int[] turns, List<Finding> findings)
        {
            var left = (int[])turns.Clone();
            double[] tensions = [.. guys.Select(g => g.MeasuredN)];
            var steps = ImmutableArray.CreateBuilder<TurnStep>();
            var atOnce = Math.Max(1, (int)Math.Floor((options.MostTurnsAtOnce / options.SmallestTurn) + 1e-9));
            while (left.Any(l => l != 0) && steps.Count < options.MostSteps)
            {
                var choice = Choose(left, tensions, atOnce, steps.Count > 0 ? steps[^1].Guy : null);
                if (choice is not var (guy, by))
                {
                    findings.Add(new("turns-no-safe-step", Severity.Warning, "No further step keeps every guy between its limits.", null, null, null, "Widen the limits a little, or slacken the tightest guy by hand first."));
                    break;
                }
                left[guy] -= by;
                for (var i = 0; i < count; i++) tensions[i] += Unit(i, guy) * by;
                steps.Add(new(guys[guy].Name, by * options.SmallestTurn, [.. tensions]));
            }
            var within = guys.Select((g, i) => Math.Abs(tensions[i] - g.TargetN) <= g.ToleranceN).All(ok => ok);
            return new(steps.ToImmutable(), [.. tensions], within);
        }

        // The step with the greatest gain; going on with another guy than the last one is preferred, so that they rise together.
        private (int Guy, int By)? Choose(int[] left, double[] tensions, int atOnce, string? last)
        {
            (int, int)? best = null;
            var bestScore = double.PositiveInfinity;
            for (var j = 0; j < count; j++)
            {
                for (var size = Math.Min(atOnce, Math.Abs(left[j])); size > 0; size--)
                {
                    var by = Math.Sign(left[j]) * size;
                    double[] after = [.. tensions.Select((t, i) => t + (Unit(i, j) * by))];
                    if (!Safe(tensions, after)) continue;
                    var score = Error(after) * (guys[j].Name == last ? 1.2 : 1);
                    if (score < bestScore) (best, bestScore) = ((j, by), score);
                }
            }
            return best;
        }

        // A guy that is outside its limits already may only come nearer to them.
        private bool Safe(double[] before, double[] after)
        {
            for (var i = 0; i < count; i++)
            {
                if (after[i] > guys[i].MostN && after[i] > before[i] + 1e-9) return false;
                if (after[i] < guys[i].LeastN && after[i] < before[i] - 1e-9) return false;
            }
            return true;
        }
    }
}
