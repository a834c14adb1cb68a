using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Fit;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Tune;

/// <summary>An input of the prediction that a sweep may correct, by the word it is asked for with.</summary>
/// <param name="Word">The word.</param>
/// <param name="Start">How it enters the fit, from the inputs of the design and its mean earth loss over the sweep.</param>
/// <param name="Apply">Puts a value into the inputs.</param>
internal sealed record FitInput(string Word, Func<FeedInputs, double, FitParameter> Start, Func<FeedInputs, double, FeedInputs> Apply);

/// <summary>The inputs of the prediction that a sweep may correct.</summary>
public static class SweepFitInputs
{
    private const double MostEarthOhm = 100;
    private const double MostStrayF = 2e-9;

    private static readonly ImmutableArray<FitInput> All =
    [
        new("earth", (_, meanOhm) => new("earth loss resistance", "Rg", QuantityKind.Resistance, Math.Min(meanOhm, MostEarthOhm), 0, Math.Max(MostEarthOhm, 5 * meanOhm)), (i, v) => i with { EarthLossOhm = v }),
        new("stray", (i, _) => new("capacitance across the base, insulator and strays", "C", QuantityKind.Capacitance, i.StrayF, 0, Math.Max(MostStrayF, 5 * i.StrayF)), (i, v) => i with { StrayF = v }),
        new("height", (_, _) => new("effective height over drawn height", "k", QuantityKind.Ratio, 1, FeedPrediction.LeastHeightFactor, FeedPrediction.GreatestHeightFactor), (i, v) => i with { HeightFactor = v }),
        new("conductivity", (i, _) => new("soil conductivity", "σ", QuantityKind.Conductivity, i.ConductivitySPerM, i.ConductivitySPerM / 30, Math.Min(5, i.ConductivitySPerM * 30)), (i, v) => i with { ConductivitySPerM = v }),
        new("permittivity", (i, _) => new("relative permittivity of the soil", "εr", QuantityKind.Ratio, i.RelativePermittivity, 1, 81), (i, v) => i with { RelativePermittivity = v }),
    ];

    /// <summary>The words there are.</summary>
    public static IEnumerable<string> Words => All.Select(i => i.Word);

    /// <summary>What is fitted unless something else is asked for.</summary>
    public static ImmutableArray<string> Usual { get; } = ["earth", "stray", "height"];

    /// <summary>Whether inputs do not go together, and why.</summary>
    public static Finding? Clash(IReadOnlyCollection<string> words)
    {
        if (words.FirstOrDefault(w => !Words.Contains(w)) is { } unknown)
        {
            return new Finding("fit-unknown", Severity.Error, $"There is no input “{unknown}” to fit.", Value: unknown, Allowed: string.Join(", ", Words), WayOut: "Name one or several of these.");
        }

        return words.Contains("earth") && words.Any(w => w is "conductivity" or "permittivity")
            ? new Finding("fit-clash", Severity.Error, "An earth loss resistance and the soil cannot be fitted together: the resistance takes the soil's place.", Value: string.Join(", ", words), Allowed: "earth, or conductivity and permittivity", WayOut: "Fit one or the other.")
            : null;
    }

    /// <summary>Fits inputs of a prediction to a sweep at the feed terminal.</summary>
    /// <param name="atAntenna">The sweep, moved to the feed terminal.</param>
    /// <param name="prediction">The prediction over its band.</param>
    /// <param name="words">What to fit, of <see cref="Words"/>.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (Build.Reading<SweepFitResult> Fit, FeedInputs Inputs) Fit(ImpedanceSweep atAntenna, FeedPrediction prediction, IReadOnlyList<string> words, CancellationToken cancellation)
    {
        var chosen = words.Select(w => All.First(i => i.Word == w)).ToList();
        var design = prediction.Design;
        var mean = atAntenna.Points.Average(p => prediction.EarthLossOhm(design.ConductivitySPerM, design.RelativePermittivity, p.FrequencyHz));
        FeedInputs With(IReadOnlyList<double> values) => chosen.Select((c, i) => (c, Value: values[i])).Aggregate(design, (inputs, x) => x.c.Apply(inputs, x.Value));
        IReadOnlyList<Complex> Model(IReadOnlyList<double> values, IReadOnlyList<double> hz) => prediction.FeedOhm(With(values), hz);
        var fit = SweepFit.Fit(atAntenna, Model, [.. chosen.Select(c => c.Start(design, mean))], null, cancellation);
        return (fit, fit.Value is { } found ? With([.. found.Parameters.Select(p => p.Value.Value)]) : design);
    }
}
