using FsCheck.Xunit;
using Mastwright.Build.Tension;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Tension;

public class TensionMethodsTests
{
    private static readonly GuySpan Short = new("A1", 10, 15, 1.766, 3.73e6);
    private static readonly GuySpan Long = new("B2", 60, 80, 1.766, 3.73e6);

    private static TensionEstimate Value(Reading<TensionEstimate> reading)
    {
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings));
        return reading.Value!;
    }

    private static Trail Wanted(double n) => Trail.Given("wanted tension", "Ta", n, QuantityKind.Force, Source.DesignFile);

    [Fact]
    public void A_taut_string_follows_its_closed_form()
    {
        // T 3000 N, w 1.766 N/m, L 18.0278 m: one return 0.279349 s, f1 3.579752 Hz.
        Assert.Equal(3000, Value(TensionMethods.FromPulse(Short, 10, 2.79349)).TautString.Value, 0.05);
        Assert.Equal(3000, Value(TensionMethods.FromPitch(Short, 3.579752)).TautString.Value, 0.05);
        Assert.Equal(3000, Value(TensionMethods.FromSwing(Short, 20, 20 / 3.579752)).TautString.Value, 0.05);
    }

    [Fact]
    public void The_pulse_rule_in_pounds_comes_out()
    {
        // 100 ft of guy weighing 56.6 lb per 250 ft, one return in 0.75 s: 500.4 lb (public forum derivation, recomputed).
        var foot = 0.3048;
        var pound = 4.4482216152605;
        var span = new GuySpan("x", 80 * foot, 60 * foot, 56.6 / 250 * pound / foot, 3e6);
        Assert.Equal(500.4, Value(TensionMethods.FromPulse(span, 1, 0.75)).TautString.Value / pound, 0.4);
    }

    [Property(MaxTest = 40)]
    public bool Every_target_read_back_gives_the_tension_it_was_made_for(int seed)
    {
        var random = new Random(seed);
        var span = GuyCurveTests.RandomSpan(random);
        if (random.Next(2) == 0) span = span with { Masses = [new(0.3, 1.0), new(0.7, 0.5)] };
        var wanted = Math.Min(span.SpreadWeightNPerM * span.ChordM * (4 + (100 * random.NextDouble())), 0.01 * span.AxialStiffnessN);
        var options = new TargetOptions(SidePullDistanceM: 1 + (span.ChordM * 0.2 * random.NextDouble()));
        var targets = TensionTargets.For(span, Wanted(wanted), options).Value!;
        var mode = options.PitchMode;
        TensionEstimate[] back =
        [
            Value(TensionMethods.FromPulse(span, options.Returns, targets.PulseTime.Value)),
            Value(TensionMethods.FromSwing(span, options.Swings, targets.SwingTime.Value)),
            Value(TensionMethods.FromPitch(span, targets.TunedPitch.Value, mode)),
            Value(TensionMethods.FromSag(span, targets.MidSag.Value)),
            Value(TensionMethods.FromTangent(span, targets.TangentIntercept.Value)),
            Value(TensionMethods.FromGauge(span, targets.GaugeReading.Value)),
            Value(TensionMethods.FromSidePull(span, options.SidePullDistanceM, options.SidePullN, targets.SidePullDeflection.Value)),
        ];
        return back.All(b => Math.Abs(b.AtAnchor.Value - wanted) < 1e-5 * wanted);
    }

    [Fact]
    public void A_taut_guy_needs_little_correction_and_a_slack_one_much()
    {
        // Between the mean tension and the tension at the anchor lies half the weight of the guy's rise; and the string
        // rule with the mass of unstretched strand over the stretched chord reads high by the strain T/EA.
        var taut = TensionTargets.For(Short, Wanted(3000)).Value!;
        var string1 = Value(TensionMethods.FromPulse(Short, 10, taut.PulseTime.Value)).TautString.Value;
        var mean = 3000 + (1.766 * 15 / 2);
        Assert.Equal(mean * (1 + (mean / 3.73e6)), string1, 0.1);
        var slack = TensionTargets.For(Long, Wanted(250)).Value!;
        var string2 = Value(TensionMethods.FromPulse(Long, 10, slack.PulseTime.Value)).TautString.Value;
        Assert.True(string2 > 1.2 * 250);
    }

    [Fact]
    public void Correction_and_trail_name_what_went_in()
    {
        var estimate = Value(TensionMethods.FromPulse(Short, 10, 2.8));
        Assert.Contains(estimate.AtAnchor.Inputs, i => i.Symbol == "t");
        Assert.Contains(estimate.AtAnchor.Inputs, i => i.Symbol == "EA");
        Assert.Equal(estimate.AtAnchor.Value * 2 * 0.1 / 2.8, estimate.UncertaintyN, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_reading_that_is_no_reading_is_refused(double time) =>
        Assert.Equal("tension-input", Assert.Single(TensionMethods.FromPulse(Short, 10, time).Errors).Code);

    [Theory]
    [InlineData(100)]
    [InlineData(0.001)]
    public void A_reading_no_guy_could_give_is_refused(double time) =>
        Assert.Equal("tension-out-of-reach", Assert.Single(TensionMethods.FromPulse(Short, 1, time).Errors).Code);

    [Theory]
    [InlineData(440, "A4")]
    [InlineData(110, "A2")]
    [InlineData(261.6256, "C4")]
    [InlineData(113, "A2 +47 cents")]
    [InlineData(27.5, "A0")]
    public void Notes_have_their_usual_names(double hz, string name) => Assert.Equal(name, Pitch.Nearest(hz));

    [Fact]
    public void A_table_runs_over_guys_temperatures_and_winds()
    {
        double[,,] tensions = { { { 3200, 3300 }, { 3250, 3350 } }, { { 3000, 3100 }, { 3050, 3150 } } };
        var table = TensionTable.Build([Short, Short with { Name = "A2" }], [263.15, 293.15], [0, 5], tensions, Source.DesignFile).Value!;
        Assert.Equal(8, table.Rows.Length);
        Assert.Equal(3100, table.AnchorTensionN("A1", 278.15)!.Value, 1e-9);
        Assert.Equal(3350, table.AnchorTensionN("A2", 263.15, 5)!.Value, 1e-9);
        Assert.Null(table.AnchorTensionN("A1", 200));
        // Tighter guys throw the pulse back sooner.
        Assert.True(table.Rows[0].Targets.PulseTime.Value < table.Rows[2].Targets.PulseTime.Value);
    }

    [Fact]
    public void Between_fixed_pins_warmth_slackens_by_EA_alpha()
    {
        // A guy between fixed pins loses EA α ΔT/(1 + λ²/12) of tension (Ernst 1965, from memory), λ² 0.0425 here.
        var solver = TensionTable.StiffMast([Short], [3000], 283.15, 12e-6, 0, [15]);
        Assert.Equal(3000 - (3.73e6 * 12e-6 * 10 / (1 + (0.04252 / 12))), solver(293.15, 0)[0].Value, 0.5);
        // Strand and mast of one material: the triangle keeps its shape but for the ground, which does not grow.
        var grown = TensionTable.StiffMast([Short], [3000], 283.15, 12e-6, 12e-6, [15]);
        var share = 10.0 * 10 / ((10 * 10) + (15 * 15));
        Assert.Equal(3000 - (3.73e6 * 12e-6 * 10 * share / (1 + (0.04252 / 12))), grown(293.15, 0)[0].Value, 0.5);
    }
}
