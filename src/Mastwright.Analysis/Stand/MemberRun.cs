using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Members;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Stand;

/// <summary>Strength of the mast itself: in every span the section that is stressed most, by the rules of its metal.</summary>
internal sealed class MemberRun(Station station, StandModel model, IReadOnlyList<SolvedCase> stable, PatchRun.Answer patches)
{
    public IEnumerable<Check> Checks()
    {
        foreach (var (run, bottom, top) in Spans())
        {
            if (run.Metal.YieldPa <= 0)
            {
                yield return NoStrength(run);
                continue;
            }

            var (section, governing) = Worst(run, bottom, top);
            var part = $"{model.Mast.Name}, {StandRules.Stretch(station, model.Mast, bottom, top)}";
            var rules = StandRules.Members(station, run.Metal.Family);
            var compression = -section.AxialN;
            if (run.Tube is { } tube)
            {
                // Bolts through a joint leave less section for pull; the column and the bent tube keep theirs (the sleeve stands in).
                yield return MemberChecks.Tube(part, rules,
                    new RoundMember(tube, run.Metal, SpanLength(bottom)) { NetAreaShare = NetShare(run, tube), WeldedShare = run.Welded ? 1 : 0, WeldAwayFromEnds = run.Welded },
                    new MemberForces(compression, section.BendingMomentNm), governing);
            }
            else
            {
                var forces = new SectionForces(compression, section.BendingMomentNm, section.ShearN, section.TorsionNm);
                yield return MemberChecks.Leg(part, rules, run.Lattice!, forces, governing);
                var (shear, shearCase) = WorstShear(run, bottom, top);
                yield return MemberChecks.Brace(part, rules, run.Lattice!, new SectionForces(-shear.AxialN, shear.BendingMomentNm, shear.ShearN, shear.TorsionNm), shearCase);
            }
        }
    }

    // Runs cut at the guy levels: between two guys a tube is one column.
    private IEnumerable<(MastRun Run, double Bottom, double Top)> Spans()
    {
        foreach (var run in model.Runs)
        {
            var cuts = Supports().Where(h => h > run.BottomM + 1e-6 && h < run.TopM - 1e-6).Prepend(run.BottomM).Append(run.TopM).ToList();
            for (var i = 0; i + 1 < cuts.Count; i++)
            {
                yield return (run, cuts[i], cuts[i + 1]);
            }
        }
    }

    private double NetShare(MastRun run, RoundSection tube) => model.Mast.Sections[run.Section].Joint is { } joint && !tube.IsSolid
        ? Math.Max(0.3, 1 - (2 * (joint.BoltDiameterM + 0.001) * tube.WallM / tube.AreaM2)) : 1;

    private IEnumerable<double> Supports() => model.Guys.Select(g => g.Guy.AttachmentHeightM).Distinct().Order();

    private double SpanLength(double at)
    {
        var below = Supports().Prepend(0).Last(h => h <= at + 1e-6);
        var above = Supports().Append(model.Structure.HeightM).First(h => h > at + 1e-6);
        return above - below;
    }

    private (SectionResult Section, string Case) Worst(MastRun run, double bottom, double top)
    {
        var area = run.Properties.Area.Value;
        var modulus = run.Properties.ElasticModulus.Value;
        return Pick(run, bottom, top, s => (Math.Abs(s.AxialN) / area) + (s.BendingMomentNm / modulus));
    }

    private (SectionResult Section, string Case) WorstShear(MastRun run, double bottom, double top) =>
        Pick(run, bottom, top, s => Math.Max(s.ShearN, -0.02 * s.AxialN));

    private (SectionResult Section, string Case) Pick(MastRun run, double bottom, double top, Func<SectionResult, double> size) =>
        stable.SelectMany(c => c.Solution.Sections.Select(s => (Section: s, Case: c.Name))).Concat(patches.Sections).Where(x => x.Section.HeightM >= bottom - 1e-9 && x.Section.HeightM <= top + 1e-9).MaxBy(x => size(x.Section));

    private Check NoStrength(MastRun run) => new(
        $"stand.mast.strength[{model.Mast.Name}, {run.Name}]", Trade.Stand, "Strength of the mast",
        Trail.Given("use", "u", 0, QuantityKind.Ratio, Source.DesignFile), Trail.Given("limit of use", "1", 1, QuantityKind.Ratio, Source.DesignFile),
        0, Verdict.Unknown, $"{run.Metal.Name} has no listed yield strength", "Choose a metal with a listed strength.");
}
