using Mastwright.Catalog;
using Mastwright.Model.Trails;
using Mastwright.Structure.Ground;
using Design = Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand;

/// <summary>The foot of the mast: what its pivot, insulator, hold-down, plate and concrete are asked.</summary>
internal sealed class BaseRun(Design.Station station, StandModel model, IReadOnlyList<SolvedCase> stable, IReadOnlyList<Results.GuyLossOutcome> lost)
{
    private readonly GroundFactors factors = StandRules.Ground(station);

    private string Mast => model.Mast.Name;

    private Design.MastBase Foot => model.Mast.Base;

    public IEnumerable<Check> Checks()
    {
        var insulator = Catalogue.Default.BaseInsulators[Foot.Insulator];
        var pivot = new BasePivot(KindOf(Foot.Pivot), insulator.CompressionN, insulator.HeightM, insulator.DiameterM)
        {
            RadiusM = Foot.PivotRadiusM,
            RotationLimitRad = Foot.PivotRotationRad,
            HoldDownN = Foot.HoldDownN,
        };
        var least = stable.MinBy(s => s.Solution.Foot.ReactionN.Z)!;
        var bending = stable.MaxBy(Eccentricity)!;
        var still = stable[0].Solution.Foot.ReactionN.Z;
        var duty = new PivotDuty(
            stable.Max(s => s.Solution.Foot.ReactionN.Z), least.Solution.Foot.ReactionN.Z, still, Level(bending), bending.Solution.Foot.TiltRad, bending.Name, least.Name)
        {
            CompressionWithHorizontalN = bending.Solution.Foot.ReactionN.Z,
        };
        foreach (var check in pivot.Examine(Mast, duty, factors).Where(c => c.Id.StartsWith("stand.base.lift-off", StringComparison.Ordinal) || c.Id.StartsWith("stand.base.bending", StringComparison.Ordinal)))
        {
            yield return check;
        }

        if (Foot.Pivot == Design.Pivot.Hinged)
        {
            var across = stable.MaxBy(AcrossHinge)!;
            yield return pivot.Examine(Mast, duty with { RotationAcrossHingeRad = AcrossHinge(across), GoverningCase = across.Name }, factors).Single(c => c.Id.StartsWith("stand.base.hinge", StringComparison.Ordinal));
        }

        if (LostGuy(pivot, still) is { } jump)
        {
            yield return jump;
        }

        foreach (var check in Bearing(insulator))
        {
            yield return check;
        }
    }

    // A lost guy is no load case of the design: where the mast would jump its owner must know, and may fit a hold-down.
    private Check? LostGuy(BasePivot pivot, double stillN)
    {
        if (lost.Where(l => l.Stands).MinBy(l => l.LeastFootN) is not { } worst)
        {
            return null;
        }

        var duty = new PivotDuty(stillN, worst.LeastFootN, stillN, 0, 0, "", $"{worst.Guy} lost in still air, on the way to the new rest");
        var check = (pivot with { LeastShare = 0 }).Examine(Mast, duty, factors).Single(c => c.Id.StartsWith("stand.base.lift-off", StringComparison.Ordinal));
        return StandRules.Screen(check with { Title = check.Title + " with a guy lost" }) with { Id = $"stand.base.lift-lost[{Mast}]" };
    }

    private IEnumerable<Check> Bearing(BaseInsulator insulator)
    {
        var pressing = stable.MaxBy(s => s.Solution.Foot.ReactionN.Z)!;
        var plate = Foot.Plate;
        var side = plate?.WidthM ?? insulator.DiameterM * Math.Sqrt(Math.PI) / 2;
        var reach = Math.Min(Foot.FootingWidthM, side + (2 * 2 * Foot.FootingDepthM));
        var bearing = new PlateBearing(side, side, plate?.ThicknessM ?? 0, insulator.DiameterM)
        {
            YieldPa = plate?.YieldPa ?? 235e6,
            ConcretePa = Foot.ConcretePa,
            SupportingAreaM2 = reach * reach,
        };
        return bearing.Examine(Mast, pressing.Solution.Foot.ReactionN.Z, pressing.Name, factors)
            .Where(c => plate is not null || c.Id.StartsWith("stand.base.concrete", StringComparison.Ordinal))
            .Select(c => plate is null ? c with { Title = "Concrete under the base insulator" } : c);
    }

    private static PivotKind KindOf(Design.Pivot pivot) => pivot switch
    {
        Design.Pivot.RockerAndPin => PivotKind.RockerAndPin,
        Design.Pivot.Hinged => PivotKind.Hinge,
        _ => PivotKind.BallAndCone,
    };

    // The moment at the ceramic's lower end over the compression: how far off the middle the force leaves it.
    private double Eccentricity(SolvedCase s)
    {
        var insulator = Catalogue.Default.BaseInsulators[Foot.Insulator];
        var n = Math.Max(1, s.Solution.Foot.ReactionN.Z);
        var rolled = Foot.Pivot == Design.Pivot.RockerAndPin ? Foot.PivotRadiusM * s.Solution.Foot.TiltRad : 0;
        return (Level(s) * insulator.HeightM / n) + rolled;
    }

    private double AcrossHinge(SolvedCase s)
    {
        var turn = s.Solution.Nodes[0].RotationRad;
        var axis = new Numerics.Vec3(Math.Sin(Foot.HingeAxisRad), Math.Cos(Foot.HingeAxisRad), 0);
        var level = turn - (turn.Z * Numerics.Vec3.Up);
        return (level - (level.Dot(axis) * axis)).Length;
    }

    private static double Level(SolvedCase s) => double.Hypot(s.Solution.Foot.ReactionN.X, s.Solution.Foot.ReactionN.Y);
}
