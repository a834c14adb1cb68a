using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>The version of the format to write.</summary>
public enum TouchstoneVersion
{
    /// <summary>Version 1.0; 1.1 by itself when the ports' references differ.</summary>
    V1,

    /// <summary>Version 2.0.</summary>
    V2,
}

/// <summary>How to write.</summary>
/// <param name="Version">Version of the format.</param>
/// <param name="Form">Form of the pairs; real and imaginary loses nothing.</param>
/// <param name="FrequencyUnitHz">1, 1e3, 1e6 or 1e9.</param>
/// <param name="Comments">Lines written as comments at the top.</param>
public sealed record TouchstoneWriteOptions(
    TouchstoneVersion Version = TouchstoneVersion.V1,
    NumberForm Form = NumberForm.RealImaginary,
    double FrequencyUnitHz = 1e6,
    ImmutableArray<string> Comments = default);

/// <summary>Writes network parameters as Touchstone text with all digits of a double.</summary>
public static class TouchstoneWriter
{
    private const int PairsOnALine = 4;

    /// <summary>The text of a file.</summary>
    /// <exception cref="ArgumentException">
    /// The data hold a value that is not finite, the unit is none of the four, or version 1 is asked of noise data that
    /// start above the last network frequency (version 1 tells the two apart by the step back).
    /// </exception>
    public static string Write(NetworkData data, TouchstoneWriteOptions? options = null)
    {
        options ??= new();
        var unit = options.FrequencyUnitHz switch
        {
            1 => "Hz",
            1e3 => "kHz",
            1e6 => "MHz",
            1e9 => "GHz",
            _ => throw new ArgumentException("The unit is 1, 1e3, 1e6 or 1e9 Hz.", nameof(options)),
        };
        if (data.Points.Any(p => p.Matrix.Any(v => !double.IsFinite(v.Real) || !double.IsFinite(v.Imaginary))))
            throw new ArgumentException("The data hold a value that is not finite.", nameof(data));
        var two = options.Version == TouchstoneVersion.V2;
        if (!two && data.Noise.Length > 0 && data.Noise[0].FrequencyHz > data.Points[^1].FrequencyHz)
            throw new ArgumentException("Version 1 cannot hold noise data above the last network frequency; write version 2.", nameof(options));
        var header = TouchstoneHeader.Default with { Version = two ? "2.0" : "1.0", FrequencyUnitHz = options.FrequencyUnitHz, Parameter = data.Parameter, Form = options.Form, Ports = data.Ports };
        var form = options.Form switch { NumberForm.DecibelAngle => "DB", NumberForm.MagnitudeAngle => "MA", _ => "RI" };
        var same = data.ReferenceOhm.All(r => r == data.ReferenceOhm[0]);
        var references = same && !two ? Text(data.ReferenceOhm[0]) : string.Join(' ', data.ReferenceOhm.Select(Text));

        var text = new StringBuilder();
        foreach (var comment in options.Comments.IsDefault ? [] : options.Comments) text.Append("! ").Append(comment.ReplaceLineEndings(" ")).Append('\n');
        if (two) text.Append("[Version] 2.0\n");
        text.Append("# ").Append(unit).Append(' ').Append(data.Parameter).Append(' ').Append(form).Append(" R ").Append(two ? Text(data.ReferenceOhm[0]) : references).Append('\n');
        if (two)
        {
            text.Append("[Number of Ports] ").Append(data.Ports).Append('\n');
            if (data.Ports == 2) text.Append("[Two-Port Data Order] 21_12\n");
            text.Append("[Number of Frequencies] ").Append(data.Points.Length).Append('\n');
            if (data.Noise.Length > 0) text.Append("[Number of Noise Frequencies] ").Append(data.Noise.Length).Append('\n');
            text.Append("[Reference] ").Append(references).Append("\n[Network Data]\n");
        }
        var matrix = new TouchstoneMatrix(header, data.Ports, data.ReferenceOhm);
        foreach (var point in data.Points) Point(text, matrix, data.Ports, point, options.FrequencyUnitHz);
        if (two && data.Noise.Length > 0) text.Append("[Noise Data]\n");
        foreach (var noise in data.Noise)
        {
            var r = noise.NoiseResistanceOhm / (two ? 1 : data.ReferenceOhm[0]);
            text.AppendJoin(' ', new[] { noise.FrequencyHz / options.FrequencyUnitHz, noise.MinimumNoiseFigureDb, noise.OptimumReflection.Magnitude, noise.OptimumReflection.Phase * 180 / Math.PI, r }.Select(Text)).Append('\n');
        }
        if (two) text.Append("[End]\n");
        return text.ToString();
    }

    private static void Point(StringBuilder text, TouchstoneMatrix matrix, int ports, NetworkPoint point, double unit)
    {
        text.Append(Text(point.FrequencyHz / unit));
        var row = 0;
        var onLine = 0;
        for (var k = 0; k < matrix.Written.Count; k++)
        {
            if (ports > 2 && (matrix.Written[k].Row != row || onLine == PairsOnALine))
            {
                text.Append('\n');
                row = matrix.Written[k].Row;
                onLine = 0;
            }
            var (a, b) = matrix.Numbers(point.Matrix, k);
            if (onLine > 0 || k == 0 || ports <= 2) text.Append(' ');
            text.Append(Text(a)).Append(' ').Append(Text(b));
            onLine++;
        }
        text.Append('\n');
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
