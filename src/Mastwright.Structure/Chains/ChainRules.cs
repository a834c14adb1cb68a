using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Chains;

/// <summary>The rules of the trade for making up a guy. Each rule is one method that yields findings; all are listed in <see cref="All"/>.</summary>
public static class ChainRules
{
    // A fitting made for another strand differs by a whole size, at least 1/32 in; rounding of metric sizes is far less.
    private const double SizeToleranceM = 0.4e-3;
    private const double LargestLightThimbleM = 0.25 * 0.0254 + SizeToleranceM;

    private delegate IEnumerable<Finding> Rule(GuyChain chain, ChainDemand demand, ChainFactors factors);

    private static ImmutableArray<Rule> All { get; } =
    [
        Order, FittingAtEveryStrandEnd, ThimbleInEveryEye, TurnbuckleIsLocked, TurnbuckleHasNoHook, TopGripHasBackUp, ClipsAreRight,
        ShacklesAreRight, SizesMatch, HardwareIsNotWeaker, WorkingLoads, MetalsAgree,
    ];

    /// <summary>Everything that is wrong with a chain; empty when it is well made up.</summary>
    public static ImmutableArray<Finding> Examine(GuyChain chain, ChainDemand demand, ChainFactors factors) =>
        [.. All.SelectMany(rule => rule(chain, demand, factors))];

    private static IEnumerable<Finding> Order(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        if (chain.Pieces.IsDefaultOrEmpty || chain.Pieces[0] is not AnchorEye || chain.Pieces[^1] is not MastAttachment)
        {
            yield return Error("chain-ends", $"{chain.Name}: a guy must begin at the anchor's eye and end at the mast.", "List the pieces in order from anchor to mast.");
        }

        if (!chain.Pieces.OfType<StrandPiece>().Any())
        {
            yield return Error("chain-no-strand", $"{chain.Name}: there is no strand in this guy.", "Add the strand or rope.");
        }

        if (chain.Pieces.OfType<StrandPiece>().Count(s => s.FixedLengthM is null) > 1)
        {
            yield return Error("chain-lengths", $"{chain.Name}: more than one strand has no length.", "Give the length of every strand but one; that one takes the rest.");
        }

        if (!chain.Pieces.OfType<TurnbucklePiece>().Any())
        {
            yield return Warning("chain-no-turnbuckle", $"{chain.Name}: nothing adjusts the tension.", "Add a turnbuckle at the anchor, where it can be reached.");
        }
    }

    private static IEnumerable<Finding> FittingAtEveryStrandEnd(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        for (var i = 0; i < chain.Pieces.Length; i++)
        {
            if (chain.Pieces[i] is StrandPiece strand && (!IsFitting(chain, i - 1) || !IsFitting(chain, i + 1)))
            {
                yield return Error("chain-no-fitting", $"{chain.Name}: {strand.Name} has an end without a fitting.", "End both sides of every strand with a fitting that develops its strength.");
            }
        }
    }

    private static IEnumerable<Finding> ThimbleInEveryEye(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        for (var i = 0; i < chain.Pieces.Length; i++)
        {
            if (chain.Pieces[i] is not EndFitting { Kind: EndFittingKind.WrappedGrip or EndFittingKind.Clips } fitting)
            {
                continue;
            }

            // The eye of the fitting lies on the side away from its strand.
            var strandAfter = i + 1 < chain.Pieces.Length && chain.Pieces[i + 1] is StrandPiece;
            var held = strandAfter ? i - 1 : i + 1;
            if (held < 0 || held >= chain.Pieces.Length)
            {
                continue;
            }

            if (chain.Pieces[held] is not (ThimblePiece or InsulatorPiece { StrandLoops: true }))
            {
                yield return Error(
                    "chain-no-thimble", $"{chain.Name}: {fitting.Name} bends around {chain.Pieces[held].Name} without a thimble.",
                    "Put a thimble of the strand's size into the eye; a bare eye saws through its own wires.");
            }
        }
    }

