using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Analysis.Tune;
using Mastwright.Build;
using Mastwright.Build.Tension;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Report.Keep;

/// <summary>Turns what was read beside a guy into its tension.</summary>
public static partial class TensionReadings
{
    /// <summary>The ways to measure, with how each reading is written.</summary>
    public static IReadOnlyDictionary<string, string> Ways { get; } = new SortedDictionary<string, string>(StringComparer.Ordinal)
    {
        ["gauge"] = "1.8 kN",
        ["pulse"] = "10 in 2.79 s",
        ["swing"] = "20 in 31 s",
        ["pitch"] = "8.3 Hz",
        ["sag"] = "120 mm",
        ["tangent"] = "0.9 m",
        ["side-pull"] = "100 N gives 45 mm at 3 m",
    };

    /// <summary>The way that a method noted in the journal was read; null for one this program does not know.</summary>
    public static string? WayOf(string method) => method switch
    {
        "spring gauge" => "gauge",
        "pulse return" => "pulse",
        "swing count" => "swing",
        "tuned pitch" => "pitch",
        "sag sighting" => "sag",
        "tangent sighting" => "tangent",
        "side pull" => "side-pull",
        _ => null,
    };

    /// <summary>The tension from a reading.</summary>
    /// <param name="guy">The guy as it stands.</param>
    /// <param name="way">How it was measured, one of <see cref="Ways"/>.</param>
    /// <param name="written">The reading as written.</param>
    public static Reading<TensionEstimate> Estimate(GuyAtRest guy, string way, string written)
    {
        var span = SpanOf(guy);
        return way switch
        {
            "gauge" => With(way, written, QuantityKind.Force, v => TensionMethods.FromGauge(span, v)),
            "pitch" => With(way, written, QuantityKind.VibrationFrequency, v => TensionMethods.FromPitch(span, v)),
            "sag" => With(way, written, QuantityKind.FineLength, v => TensionMethods.FromSag(span, v)),
            "tangent" => With(way, written, QuantityKind.Length, v => TensionMethods.FromTangent(span, v)),
            "side-pull" => Pulled(written, (f, d, a) => TensionMethods.FromSidePull(span, a, f, d)),
            "pulse" => Counted(way, written, (n, t) => TensionMethods.FromPulse(span, n, t)),
            "swing" => Counted(way, written, (n, t) => TensionMethods.FromSwing(span, n, t)),
            _ => throw new ArgumentOutOfRangeException(nameof(way), way, "No such way to measure."),
        };
    }

    /// <summary>The guy in the terms of the tension methods.</summary>
    public static GuySpan SpanOf(GuyAtRest guy) => new(
        GuyNames.Short(guy.Name), guy.SpanM, guy.RiseM, guy.WeightNPerM, guy.AxialStiffnessN, [.. guy.Insulators.Select(i => new LumpedMass(i.Fraction, i.MassKg))]);

    private static Reading<TensionEstimate> With(string way, string written, QuantityKind kind, Func<double, Reading<TensionEstimate>> then)
    {
        var value = QuantityText.Read(written, kind);
        return value.Ok ? then(value.ValueSi) : new(null, [Bad(way, written, value.Problem!)]);
    }

    private static Reading<TensionEstimate> Counted(string way, string written, Func<int, double, Reading<TensionEstimate>> then)
    {
        if (CountInTime().Match(written) is not { Success: true } m)
        {
            return new(null, [Bad(way, written, "this is not a count in a time")]);
        }

        var time = QuantityText.Read(m.Groups["time"].Value, QuantityKind.Time);
        return time.Ok
            ? then(int.Parse(m.Groups["count"].Value, CultureInfo.InvariantCulture), time.ValueSi)
            : new(null, [Bad(way, written, time.Problem!)]);
    }

    private static Reading<TensionEstimate> Pulled(string written, Func<double, double, double, Reading<TensionEstimate>> then)
    {
        if (PullGives().Match(written) is not { Success: true } m)
        {
            return new(null, [Bad("side-pull", written, "this is not a pull, what it gives and where")]);
        }

        var (pull, gives, at) = (QuantityText.Read(m.Groups["pull"].Value, QuantityKind.Force), QuantityText.Read(m.Groups["gives"].Value, QuantityKind.FineLength), QuantityText.Read(m.Groups["at"].Value, QuantityKind.Length));
        return new[] { pull, gives, at }.Select(q => q.Problem).FirstOrDefault(p => p is not null) is { } problem
            ? new(null, [Bad("side-pull", written, problem)])
            : then(pull.ValueSi, gives.ValueSi, at.ValueSi);
    }

    private static Finding Bad(string way, string written, string why) => new(
        "reading-bad", Severity.Error, $"The {way} reading cannot be used: {why}.", Value: written, WayOut: $"Write it like “{Ways[way]}”.");

    [GeneratedRegex(@"^\s*(?<pull>.+?)\s+gives\s+(?<gives>.+?)\s+at\s+(?<at>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex PullGives();

    [GeneratedRegex(@"^\s*(?<count>\d{1,5})\s*(?:returns|swings)?\s+in\s+(?<time>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex CountInTime();
}
