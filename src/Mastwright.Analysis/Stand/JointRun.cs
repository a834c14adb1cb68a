using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Members;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis.Stand;

/// <summary>The joints of a mast whose design describes them: of every section the joint that is pulled, pressed or bent most.</summary>
/// <param name="station">The station.</param>
/// <param name="model">The whole mast.</param>
/// <param name="stable">Equilibria of it, or of the part of it that stands already.</param>
/// <param name="rulesOf">Member rules by metal.</param>
internal sealed class JointRun(Station station, StandModel model, IReadOnlyList<(string Name, MastSolution Solution)> stable, Func<MetalFamily, IMemberRules> rulesOf)
{
    public IEnumerable<Check> Checks()
    {
        var bottom = 0.0;
        for (var i = 0; i < model.Mast.Sections.Length; i++)
        {
            var section = model.Mast.Sections[i];
            var top = bottom + section.LengthM;
            var joints = JointsOf(section, bottom, last: i == model.Mast.Sections.Length - 1).ToList();
            if (section.Joint is { } joint && joints.Count > 0)
            {
                foreach (var check in Of(section, i, joint, joints))
                {
                    yield return check;
                }
            }

            bottom = top;
        }
    }

    /// <summary>Heights above the foot at which a section has joints: between its pieces and at its top.</summary>
    public static IEnumerable<double> JointsOf(Section section, double bottomM, bool last)
    {
        var piece = MastSections.PieceM(section);
        for (var at = piece; at < section.LengthM - 1e-6; at += piece)
        {
            yield return bottomM + at;
        }

        if (!last)
        {
            yield return bottomM + section.LengthM;
        }
    }

    private IEnumerable<Check> Of(Section section, int index, SectionJoint joint, List<double> joints)
    {
        var name = $"{model.Mast.Name}, section {index + 1}";
        var bolts = new BoltGroup(joint.Bolts, joint.BoltDiameterM, joint.BoltUltimatePa);
        var rules = rulesOf(model.Runs.First(r => r.Section == index).Metal.Family);

        // On the top of what stands there is no joint yet.
        var there = joints.SelectMany(h => stable.Where(c => h < c.Solution.Sections.Max(s => s.HeightM) - 1e-6).SelectMany(c => Near(c.Solution, h).Select(s => (Height: h, Section: s, Case: c.Name)))).ToList();
        if (there.Count == 0)
        {
            yield break;
        }

        if (model.Runs.First(r => r.Section == index).Lattice is { } lattice)
        {
            var legs = there.Select(t => (t.Height, t.Case, Pull: (-t.Section.AxialN / lattice.Legs) - (2 * t.Section.BendingMomentNm / (lattice.Legs * lattice.LegRadiusM)))).MinBy(t => t.Pull);
            yield return JointChecks.LegSplice(name, bolts, legs.Pull, rules.Factors, Words(legs.Height, legs.Case));
            yield break;
        }

        // Bending comes as a couple of the two walls over the overlap: both bolts and walls feel it as 2·M/overlap across the tube.
        var worst = there.MaxBy(t => Math.Abs(t.Section.AxialN) + (joint.Stop ? 0 : Couple(section, index, joint, t.Height, t.Section)));
        var (outer, inner) = Tubes(index, joint, worst.Height);
        var telescoped = new TelescopedJoint(outer.Tube, outer.Metal, inner.Tube, inner.Metal, OverlapM(joint, inner.Tube), bolts) { StandsOnStop = joint.Stop || joint.Kind == MastJointKind.Swaged };
        foreach (var check in JointChecks.Telescoped(name, telescoped, new MemberForces(-worst.Section.AxialN, 0), rules.Factors, Words(worst.Height, worst.Case)))
        {
            yield return check;
        }

        var bent = there.MaxBy(t => t.Section.BendingMomentNm);
        var (wide, narrow) = Tubes(index, joint, bent.Height);
        var overlap = OverlapM(joint, narrow.Tube);
        yield return JointChecks.Prying(name, new TelescopedJoint(wide.Tube, wide.Metal, narrow.Tube, narrow.Metal, overlap, bolts), bent.Section.BendingMomentNm, rules.Factors, Words(bent.Height, bent.Case));
    }

    private double Couple(Section section, int index, SectionJoint joint, double heightM, SectionResult at) =>
        section.Tube is null ? 0 : at.BendingMomentNm / OverlapM(joint, Tubes(index, joint, heightM).Inner.Tube);

    private static double OverlapM(SectionJoint joint, RoundSection inner) => joint.OverlapM ?? (2 * inner.OuterDiameterM);

    // Telescoped: the thinner of the two; swaged: the end drawn down to the neighbour's bore, its wall kept.
    private ((RoundSection Tube, MemberMetal Metal) Outer, (RoundSection Tube, MemberMetal Metal) Inner) Tubes(int index, SectionJoint joint, double heightM)
    {
        var below = model.Runs.Last(r => r.Section <= index && r.BottomM < heightM - 1e-9 && r.Tube is not null);
        var above = model.Runs.FirstOrDefault(r => r.TopM > heightM + 1e-9 && r.Tube is not null) ?? below;
        var (wide, thin) = below.Tube!.OuterDiameterM >= above.Tube!.OuterDiameterM ? (below, above) : (above, below);
        var inner = thin.Tube!;
        if (inner.OuterDiameterM > wide.Tube!.InnerDiameterM)
        {
            inner = new RoundSection(Math.Max(wide.Tube.InnerDiameterM, 2.1 * inner.WallM), inner.WallM);
        }

        return ((wide.Tube, wide.Metal), (inner, thin.Metal));
    }

    private static IEnumerable<SectionResult> Near(MastSolution solution, double heightM)
    {
        var nearest = solution.Sections.Min(s => Math.Abs(s.HeightM - heightM));
        return solution.Sections.Where(s => Math.Abs(s.HeightM - heightM) <= nearest + 1e-6);
    }

    private string Words(double heightM, string governing) => $"{governing}, joint at {StandRules.Length(station, heightM + model.Mast.Base.HeightM)}";
}
