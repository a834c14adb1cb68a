using FsCheck.Xunit;
using Mastwright.Build.Tension;
using Mastwright.Build.Tests.Reference;
using Mastwright.Structure.Cables;

namespace Mastwright.Build.Tests.Tension;

/// <summary>
/// The curve against an independent root-finding solve of the same equations (SciPy), one of its cases confirmed there
/// by a boundary value problem.
/// </summary>
public class GuyCurveTests
{
    public static TheoryData<string, double, double, double, double, double, double, double, double, double> Guys => new()
    {
        // name, span, rise, L0, w, EA, H, T anchor, T mast, vertical sag at l/2
        { "taut", 10, 15, 18.01323, 1.766, 3.73e6, 1671.471, 3000.086, 3026.554, 0.02379 },
        { "taut, flatter", 12, 14, 18.424247, 1.766, 3.73e6, 1960.455, 3000.100, 3024.804, 0.02490 },
        { "long", 18, 28, 33.259816, 1.766, 3.73e6, 1635.594, 3000.039, 3049.447, 0.08080 },
        { "slack", 18, 28, 33.40, 1.766, 3.73e6, 60.084, 89.358, 138.804, 2.19603 },
        { "slack, heavy", 30, 40, 50.10, 4.0, 6.5e6, 322.519, 464.857, 624.843, 2.32340 },
    };

    [Theory]
    [MemberData(nameof(Guys))]
    public void The_curve_of_a_given_length_has_the_reference_tensions(string name, double l, double h, double l0, double w, double ea, double horizontal, double anchor, double mast, double sag)
    {
        var curve = GuyCurve.ForUnstretched(new(name, l, h, w, ea), l0)!;
        Assert.Equal(horizontal, curve.HorizontalN, 6e-4);
        Assert.Equal(anchor, curve.AtAnchorN, 6e-4);
        Assert.Equal(mast, curve.AtMastN, 6e-4);
        Assert.Equal(sag, curve.MidSagM, 6e-6);
    }

    [Property]
    public bool The_curve_ends_at_its_pins_and_balances_its_weight(int seed)
    {
        var span = RandomSpan(new Random(seed));
        var tension = Math.Min(span.SpreadWeightNPerM * span.ChordM * (2 + (200 * new Random(~seed).NextDouble())), 0.01 * span.AxialStiffnessN);
        var curve = GuyCurve.ForAnchorTension(span, tension)!;
        var (x, y) = curve.PointAt(curve.UnstretchedM);
        return Math.Abs(x - span.SpanM) < 1e-8 && Math.Abs(y - span.RiseM) < 1e-8
            && Math.Abs(curve.AtAnchorN - tension) < 1e-6 * tension
            && Math.Abs(curve.VerticalAtMastN - curve.VerticalAtAnchorN - (span.SpreadWeightNPerM * curve.UnstretchedM)) < 1e-6;
    }

    [Property(MaxTest = 60)]
    public bool The_curve_is_the_one_the_structural_solver_hangs(int seed)
    {
        // Two ways to the same equations: there from a length, here from a tension.
        var random = new Random(seed);
        var span = RandomSpan(random);
        var ours = GuyCurve.ForAnchorTension(span, Math.Min(span.SpreadWeightNPerM * span.ChordM * (2 + (100 * random.NextDouble())), 0.01 * span.AxialStiffnessN))!;
        var solved = ElasticCatenary.Solve(new(span.SpanM, 0, span.RiseM), ours.UnstretchedM, span.AxialStiffnessN, new(0, 0, -span.WeightNPerM));
        return Math.Abs(solved.StartTensionN - ours.AtAnchorN) < 1e-6 * ours.AtAnchorN && Math.Abs(solved.EndTensionN - ours.AtMastN) < 1e-6 * ours.AtMastN;
    }

