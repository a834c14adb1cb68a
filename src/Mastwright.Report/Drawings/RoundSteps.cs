namespace Mastwright.Report.Drawings;

/// <summary>Round numbers for scales: 1, 2, 2.5 and 5 times a power of ten. The one place where marks, rings and bars get theirs.</summary>
public static class RoundSteps
{
    // What a sum of rounded numbers may be off before it counts as too long for its step.
    private const double Slack = 1e-3;

    private static readonly double[] Steps = [1, 2, 2.5, 5, 10];
    private static readonly double[] Bars = [5, 2, 1, 0.5];

    /// <summary>The smallest round step that is not below a size.</summary>
    /// <param name="size">The size, above zero.</param>
    public static double AtLeast(double size) => Steps.Select(s => s * Power(size)).First(s => s >= size * (1 - Slack));

    /// <summary>The greatest round length for a bar, 1, 2 or 5 times a power of ten, that is not above a size.</summary>
    /// <param name="size">The size, above zero.</param>
    public static double AtMost(double size) => Bars.Select(s => s * Power(size)).First(s => s <= size * (1 + (Slack / 10)));

    /// <summary>Round marks that enclose a range, about so many steps apart.</summary>
    public static double[] Enclosing(double low, double high, int about = 5)
    {
        if (high - low < 1e-12 * Math.Max(1, Math.Abs(high)))
        {
            high = low + Math.Max(1, Math.Abs(low) * 0.1);
        }

        var step = AtLeast((high - low) / about);
        return Marks(Math.Floor((low / step) + 1e-9), Math.Ceiling((high / step) - 1e-9), step);
    }

    /// <summary>Round marks within a range, about so many steps apart; the range's start alone when it has no length.</summary>
    public static double[] Within(double low, double high, int about = 5)
    {
        var span = high - low;
        if (!(span > 0) || !double.IsFinite(span))
        {
            return [low];
        }

        var step = AtLeast(span / about);
        return Marks(Math.Ceiling((low / step) - 1e-9), Math.Floor((high / step) + 1e-9), step);
    }

    private static double[] Marks(double first, double last, double step) => [.. Enumerable.Range(0, Math.Max(0, 1 + (int)(last - first))).Select(i => (first + i) * step)];

    private static double Power(double size) => Math.Pow(10, Math.Floor(Math.Log10(size)));
}