    private static IEnumerable<Finding> TurnbuckleIsLocked(GuyChain chain, ChainDemand demand, ChainFactors factors) =>
        chain.Pieces.OfType<TurnbucklePiece>().Where(t => !t.Locked).Select(t => Error(
            "chain-turnbuckle-loose", $"{chain.Name}: {t.Name} is not locked against unwinding.", "Wire it through its body in a figure of eight, back to the anchor; vibration unwinds a free turnbuckle."));

    private static IEnumerable<Finding> TurnbuckleHasNoHook(GuyChain chain, ChainDemand demand, ChainFactors factors) =>
        chain.Pieces.OfType<TurnbucklePiece>().Where(t => t.HasHook).Select(t => Error(
            "chain-hook", $"{chain.Name}: {t.Name} has an open hook.", "Use jaws or eyes: a slack guy falls off a hook."));

    private static IEnumerable<Finding> TopGripHasBackUp(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        var top = chain.Pieces.OfType<EndFitting>().LastOrDefault();
        if (demand.IcingCountry && top is { Kind: EndFittingKind.WrappedGrip, BackUpClip: false })
        {
            yield return Error(
                "chain-top-grip", $"{chain.Name}: {top.Name} at the mast has no back-up clip where ice falls.",
                "Put a clip behind it: ice sliding down the guy can unwrap a one-piece grip. (common practice, no source)");
        }
    }

    private static IEnumerable<Finding> ClipsAreRight(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        foreach (var f in chain.Pieces.OfType<EndFitting>().Where(f => f.Kind == EndFittingKind.Clips))
        {
            if (f.Clips < f.ClipsNeeded)
            {
                yield return new(
                    "chain-clip-count", Severity.Error, $"{chain.Name}: {f.Name} has too few clips.", null, Text(f.Clips), $"at least {f.ClipsNeeded}", "Add clips, six strand diameters apart, U-bolts on the dead end.");
            }

            if (f.ClipTorqueNm is null)
            {
                yield return Warning("chain-clip-torque", $"{chain.Name}: the torque of the clips of {f.Name} is not recorded.", FormattableString.Invariant($"Draw them to {f.ClipTorqueNeededNm:F0} N·m and again after the first load."));
            }
            else if (Math.Abs(f.ClipTorqueNm.Value - f.ClipTorqueNeededNm) > factors.ClipTorqueTolerance * f.ClipTorqueNeededNm)
            {
                yield return new(
                    "chain-clip-torque", Severity.Error, $"{chain.Name}: the clips of {f.Name} are drawn to the wrong torque.", null,
                    FormattableString.Invariant($"{f.ClipTorqueNm:F0} N·m"), FormattableString.Invariant($"{f.ClipTorqueNeededNm:F0} N·m"), "Draw them to the torque of the table and again after the first load.");
            }
        }
    }

    private static IEnumerable<Finding> ShacklesAreRight(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        foreach (var s in chain.Pieces.OfType<ShacklePiece>())
        {
            if (s.SideLoaded)
            {
                yield return Error("chain-shackle-side", $"{chain.Name}: {s.Name} is pulled from the side.", "Pull a shackle only from bow to pin; turn it, or use another fitting. At a right angle it keeps half its rating or less.");
            }

            if (!s.PinSecured)
            {
                yield return Error("chain-shackle-pin", $"{chain.Name}: the pin of {s.Name} is not secured.", "Wire the pin to the bow, or use a bolt with nut and cotter.");
            }
        }
    }