    [Theory]
    [InlineData(18, 28, 33.259816, 1.766, 3.73e6, 3000)]
    [InlineData(18, 28, 33.40, 1.766, 3.73e6, 110)]
    [InlineData(30, 40, 50.10, 4.0, 6.5e6, 540)]
    public void Pulse_time_agrees_with_a_boundary_value_solve(double l, double h, double l0, double w, double ea, double guess)
    {
        var outside = SciPy.Run("pulse_time.py", new { l, h, L0 = l0, w, EA = ea, guess });
        var curve = GuyCurve.ForUnstretched(new("guy", l, h, w, ea), l0)!;
        Assert.Equal(outside.GetProperty("anchor").GetDouble(), curve.AtAnchorN, 1e-3);
        var expected = outside.GetProperty("return").GetDouble();
        Assert.Equal(expected, curve.PulseReturnS, expected * 1e-6);
    }

    [Theory]
    [InlineData(18, 28, 33.259816, 1.766, 3.73e6, 0.001, 0.002)]
    [InlineData(18, 28, 33.28, 1.766, 3.73e6, 0.001, 0.01)]
    [InlineData(30, 5, 30.405, 4.0, 6.5e6, 0.001, 0.005)]
    public void Modes_agree_with_a_chain_of_masses(double l, double h, double l0, double w, double ea, double sideways, double upAndDown)
    {
        var curve = GuyCurve.ForUnstretched(new("guy", l, h, w, ea), l0)!;
        var outside = SciPy.Run("chain_modes.py", new { l, h, L0 = l0, w, EA = ea, n = 80, start = Start(curve, 80), masses = Array.Empty<double[]>() });
        for (var mode = 1; mode <= 3; mode++)
        {
            var side = outside.GetProperty("side")[mode - 1].GetDouble();
            Assert.Equal(side, StringModes.FrequencyHz(curve, mode), side * sideways);
        }
        // The lowest in-plane mode is the first symmetric one while λ² stays below 4π².
        Assert.True(StringModes.SagNumber(curve) < 39);
        var plane = outside.GetProperty("plane")[0].GetDouble();
        Assert.Equal(plane, StringModes.FrequencyHz(curve, 1, SwingPlane.UpAndDown), plane * upAndDown);
    }

    [Fact]
    public void Insulators_slow_a_guy_as_the_chain_of_masses_says()
    {
        var span = new GuySpan("guy", 18, 28, 1.766, 3.73e6, [new(0.25, 0.6), new(0.5, 0.6), new(0.75, 0.6)]);
        var curve = GuyCurve.ForAnchorTension(span, 2000)!;
        var outside = SciPy.Run("chain_modes.py", new { l = 18, h = 28, L0 = curve.UnstretchedM, w = 1.766, EA = 3.73e6, n = 80, start = Start(curve, 80), masses = new[] { new[] { 0.25, 0.6 }, [0.5, 0.6], [0.75, 0.6] } });
        var side = outside.GetProperty("side")[0].GetDouble();
        // The chain hangs with the weights where they are; the curve spreads their weight (not their inertia) evenly.
        Assert.Equal(side, StringModes.FrequencyHz(curve, 1), side * 0.003);
    }

    [Theory]
    [InlineData(.05, 1.002051)]
    [InlineData(.5, 1.020312)]
    [InlineData(1, 1.040200)]
    [InlineData(5, 1.186499)]
    [InlineData(10, 1.345125)]
    [InlineData(20, 1.609536)]
    [InlineData(39.47841760435743, 2)] // 4π²: the crossover
    [InlineData(60, 2.290962)]
    public void Sag_stiffens_the_first_mode_as_tabulated(double sagNumber, double factor) =>
        // Roots of the frequency equation of Irvine, Cable Structures, 1981, ch. 3 (equation from memory, roots computed with SciPy).
        Assert.Equal(factor, StringModes.SagFactor(sagNumber, 1), 6e-6);

    // Only where the chain's own search for equilibrium starts.
    private static double[][] Start(GuyCurve curve, int n) =>
        [.. Enumerable.Range(1, n - 1).Select(i => curve.PointAt(curve.UnstretchedM * i / n)).Select(p => new[] { p.X, 0, p.Y })];

    internal static GuySpan RandomSpan(Random random) => new(
        "guy", 4 + (40 * random.NextDouble()), -3 + (60 * random.NextDouble()), 0.5 + (5 * random.NextDouble()), 1e6 + (1e7 * random.NextDouble()));
}
