using Mastwright.Catalog;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Ground;
using Design = Mastwright.Model.Design;
using GroundAnchor = Mastwright.Structure.Ground.Anchor;

namespace Mastwright.Analysis.Stand;

/// <summary>Everything below the mast: its footing, and the anchors whose kind the design describes.</summary>
internal sealed class GroundRun(Design.Station station, StandModel model, IReadOnlyList<SolvedCase> stable)
{
    // A load case with factored wind is held against ultimate resistances; these rules take service loads over a factor of safety, which is on the safe side.
    private readonly GroundFactors factors = StandRules.Ground(station);

    /// <summary>The soil of the site as a support.</summary>
    public static Soil SoilOf(Design.Site site)
    {
        var row = Catalogue.Default.MechanicalSoils[site.Ground];
        return new Soil(row.Name, row.UnitWeightNPerM3)
        {
            FrictionAngleRad = row.FrictionAngleRad,
            UndrainedShearPa = row.UndrainedShearPa,
            AllowableBearingPa = row.BearingPa,
            LateralPaPerM = row.LateralPaPerM,
            BaseFriction = row.BaseFriction,
            BaseAdhesionPa = row.BaseAdhesionPa,
            Tested = site.GroundTested,
            Source = row.Source,
        };
    }

    /// <summary>Checks of the footing under the base.</summary>
    public IEnumerable<Check> Footing()
    {
        var foot = model.Mast.Base;
        var footing = new BaseFooting(foot.FootingWidthM, foot.FootingWidthM, foot.FootingDepthM, foot.FootingDepthM)
        {
            ConcretePa = foot.ConcretePa,
            LoadedWidthM = foot.Plate?.WidthM ?? Catalogue.Default.BaseInsulators[foot.Insulator].DiameterM,
        };
        var pressing = stable.MaxBy(s => s.Solution.Foot.ReactionN.Z)!;
        var pushing = stable.MaxBy(s => Level(s.Solution.Foot.ReactionN))!;

        // The hardest press and the hardest push need not come together: each is looked at with what goes with it, and the worse kept.
        return new[] { pressing, pushing }.DistinctBy(s => s.Name)
            .SelectMany(s => footing.Examine(model.Mast.Name, SoilOf(station.Site), new FootingDuty(s.Solution.Foot.ReactionN.Z, Level(s.Solution.Foot.ReactionN), s.Name), station.Site.FrostDepthM, factors))
            .GroupBy(c => c.Id).Select(g => g.MaxBy(c => c.Ratio)!);
    }

    /// <summary>Checks of an anchor of a described kind; null when the design describes none.</summary>
    public IReadOnlyList<Check>? Anchor(Design.Anchor anchor, Vec3 pullN, string governing)
    {
        if (KindOf(anchor) is not { } kind)
        {
            return null;
        }

        var duty = new AnchorDuty($"{model.Mast.Name}, {anchor.Name}", SoilOf(station.Site), new AnchorPull(Level(pullN), Math.Max(0, pullN.Z)), governing, factors);
        return [.. kind.Examine(duty)];
    }

    private static GroundAnchor? KindOf(Design.Anchor anchor) => anchor switch
    {
        { Block: { } b } => new ConcreteBlock(b.LengthM, b.WidthM, b.HeightM, b.TopDepthM),
        { Deadman: { } d } => new Deadman(d.LengthM, d.HeightM, d.ThicknessM, d.TopDepthM),
        { Screw: { } s } => new ScrewAnchor([new Helix(s.DiameterM, s.DepthM)], s.RatedN) { InstallationTorqueNm = s.TorqueNm },
        { RockBar: { } r } => new RockAnchor(r.HoleDiameterM, r.BondLengthM, r.BarDiameterM),
        { Post: { } p } => new AnchorPost(new ShaftSection(p.DiameterM) { WallM = p.WallM, TubeYieldPa = p.YieldPa, ConcretePa = p.FillingPa }, p.DepthM, Math.Max(0, anchor.RiseM)) { HoleDiameterM = p.HoleDiameterM },
        _ => null,
    };

    private static double Level(Vec3 force) => double.Hypot(force.X, force.Y);
}
