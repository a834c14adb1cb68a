namespace Mastwright.Circuits.Match.Topologies;

/// <summary>The Q a three-element network is tried at: the least that works with a margin, and rounder values above it.</summary>
internal static class LoadedQ
{
    public static IEnumerable<double> Choices(double ratio)
    {
        var least = Math.Sqrt(Math.Max(ratio, 1 / ratio) - 1);
        yield return Math.Max(1, least * 1.15);
        foreach (var q in new[] { 3.0, 6.0 })
            if (q > least * 1.4 && q > 1.2)
                yield return q;
    }
}
