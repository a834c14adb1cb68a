using MathNet.Numerics.RootFinding;

namespace Mastwright.Numerics.RootFinding;

/// <summary>Why a root was not found.</summary>
public enum RootFailure
{
    /// <summary>It was found.</summary>
    None,

    /// <summary>The function has the same sign at both ends.</summary>
    NoSignChange,

    /// <summary>The function is infinite or undefined at an end.</summary>
    NotFinite,

    /// <summary>The iteration cap was reached.</summary>
    NotConverged,
}

/// <summary>What came of looking for a root.</summary>
/// <param name="X">The root when <see cref="Found"/>; otherwise not a number.</param>
/// <param name="Failure">Why not, if not.</param>
public readonly record struct RootResult(double X, RootFailure Failure)
{
    /// <summary>Whether there is a root.</summary>
    public bool Found => Failure == RootFailure.None;

    /// <summary>The root.</summary>
    /// <exception cref="ArithmeticException">There is none.</exception>
    public double Require() => Found ? X : throw new ArithmeticException($"No root: {Failure}.");
}

/// <summary>
/// Roots of one equation in one unknown. The iteration is Math.NET's Brent (R. P. Brent, Algorithms for Minimization without
/// Derivatives, 1973, chapter 4), which does well enough; this adds the bracketing and a reason when there is no root.
/// </summary>
public static class Roots
{
    /// <summary>The root inside a bracket.</summary>
    /// <param name="f">The function, continuous on the bracket.</param>
    /// <param name="a">One end.</param>
    /// <param name="b">The other end.</param>
    /// <param name="tolerance">Wanted accuracy of the root.</param>
    /// <param name="mostIterations">Iterations after which to give up.</param>
    public static RootResult TryBracketed(Func<double, double> f, double a, double b, double tolerance = 1e-12, int mostIterations = 200)
    {
        ArgumentNullException.ThrowIfNull(f);
        var (fa, fb) = (f(a), f(b));
        if (fa == 0)
            return new(a, RootFailure.None);
        if (fb == 0)
            return new(b, RootFailure.None);
        if (!double.IsFinite(fa) || !double.IsFinite(fb))
            return new(double.NaN, RootFailure.NotFinite);
        if (Math.Sign(fa) == Math.Sign(fb))
            return new(double.NaN, RootFailure.NoSignChange);
        return Brent.TryFindRoot(f, Math.Min(a, b), Math.Max(a, b), tolerance, mostIterations, out var root) && double.IsFinite(root)
            ? new(root, RootFailure.None)
            : new(double.NaN, RootFailure.NotConverged);
    }

    /// <summary>As <see cref="TryBracketed"/>, for a root that must exist.</summary>
    /// <exception cref="ArithmeticException">There is no root.</exception>
    public static double Bracketed(Func<double, double> f, double a, double b, double tolerance = 1e-12, int mostIterations = 200) =>
        TryBracketed(f, a, b, tolerance, mostIterations).Require();

    /// <summary>All roots that a walk in equal steps brackets, ascending. Two roots inside one step are missed.</summary>
    /// <param name="f">The function; where it is not finite, no root is reported. A pole that changes sign is told apart from a root.</param>
    /// <param name="from">Start of the walk.</param>
    /// <param name="to">End of the walk.</param>
    /// <param name="steps">Number of steps.</param>
    /// <param name="tolerance">Wanted accuracy of each root.</param>
    public static IReadOnlyList<double> Scan(Func<double, double> f, double from, double to, int steps, double tolerance = 1e-12)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        var roots = new List<double>();
        var (x0, f0) = (from, f(from));
        for (var i = 1; i <= steps; i++)
        {
            var x1 = from + ((to - from) * i / steps);
            var f1 = f(x1);
            if (f0 == 0)
                roots.Add(x0);
            else if (f1 != 0 && double.IsFinite(f0) && double.IsFinite(f1) && Math.Sign(f0) != Math.Sign(f1))
            {
                var root = TryBracketed(f, x0, x1, tolerance);

                // At a pole the function is larger than at both ends of its bracket, at a root smaller.
                if (root.Found && Math.Abs(f(root.X)) <= Math.Max(Math.Abs(f0), Math.Abs(f1)))
                    roots.Add(root.X);
            }

            (x0, f0) = (x1, f1);
        }

        if (f0 == 0)
            roots.Add(x0);
        return roots;
    }
}
