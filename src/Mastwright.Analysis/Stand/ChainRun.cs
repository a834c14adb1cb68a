using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Chains;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Analysis.Stand;

/// <summary>The guys as chains of real pieces, where the design describes their fittings.</summary>
internal sealed class ChainRun(Station station, StandModel model, IReadOnlyList<SolvedCase> stable, ImmutableArray<TensionRow> tensions)
{
    /// <summary>The chain of every level's hardest-pulled guy: checks, and what is wrong with its make-up.</summary>
    public (ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings) Examine()
    {
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
            var chain = new GuyChain($"{model.Mast.Name}, {name}", Pieces(worst.Guy, design, hardware));
            var report = ChainAnalysis.Examine(chain, demand, new ChainFactors { Safety = station.Limits.GuyFactor, SafetySource = Source.DesignFile });
            // The set tension as a share of strength is screened for every guy elsewhere.
            checks.AddRange(report.Checks.Where(c => !c.Id.StartsWith("stand.guy.set-", StringComparison.Ordinal))
                .Select(c => c with { Id = c.Id.Replace("stand.guy.strength", "stand.guy.weakest-link", StringComparison.Ordinal) }));
            checks.Add(MakeUp(chain.Name, report.Findings));
            findings.AddRange(report.Findings);
        }

        return (checks.ToImmutable(), findings.ToImmutable());
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

    private ImmutableArray<ChainPiece> Pieces(ModelGuy guy, GuyLevel design, GuyHardware hardware)
    {
        var shackle = Catalogue.Default.Shackles[hardware.Shackle];
        var turnbuckle = Catalogue.Default.Turnbuckles[hardware.Turnbuckle];
        var insulator = Catalogue.Default.StrainInsulators[design.Insulator];
        var egg = insulator.Kind.Contains("egg", StringComparison.OrdinalIgnoreCase);
        var list = new List<ChainPiece>
        {
            // The anchor's own strength is checked with the anchor, the mast's lug with the mast's maker.
            new AnchorEye("anchor eye", double.PositiveInfinity),
            Shackle(shackle, hardware),
            new TurnbucklePiece(turnbuckle.Name, turnbuckle.BreakingN, turnbuckle.TakeUpM)
            {
                OpenShare = hardware.TurnbuckleOpen,
                Locked = hardware.TurnbuckleLocked,
                HasHook = turnbuckle.Ends.Contains("hook", StringComparison.OrdinalIgnoreCase),
                WorkingLoadN = turnbuckle.WorkingLoadN,
                Metal = "zinc coat",
            },
        };

        // From the anchor up: the insulators stand in the file from the mast down.
        var cuts = Math.Max(1, design.InsulatorsAtM.Length);
        for (var piece = 0; piece <= cuts; piece++)
        {
            if (piece > 0)
            {
                list.Add(new InsulatorPiece(insulator.Name, insulator.StrengthN, egg) { LengthM = insulator.LengthM });
            }

            AddStrand(list, guy.Strand, hardware, bottomEye: piece == 0 || !egg, topEye: piece == cuts || !egg, top: piece == cuts, last: piece == 0);
        }

        list.Add(Shackle(shackle, hardware));
        list.Add(new MastAttachment("mast lug", double.PositiveInfinity));
        return [.. list];
    }

    private void AddStrand(List<ChainPiece> list, GuyStrand strand, GuyHardware hardware, bool bottomEye, bool topEye, bool top, bool last)
    {
        void Eye()
        {
            if (hardware.Thimbles != ThimblePattern.None)
            {
                list.Add(new ThimblePiece($"{hardware.Thimbles.ToString().ToLowerInvariant()} thimble", strand.DiameterM, hardware.Thimbles == ThimblePattern.Heavy));
            }
        }

        if (bottomEye)
        {
            Eye();
        }

        list.Add(End(strand, hardware, backUp: false));
        list.Add(new StrandPiece(strand.Name, strand.BreakingN, strand.DiameterM, strand.AreaM2 * strand.ModulusPa) { FixedLengthM = last ? null : 0, Metal = "zinc coat" });
        list.Add(End(strand, hardware, backUp: top && hardware.BackUpClip));
        if (topEye)
        {
            Eye();
        }
    }

    private static EndFitting End(GuyStrand strand, GuyHardware hardware, bool backUp)
    {
        var clip = Catalogue.Default.Clips.All.Where(c => c.RopeM >= strand.DiameterM - 1e-6).MinBy(c => c.RopeM);
        return hardware.EndFitting switch
        {
            StrandEnd.Clips => new EndFitting("U-bolt clips", EndFittingKind.Clips, strand.DiameterM, clip?.Efficiency ?? 0.8)
            {
                Clips = hardware.Clips,
                ClipsNeeded = clip?.ClipsForStrand ?? 4,
                ClipTorqueNeededNm = clip?.TorqueNm ?? 0,
            },
            StrandEnd.Swaged => new EndFitting("swaged sleeve", EndFittingKind.Swaged, strand.DiameterM, 0.95),
            StrandEnd.Socket => new EndFitting("socket", EndFittingKind.Socket, strand.DiameterM, 1),
            _ => new EndFitting("preformed grip", EndFittingKind.WrappedGrip, strand.DiameterM,
                Catalogue.Default.Grips.All.FirstOrDefault(g => Math.Abs(g.StrandM - strand.DiameterM) < 1e-4)?.Efficiency ?? 1)
            { BackUpClip = backUp },
        };
    }

    private static ShacklePiece Shackle(Shackle row, GuyHardware hardware) =>
        new(row.Name, row.BreakingN) { PinSecured = hardware.PinsSecured, WorkingLoadN = row.WorkingLoadN, Metal = "zinc coat" };
}
