using System.Runtime.CompilerServices;

namespace Mastwright.Circuits;

/// <summary>Argument checks at the public doors.</summary>
internal static class Guard
{
    public static double NotNegative(double value, string name) =>
        double.IsFinite(value) && value >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be finite and not negative.");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be finite and above zero.");
}
