using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Chains;
using Mastwright.Structure.Members;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Analysis.Stand;

/// <summary>The guys as chains of real pieces, where the design describes their fittings.</summary>
internal sealed class ChainRun(Station station, StandModel model, IReadOnlyList<SolvedCase> stable, ImmutableArray<TensionRow> tensions)
{
    /// <summary>The chain of every level's hardest-pulled guy: checks, and what is wrong with its make-up.</summary>
    public (ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings, ImmutableArray<ChainResult> Chains) Examine()
    {
        var chains = ImmutableArray.CreateBuilder<ChainResult>();
        var checks = ImmutableArray.CreateBuilder<Check>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var level in model.Guys.GroupBy(g => g.Level))
        {
            var design = model.Mast.Guys[level.Key - 1];
            if (design.Hardware is not { } hardware || tensions.IsEmpty)
            {
                continue;
            }

            var worst = stable.SelectMany(s => level.Select(g => (Guy: g, Case: s, Tension: s.Solution.Guy(g.Guy.Name).LargestTensionN))).MaxBy(x => x.Tension);
            var name = worst.Guy.Guy.Name;
            var demand = new ChainDemand(
                worst.Tension, worst.Case.Name, stable[0].Solution.Guy(name).AnchorTensionN, tensions[0].AnchorTensionN[name], tensions[^1].AnchorTensionN[name],
                stable[0].Solution.Guy(name).UnstressedLengthM)
            {
                IcingCountry = station.Site.Ice.ThicknessM > 0,
            };
            var chain = new GuyChain($"{model.Mast.Name}, {name}", GuyChains.Of(worst.Guy, design, hardware));
            var report = ChainAnalysis.Examine(chain, demand, new ChainFactors
            {
                Safety = station.Limits.GuyFactor,
                SafetySource = Source.DesignFile,
                AnodicLimitV = station.Metals.Environment == AirQuality.Marine ? 0.15 : 0.25,
            });
            chains.Add(new ChainResult(level.Key, chain, demand, report));
            // The set tension as a share of strength is screened for every guy elsewhere.
            checks.AddRange(report.Checks.Where(c => !c.Id.StartsWith("stand.guy.set-", StringComparison.Ordinal))
                .Select(c => c with { Id = c.Id.Replace("stand.guy.strength", "stand.guy.weakest-link", StringComparison.Ordinal) }));
            if (hardware.Lug is { } lug)
            {
                checks.Add(GuyChains.PlateOf(lug).Examine(chain.Name, worst.Tension, StandRules.Members(station, MetalFamily.Steel).Factors, worst.Case.Name));
            }

            checks.Add(MakeUp(chain.Name, report.Findings));
            findings.AddRange(report.Findings);
        }

        return (checks.ToImmutable(), findings.ToImmutable(), chains.ToImmutable());
    }

    private static Check MakeUp(string chain, ImmutableArray<Finding> found)
    {
        var faults = found.Where(f => f.Severity == Severity.Error).ToList();
        var page = Source.Derived("docs/theory/guy-chains.md");
        return new Check(
            $"stand.guy.make-up[{chain}]", Trade.Stand, "The guy is made up by the rules of the trade",
            Trail.Computed("faults found", "n", faults.Count, QuantityKind.Count, "rules of making up a guy that are broken", page), Trail.Given("faults allowed", "0", 0, QuantityKind.Count, page),
            faults.Count == 0 ? 0 : double.PositiveInfinity, faults.Count > 0 ? Verdict.Fail : found.IsEmpty ? Verdict.Pass : Verdict.Caution,
            found.IsEmpty ? chain : found.OrderByDescending(f => f.Severity).First().Message, faults.Count == 0 ? "" : string.Join(" ", faults.Select(f => f.WayOut)), ChainAnalysis.Caution);
    }
}
