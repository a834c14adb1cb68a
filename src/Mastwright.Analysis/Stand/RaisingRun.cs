using Mastwright.Model.Design;
using Mastwright.Structure.Raising;

namespace Mastwright.Analysis.Stand;

/// <summary>The forces of raising a mast of a design by its plan.</summary>
public static class RaisingRun
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>The whole lift.</summary>
    public static RaisingResult Of(Station station, Mast mast)
    {
        var model = StandModel.Of(station, mast);
        var plan = mast.Raising;
        var weights = model.Structure.Segments.Select(s => (Weight: s.WeightNPerM * (s.TopM - s.BottomM), At: (s.TopM + s.BottomM) / 2))
            .Concat(model.Structure.Weights.Select(w => (Weight: w.WeightN, At: w.HeightM))).ToList();
        var weight = weights.Sum(w => w.Weight);
        var hinged = new MastOnHinge(mast.LengthM, weight, weights.Sum(w => w.Weight * w.At) / weight, Math.Min(plan.LiftAtM ?? (0.7 * mast.LengthM), mast.LengthM), plan.DynamicFactor);
        var pole = plan.PoleLengthM ?? (mast.LengthM / 3);
        var winch = plan.WinchDistanceM ?? (mast.LengthM / 2);
        return plan.Method == RaisingMethod.GinPole
            ? new StandingGinPole(hinged, pole, 0, winch, plan.PoleMassKg * GravityMPerS2).Lift()
            : new FallingDerrick(hinged, pole, winch, plan.PoleMassKg * GravityMPerS2).Lift();
    }
}
