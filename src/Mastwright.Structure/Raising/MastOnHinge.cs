using Mastwright.Model.Units;

namespace Mastwright.Structure.Raising;

/// <summary>A mast lying on a hinge at its foot, ready to be pulled up by a line at one point.</summary>
/// <param name="LengthM">Length.</param>
/// <param name="WeightN">Weight, with everything already mounted on it.</param>
/// <param name="CentreOfGravityM">Distance of its centre of gravity from the hinge.</param>
/// <param name="LiftPointM">Distance of the lifting attachment from the hinge.</param>
/// <param name="DynamicFactor">Factor on the weight for starting and stopping; 1 for none.</param>
public sealed record MastOnHinge(double LengthM, double WeightN, double CentreOfGravityM, double LiftPointM, double DynamicFactor = 1)
{
    /// <summary>The reader's units, for words.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>Weight with the dynamic factor.</summary>
    public double LoadN => WeightN * DynamicFactor;

    /// <summary>
    /// Largest bending moment in the mast at an angle above the ground, its weight spread evenly: it rests on the hinge
    /// and hangs from the lifting point, the part beyond cantilevers.
    /// </summary>
    public double LargestBendingNm(double angleRad)
    {
        var across = LoadN * Math.Cos(angleRad) / LengthM;
        if (across <= 0)
        {
            return 0;
        }

        var beyond = LengthM - LiftPointM;
        var atLift = 0.5 * across * beyond * beyond;
        var lift = 0.5 * across * LengthM * LengthM / LiftPointM;
        var hinge = (across * LengthM) - lift;
        var span = hinge > 0 ? hinge * hinge / (2 * across) : 0;
        return Math.Max(atLift, span);
    }
}
