using Mastwright.Analysis;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Sweeps;
using Mastwright.Model.Design;
using Mastwright.Report.Tune;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>Tuning from the command line: sweeps and turns.</summary>
public sealed class TuneCommandTests : IDisposable
{
    private static readonly string[] Line = ["--cable", "25 m, impedance=50 Ω, vf=0.66, loss=2.1 dB at=10 MHz", "--choke", "drain, 2.5 mH, 8 Ω"];

    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-tune-").FullName;
    private readonly string design;

    public TuneCommandTests()
    {
        design = Path.Combine(folder, "meadow.yaml");
        File.Copy(Repository.File("examples", "lattice-22m.yaml"), design);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static string Sample => Repository.File("examples", "lattice-22m-160m.s1p");

    [Fact]
    public async Task A_sweep_is_laid_over_the_prediction_fitted_kept_and_gives_the_next_setting()
    {
        var run = await Cli.Start(["sweep", design, Sample, .. Line, "--coil", "turns=24, diameter=120 mm, length=220 mm, wire=4 mm", "--keep", "--plot", Path.Combine(folder, "plot.svg"), "--temperature", "12 °C"]);
        var list = await Cli.Start("journal", "list", design, "--kind", "sweep");

        Assert.True(run.ExitCode == 0, run.Errors);
        Assert.Contains("81 points compared", run.Output);
        Assert.Contains("earth loss resistance", run.Output);
        Assert.Contains("Next setting of the network at 1.85 MHz", run.Output);
        Assert.Contains("Tap next", run.Output);
        Assert.Contains("locked out", run.Output);
        Assert.Contains("<svg", await File.ReadAllTextAsync(Path.Combine(folder, "plot.svg")));
        Assert.Contains("lattice-22m-160m.s1p", list.Output);
        Assert.Contains("81 points", list.Output);
    }

    /// <summary>A made-up sweep with known inputs and noiseless figures: the fit must bring them back.</summary>
    [Fact]
    public void The_fit_brings_back_the_inputs_a_sweep_was_made_with()
    {
        var station = DesignReader.Read(File.ReadAllText(design), "test", CatalogueNames.Of).Station!;
        var (prediction, _) = FeedPrediction.Of(station, 0, 1.8e6, 2.0e6, null, TestContext.Current.CancellationToken);
        var truth = prediction!.Design with { EarthLossOhm = 6.5, StrayF = prediction.Design.StrayF + 25e-12, HeightFactor = 1.012 };
        double[] hz = [.. Enumerable.Range(0, 41).Select(i => 1.8e6 + (i * 5000))];
        var cable = new Cable(50, 25, 0.66, 0.021, 10e6);
        var sweep = new ImpedanceSweep("made up", 50, [.. hz.Zip(prediction.FeedOhm(truth, hz), (f, z) => new SweepPoint(f, cable.SeenThrough(z, f)))]);

        var (answer, findings) = SweepTuning.Of(new SweepRequest(station, 0, new MeasuredSweep("made up", "", sweep, null), [cable], SweepFitInputs.Usual, station.Bands[0], new Dictionary<string, double>(), null), null, TestContext.Current.CancellationToken);

        Assert.Empty(findings);
        var fitted = answer!.Fit!.Parameters.ToDictionary(p => p.Parameter.Symbol, p => p.Value.Value);
        Assert.Equal(6.5, fitted["Rg"], 0.01);
        Assert.Equal(truth.StrayF, fitted["C"], 0.5e-12);
        Assert.Equal(1.012, fitted["k"], 0.0005);
        Assert.True(answer.Next!.SwrNow > 1.5);

        // The network is tuned to the load as made up, with lossy parts: nothing comes back.
        Assert.Equal(1, answer.Next.SwrNext, 0.001);
    }

    [Fact]
    public async Task A_reading_without_phase_is_compared_and_says_what_it_cannot()
    {
        var file = Path.Combine(folder, "swr.csv");
        await File.WriteAllTextAsync(file, "Frequency (MHz),SWR\n1.80,60\n1.85,50\n1.90,42\n1.95,35\n2.00,30\n");

        var run = await Cli.Start("sweep", design, file);

        Assert.True(run.ExitCode == 0, run.Errors);
        Assert.Contains("shift of the best match", run.Output);
        Assert.Contains("no phase", run.Output);
    }

    [Theory]
    [InlineData("Frequency,R,X\n1.8,10,-170\n", "does not say in which unit", new string[0])]
    [InlineData("Frequency (MHz),R,X\n1.8,10,-170\n1.9,11,-150\n2.0,12,-1", "no band", new[] { "--band", "80 metres" })]
    [InlineData("Frequency (MHz),R,X\n1.8,10,-170\n1.9,11,-150\n", "velocity factor cannot be", new[] { "--cable", "25 m, vf=66" })]
    [InlineData("Frequency (MHz),R,X\n1.8,10,-170\n1.9,11,-150\n", "cannot be fitted together", new[] { "--fit", "earth,conductivity" })]
    [InlineData("Frequency (MHz),R,X\n1.8,10,-170\n1.9,11,-150\n", "no part", new[] { "--present", "C9=100 pF" })]
    public async Task Bad_sweeps_and_options_are_clear_messages(string text, string message, string[] rest)
    {
        var file = Path.Combine(folder, "sweep.csv");
        await File.WriteAllTextAsync(file, text);

        var run = await Cli.Start(["sweep", design, file, .. rest]);

        Assert.Contains(message, (run.Errors + run.Output).ReplaceLineEndings(" "));
        Assert.DoesNotContain("   at ", run.Errors);
    }

    [Fact]
    public async Task A_half_written_sweep_is_used_as_far_as_it_goes_with_a_warning()
    {
        var text = await File.ReadAllTextAsync(Sample);
        var file = Path.Combine(folder, "cut.s1p");
        await File.WriteAllTextAsync(file, text[..text.LastIndexOf(' ', text.Length / 2)]);

        var run = await Cli.Start(["sweep", design, file, .. Line, "--fit", "none"]);

        Assert.True(run.ExitCode == 0, run.Errors);
        Assert.Contains("warning", run.Errors);
        Assert.Contains("points compared", run.Output);
    }

    /// <summary>Common practice, no source: guys that all pull alike and too little are all taken up alike, a little at a time.</summary>
    [Fact]
    public async Task Slack_guys_are_taken_up_and_set_guys_left_alone()
    {
        var slack = await Cli.Start("turns", design, "--measured", "1/north=1.5 kN, 1/south-east=1.5 kN, 1/south-west=1.5 kN, 2/north=2.6 kN, 2/south-east=2.6 kN, 2/south-west=2.6 kN");
        var set = await Cli.Start("turns", design, "--measured", "1/north=1.78 kN, 1/south-east=1.77 kN, 1/south-west=1.78 kN, 2/north=2.96 kN, 2/south-east=2.95 kN, 2/south-west=2.96 kN");

        Assert.Equal(0, slack.ExitCode);
        Assert.Contains("tighter", slack.Output);
        Assert.DoesNotContain("looser", slack.Output);
        Assert.DoesNotContain("still off", slack.Output);
        Assert.Contains("unlocked", slack.Output);
        Assert.Contains("Leave the turnbuckles alone", set.Output);
    }

    [Theory]
    [InlineData("1/north=1.5", "the unit is missing")]
    [InlineData("1/north", "not a name with a value")]
    [InlineData("3/north=1 kN", "has no guy")]
    [InlineData("1/north=1 kN, 1 north=2 kN", "is given twice")]
    public async Task Bad_measured_tensions_are_clear_messages(string measured, string message)
    {
        var run = await Cli.Start("turns", design, "--measured", measured);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(message, run.Errors);
    }
}
