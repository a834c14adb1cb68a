using Mastwright.Numerics.Dense;

namespace Mastwright.Numerics.Tests.Dense;

public class ComplexSolverTests
{
    [Theory]
    [InlineData(3, 10)]
    [InlineData(100, 1e2)]
    [InlineData(400, 1e4)]
    public void Solve_ReachesDoubleAccuracyThroughSinglePrecision(int n, double condition)
    {
        var a = Samples.Conditioned(n, condition, 1);
        var b = Samples.RandomVector(n, 2);

        var outcome = ComplexSolver.Solve(a, b);

        Assert.Equal(SolveRoute.SingleRefined, outcome.Route);
        Assert.InRange(Samples.BackwardError(a, outcome.Require(), b), 0, 4 * Math.Sqrt(n) * 1.1e-16);
    }

    [Theory]
    [InlineData(VectorPath.Bits512, 500)]
    [InlineData(VectorPath.Bits256, 333)]
    [InlineData(VectorPath.Portable, 200)]
    public void Solve_WorksOnEveryInstructionSet(VectorPath path, int n)
    {
        var a = ComplexMatrix.From(Samples.Random(n, 21));
        var b = Samples.RandomVector(n, 22);

        var outcome = ComplexSolver.Solve(a, b, new LuOptions(2, Path: path));

        Assert.Equal(SolveRoute.SingleRefined, outcome.Route);
        Assert.InRange(Samples.BackwardError(a, outcome.Require(), b), 0, 4 * Math.Sqrt(n) * 1.1e-16);
    }

    [Fact]
    public void Solve_FallsBackToDoubleByItselfAndSaysWhy()
    {
        var a = Samples.Conditioned(150, 1e11, 1);
        var b = Samples.RandomVector(150, 2);

        var outcome = ComplexSolver.Solve(a, b);

        Assert.Equal(SolveRoute.Double, outcome.Route);
        Assert.Contains("single precision", outcome.FellBackBecause);
        Assert.InRange(Samples.BackwardError(a, outcome.Require(), b), 0, 4 * Math.Sqrt(150) * 1.1e-16);
    }

    [Theory]
    [InlineData(1e-200)]
    [InlineData(1e200)]
    public void Solve_IsIndifferentToTheScaleOfTheMatrix(double scale)
    {
        var elements = Samples.Random(50, 9);
        var a = ComplexMatrix.From(elements);
        for (var j = 0; j < 50; j++)
        {
            for (var i = 0; i < 50; i++)
                a[i, j] *= scale;
        }

        var outcome = ComplexSolver.Solve(a, Samples.RandomVector(50, 2));

        Assert.Equal(SolveRoute.SingleRefined, outcome.Route);
    }

    [Fact]
    public void Solve_OfASingularMatrixSaysSo()
    {
        var a = ComplexMatrix.From(Samples.Random(20, 9));
        a.RealColumn(4).Clear();
        a.ImaginaryColumn(4).Clear();

        var outcome = ComplexSolver.Solve(a, Samples.RandomVector(20, 2));

        Assert.IsType<LuOutcome.Singular>(outcome.Failure);
        Assert.Throws<SingularMatrixException>(() => outcome.Require());
    }
}
