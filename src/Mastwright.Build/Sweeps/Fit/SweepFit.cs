using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Model.Trails;
using Mastwright.Numerics.Fitting;
using MathNet.Numerics.Distributions;

namespace Mastwright.Build.Sweeps.Fit;

/// <summary>An uncertain input of the prediction.</summary>
/// <param name="Name">In words: loss resistance, stray capacitance.</param>
/// <param name="Symbol">Symbol.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Start">Value the prediction used, SI.</param>
/// <param name="Lower">Least value that makes sense.</param>
/// <param name="Upper">Greatest value that makes sense.</param>
public sealed record FitParameter(string Name, string Symbol, QuantityKind Kind, double Start, double Lower, double Upper);

/// <summary>Predicted impedances in ohms at the frequencies (hertz, in their order) for given parameters (SI, in their order).</summary>
public delegate IReadOnlyList<Complex> ImpedanceModel(IReadOnlyList<double> parameters, IReadOnlyList<double> frequenciesHz);

/// <summary>What the differences are taken in.</summary>
public enum FitPlane
{
    /// <summary>Reflection against the sweep's reference: every frequency weighs alike, also where the impedance is huge.</summary>
    Reflection,

    /// <summary>Impedance in ohms: right where the impedance itself matters and stays moderate.</summary>
    Impedance,
}

/// <summary>How to fit.</summary>
/// <param name="Plane">What the differences are taken in.</param>
/// <param name="ResistOutliers">Whether wild points count less.</param>
/// <param name="Confidence">Confidence of the bounds.</param>
public sealed record FitOptions(FitPlane Plane = FitPlane.Reflection, bool ResistOutliers = true, double Confidence = 0.95);

/// <summary>A fitted input.</summary>
/// <param name="Parameter">The input.</param>
/// <param name="Value">Fitted value.</param>
/// <param name="Low">Lower confidence bound, inside the limits.</param>
/// <param name="High">Upper confidence bound, inside the limits.</param>
/// <param name="StandardError">Standard error; infinite when the sweep says nothing about it.</param>
/// <param name="AtLimit">Whether it came to rest on a limit.</param>
public sealed record FittedParameter(FitParameter Parameter, Trail Value, double Low, double High, double StandardError, bool AtLimit);

/// <summary>A fit.</summary>
/// <param name="Parameters">Fitted inputs in their order.</param>
/// <param name="Correlation">Correlation of the inputs, [i][j]; near ±1 the sweep cannot tell two of them apart.</param>
/// <param name="RmsBefore">RMS reflection distance with the inputs as they were.</param>
/// <param name="RmsAfter">RMS reflection distance with the fitted inputs.</param>
/// <param name="OutliersHz">Frequencies whose difference stands far out of the rest.</param>
/// <param name="Fitted">The prediction with the fitted inputs at the measured frequencies.</param>
/// <param name="SoftScale">Length from which a difference counts less than by its square, in the plane of the fit; null when all count alike.</param>
/// <param name="Converged">Whether the search came to rest.</param>
public sealed record SweepFitResult(
    ImmutableArray<FittedParameter> Parameters,
    ImmutableArray<ImmutableArray<double>> Correlation,
    Trail RmsBefore,
    Trail RmsAfter,
    ImmutableArray<double> OutliersHz,
    ImpedanceSweep Fitted,
    double? SoftScale,
    bool Converged);

/// <summary>Fits uncertain inputs of a prediction to a measured sweep.</summary>
public static class SweepFit
{
    // Residuals of the normal law stay below 4 of these; 1.4826 times the median size is one of them.
    private const double OutlierDeviations = 4;
    private const double SoftDeviations = 1.5;
    private const int ScalePasses = 6;
    private const double TooAlike = 0.98;

    private static readonly Source Method = Source.Derived("sweep-fit.md");

    /// <summary>Fits.</summary>
    /// <param name="measured">The sweep, at the plane the model predicts.</param>
    /// <param name="model">The prediction.</param>
    /// <param name="parameters">Inputs to fit.</param>
    /// <param name="options">How.</param>
    /// <param name="cancellation">Stops the fit.</param>
    public static Reading<SweepFitResult> Fit(ImpedanceSweep measured, ImpedanceModel model, IReadOnlyList<FitParameter> parameters, FitOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new();
        var findings = new List<Finding>();
        foreach (var p in parameters.Where(p => !(p.Lower < p.Upper) || !(p.Start >= p.Lower) || !(p.Start <= p.Upper) || !double.IsFinite(p.Upper - p.Lower)))
            findings.Add(new("fit-limits", Severity.Error, $"The limits of {p.Name} do not enclose its start.", null, p.Start.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"between {p.Lower} and {p.Upper}"), "Correct start or limits."));
        if (parameters.Count == 0 || 2 * measured.Points.Length <= parameters.Count)
            findings.Add(new("fit-too-few", Severity.Error, $"{measured.Points.Length} points cannot fix {parameters.Count} inputs.", new(measured.Name, 0, 0, ""), null, "more than half as many points as inputs, at least one input", "Sweep more frequencies or fit fewer inputs."));
        if (findings.Count > 0) return new(null, [.. findings]);

