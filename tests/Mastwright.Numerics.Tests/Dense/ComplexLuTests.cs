using System.Numerics;
using Mastwright.Numerics.Dense;

namespace Mastwright.Numerics.Tests.Dense;

public class ComplexLuTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(47)]
    [InlineData(48)]
    [InlineData(49)]
    [InlineData(97)]
    [InlineData(150)]
    public void Solve_GivesWhatTextbookEliminationGives(int n)
    {
        var a = Samples.Random(n, n);
        var b = Samples.RandomVector(n, n + 1);
        var expected = PlainLu.Solve(a, b);

        var x = ComplexLu.Factor(ComplexMatrix.From(a)).Require().Solve(b);

        var scale = expected.Max(z => z.Magnitude);
        Assert.All(x.Zip(expected), p => Assert.True((p.First - p.Second).Magnitude < 1e-10 * scale));
    }

    [Theory]
    [InlineData(300, VectorPath.Widest, 2)]
    [InlineData(301, VectorPath.Widest, 1)]
    [InlineData(500, VectorPath.Bits256, 2)]
    [InlineData(333, VectorPath.Portable, 2)]
    [InlineData(640, VectorPath.Widest, 3)]
    [InlineData(1025, VectorPath.Widest, 2)]
    public void Solve_LeavesABackwardErrorOfRoundOff(int n, VectorPath path, int threads)
    {
        var a = ComplexMatrix.From(Samples.Random(n, n));
        var b = Samples.RandomVector(n, n + 1);

        var x = ComplexLu.Factor(a, new LuOptions(threads, Path: path)).Require().Solve(b);

        Assert.InRange(Samples.BackwardError(a, x, b), 0, 20 * 1.1e-16);
    }

    [Fact]
    public void Factor_GivesTheSameBitsForAnyNumberOfThreads()
    {
        var a = ComplexMatrix.From(Samples.Random(400, 11));
        var b = Samples.RandomVector(400, 12);

        var x = (int[])[1, 2, 4];
        var solutions = x.Select(threads => ComplexLu.Factor(a, new LuOptions(threads)).Require().Solve(b)).ToArray();

        Assert.Equal(solutions[0], solutions[1]);
        Assert.Equal(solutions[0], solutions[2]);
    }

    [Theory]
    [InlineData(VectorPath.Widest)]
    [InlineData(VectorPath.Bits256)]
    [InlineData(VectorPath.Portable)]
    public void Factor_StaysAccurateOnWilkinsonsMatrixOfGrowth(VectorPath path)
    {
        // J. H. Wilkinson 1961: partial pivoting makes the last column double at every step, so 30 of 53 bits are spent.
        const int N = 30;
        var a = new ComplexMatrix(N, N);
        for (var i = 0; i < N; i++)
        {
            for (var j = 0; j <= i; j++)
                a[i, j] = i == j ? 1 : -1;
            a[i, N - 1] = 1;
        }

        var b = Samples.RandomVector(N, 3);
        var lu = ComplexLu.Factor(a, new LuOptions(Path: path)).Require();
        Assert.InRange(Samples.BackwardError(a, lu.Solve(b), b), 0, Math.ScaleB(1, N - 53));
        Assert.InRange(Samples.BackwardError(a, lu.SolveRefined(a, b).X, b), 0, 20 * 1.1e-16);
    }

    [Fact]
    public void SolveAdjoint_SolvesWithTheConjugateTranspose()
    {
        var a = Samples.Random(75, 3);
        var b = Samples.RandomVector(75, 4);
        var adjoint = new Complex[75, 75];
        for (var i = 0; i < 75; i++)
        {
            for (var j = 0; j < 75; j++)
                adjoint[i, j] = Complex.Conjugate(a[j, i]);
        }

        var x = ComplexLu.Factor(ComplexMatrix.From(a)).Require().SolveAdjoint(b);

        Assert.InRange(Samples.BackwardError(ComplexMatrix.From(adjoint), x, b), 0, 20 * 1.1e-16);
    }

    [Theory]
    [InlineData(1, VectorPath.Widest, 210)]
    [InlineData(17, VectorPath.Widest, 210)]
    [InlineData(17, VectorPath.Bits256, 95)]
    [InlineData(61, VectorPath.Portable, 210)]
    [InlineData(61, VectorPath.Widest, 33)]
    [InlineData(205, VectorPath.Widest, 100)]
    public void SolveMany_SolvesEveryColumnLikeSolve(int count, VectorPath path, int n)
    {
        var lu = ComplexLu.Factor(ComplexMatrix.From(Samples.Random(n, 1)), new LuOptions(Path: path)).Require();
        var columns = Enumerable.Range(0, count).Select(j => Samples.RandomVector(n, 100 + j)).ToArray();

        var x = lu.SolveMany(ComplexMatrix.FromColumns(columns));

        for (var j = 0; j < columns.Length; j++)
        {
            var expected = lu.Solve(columns[j]);
            Assert.All(x.GetColumn(j).Zip(expected), p => Assert.True((p.First - p.Second).Magnitude < 1e-11));
        }
    }

    [Fact]
    public void Factor_KeepsTheMatrixUnlessToldToOverwriteIt()
    {
        var a = ComplexMatrix.From(Samples.Random(60, 5));
        var before = a.GetColumn(17);

        ComplexLu.Factor(a).Require();
        Assert.Equal(before, a.GetColumn(17));

        ComplexLu.Factor(a, new LuOptions(Overwrite: true)).Require();
        Assert.Equal((1, 1), (a.Rows, a.Columns));
    }

    [Theory]
    [InlineData(5, 2)]
    [InlineData(130, 77)]
    [InlineData(300, 299)]
    public void Factor_NamesTheColumnOfASingularMatrix(int n, int column)
    {
        var a = ComplexMatrix.From(Samples.Random(n, 6));
        a.RealColumn(column).Clear();
        a.ImaginaryColumn(column).Clear();

        var outcome = ComplexLu.Factor(a);

        Assert.Equal(column, Assert.IsType<LuOutcome.Singular>(outcome).Column);
        Assert.Equal(column, Assert.Throws<SingularMatrixException>(() => outcome.Require()).Column);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Factor_NamesTheColumnOfAnUndefinedElement(double value)
    {
        var a = ComplexMatrix.From(Samples.Random(40, 6));
        a[3, 29] = new(0, value);

        Assert.Equal(29, Assert.IsType<LuOutcome.NotFinite>(ComplexLu.Factor(a)).Column);
    }

    [Theory]
    [InlineData(1e3)]
    [InlineData(1e8)]
    public void ConditionEstimate_IsALowerBoundWithinAFactorThree(double condition)
    {
        var a = Samples.Conditioned(120, condition, 3);
        var lu = ComplexLu.Factor(a).Require();
        var inverse = lu.SolveMany(ComplexMatrix.Identity(120));
        var exact = a.OneNorm() * inverse.OneNorm();

        Assert.InRange(lu.ConditionEstimate, exact / 3, exact * (1 + 1e-6));
    }

    [Fact]
    public void SolveRefined_ReachesRoundOffOnAnIllConditionedMatrix()
    {
        var a = Samples.Conditioned(200, 1e9, 3);
        var b = Samples.RandomVector(200, 8);

        var x = ComplexLu.Factor(a).Require().SolveRefined(a, b);

        Assert.True(x.Converged);
        Assert.InRange(Samples.BackwardError(a, x.X, b), 0, 4 * Math.Sqrt(200) * 1.1e-16);
    }

    [Fact]
    public void Factor_StopsWhenCancelled()
    {
        var a = ComplexMatrix.From(Samples.Random(200, 6));
        using var source = new CancellationTokenSource();
        source.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() => ComplexLu.Factor(a, null, source.Token));
    }

    [Fact]
    public void MemoryEstimate_CoversMatrixAndFactor()
    {
        var memory = DenseMemory.ForFactor(4000);

        Assert.InRange(memory.MatrixBytes, 4000L * 4000 * 16, 4000L * 4000 * 17);
        Assert.True(memory.FactorBytes >= memory.MatrixBytes);
        Assert.False(DenseMemory.ForFactor(1_000_000).Fits);
    }
}
