using Mastwright.Model.Design;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Raising;

namespace Mastwright.Analysis.Stand;

/// <summary>The whole lift of a mast on its hinge.</summary>
/// <param name="Forces">Forces through the angle.</param>
/// <param name="Bending">The bending of the mast by its own weight, lying level.</param>
/// <param name="SideGuys">The temporary side guys.</param>
/// <param name="PoleM">Length of the pole, m.</param>
/// <param name="WinchM">Distance of the winch or back stay anchor, m.</param>
public sealed record Lift(RaisingResult Forces, LiftBending Bending, SideGuys SideGuys, double PoleM, double WinchM);

/// <summary>The forces of raising a mast of a design by its plan.</summary>
public static class RaisingRun
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>The forces of the whole lift; a mast to be stacked is looked at as if raised by a falling derrick.</summary>
    public static RaisingResult Of(Station station, Mast mast) => LiftOf(station, mast).Forces;

    /// <summary>The whole lift.</summary>
    public static Lift LiftOf(Station station, Mast mast)
    {
        var model = StandModel.Of(station, mast);
        var plan = mast.Raising;
        var runs = model.Structure.Segments.Select(s => new WeightRun(s.BottomM, s.TopM, s.WeightNPerM)).ToList();
        var lumps = model.Structure.Weights.Select(w => new WeightAt(w.HeightM, w.WeightN)).ToList();
        var weight = runs.Sum(r => r.WeightNPerM * (r.TopM - r.BottomM)) + lumps.Sum(w => w.WeightN);
        var centre = (runs.Sum(r => r.WeightNPerM * (r.TopM - r.BottomM) * (r.TopM + r.BottomM) / 2) + lumps.Sum(w => w.WeightN * w.AtM)) / weight;
        var lift = Math.Min(plan.LiftAtM ?? (0.7 * mast.LengthM), mast.LengthM);
        var spread = Math.Min(plan.LiftSpreadM, 2 * Math.Min(mast.LengthM - lift, 0.9 * lift));
        var hinged = new MastOnHinge(mast.LengthM, weight, centre, lift, plan.DynamicFactor) { Units = station.UnitSystem };
        var pole = plan.PoleLengthM ?? (mast.LengthM / 3);
        var winch = plan.WinchDistanceM ?? (mast.LengthM / 2);
        var forces = plan.Method == RaisingMethod.GinPole
            ? new StandingGinPole(hinged, pole, 0, winch, plan.PoleMassKg * GravityMPerS2).Lift()
            : new FallingDerrick(hinged, pole, winch, plan.PoleMassKg * GravityMPerS2).Lift();
        var bending = new LiftBending(runs, lumps, lift, spread, plan.DynamicFactor);
        forces = forces with { Steps = [.. forces.Steps.Select(s => s with { MastBendingNm = Math.Cos(s.AngleRad) * bending.Worst().MomentNm })] };
        return new Lift(forces, bending, new SideGuys(lift, plan.SideGuyDistanceM ?? (mast.LengthM / 2), SideMoment(model, plan.WindMPerS)), pole, winch);
    }

    // A plain pressure: the lift's wind is one read off a hand-held meter.
    private static double SideMoment(StandModel model, double windMPerS)
    {
        var load = new LoadCase(WindMethods.Find("stated pressure")!, new WindSite(windMPerS, "") { StatedPressurePa = 0.613 * windMPerS * windMPerS }, new WindDirection(0));
        var along = model.Runs.Sum(r => MastLoads.Wind(load, r.Shape, (r.BottomM + r.TopM) / 2).Magnitude.Value * (r.TopM - r.BottomM) * (r.TopM + r.BottomM) / 2);
        return along + model.Mast.Attachments.Sum(a => 0.613 * windMPerS * windMPerS * a.DragAreaM2 * Math.Max(0, a.HeightM - model.Mast.Base.HeightM))
            + TopParts.Of(model.Mast).Sum(p => MastLoads.Wind(load, p.Wind, model.Mast.LengthM).Magnitude.Value * (model.Mast.LengthM + p.RiseM));
    }
}
