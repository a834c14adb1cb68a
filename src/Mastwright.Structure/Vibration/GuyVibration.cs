using Mastwright.Model.Trails;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Vibration;

/// <summary>How a guy vibrates between its ends.</summary>
/// <param name="GuyName">Which guy.</param>
/// <param name="OutOfPlaneHz">Lowest frequency across the plane of the guy, and of the taut string.</param>
/// <param name="InPlaneHz">Lowest frequency of the symmetric mode in its plane, raised by sag.</param>
/// <param name="LambdaSquared">Irvine's parameter: below about 1 the guy is a string, above 39.48 the one-loop shape is no longer the lowest.</param>
/// <param name="PulseReturnS">Time for a shake at the anchor to run up, come back and be felt again.</param>
/// <param name="MeanTensionN">Tension halfway.</param>
/// <param name="MassKgPerM">Mass per metre, ice included when given.</param>
/// <param name="ChordM">Length between the ends.</param>
public sealed record GuyVibration(
    string GuyName,
    double OutOfPlaneHz,
    double InPlaneHz,
    double LambdaSquared,
    double PulseReturnS,
    double MeanTensionN,
    double MassKgPerM,
    double ChordM)
{
    private static readonly Source String = new("taut string, e.g. Timoshenko, Vibration Problems in Engineering", SourceKind.Literature);
    private static readonly Source Irvine = new("Irvine, Cable Structures, 1981, ch. 3", SourceKind.Literature);

    /// <summary>The vibration of a guy of a solved case.</summary>
    /// <param name="guy">The guy.</param>
    /// <param name="weightNPerM">Weight per unstressed metre of everything that moves with it: strand, and ice if there is any.</param>
    public static GuyVibration Of(GuyResult guy, double weightNPerM) => Of(guy.Name, guy.Cable, weightNPerM);

    /// <summary>The vibration of a cable.</summary>
    /// <param name="name">Shown in results.</param>
    /// <param name="cable">The cable at rest.</param>
    /// <param name="weightNPerM">Weight per unstressed metre of everything that moves with it, above zero.</param>
    public static GuyVibration Of(string name, CableState cable, double weightNPerM)
    {
        var chord = cable.PointAt(cable.UnstressedLengthM);
        var length = chord.Length;
        var tension = cable.TensionAt(0.5 * cable.UnstressedLengthM).Length;
        var mass = weightNPerM / MastVibration.GravityMPerS2 * cable.UnstressedLengthM / length;
        var string1 = Math.Sqrt(tension / mass) / (2 * length);
        var lambda2 = LambdaSquaredOf(cable);
        return new(name, string1, string1 * SymmetricRatio(lambda2), lambda2, 1 / string1, tension, mass, length);
    }

    /// <summary>Irvine's λ² = (w_n L/T)² L / (T Le/EA), w_n the load across the chord, Le = L[1 + (w_n L/T)²/8].</summary>
    public static double LambdaSquaredOf(CableState cable)
    {
        var chord = cable.PointAt(cable.UnstressedLengthM);
        var length = chord.Length;
        var along = chord / length;
        var across = cable.LoadNPerM - (cable.LoadNPerM.Dot(along) * along);
        var tension = cable.TensionAt(0.5 * cable.UnstressedLengthM).Length;
        var ratio = across.Length * length / tension;
        var effective = length * (1 + (ratio * ratio / 8));
        return ratio * ratio * length * cable.AxialStiffnessN / (tension * effective);
    }

    /// <summary>
    /// First symmetric frequency in the plane over that of the string: the root Ω of
    /// tan(Ω/2) = Ω/2 - (4/λ²)(Ω/2)³, divided by π.
    /// </summary>
    public static double SymmetricRatio(double lambdaSquared)
    {
        if (lambdaSquared < 1e-9)
        {
            return 1;
        }

        double low = Math.PI / 2, high = 1.5 * Math.PI;
        for (var i = 0; i < 200; i++)
        {
            var x = 0.5 * (low + high);
            var value = Math.Sin(x) + (Math.Cos(x) * ((4 * x * x * x / lambdaSquared) - x));

            // Times the cosine, which is negative throughout, so the sign of tan x - x + 4x³/λ² is turned.
            (low, high) = value > 0 ? (x, high) : (low, x);
        }

        return (low + high) / Math.PI;
    }

    /// <summary>The out-of-plane frequency with its formula and source.</summary>
    public Trail Explain() => Trail.Computed(
        $"string frequency of guy {GuyName}", "f₁", OutOfPlaneHz, QuantityKind.VibrationFrequency, "f₁ = √(T/m)/(2L)", String,
        Trail.Computed("tension halfway", "T", MeanTensionN, QuantityKind.Force, "elastic catenary", Irvine),
        Trail.Given("mass per metre", "m", MassKgPerM, QuantityKind.LinearMass, new Source("the strand's weight over g", SourceKind.Derived)),
        Trail.Given("length between ends", "L", ChordM, QuantityKind.Length, new Source("geometry of the loaded mast", SourceKind.Derived)))
        .Within("bare strand without lumped insulators", LambdaSquared > 1 ? $"Guy {GuyName} sags enough (λ² {LambdaSquared:F1}) that in its plane the string formula is low by more than 4 %." : null);

    /// <summary>The in-plane frequency with its formula and source.</summary>
    public Trail ExplainInPlane() => Trail.Computed(
        $"in-plane frequency of guy {GuyName}", "f", InPlaneHz, QuantityKind.VibrationFrequency, "tan(Ω/2) = Ω/2 - (4/λ²)(Ω/2)³, f = f₁Ω/π", Irvine,
        Explain(), Trail.Computed("cable parameter", "λ²", LambdaSquared, QuantityKind.Ratio, "λ² = (wₙL/T)² L EA/(T Lₑ)", Irvine));

    /// <summary>The tension that a counted number of returns of a shake tells: T = 4 m L² N²/t².</summary>
    /// <param name="massKgPerM">Mass per metre.</param>
    /// <param name="lengthM">Length between the ends.</param>
    /// <param name="returns">Returns counted.</param>
    /// <param name="timeS">Time they took.</param>
    public static Trail TensionFromPulse(double massKgPerM, double lengthM, int returns, double timeS) => Trail.Computed(
        "tension from the pulse", "T", 4 * massKgPerM * lengthM * lengthM * returns * returns / (timeS * timeS), QuantityKind.Force, "T = 4 m L² N²/t²", String,
        Trail.Given("mass per metre", "m", massKgPerM, QuantityKind.LinearMass, new Source("given", SourceKind.Design)),
        Trail.Given("length between ends", "L", lengthM, QuantityKind.Length, new Source("given", SourceKind.Design)),
        Trail.Given("returns", "N", returns, QuantityKind.Count, new Source("counted", SourceKind.Design)),
        Trail.Given("time", "t", timeS, QuantityKind.Time, new Source("timed", SourceKind.Design)))
        .Within("taut guy without lumped insulators: each insulator sends back part of the pulse and makes the count read low or unclear");
}
