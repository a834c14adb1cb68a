using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Structure.Batch;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Stability;

namespace Mastwright.Structure.Tensioning;

/// <summary>What the initial tension is to achieve.</summary>
public sealed record TensionGoal
{
    /// <summary>Shares of the breaking strength to try, from low to high. The usual range is 7 to 15 % (TIA-222, from memory); 10 % is the custom.</summary>
    public IReadOnlyList<double> Shares { get; init; } = [0.07, 0.08, 0.09, 0.10, 0.11, 0.12, 0.13, 0.14, 0.15];

    /// <summary>Least buckling load factor in any case.</summary>
    public double LeastBucklingFactor { get; init; } = 2;

    /// <summary>Largest sway of the top, as a share of the height.</summary>
    public double LargestSwayShare { get; init; } = 0.02;

    /// <summary>Whether a guy may hang slack in some case.</summary>
    public bool SlackAllowed { get; init; }

    /// <summary>Largest share of the breaking strength in any case.</summary>
    public double LargestUse { get; init; } = 0.5;
}

/// <summary>What one initial tension comes to.</summary>
/// <param name="Share">Initial tension over breaking strength.</param>
/// <param name="Stands">Whether every case is carried.</param>
/// <param name="BucklingFactor">Least buckling factor of the cases.</param>
/// <param name="TopSwayM">Largest sway of the top.</param>
/// <param name="SlackGuys">Guys that hang slack in some case.</param>
/// <param name="LargestUse">Largest guy tension over breaking strength.</param>
/// <param name="FootPressureN">Largest vertical force on the foot.</param>
/// <param name="Misses">Which goals are missed, in words; empty when it serves.</param>
public sealed record TensionTrial(
    double Share,
    bool Stands,
    double BucklingFactor,
    double TopSwayM,
    IReadOnlyList<string> SlackGuys,
    double LargestUse,
    double FootPressureN,
    IReadOnlyList<string> Misses);

/// <summary>A choice of initial tension with all that was tried.</summary>
/// <param name="Trials">From the lowest share up.</param>
/// <param name="Chosen">The lowest share that meets every goal: it loads foot and anchors least and vibrates least; null when none does.</param>
/// <param name="Finding">Why none serves; null when one does.</param>
public sealed record TensionChoiceResult(IReadOnlyList<TensionTrial> Trials, TensionTrial? Chosen, Finding? Finding);

/// <summary>Chooses the initial tension: stiff enough against buckling and sway, no higher than needed.</summary>
public static class TensionChoice
{
    /// <summary>Tries each share in turn.</summary>
    /// <param name="mast">The mast; how its guys are set now does not matter.</param>
    /// <param name="breakingStrengthN">Breaking strength of a guy by its name.</param>
    /// <param name="cases">The cases it must stand.</param>
    /// <param name="goal">What is to be achieved; null for the usual.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    public static TensionChoiceResult Run(
        GuyedMast mast,
        Func<string, double> breakingStrengthN,
        IReadOnlyList<LoadCase> cases,
        TensionGoal? goal = null,
        SolverOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        goal ??= new();
        var trials = new List<TensionTrial>();
        foreach (var share in goal.Shares)
        {
            var set = mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(share * breakingStrengthN(g.Name)) })] };
            trials.Add(Try(set, share, breakingStrengthN, cases, goal, options, cancellation));
            progress?.Report(trials.Count / (double)goal.Shares.Count);
        }

        var chosen = trials.FirstOrDefault(t => t.Misses.Count == 0);
        var finding = chosen is not null ? null : new Finding(
            "no-initial-tension-serves", Severity.Error,
            $"No initial tension between {Percent(goal.Shares[0])} and {Percent(goal.Shares[^1])} of breaking strength meets every goal; the nearest misses: {string.Join("; ", trials.MinBy(t => t.Misses.Count)?.Misses ?? [])}.",
            WayOut: "Use larger strand, another guy level, a wider anchor circle or a stiffer mast.");
        return new(trials, chosen, finding);
    }

    private static TensionTrial Try(GuyedMast mast, double share, Func<string, double> strength, IReadOnlyList<LoadCase> cases, TensionGoal goal, SolverOptions? options, CancellationToken cancellation)
    {
        var prepared = MastSolver.Prepare(mast, cases, options);
        var solutions = CaseBatch.Run(prepared, cases, 0, null, cancellation);
        if (solutions.FirstOrDefault(s => !s.IsStable) is { } fallen)
        {
            return new(share, false, 0, 0, [], 0, 0, [$"case '{fallen.CaseName}' is not carried"]);
        }

        var factor = solutions.AsParallel().WithCancellation(cancellation).Min(s => Buckling.Of(prepared, s, cancellation)!.LoadFactor);
        var sway = solutions.Max(s => Math.Sqrt(Math.Pow(s.Nodes[^1].DisplacementM.X, 2) + Math.Pow(s.Nodes[^1].DisplacementM.Y, 2)));
        var slack = solutions.SelectMany(s => s.Guys).Where(g => g.IsSlack).Select(g => g.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        var use = solutions.SelectMany(s => s.Guys).Max(g => g.LargestTensionN / strength(g.Name));
        var foot = solutions.Max(s => s.Foot.ReactionN.Z);
        var misses = new List<string>();
        if (factor < goal.LeastBucklingFactor)
        {
            misses.Add($"buckling factor {Number(factor)}, wanted {Number(goal.LeastBucklingFactor)}");
        }

        if (sway > goal.LargestSwayShare * mast.HeightM)
        {
            misses.Add($"top sways {Number(sway)} m, allowed {Number(goal.LargestSwayShare * mast.HeightM)} m");
        }

        if (slack.Count > 0 && !goal.SlackAllowed)
        {
            misses.Add($"guys go slack: {string.Join(", ", slack)}");
        }

        if (use > goal.LargestUse)
        {
            misses.Add($"guys reach {Percent(use)} of breaking strength, allowed {Percent(goal.LargestUse)}");
        }

        return new(share, true, factor, sway, slack, use, foot, misses);
    }

    private static string Percent(double share) => (100 * share).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