    private static IEnumerable<Finding> SizesMatch(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        for (var i = 0; i < chain.Pieces.Length; i++)
        {
            var fits = chain.Pieces[i] switch { EndFitting f => f.StrandM, ThimblePiece t => t.StrandM, _ => double.NaN };
            if (!double.IsNaN(fits) && ChainAnalysis.NearestStrand(chain, i) is { } strand && Math.Abs(fits - strand.DiameterM) > SizeToleranceM)
            {
                yield return new(
                    "chain-size", Severity.Error, $"{chain.Name}: {chain.Pieces[i].Name} is made for another strand than {strand.Name}.", null,
                    Millimetres(fits), Millimetres(strand.DiameterM), "Use the fitting and thimble of the strand's own size.");
            }

            if (chain.Pieces[i] is ThimblePiece { Heavy: false, StrandM: > LargestLightThimbleM } light)
            {
                yield return Warning("chain-light-thimble", $"{chain.Name}: {light.Name} is of the light pattern.", "Use the heavy pattern above 1/4 in: a light thimble closes up under load.");
            }
        }
    }

    private static IEnumerable<Finding> HardwareIsNotWeaker(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        var strand = chain.Pieces.OfType<StrandPiece>().MinBy(s => s.BreakingN);
        if (strand is null)
        {
            yield break;
        }

        foreach (var p in chain.Pieces.Where(p => p is not StrandPiece && p.BreakingN < strand.BreakingN))
        {
            yield return new(
                "chain-weak-piece", Severity.Warning, $"{chain.Name}: {p.Name} breaks before {strand.Name} does.", null,
                Kilonewtons(p.BreakingN), "at least " + Kilonewtons(strand.BreakingN), "Let every piece develop the full strand. (common practice, no source)");
        }

        foreach (var f in chain.Pieces.OfType<EndFitting>().Where(f => f.Efficiency < 1))
        {
            yield return new(
                "chain-weak-fitting", Severity.Note, $"{chain.Name}: {f.Name} holds less than the full strand.", null,
                FormattableString.Invariant($"{f.Efficiency:P0}"), "100 %", "Use a fitting that develops the full strand, or keep the loss in the strength check as it is now.");
        }
    }

    private static IEnumerable<Finding> WorkingLoads(GuyChain chain, ChainDemand demand, ChainFactors factors) =>
        chain.Pieces.Where(p => demand.GreatestTensionN > p.WorkingLoadN).Select(p => new Finding(
            "chain-working-load", Severity.Note, $"{chain.Name}: the greatest tension is above the working load of {p.Name}.", null,
            Kilonewtons(demand.GreatestTensionN), Kilonewtons(p.WorkingLoadN!.Value), "Working loads are for lifting, at a fifth of breaking; guys are judged on breaking strength. Take the next size if the maker says so."));

    private static IEnumerable<Finding> MetalsAgree(GuyChain chain, ChainDemand demand, ChainFactors factors)
    {
        var metals = chain.Pieces.Where(p => p.AnodicIndexV is not null).ToArray();
        foreach (var (a, b) in metals.Zip(metals.Skip(1)))
        {
            var apart = Math.Abs(a.AnodicIndexV!.Value - b.AnodicIndexV!.Value);
            if (apart > factors.AnodicLimitV + 1e-9)
            {
                var loser = a.AnodicIndexV > b.AnodicIndexV ? a : b;
                yield return new(
                    "chain-unlike-metals", Severity.Warning, $"{chain.Name}: {a.Name} ({a.Metal}) touches {b.Name} ({b.Metal}); {loser.Name} will be eaten.", null,
                    FormattableString.Invariant($"{apart:F2} V apart"), FormattableString.Invariant($"at most {factors.AnodicLimitV:F2} V"), "Use like metals, or part them with a coat or sleeve that keeps water out (MIL-STD-889).");
            }
        }
    }

    private static bool IsFitting(GuyChain chain, int i) => i >= 0 && i < chain.Pieces.Length && chain.Pieces[i] is EndFitting;

    private static Finding Error(string code, string message, string wayOut) => new(code, Severity.Error, message, WayOut: wayOut);

    private static Finding Warning(string code, string message, string wayOut) => new(code, Severity.Warning, message, WayOut: wayOut);

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Millimetres(double metres) => FormattableString.Invariant($"{metres * 1000:F2} mm");

    private static string Kilonewtons(double newtons) => FormattableString.Invariant($"{newtons / 1000:F1} kN");
}
