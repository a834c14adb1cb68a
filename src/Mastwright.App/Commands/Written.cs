using System.CommandLine;
using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.App.Commands;

/// <summary>Reads what was written on the command line; what cannot be read becomes a finding.</summary>
/// <param name="parsed">The command line.</param>
internal sealed class Written(ParseResult parsed)
{
    private static readonly LocalDateTimePattern[] Moments =
    [
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm"), LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss"),
    ];

    /// <summary>What could not be read.</summary>
    public List<Finding> Problems { get; } = [];

    /// <summary>The text of an option; null when it was not given.</summary>
    public string? Text(Option<string?> option) => parsed.GetValue(option);

    /// <summary>The quantity of an option in SI; null when it was not given or cannot be read.</summary>
    public double? Quantity(Option<string?> option, QuantityKind kind, double least = double.NegativeInfinity, double most = double.PositiveInfinity) =>
        Text(option) is { } text ? Quantity(option.Name, text, kind, least, most) : null;

    /// <summary>A quantity in SI; null when it cannot be read.</summary>
    public double? Quantity(string field, string text, QuantityKind kind, double least = double.NegativeInfinity, double most = double.PositiveInfinity)
    {
        var reading = QuantityText.Read(text, kind);
        if (!reading.Ok)
        {
            Problems.Add(new Finding("value-bad", Severity.Error, $"The value cannot be used: {reading.Problem}.", Place(field), text, WayOut: reading.WayOut));
            return null;
        }

        if (reading.ValueSi >= least && reading.ValueSi <= most)
        {
            return reading.ValueSi;
        }

        string Show(double v) => QuantityFormat.Show(v, kind, UnitSystem.Metric);
        var allowed = double.IsInfinity(most) ? $"{Show(least)} and above" : $"{Show(least)} to {Show(most)}";
        Problems.Add(new Finding("value-range", Severity.Error, "The value is out of range.", Place(field), text, allowed, "Check the number and its unit."));
        return null;
    }

    /// <summary>A moment with the offset of the local clock; now when the option was not given.</summary>
    public OffsetDateTime Moment(Option<string?> option) => MomentOrNull(option, endOfDay: false) ?? Now();

    /// <summary>A moment; null when the option was not given or cannot be read. A day alone is its noon, or its end.</summary>
    public OffsetDateTime? MomentOrNull(Option<string?> option, bool endOfDay)
    {
        if (Text(option) is not { } text)
        {
            return null;
        }

        if (Moment(text, endOfDay) is { } moment)
        {
            return moment;
        }

        Problems.Add(new Finding("time-bad", Severity.Error, "This is not a date or time.", Place(option.Name), text, "2026-05-01, 2026-05-01 14:30, or 2026-05-01T14:30:00+02:00", "Write year, month, day."));
        return null;
    }

    /// <summary>A moment as written, empty for now; null when it cannot be read. A day alone is its noon.</summary>
    public OffsetDateTime? MomentOf(string text) => text.Length == 0 ? Now() : Moment(text, endOfDay: false);

    private static OffsetDateTime? Moment(string text, bool endOfDay)
    {
        if (OffsetDateTimePattern.ExtendedIso.Parse(text) is { Success: true } full)
        {
            return full.Value;
        }

        if (LocalDatePattern.Iso.Parse(text) is { Success: true } day)
        {
            return Local(day.Value.At(endOfDay ? new LocalTime(23, 59, 59) : LocalTime.Noon));
        }

        return Moments.Select(p => p.Parse(text)).FirstOrDefault(r => r.Success) is { } moment ? Local(moment.Value) : null;
    }

    /// <summary>Now, with the offset of the local clock.</summary>
    public static OffsetDateTime Now()
    {
        var now = SystemClock.Instance.GetCurrentInstant().InZone(NodaTime.TimeZones.BclDateTimeZone.ForSystemDefault()).ToOffsetDateTime();
        return now.With(t => t.With(TimeAdjusters.TruncateToSecond));
    }

    /// <summary>Pairs written as <c>name=value, name=value</c>.</summary>
    public IReadOnlyList<(string Name, string Value)> Pairs(string field, string? text)
    {
        var pairs = new List<(string, string)>();
        foreach (var part in (text ?? "").Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var at = part.IndexOf('=', StringComparison.Ordinal);
            if (at > 0 && at < part.Length - 1)
            {
                pairs.Add((part[..at].Trim(), part[(at + 1)..].Trim()));
            }
            else
            {
                Problems.Add(new Finding("pair-bad", Severity.Error, "This is not a name with a value.", Place(field), part, "name=value, several parted by commas", "Write it like “1/north=1.8 kN”."));
            }
        }

        return pairs;
    }

    /// <summary>A number without a unit; null when it cannot be read.</summary>
    public double? Number(string field, string text)
    {
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
        {
            return value;
        }

        Problems.Add(new Finding("number-bad", Severity.Error, "This is not a number.", Place(field), text, WayOut: "Write it like 0.66."));
        return null;
    }

    /// <summary>Where on the command line.</summary>
    public static Place Place(string field) => new("command line", 0, 0, field);

    private static OffsetDateTime Local(LocalDateTime at) => at.InZoneLeniently(NodaTime.TimeZones.BclDateTimeZone.ForSystemDefault()).ToOffsetDateTime();
}
