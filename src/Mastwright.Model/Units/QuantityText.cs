using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Units;

/// <summary>What reading a written quantity gave: a value in SI, or the reason why there is none.</summary>
/// <param name="ValueSi">The value in the SI unit of its kind; NaN when there is a problem.</param>
/// <param name="Problem">One sentence without full stop; null when the value is good.</param>
/// <param name="WayOut">How to write it; null when the value is good.</param>
public readonly record struct QuantityReading(double ValueSi, string? Problem, string? WayOut)
{
    /// <summary>Whether there is a value.</summary>
    public bool Ok => Problem is null;
}

/// <summary>
/// Reads quantities as people write them: <c>72 ft</c>, <c>5 ft 6 in</c>, <c>5' 6"</c>, <c>3/16 in</c>,
/// <c>1-1/2 in</c>, <c>10 AWG</c>, <c>1500 W</c>, <c>-20 °C</c>, <c>10 %</c>.
/// </summary>
public static partial class QuantityText
{
    /// <summary>Reads <paramref name="text"/> as a quantity of <paramref name="kind"/>.</summary>
    public static QuantityReading Read(string text, QuantityKind kind)
    {
        var written = text.Trim();
        if (written.Length == 0)
        {
            return Bad("nothing is written here", Example(kind));
        }

        var gauge = GaugeFirst().Match(written);
        if (gauge.Success)
        {
            written = gauge.Groups["n"].Value + " AWG";
        }

        var negative = written[0] is '-' or '−';
        var body = written[0] is '-' or '−' or '+' ? written[1..] : written;
        var terms = Terms().Match(body);
        if (!terms.Success)
        {
            return Bad("this is not a number with a unit", Example(kind));
        }

        return Sum(kind, negative, terms);
    }

    private static QuantityReading Sum(QuantityKind kind, bool negative, Match terms)
    {
        var count = terms.Groups["num"].Captures.Count;
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            if (!TryNumber(terms.Groups["num"].Captures[i].Value, out var number))
            {
                return Bad("the number is not finite", Example(kind));
            }

            // The sign belongs to the number before the unit is applied: -20 °C is not minus (20 °C in kelvin).
            number = negative ? -number : number;
            var unit = terms.Groups["unit"].Captures[i].Value.Trim();
            var (value, problem, wayOut) = Apply(kind, number, unit);
            if (problem is not null)
            {
                return Bad(problem, wayOut!);
            }

            sum += value;
        }

        if (count > 1 && kind is not (QuantityKind.Length or QuantityKind.FineLength))
        {
            return Bad("only lengths may be written in two parts", Example(kind));
        }

        return double.IsFinite(sum) ? new(sum, null, null) : Bad("the number is not finite", Example(kind));
    }

    private static (double, string?, string?) Apply(QuantityKind kind, double number, string unit)
    {
        if (unit.Length == 0)
        {
            return kind is QuantityKind.Ratio or QuantityKind.Count or QuantityKind.Decibel || number == 0 && kind != QuantityKind.Temperature
                ? (number, null, null)
                : (0, "the unit is missing", Example(kind));
        }

        var units = UnitTable.For(kind);
        var match = units.FirstOrDefault(u => u.Spellings.Contains(unit)) ?? OnlyCaseDiffers(units, unit);
        if (match is not null)
        {
            return (match.ToSi(number), null, null);
        }

        var other = UnitTable.KindsWith(unit).FirstOrDefault();
        if (UnitTable.KindsWith(unit).Any())
        {
            return (0, $"“{unit}” measures {KindWords.Of(other)}, but {KindWords.Of(kind)} is wanted here", Example(kind));
        }

        var near = NearMiss.Of(unit, units.Select(u => u.Symbol));
        return (0, $"“{unit}” is not a unit known here" + (near is null ? "" : $"; did you mean “{near}”?"), Example(kind));
    }

    private static WrittenUnit? OnlyCaseDiffers(IReadOnlyList<WrittenUnit> units, string unit)
    {
        var matches = units.Where(u => u.Spellings.Any(s => string.Equals(s, unit, StringComparison.OrdinalIgnoreCase))).ToList();
        return matches.Count == 1 ? matches[0] : null;
    }

    private static bool TryNumber(string text, out double number)
    {
        var mixed = Mixed().Match(text.Trim());
        number = Part(mixed.Groups["whole"]) + (mixed.Groups["over"].Success ? Part(mixed.Groups["over"]) / Part(mixed.Groups["under"]) : 0);
        return mixed.Success && double.IsFinite(number);
    }

    private static double Part(Group group) =>
        group.Success ? double.Parse(group.Value, NumberStyles.Float, CultureInfo.InvariantCulture) : 0;

    private static string Example(QuantityKind kind) => $"Write {KindWords.Of(kind)}, e.g. {KindWords.Example(kind)}.";

    private static QuantityReading Bad(string problem, string wayOut) => new(double.NaN, problem, wayOut);

    [GeneratedRegex(@"^\s*(?:(?<num>\d+/\d+|(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?(?:[ -]\d+/\d+)?)\s*(?<unit>[^\d\s./+-][^\d+-]*?[²³⁴234]?(?:/[a-zA-Zµμ]+[²³23]?)?|)\s*)+$")]
    private static partial Regex Terms();

    [GeneratedRegex(@"^(?:(?<whole>(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)(?:[ -](?<over>\d+)/(?<under>\d+))?|(?<over>\d+)/(?<under>\d+))$")]
    private static partial Regex Mixed();

    [GeneratedRegex(@"^(?:#|AWG\s*#?)\s*(?<n>\d+)(?:\s*AWG)?$", RegexOptions.IgnoreCase)]
    private static partial Regex GaugeFirst();
}
