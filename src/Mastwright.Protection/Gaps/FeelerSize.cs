namespace Mastwright.Protection.Gaps;

/// <summary>Feelers for one spacing: a fraction of an inch as drill shanks come, and a millimetre size.</summary>
/// <param name="InchNumerator">Numerator of the inch fraction; 0 when no sixty-fourth lies inside the window.</param>
/// <param name="InchDenominator">Denominator: 8, 16, 32 or 64; 0 when there is none.</param>
/// <param name="Millimetres">Millimetre size inside the window, the setting itself when no round size fits.</param>
public sealed record FeelerSize(int InchNumerator, int InchDenominator, double Millimetres)
{
    private const double InchM = 0.0254;

    /// <summary>Whether an inch fraction lies inside the window.</summary>
    public bool HasInch => InchDenominator > 0;

    /// <summary>The inch fraction in metres; 0 when there is none.</summary>
    public double InchSizeM => HasInch ? InchM * InchNumerator / InchDenominator : 0;

    /// <summary>The inch fraction as text, e.g. <c>"3/16 in"</c>; a dash when there is none.</summary>
    public string InchText => !HasInch ? "–"
        : InchNumerator >= InchDenominator
            ? InchNumerator % InchDenominator == 0
                ? FormattableString.Invariant($"{InchNumerator / InchDenominator} in")
                : FormattableString.Invariant($"{InchNumerator / InchDenominator} {InchNumerator % InchDenominator}/{InchDenominator} in")
            : FormattableString.Invariant($"{InchNumerator}/{InchDenominator} in");

    /// <summary>Both sizes as text, e.g. <c>"3/16 in or 4.8 mm"</c>; the millimetres alone when no inch fraction serves.</summary>
    public string Text => HasInch ? FormattableString.Invariant($"{InchText} or {Millimetres:0.##} mm") : FormattableString.Invariant($"{Millimetres:0.##} mm");

    /// <summary>
    /// Picks the feelers nearest to a target inside a window. A coarser fraction (eighths before sixteenths before thirty-seconds)
    /// is preferred when it lies within a quarter of the window's width of the target, because it is easier to lay hands on.
    /// </summary>
    /// <param name="targetM">Target in metres, inside the window.</param>
    /// <param name="lowM">Lower end in metres.</param>
    /// <param name="highM">Upper end in metres.</param>
    public static FeelerSize Nearest(double targetM, double lowM, double highM)
    {
        var near = 0.25 * (highM - lowM);
        var (numerator, denominator) = (0, 0);
        foreach (var d in (ReadOnlySpan<int>)[8, 16, 32, 64])
        {
            var n = (int)Math.Round(targetM / InchM * d);
            var size = n * InchM / d;
            if (n > 0 && size >= lowM && size <= highM && (Math.Abs(size - targetM) <= near || d == 64))
            {
                (numerator, denominator) = (n, d);
                break;
            }
        }

        while (numerator > 0 && numerator % 2 == 0 && denominator > 1)
            (numerator, denominator) = (numerator / 2, denominator / 2);

        return new(numerator, denominator, NearestMillimetres(targetM, lowM, highM));
    }

    // A tenth of a millimetre is what feelers come in; a twentieth where the window is narrow.
    private static double NearestMillimetres(double targetM, double lowM, double highM)
    {
        foreach (var step in (ReadOnlySpan<double>)[0.1, 0.05])
        {
            var mm = Math.Round(targetM * 1000 / step) * step;
            if (mm * 1e-3 >= lowM && mm * 1e-3 <= highM)
                return Math.Round(mm, 2);
        }

        return targetM * 1000;
    }
}
