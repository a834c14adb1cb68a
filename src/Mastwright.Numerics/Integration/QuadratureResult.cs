using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Numerics.Integration;

/// <summary>When to stop integrating.</summary>
/// <param name="RelativeTolerance">Wanted error relative to the integral's absolute value.</param>
/// <param name="AbsoluteTolerance">Wanted error; met when either tolerance is met.</param>
/// <param name="MostEvaluations">Evaluations of the integrand after which to give up.</param>
public sealed record QuadratureOptions(double RelativeTolerance = 1e-10, double AbsoluteTolerance = 0, int MostEvaluations = 100_000)
{
    /// <summary>Ten digits.</summary>
    public static QuadratureOptions Default { get; } = new();
}

/// <summary>An integral with what is known about its error.</summary>
/// <typeparam name="T"><see cref="double"/> or <see cref="Complex"/>.</typeparam>
/// <param name="Value">The integral.</param>
/// <param name="ErrorEstimate">Estimate of its absolute error, usually pessimistic.</param>
/// <param name="Evaluations">Evaluations of the integrand.</param>
/// <param name="Converged">Whether the estimate met the tolerance. When false, the value is the best there is.</param>
public readonly record struct QuadratureResult<T>(T Value, double ErrorEstimate, int Evaluations, bool Converged);

/// <summary>Several integrals over the same interval with what is known about their errors.</summary>
/// <param name="Values">The integrals.</param>
/// <param name="ErrorEstimates">Estimates of their absolute errors.</param>
/// <param name="Evaluations">Evaluations of the integrand.</param>
/// <param name="Converged">Whether every estimate met the tolerance.</param>
public sealed record VectorQuadratureResult(ImmutableArray<Complex> Values, ImmutableArray<double> ErrorEstimates, int Evaluations, bool Converged);

/// <summary>Fills <paramref name="values"/> with the integrands at <paramref name="x"/>.</summary>
/// <param name="x">Where.</param>
/// <param name="values">One place for each integrand.</param>
public delegate void VectorIntegrand(double x, Span<Complex> values);
