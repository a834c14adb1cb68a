using Mastwright.Numerics.RootFinding;

namespace Mastwright.Numerics.Tests.RootFinding;

public class RootTests
{
    [Fact]
    public void TryBracketed_FindsTheRoot()
    {
        // The Dottie number, cos x = x.
        var r = Roots.TryBracketed(x => Math.Cos(x) - x, 0, 1);
        Assert.True(r.Found);
        Assert.Equal(0.7390851332151607, r.X, 1e-12);
        Assert.Equal(2, Roots.Bracketed(x => x - 2, 5, 2));
    }

    [Fact]
    public void TryBracketed_SaysWhyNot()
    {
        Assert.Equal(RootFailure.NoSignChange, Roots.TryBracketed(x => 1 + (x * x), -1, 1).Failure);
        Assert.Equal(RootFailure.NotFinite, Roots.TryBracketed(x => 1 / x, 0, 1).Failure);
        Assert.Throws<ArithmeticException>(() => Roots.Bracketed(x => 1 + (x * x), -1, 1));
    }

    [Fact]
    public void Scan_FindsAllRootsAndNoPoles()
    {
        var roots = Roots.Scan(Math.Tan, -0.5, 10, 200);
        Assert.Equal(4, roots.Count);
        for (var i = 0; i < 4; i++)
            Assert.Equal(i * Math.PI, roots[i], 1e-10);
    }
}
