using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Tensioning;

/// <summary>One adjustment: a guy brought to its wanted tension, and what all guys show afterwards.</summary>
/// <param name="Pass">Which round, from 1.</param>
/// <param name="GuyName">The guy adjusted.</param>
/// <param name="TakeUpM">How much it was shortened; negative when let out.</param>
/// <param name="AnchorTensionN">Tension of every guy afterwards, by name.</param>
public sealed record TensioningStep(int Pass, string GuyName, double TakeUpM, IReadOnlyDictionary<string, double> AnchorTensionN);

/// <summary>
/// Foretells a tensioning round by round: every guy in turn is brought to its wanted tension, which disturbs the ones
/// already set, so the round is repeated. On a mast that turns on a pivot the guys of a level rise and fall together, and
/// only a plumb line tells how it leans: see <see cref="TensionSetting.SetPlumb"/>.
/// </summary>
public static class TensioningOrder
{
    /// <summary>Plays the order through.</summary>
    /// <param name="mast">The mast; guys set by tension have that as their aim, guys set by length are not touched.</param>
    /// <param name="startShare">Share of the wanted tension at which the guys are first made up, the mast held upright.</param>
    /// <param name="passes">Rounds, at least 1.</param>
    /// <param name="order">Names in the order of work; null for level by level from below.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <returns>The steps as far as the mast stands; fewer than asked when it does not.</returns>
    public static IReadOnlyList<TensioningStep> Play(
        GuyedMast mast, double startShare = 0.5, int passes = 3, IReadOnlyList<string>? order = null, SolverOptions? options = null, CancellationToken cancellation = default)
    {
        var wanted = mast.Guys.Where(g => g.Setting.IsTension).ToDictionary(g => g.Name, g => g.Setting.Value);
        order ??= [.. mast.Guys.Where(g => g.Setting.IsTension).OrderBy(g => g.AttachmentHeightM).Select(g => g.Name)];
        var current = mast with { Guys = [.. mast.Guys.Select(g => MadeUp(mast, g, startShare))] };
        var steps = new List<TensioningStep>();
        for (var pass = 1; pass <= Math.Max(1, passes); pass++)
        {
            foreach (var name in order)
            {
                if (Adjust(current, name, wanted[name], options, cancellation) is not { } next)
                {
                    return steps;
                }

                var before = current.Guys.First(g => g.Name == name).Setting.Value;
                current = next.Mast;
                steps.Add(new(pass, name, before - current.Guys.First(g => g.Name == name).Setting.Value, next.Solution.Guys.ToDictionary(g => g.Name, g => g.AnchorTensionN)));
            }
        }

        return steps;
    }

    private static Guy MadeUp(GuyedMast mast, Guy guy, double share) =>
        guy.Setting.IsTension && MastSolver.UnstressedLength(mast, guy with { Setting = GuySetting.OfAnchorTension(share * guy.Setting.Value) }) is { } length
            ? guy with { Setting = GuySetting.OfLength(length) }
            : guy;

    // Newton on the length of one guy with its own entry of the influence matrix.
    private static (GuyedMast Mast, MastSolution Solution)? Adjust(GuyedMast mast, string name, double wanted, SolverOptions? options, CancellationToken cancellation)
    {
        var still = new LoadCase("still air", mast.InstallationTemperatureK);
        for (var i = 0; i < 30; i++)
        {
            var prepared = MastSolver.Prepare(mast, [still], options);
            var solution = prepared.Solve(still, null, cancellation);
            if (TensionInfluence.Of(prepared, solution) is not { } influence)
            {
                return null;
            }

            var miss = wanted - solution.Guy(name).AnchorTensionN;
            if (Math.Abs(miss) < 1e-5 * wanted)
            {
                return (mast, solution);
            }

            var perMetre = influence.ChangeN(name, name, 1);
            if (!(perMetre > 0))
            {
                return null;
            }

            // A slack guy answers faster and faster as it tightens: at most a hundredth of its length at once.
            mast = mast with
            {
                Guys = [.. mast.Guys.Select(g => g.Name == name ? g with { Setting = GuySetting.OfLength(g.Setting.Value - Math.Clamp(miss / perMetre, -0.01 * g.Setting.Value, 0.01 * g.Setting.Value)) } : g)],
            };
        }

        return null;
    }
}
