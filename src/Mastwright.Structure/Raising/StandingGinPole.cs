using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Structure.Raising;

/// <summary>
/// A mast pulled up by a rope over a sheave on top of a pole that stands upright, at the hinge or behind it, held by a
/// back stay. The rope comes down the pole to the winch at its foot.
/// </summary>
/// <param name="Mast">The mast.</param>
/// <param name="PoleHeightM">Height of the sheave above the hinge.</param>
/// <param name="PoleBehindM">Distance of the pole behind the hinge, on the far side from the mast.</param>
/// <param name="BackStayDistanceM">Distance of the back stay's anchor behind the pole.</param>
/// <param name="PoleWeightN">Weight of the pole.</param>
public sealed record StandingGinPole(MastOnHinge Mast, double PoleHeightM, double PoleBehindM, double BackStayDistanceM, double PoleWeightN = 0)
{
    /// <summary>Forces through the lift.</summary>
    /// <param name="steps">Angles looked at, from the ground to 88°.</param>
    public RaisingResult Lift(int steps = 89)
    {
        var rows = Enumerable.Range(0, Math.Max(2, steps)).Select(i => At(88.0 * Math.PI / 180 * i / (Math.Max(2, steps) - 1))).ToList();
        var largestArm = rows.Max(r => Arm(r.AngleRad));
        var back = rows.FirstOrDefault(r => r.AngleRad > 0.5 && Arm(r.AngleRad) < 0.25 * largestArm)?.AngleRad ?? 80 * Math.PI / 180;
        var findings = new List<Finding>
        {
            new("back-line", Severity.Warning, $"From {back * 180 / Math.PI:F0}° on the lifting line barely holds the mast back: a back line must take over before it is upright.", WayOut: "Rig a back line on the far side of the pole and tend it over the last part of the lift."),
        };
        if (PoleHeightM < 0.4 * Mast.LiftPointM)
        {
            findings.Add(new("pole-short", Severity.Warning, "The pole is short for this lifting point: the rope pulls mostly along the mast at the start.", null, Shown(PoleHeightM), $"about {Shown(0.5 * Mast.LiftPointM)} or more", "Use a longer pole or attach the rope nearer to the hinge; common practice, no source."));
        }

        return new("standing gin pole", rows, back, null, findings);
    }

    /// <summary>Forces at one angle of the mast above the ground.</summary>
    public RaisingStep At(double angleRad)
    {
        var along = new Vec3(Math.Cos(angleRad), 0, Math.Sin(angleRad));
        var line = (Sheave - (Mast.LiftPointM * along)).Unit();
        var moment = Mast.LoadN * Mast.CentreOfGravityM * along.X;
        var tension = moment / Arm(angleRad);
        var onMast = tension * line;
        var hinge = new Vec3(0, 0, Mast.LoadN) - onMast;

        // At the sheave: the rope to the mast, the rope down the pole, the stay.
        var toMast = -onMast;
        var stay = new Vec3(-BackStayDistanceM, 0, -PoleHeightM).Unit();
        var stayTension = Math.Max(0, toMast.X / -stay.X);
        var compression = -toMast.Z + tension - (stayTension * stay.Z) + PoleWeightN;
        return new(angleRad, tension, tension, compression, hinge, new(0, 0, compression - tension), stayTension, Mast.LargestBendingNm(angleRad));
    }

    private string Shown(double lengthM) => QuantityFormat.Show(lengthM, QuantityKind.Length, Mast.Units, 2);

    private Vec3 Sheave => new(-PoleBehindM, 0, PoleHeightM);

    private double Arm(double angleRad)
    {
        var along = new Vec3(Math.Cos(angleRad), 0, Math.Sin(angleRad));
        var line = (Sheave - (Mast.LiftPointM * along)).Unit();
        return Mast.LiftPointM * ((along.X * line.Z) - (along.Z * line.X));
    }
}
