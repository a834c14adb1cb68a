using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Batch;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Stand;

/// <summary>
/// Patch loads of EN 1993-3-1 annex B.3.2 (from memory): the mean wind on the whole mast, and the gust part of the wind on one
/// stretch at a time, spans and the stretches from mid-span to mid-span. What each patch changes is added by the root of the squares
/// to what the mean wind does. The gust part of the peak pressure, 7·Iv of the mean, is the patch load 2·kp·Iv with kp = 3.5.
/// </summary>
internal static class PatchRun
{
    private const int Directions = 12;

    /// <summary>What the patches come to.</summary>
    /// <param name="Sections">Forces in the mast with the case they belong to.</param>
    /// <param name="GuyTensions">Largest tension of every guy with its case, by name.</param>
    public sealed record Answer(ImmutableArray<(SectionResult Section, string Case)> Sections, ImmutableDictionary<string, (double TensionN, string Case)> GuyTensions)
    {
        /// <summary>Directions from which the mean wind or one of its patches finds no equilibrium.</summary>
        public ImmutableArray<string> Fallen { get; init; } = [];

        /// <summary>No patches: another wind method, or nothing stands.</summary>
        public static Answer None { get; } = new([], ImmutableDictionary<string, (double, string)>.Empty);
    }

    /// <summary>Runs them, at the hottest, where guys are slackest and moments largest.</summary>
    public static Answer Of(Station station, StandModel model, PreparedMast prepared, CancellationToken cancellation)
    {
        if (station.Site.Wind.Method != WindMethod.En1991)
        {
            return Answer.None;
        }

        var patches = Patches(model).ToList();
        var directions = LoadCases.Patched(station, model, Directions, patches);
        var all = CaseBatch.Run(prepared, [.. directions.SelectMany(d => d.Patches.Prepend(d.Mean))], cancellation: cancellation);
        var sections = ImmutableArray.CreateBuilder<(SectionResult, string)>();
        var tensions = ImmutableDictionary.CreateBuilder<string, (double TensionN, string Case)>();
        var fallen = ImmutableArray.CreateBuilder<string>();
        for (var d = 0; d < directions.Count; d++)
        {
            var mean = all[d * (patches.Count + 1)];
            var gusts = Enumerable.Range(1, patches.Count).Select(i => all[(d * (patches.Count + 1)) + i]).ToList();
            if (!mean.IsStable || !gusts.All(g => g.IsStable))
            {
                fallen.Add(directions[d].Name);
                continue;
            }

            var name = directions[d].Name;
            sections.AddRange(mean.Sections.Select((s, i) => (Together(s, [.. gusts.Select(g => g.Sections[i])]), name)));
            foreach (var guy in mean.Guys)
            {
                var tension = guy.LargestTensionN + Root(gusts.Select(g => g.Guy(guy.Name).LargestTensionN - guy.LargestTensionN));
                if (!tensions.TryGetValue(guy.Name, out var worst) || tension > worst.TensionN)
                {
                    tensions[guy.Name] = (tension, name);
                }
            }
        }

        return new Answer(sections.ToImmutable(), tensions.ToImmutable()) { Fallen = fallen.ToImmutable() };
    }

    /// <summary>The stretches: every span, the free top, and from mid-span to mid-span; heights above the foot.</summary>
    public static IEnumerable<(double LowM, double HighM)> Patches(StandModel model)
    {
        var top = model.Structure.HeightM;
        var supports = model.Guys.Select(g => g.Guy.AttachmentHeightM).Distinct().Order().Prepend(0).ToList();
        var ends = top > supports[^1] + 0.01 ? supports.Append(top).ToList() : supports;
        foreach (var span in ends.Zip(ends.Skip(1)))
        {
            yield return span;
        }

        // A free top belongs to the stretch around the highest guys.
        var middles = supports.Zip(supports.Skip(1), (a, b) => (a + b) / 2).Prepend(0).Append(top).ToList();
        foreach (var around in middles.Zip(middles.Skip(1)))
        {
            yield return around;
        }
    }

    /// <summary>The mean with the changes of all patches, root of the squares, the way that makes it worse.</summary>
    public static SectionResult Together(SectionResult mean, IReadOnlyList<SectionResult> patches) => mean with
    {
        AxialN = mean.AxialN - Root(patches.Select(p => p.AxialN - mean.AxialN)),
        ShearVectorN = Longer(mean.ShearVectorN, [.. patches.Select(p => p.ShearVectorN)]),
        BendingVectorNm = Longer(mean.BendingVectorNm, [.. patches.Select(p => p.BendingVectorNm)]),
        TorsionNm = mean.TorsionNm + (Math.Sign(mean.TorsionNm) * Root(patches.Select(p => p.TorsionNm - mean.TorsionNm))),
    };

    private static Vec3 Longer(Vec3 mean, IReadOnlyList<Vec3> patches)
    {
        var change = Root(patches.Select(p => (p - mean).Length));
        if (change <= 0)
        {
            return mean;
        }

        var along = mean.Length > 1e-9 ? mean / mean.Length : (patches.MaxBy(p => (p - mean).Length) - mean) is var d && d.Length > 0 ? d / d.Length : Vec3.Zero;
        return mean + (change * along);
    }

    private static double Root(IEnumerable<double> changes) => Math.Sqrt(changes.Sum(c => c * c));

    /// <summary>Whether the mast stands under every patch, and guys held to what the patches pull, level by level.</summary>
    public static IEnumerable<Check> Guys(Station station, StandModel model, Answer answer)
    {
        var page = Source.FromMemory("EN 1993-3-1 annex B.3.2", "2006");
        if (!answer.Fallen.IsEmpty)
        {
            yield return Check.AtMost($"stand.stability.patch[{model.Mast.Name}]", Trade.Stand, "The mast stands under patches of gusts",
                Trail.Computed("directions without an equilibrium", "n", answer.Fallen.Length, QuantityKind.Count, "mean wind and the gust part on one stretch at a time, each solved", page),
                Trail.Given("allowed", "0", 0, QuantityKind.Count, Source.CommonPractice),
                answer.Fallen[0], "Tighten the guys, take a stiffer mast, or set the guy levels closer together.");
        }

        if (answer.GuyTensions.IsEmpty)
        {
            yield break;
        }

        foreach (var level in model.Guys.GroupBy(g => g.Level))
        {
            var worst = level.Select(g => answer.GuyTensions[g.Guy.Name]).MaxBy(t => t.TensionN);
            var strand = level.First().Strand;
            yield return Check.AtMost($"stand.guy.patch[{model.Mast.Name}, level {level.Key}]", Trade.Stand, "Guy strand under patches of gusts",
                Trail.Computed("tension under mean wind and patches", "T", worst.TensionN, QuantityKind.Force, "T = Tm + √Σ(Ti - Tm)²", page),
                Trail.Computed("tension allowed", "Ta", strand.BreakingN / station.Limits.GuyFactor, QuantityKind.Force, "Ta = Tb/γ", Source.CommonPractice,
                    strand.Part.Given("breaking strength", "Tb", strand.BreakingN, QuantityKind.Force), StandRules.GuyFactor(station)),
                worst.Case, "Take a stronger strand, move the anchors out, or lower the initial tension.");
        }
    }
}