        var frequencies = measured.Points.Select(p => p.FrequencyHz).ToArray();
        double[] Residuals(double[] p) => Differences(measured, model(p, frequencies), options.Plane);
        if (!Residuals([.. parameters.Select(p => p.Start)]).All(double.IsFinite))
            return new(null, [new("fit-model", Severity.Error, "The prediction is not finite at its own inputs.", new(measured.Name, 0, 0, ""), null, null, "Check the inputs of the prediction.")]);

        double? softScale = null;
        var found = Search(Residuals, parameters, [.. parameters.Select(p => p.Start)], softScale, cancellation);
        for (var pass = 0; options.ResistOutliers && pass < ScalePasses; pass++)
        {
            var spread = Spread(Residuals([.. found.Parameters]));
            // Differences of nothing but rounding have no outliers.
            if (!(spread > 1e-9 * Size(measured, options.Plane))) break;
            softScale = SoftDeviations * spread;
            found = Search(Residuals, parameters, found.Parameters, softScale, cancellation);
            if (Math.Abs(Spread(Residuals([.. found.Parameters])) - spread) < 1e-6 * spread) break;
        }
        if (!found.Converged)
            findings.Add(new("fit-not-at-rest", Severity.Warning, "The fit did not come to rest; its values are the best so far.", new(measured.Name, 0, 0, ""), null, null, "Fit fewer inputs or start nearer."));
        return new(Describe(measured, model, Residuals, parameters, options, softScale, found, findings), [.. findings]);
    }

    private static LeastSquaresResult Search(Func<double[], double[]> residuals, IReadOnlyList<FitParameter> parameters, IReadOnlyList<double> start, double? softScale, CancellationToken cancellation)
    {
        var count = residuals([.. start]).Length;
        return LeastSquares.Fit(
            (p, r) =>
            {
                var differences = residuals(p.ToArray());
                (softScale is { } c ? SoftLoss.Shrink(differences, c) : differences).CopyTo(r);
            },
            count,
            start,
            new() { Lower = [.. parameters.Select(p => p.Lower)], Upper = [.. parameters.Select(p => p.Upper)], Scale = [.. parameters.Select(p => 1e-2 * (p.Upper - p.Lower))] },
            cancellation);
    }

    private static SweepFitResult Describe(ImpedanceSweep measured, ImpedanceModel model, Func<double[], double[]> residuals, IReadOnlyList<FitParameter> parameters, FitOptions options, double? softScale, LeastSquaresResult found, List<Finding> findings)
    {
        var n = parameters.Count;
        double[] at = [.. found.Parameters];
        var differences = residuals(at);
        bool[] atLimit = [.. parameters.Select((p, i) => Math.Min(at[i] - p.Lower, p.Upper - at[i]) <= 1e-9 * (p.Upper - p.Lower))];
        var covariance = FitCovariance.Of(residuals, at, parameters, softScale, atLimit);
        var quantile = StudentT.InvCDF(0, 1, differences.Length - n, (1 + options.Confidence) / 2);
        var errors = Enumerable.Range(0, n).Select(i => covariance is null ? double.PositiveInfinity : Math.Sqrt(covariance[i, i])).ToArray();
        var correlation = Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(j => covariance is null || errors[i] == 0 || errors[j] == 0 ? (i == j ? 1 : 0) : covariance[i, j] / (errors[i] * errors[j])).ToImmutableArray()).ToImmutableArray();
        var points = Trail.Given("points fitted", "n", measured.Points.Length, QuantityKind.Count, new(measured.Name, SourceKind.Design));
        var fitted = parameters.Select((p, i) =>
        {
            var value = at[i];
            var trail = Trail.Computed(p.Name, p.Symbol, value, p.Kind, "least sum of squared differences between sweep and prediction", Method, points, Trail.Given($"{p.Name} before", p.Symbol + "0", p.Start, p.Kind, Source.DesignFile))
                .Remark("the bounds hold the scatter of the sweep, not errors of calibration that move all points together");
            if (atLimit[i]) trail = trail.Within(string.Create(CultureInfo.InvariantCulture, $"{p.Lower:G4} to {p.Upper:G4}"), $"{p.Name} came to rest on its limit: the sweep asks for a value beyond it, or something else is wrong.");
            return new FittedParameter(p, trail, Math.Max(p.Lower, value - (quantile * errors[i])), Math.Min(p.Upper, value + (quantile * errors[i])), errors[i], atLimit[i]);
        }).ToImmutableArray();

        foreach (var f in fitted.Where(f => f.AtLimit))
            findings.Add(new("fit-at-limit", Severity.Warning, $"{f.Parameter.Name} came to rest on its limit.", new(measured.Name, 0, 0, f.Parameter.Name), f.Value.Value.ToString("G4", CultureInfo.InvariantCulture), null, "Widen the limit if more makes sense; otherwise look for another cause."));
        foreach (var f in fitted.Where(f => !f.AtLimit && quantile * f.StandardError > 0.5 * (f.Parameter.Upper - f.Parameter.Lower)))
            findings.Add(new("fit-undetermined", Severity.Warning, $"The sweep says next to nothing about {f.Parameter.Name}: its bounds span its whole range.", new(measured.Name, 0, 0, f.Parameter.Name), null, null, "Leave it out of the fit, or sweep where it matters."));
        for (var i = 0; i < n; i++)
            for (var j = 0; j < i; j++)
                if (Math.Abs(correlation[i][j]) > TooAlike)
                    findings.Add(new("fit-alike", Severity.Warning, $"The sweep can hardly tell {parameters[j].Name} and {parameters[i].Name} apart.", new(measured.Name, 0, 0, ""), correlation[i][j].ToString("0.000", CultureInfo.InvariantCulture), $"correlation within ±{TooAlike.ToString(CultureInfo.InvariantCulture)}", "Measure one of them by itself, or sweep a wider band."));

        var spread = Spread(differences);
        var outliers = spread > 0
            ? [.. measured.Points.Where((_, k) => double.Hypot(differences[2 * k], differences[(2 * k) + 1]) > OutlierDeviations * spread).Select(p => p.FrequencyHz)]
            : ImmutableArray<double>.Empty;
        var prediction = model(at, [.. measured.Points.Select(p => p.FrequencyHz)]);
        Trail Rms(string name, IReadOnlyList<Complex> z) => Trail.Computed(name, "ΔΓrms", Math.Sqrt(Differences(measured, z, FitPlane.Reflection).Sum(d => d * d) / measured.Points.Length), QuantityKind.Ratio, "ΔΓrms = √(Σ|Γm − Γp|²/n)", Method, points);
        return new(
            fitted,
            correlation,
            Rms("RMS reflection distance before", model([.. parameters.Select(p => p.Start)], [.. measured.Points.Select(p => p.FrequencyHz)])),
            Rms("RMS reflection distance after", prediction),
            outliers,
            measured with { Name = measured.Name + " (fitted prediction)", Points = [.. measured.Points.Zip(prediction, (p, z) => p with { ImpedanceOhm = z })] },
            softScale,
            found.Converged);
    }

    // What the differences are measured against, to tell them from rounding.
    private static double Size(ImpedanceSweep measured, FitPlane plane) =>
        plane == FitPlane.Reflection ? 1 : measured.Points.Average(p => p.ImpedanceOhm.Magnitude);

    private static double[] Differences(ImpedanceSweep measured, IReadOnlyList<Complex> predicted, FitPlane plane)
    {
        if (predicted.Count != measured.Points.Length) throw new ArgumentException($"The model gave {predicted.Count} impedances for {measured.Points.Length} frequencies.", nameof(predicted));
        var result = new double[2 * predicted.Count];
        for (var k = 0; k < predicted.Count; k++)
        {
            var point = measured.Points[k];
            var d = plane == FitPlane.Impedance
                ? predicted[k] - point.ImpedanceOhm
                : (point with { ImpedanceOhm = predicted[k] }).Reflection(measured.ReferenceOhm) - point.Reflection(measured.ReferenceOhm);
            (result[2 * k], result[(2 * k) + 1]) = (d.Real, d.Imaginary);
        }
        return result;
    }

    // Standard deviation of the bulk of the residuals, by the median of their size (normal law).
    private static double Spread(double[] residuals)
    {
        var sizes = residuals.Select(Math.Abs).Order().ToArray();
        var median = sizes.Length % 2 == 1 ? sizes[sizes.Length / 2] : (sizes[(sizes.Length / 2) - 1] + sizes[sizes.Length / 2]) / 2;
        return 1.4826 * median;
    }
}
