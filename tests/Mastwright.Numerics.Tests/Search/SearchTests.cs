using Mastwright.Numerics.Search;

namespace Mastwright.Numerics.Tests.Search;

/// <summary>Textbook objectives with known minima: Rosenbrock (1, ..., 1), Rastrigin 0 at the origin, Branin 0.397887.</summary>
public class SearchTests
{
    [Fact]
    public void NelderMead_FollowsTheValleyOfRosenbrock()
    {
        var r = NelderMead.Minimize(x => (100 * Math.Pow(x[1] - (x[0] * x[0]), 2)) + Math.Pow(1 - x[0], 2), [-1.2, 1]);
        Assert.True(r.Converged);
        Assert.All(r.X, v => Assert.Equal(1, v, 1e-6));
    }

    [Fact]
    public void NelderMead_StopsAtABound()
    {
        var r = NelderMead.Minimize(x => Math.Pow(x[0] - 3, 2) + Math.Pow(x[1] + 1, 2), [0, 0], new() { Lower = [-1, 0.5], Upper = [2, 5] });
        Assert.Equal(2, r.X[0], 1e-6);
        Assert.Equal(0.5, r.X[1], 1e-6);
    }

    [Fact]
    public void NelderMead_KeepsOutOfForbiddenGround()
    {
        var r = NelderMead.Minimize(x => x[0] <= 0 ? double.NaN : x[0] - Math.Log(x[0]), [0.2]);
        Assert.Equal(1, r.X[0], 1e-4);
    }

    [Fact]
    public void DifferentialEvolution_FindsTheBottomOfRastrigin()
    {
        double F(ReadOnlySpan<double> x)
        {
            var sum = 0.0;
            foreach (var v in x)
                sum += 10 + (v * v) - (10 * Math.Cos(2 * Math.PI * v));
            return sum;
        }

        var r = DifferentialEvolution.Minimize(F, [-5.12, -5.12, -5.12], [5.12, 5.12, 5.12]);
        Assert.InRange(r.Value, 0, 1e-9);
    }

    [Fact]
    public void DifferentialEvolution_RepeatsItselfAndFindsBranin()
    {
        double F(ReadOnlySpan<double> x) =>
            Math.Pow(x[1] - (5.1 / (4 * Math.PI * Math.PI) * x[0] * x[0]) + (5 / Math.PI * x[0]) - 6, 2) + (10 * (1 - (1 / (8 * Math.PI))) * Math.Cos(x[0])) + 10;
        var a = DifferentialEvolution.Minimize(F, [-5, 0], [10, 15], new() { Seed = 9 });
        var b = DifferentialEvolution.Minimize(F, [-5, 0], [10, 15], new() { Seed = 9 });
        Assert.Equal(0.39788735772973816, a.Value, 1e-9);
        Assert.Equal(a.X, b.X);
    }
}
