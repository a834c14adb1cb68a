using System.Globalization;
using System.Numerics;
using System.Text;

namespace Mastwright.Circuits.Export;

/// <summary>How pairs of numbers are written.</summary>
public enum TouchstoneFormat
{
    /// <summary>Real and imaginary part.</summary>
    RealImaginary,

    /// <summary>Magnitude and angle in degrees.</summary>
    MagnitudeAngle,

    /// <summary>Decibels and angle in degrees.</summary>
    DecibelAngle,
}

/// <summary>
/// Writes scattering parameters as a network-parameter text file (Touchstone version 1, an open specification of the
/// IBIS Open Forum): an option line, then a row for each frequency; two ports in the order 11, 21, 12, 22.
/// </summary>
public static class Touchstone
{
    /// <summary>The file's text, for <c>.s1p</c>, <c>.s2p</c> and upward.</summary>
    /// <param name="rows">Frequencies in hertz, rising, each with its S matrix; all of one size.</param>
    /// <param name="referenceOhm">Reference resistance, ohms.</param>
    /// <param name="format">How pairs are written.</param>
    /// <param name="comments">Comment lines to put on top.</param>
    /// <exception cref="ArgumentException">No rows, frequencies that do not rise, or matrices of unlike size.</exception>
    public static string Write(IReadOnlyList<(double FrequencyHz, Complex[,] S)> rows, double referenceOhm, TouchstoneFormat format = TouchstoneFormat.RealImaginary, params IEnumerable<string> comments)
    {
        if (rows.Count == 0 || rows.Zip(rows.Skip(1)).Any(p => !(p.Second.FrequencyHz > p.First.FrequencyHz)))
            throw new ArgumentException("Frequencies must be given and must rise.", nameof(rows));
        var n = rows[0].S.GetLength(0);
        if (rows.Any(r => r.S.GetLength(0) != n || r.S.GetLength(1) != n))
            throw new ArgumentException("All matrices must be square and of one size.", nameof(rows));
        var text = new StringBuilder();
        foreach (var c in comments)
            text.Append("! ").AppendLine(c.ReplaceLineEndings(" "));
        text.AppendLine(CultureInfo.InvariantCulture, $"# Hz S {Code(format)} R {referenceOhm:R}");
        foreach (var (f, s) in rows)
            Row(text, f, s, n, format);
        return text.ToString();
    }

    private static void Row(StringBuilder text, double f, Complex[,] s, int n, TouchstoneFormat format)
    {
        text.Append(f.ToString("R", CultureInfo.InvariantCulture));
        for (var i = 0; i < n; i++)
        {
            // From three ports on, each row of the matrix starts a line and holds at most four pairs on it.
            if (n > 2 && i > 0)
                text.AppendLine();
            for (var j = 0; j < n; j++)
            {
                if (n > 2 && j > 0 && j % 4 == 0)
                    text.AppendLine();
                text.Append(' ').Append(Pair(n == 2 ? s[j, i] : s[i, j], format));
            }
        }

        text.AppendLine();
    }

    private static string Code(TouchstoneFormat format) => format switch
    {
        TouchstoneFormat.RealImaginary => "RI",
        TouchstoneFormat.MagnitudeAngle => "MA",
        _ => "DB",
    };

    private static string Pair(Complex z, TouchstoneFormat format)
    {
        var (a, b) = format switch
        {
            TouchstoneFormat.RealImaginary => (z.Real, z.Imaginary),
            TouchstoneFormat.MagnitudeAngle => (z.Magnitude, z.Phase * 180 / Math.PI),

            // Nothing at all has no logarithm; -400 dB stands for it.
            _ => (z == Complex.Zero ? -400 : 20 * Math.Log10(z.Magnitude), z.Phase * 180 / Math.PI),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{a:G12} {b:G12}");
    }
}
