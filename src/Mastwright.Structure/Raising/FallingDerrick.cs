using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Raising;

/// <summary>
/// A mast raised with a pole that stands upright while the mast lies and lies down as the mast comes up: both turn about
/// the same pivot at a fixed angle, joined by the lift line; the winch line pulls the pole tip down towards the winch.
/// </summary>
/// <param name="Mast">The mast.</param>
/// <param name="PoleLengthM">Length of the pole.</param>
/// <param name="WinchDistanceM">Distance of the winch anchor from the pivot, on the far side from the mast.</param>
/// <param name="PoleWeightN">Weight of the pole.</param>
/// <param name="PoleAngleRad">Angle between mast and pole; a right angle by default.</param>
/// <param name="WinchHeightM">Height of the winch anchor over the pivot.</param>
public sealed record FallingDerrick(
    MastOnHinge Mast, double PoleLengthM, double WinchDistanceM, double PoleWeightN = 0, double PoleAngleRad = Math.PI / 2, double WinchHeightM = 0)
{
    /// <summary>Share of its largest lever arm below which the winch line is taken to have lost control of the mast.</summary>
    private const double LeastArmShare = 0.25;

    /// <summary>Forces through the lift.</summary>
    /// <param name="steps">Angles looked at, from the ground to 88°.</param>
    public RaisingResult Lift(int steps = 89)
    {
        var rows = Enumerable.Range(0, Math.Max(2, steps)).Select(i => At(88.0 * Math.PI / 180 * i / (Math.Max(2, steps) - 1))).ToList();
        var largestArm = rows.Max(r => Arm(r.AngleRad));
        var back = rows.FirstOrDefault(r => r.AngleRad > 0.5 && Arm(r.AngleRad) < LeastArmShare * largestArm)?.AngleRad ?? rows[^1].AngleRad;
        var pulled = rows.FirstOrDefault(r => r.PoleCompressionN < 0);
        var findings = new List<Finding>
        {
            new("back-line", Severity.Warning, $"From {Degrees(back)} on the winch line has little leverage left and none when the mast is upright: a back line must hold the mast before that.", WayOut: "Rig a back line opposite the winch and keep it tight over the last part of the lift."),
        };
        if (pulled is not null)
        {
            findings.Add(new("pole-pulled", Severity.Warning, $"From {Degrees(pulled.AngleRad)} on the pole is pulled instead of pressed.", WayOut: "Hold the foot of the pole both ways: a pin or a lashing, not just a socket."));
        }

        if (rows.Any(r => r.HaulLineN < 0))
        {
            findings.Add(new("winch-line-slack", Severity.Warning, "The winch line goes slack during the lift: the mast falls on its own from there.", WayOut: "Move the winch anchor farther away or hold the mast with a back line from there on."));
        }

        return new("falling derrick", rows, back, pulled?.AngleRad, findings);
    }

    /// <summary>Forces at one angle of the mast above the ground.</summary>
    public RaisingStep At(double angleRad)
    {
        var along = Direction(angleRad);
        var pole = Direction(angleRad + PoleAngleRad);
        var tip = PoleLengthM * pole;
        var lift = (tip - (Mast.LiftPointM * along)).Unit();
        var winch = (Winch - tip).Unit();

        // Moments about the pivot, positive the way that lowers the mast.
        var moment = Mast.LoadN * Mast.CentreOfGravityM * along.X;
        var liftLine = moment / (Mast.LiftPointM * Turn(along, lift));
        var whole = moment + (PoleWeightN * 0.5 * PoleLengthM * pole.X);
        var haul = whole / (PoleLengthM * Turn(pole, winch));
        var onMast = liftLine * lift;
        var weight = new Vec3(0, 0, -Mast.LoadN);
        var hinge = -(weight + onMast);
        var pivot = -(weight + new Vec3(0, 0, -PoleWeightN) + (haul * winch));
        var compression = -((haul * winch.Dot(pole)) - onMast.Dot(pole)) + (0.5 * PoleWeightN * pole.Z);
        return new(angleRad, haul, liftLine, compression, hinge, pivot, 0, Mast.LargestBendingNm(angleRad));
    }

    private Vec3 Winch => new(-WinchDistanceM, 0, WinchHeightM);

    private double Arm(double angleRad)
    {
        var pole = Direction(angleRad + PoleAngleRad);
        return PoleLengthM * Math.Abs(Turn(pole, (Winch - (PoleLengthM * pole)).Unit()));
    }

    private static Vec3 Direction(double angle) => new(Math.Cos(angle), 0, Math.Sin(angle));

    // Moment of a unit force at a unit arm, positive the way that raises the mast.
    private static double Turn(Vec3 arm, Vec3 force) => (arm.X * force.Z) - (arm.Z * force.X);

    private static string Degrees(double rad) => $"{rad * 180 / Math.PI:F0}°";
}
