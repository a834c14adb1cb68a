using System.Text.RegularExpressions;

namespace Mastwright.Build.Sweeps.Csv;

/// <summary>What a column of a sweep table holds.</summary>
internal enum ColumnRole
{
    Unknown,
    Frequency,
    Resistance,
    Reactance,
    ReactanceSize,
    ImpedanceSize,
    ImpedancePhase,
    Swr,
    ReturnLoss,
    ReflectionReal,
    ReflectionImaginary,
    ReflectionSize,
    ReflectionDb,
    ReflectionPhase,
    Phase,
}

/// <summary>A column: its heading, what it holds and the factor to SI (null: the heading names no unit).</summary>
internal sealed partial record CsvColumn(string Heading, ColumnRole Role, double? Unit)
{
    public static CsvColumn Parse(string heading)
    {
        var lower = heading.Trim().ToLowerInvariant();
        var words = Splitter().Split(lower).Where(w => w.Length > 0).ToHashSet();
        var size = lower.Contains('|', StringComparison.Ordinal) || Any("mag", "magnitude", "abs", "lin");
        var real = Any("re", "real");
        var imaginary = Any("im", "imag", "imaginary");
        var phase = Any("phase", "angle", "ang", "arg", "theta", "deg");
        var angle = Any("rad") ? 1 : Math.PI / 180;

        if (Any("freq", "frequency", "f")) return new(heading, ColumnRole.Frequency, FrequencyUnit());
        if (Any("swr", "vswr")) return new(heading, ColumnRole.Swr, 1);
        if (Any("rl", "returnloss") || (Any("return") && Any("loss"))) return new(heading, ColumnRole.ReturnLoss, 1);
        if (Any("s11", "gamma", "rho", "reflection", "γ"))
        {
            return real ? new(heading, ColumnRole.ReflectionReal, 1)
                : imaginary ? new(heading, ColumnRole.ReflectionImaginary, 1)
                : phase || Any("rad") ? new(heading, ColumnRole.ReflectionPhase, angle)
                : Any("db", "logmag") ? new(heading, ColumnRole.ReflectionDb, 1)
                : size || Any("rho") ? new(heading, ColumnRole.ReflectionSize, 1)
                : new(heading, ColumnRole.Unknown, null);
        }
        var ohm = Any("kohm", "kω") ? 1e3 : 1;
        if (Any("z", "impedance"))
        {
            return real ? new(heading, ColumnRole.Resistance, ohm)
                : imaginary ? new(heading, ColumnRole.Reactance, ohm)
                : phase || Any("rad") ? new(heading, ColumnRole.ImpedancePhase, angle)
                : new(heading, ColumnRole.ImpedanceSize, ohm);
        }
        if (Any("r", "rs", "resistance")) return new(heading, ColumnRole.Resistance, ohm);
        if (Any("x", "xs", "reactance")) return new(heading, size ? ColumnRole.ReactanceSize : ColumnRole.Reactance, ohm);
        return phase ? new(heading, ColumnRole.Phase, angle) : new(heading, ColumnRole.Unknown, null);

        bool Any(params ReadOnlySpan<string> names)
        {
            foreach (var name in names)
                if (words.Contains(name)) return true;
            return false;
        }

        double? FrequencyUnit() => Any("ghz") ? 1e9 : Any("mhz") ? 1e6 : Any("khz") ? 1e3 : Any("hz") ? 1 : null;
    }

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Splitter();
}
