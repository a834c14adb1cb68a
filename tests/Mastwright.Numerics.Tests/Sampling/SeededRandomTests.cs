using Mastwright.Numerics.Sampling;

namespace Mastwright.Numerics.Tests.Sampling;

public class SeededRandomTests
{
    [Theory]
    [InlineData(42, 0, new ulong[] { 4540806433264105130, 7249376888367367666, 1981322806045522308, 9441508507294158916 })]
    [InlineData(20240229, 7, new ulong[] { 18231978874853536280, 5598210028651669048, 12269937108479277038, 12478083045222052685 })]
    public void NextBits_MatchesNumPysGenerator(ulong seed, ulong stream, ulong[] expected)
    {
        // numpy.random.PCG64 with the same state (scripts/library_values.py).
        var random = new SeededRandom(seed, stream);
        Assert.Equal(expected, expected.Select(_ => random.NextBits()).ToArray());
    }

    [Fact]
    public void NextNormal_HasTheMomentsOfTheNormalDistribution()
    {
        const int N = 200_000;
        var random = new SeededRandom(5);
        var z = Enumerable.Range(0, N).Select(_ => random.NextNormal()).ToArray();

        // Five standard errors of each moment.
        Assert.InRange(z.Average(), -5 / Math.Sqrt(N), 5 / Math.Sqrt(N));
        Assert.InRange(z.Average(v => v * v), 1 - (5 * Math.Sqrt(2.0 / N)), 1 + (5 * Math.Sqrt(2.0 / N)));
        Assert.InRange(z.Average(v => v * v * v * v), 3 - (5 * Math.Sqrt(96.0 / N)), 3 + (5 * Math.Sqrt(96.0 / N)));
        Assert.InRange(z.Count(v => v > 1.959963984540054) / (double)N, 0.025 - (5 * Math.Sqrt(0.025 / N)), 0.025 + (5 * Math.Sqrt(0.025 / N)));
    }

    [Fact]
    public void NextInt_IsEven()
    {
        var random = new SeededRandom(6);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
            counts[random.NextInt(7)]++;

        // Chi-squared with 6 degrees of freedom exceeds 22.46 once in a thousand (Abramowitz and Stegun, table 26.8).
        Assert.InRange(counts.Sum(c => (c - 10_000.0) * (c - 10_000.0) / 10_000), 0, 22.46);
    }
}
