using Mastwright.Numerics.Banded;

namespace Mastwright.Numerics.Tests.Banded;

public class BandTests
{
    [Fact]
    public void Solve_LeavesAResidualOfRoundOff()
    {
        var (k, _) = Pair();
        var b = Enumerable.Range(0, 40).Select(i => Math.Sin(i)).ToArray();
        var ldl = BandLdl.TryFactor(k, out var failed);
        Assert.Equal(-1, failed);
        var r = k.Multiply(ldl!.Solve(b)).Zip(b, (p, q) => Math.Abs(p - q)).Max();
        Assert.InRange(r, 0, 1e-12);
    }

    [Fact]
    public void NegativePivots_CountNegativeEigenvalues()
    {
        // SciPy eigh of the same matrices (scripts/library_values.py): one below 0, 34 below 2.
        var (k, m) = Pair();
        Assert.Equal(1, BandEigenvalues.CountBelow(k, m, 0));
        Assert.Equal(34, BandEigenvalues.CountBelow(k, m, 2));
        Assert.Equal(40, BandEigenvalues.CountBelow(k, m, 100));
    }

    [Theory]
    [InlineData(0, -0.11615316985499327)]
    [InlineData(1, 0.16804642544631326)]
    [InlineData(5, 0.5074519031277142)]
    [InlineData(39, 2.245206560406892)]
    public void TryFind_MatchesSciPy(int index, double eigenvalue)
    {
        var (k, m) = Pair();
        Assert.Equal(eigenvalue, BandEigenvalues.TryFind(k, m, index, -10, 10)!.Value, 1e-10);
        Assert.Null(BandEigenvalues.TryFind(k, m, index, 5, 10));
    }

    [Fact]
    public void PinnedColumn_BucklesAtEulersLoad()
    {
        // Cubic beam elements, K - P G, pinned ends: P = π² E I / L² (Euler), from above by the method's nature.
        const int Elements = 16;
        const double H = 1.0 / Elements;
        var k = new SymmetricBand(2 * Elements, 3);
        var g = new SymmetricBand(2 * Elements, 3);
        double[,] ke = { { 12, 6 * H, -12, 6 * H }, { 6 * H, 4 * H * H, -6 * H, 2 * H * H }, { -12, -6 * H, 12, -6 * H }, { 6 * H, 2 * H * H, -6 * H, 4 * H * H } };
        double[,] ge = { { 36, 3 * H, -36, 3 * H }, { 3 * H, 4 * H * H, -3 * H, -H * H }, { -36, -3 * H, 36, -3 * H }, { 3 * H, -H * H, -3 * H, 4 * H * H } };

        // Unknowns: rotation at the foot, deflection and rotation at each inner node, rotation at the top.
        int Place(int node, bool rotation) => rotation ? (node == Elements ? (2 * Elements) - 1 : 2 * node) : node is 0 or Elements ? -1 : (2 * node) - 1;
        for (var e = 0; e < Elements; e++)
        {
            int[] at = [Place(e, false), Place(e, true), Place(e + 1, false), Place(e + 1, true)];
            for (var i = 0; i < 4; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    if (at[i] < 0 || at[j] < 0)
                        continue;
                    k[at[i], at[j]] += ke[i, j] / (H * H * H);
                    g[at[i], at[j]] += ge[i, j] / (30 * H);
                }
            }
        }

        var load = BandEigenvalues.TryFind(k, g, 0, 1, 30)!.Value;
        Assert.InRange(load, Math.PI * Math.PI, Math.PI * Math.PI * 1.00001);
    }

    [Fact]
    public void TryFactor_NamesTheZeroPivot()
    {
        var k = new SymmetricBand(3, 1);
        k[0, 0] = 1;
        k[1, 0] = 1;
        k[1, 1] = 1;
        k[2, 2] = 1;
        Assert.Null(BandLdl.TryFactor(k, out var failed));
        Assert.Equal(1, failed);
    }

    private static (SymmetricBand K, SymmetricBand M) Pair()
    {
        var (k, m) = (new SymmetricBand(40, 3), new SymmetricBand(40, 3));
        for (var i = 0; i < 40; i++)
        {
            for (var j = Math.Max(0, i - 3); j <= i; j++)
            {
                k[i, j] = i == j ? 2 + (i * 0.1) : Math.Cos((3 * i) + (7 * j));
                m[i, j] = i == j ? 2 + (0.05 * i) : 0.1 * Math.Sin(i + (2 * j));
            }
        }

        return (k, m);
    }
}
