using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using BandSweep = Mastwright.Fields.Solving.BandSweep;

namespace Mastwright.Analysis.Tune;

/// <summary>The inputs of the predicted feed impedance that a sweep can correct.</summary>
/// <param name="ConductivitySPerM">Conductivity of the soil, S/m.</param>
/// <param name="RelativePermittivity">Relative permittivity of the soil.</param>
/// <param name="EarthLossOhm">Earth loss resistance at the base, the same over the band; null to have it computed from soil and radials.</param>
/// <param name="StrayF">Capacitance across the base, insulator included, farads.</param>
/// <param name="HeightFactor">Electrical size of the mast over its drawn size: 1 as drawn. Z(f) becomes Z(k·f).</param>
public sealed record FeedInputs(double ConductivitySPerM, double RelativePermittivity, double? EarthLossOhm, double StrayF, double HeightFactor);

/// <summary>
/// The impedance at the feed terminal of a mast over a band, quick to ask again with other inputs: the solved currents are a
/// rational function of frequency, the field along the ground is remembered, and only soil, strays and size are put in anew.
/// See docs/theory/feed-prediction.md.
/// </summary>
public sealed class FeedPrediction
{
    /// <summary>Least electrical size that can be asked for.</summary>
    public const double LeastHeightFactor = 0.9;

    /// <summary>Greatest electrical size that can be asked for.</summary>
    public const double GreatestHeightFactor = 1.1;

    private const double NodesPerNaturalLog = 12;
    private const int FewestNodes = 5;
    private const int MostNodes = 45;

    private readonly BandSweep sweep;
    private readonly int feed;
    private readonly RadialScreen screen;
    private readonly ImmutableArray<RememberedField> fields;
    private (double Conductivity, double Permittivity, LoadTable Table)? last;

    private FeedPrediction(BandSweep sweep, int feed, RadialScreen screen, ImmutableArray<RememberedField> fields, FeedInputs design, double fromHz, double toHz) =>
        (this.sweep, this.feed, this.screen, this.fields, Design, FromHz, ToHz) = (sweep, feed, screen, fields, design, fromHz, toHz);

    /// <summary>Lower end of the band.</summary>
    public double FromHz { get; }

    /// <summary>Upper end of the band.</summary>
    public double ToHz { get; }

    /// <summary>The inputs as the design has them.</summary>
    public FeedInputs Design { get; }

    /// <summary>Number of frequencies at which the currents were solved exactly for the impedance.</summary>
    public int SolvedCount => sweep.SolvedHz.Length;

    /// <summary>Estimated relative error of the rational function between them.</summary>
    public double ErrorEstimate => sweep.ErrorEstimate;

    /// <summary>Solves a band.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">Which mast is fed, the others' bases open.</param>
    /// <param name="fromHz">Lower end.</param>
    /// <param name="toHz">Upper end; a single frequency is widened a little.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (FeedPrediction? Prediction, ImmutableArray<Finding> Findings) Of(
        Station station, int mastIndex, double fromHz, double toHz, IProgress<AnalysisStep>? progress, CancellationToken cancellation)
    {
        var mast = station.Masts[mastIndex];
        var model = WireModels.Of(station);
        progress?.Report(new AnalysisStep("Solving the currents over the band", 0.1));
        var sweep = BandSweep.Run(model, LeastHeightFactor * fromHz * 0.999, GreatestHeightFactor * toHz * 1.001, cancellation: cancellation);
        if (!sweep.HasValues)
        {
            return (null, sweep.Findings);
        }

        progress?.Report(new AnalysisStep("Solving the field along the ground", 0.6));
        var nodes = Nodes(fromHz, toHz);
        var solved = WireSolver.Sweep(model, nodes, null, cancellation);
        if (solved.Solutions.IsEmpty)
        {
            return (null, solved.Findings);
        }

        var soil = Soils.Of(station.Site);
        var design = new FeedInputs(soil.ConductivitySPerM, soil.RelativePermittivity, null, BandRun.BaseCapacitanceF(station, mast), 1);
        var screen = new RadialScreen(mast.Radials.Count, mast.Radials.LengthM, mast.Radials.WireDiameterM / 2, -mast.Radials.DepthM);
        var fields = solved.Solutions.Select(s => new RememberedField(BaseField.Of(s.DrivePower(1, mastIndex), mastIndex))).ToImmutableArray();
        var findings = sweep.Findings;
        if (!sweep.Converged)
        {
            findings = findings.Add(new Finding("prediction-rough", Severity.Warning,
                FormattableString.Invariant($"The prediction over the band is good to about {100 * sweep.ErrorEstimate:0.#} % only."), WayOut: "Compare a narrower band."));
        }

        return (new FeedPrediction(sweep, mastIndex, screen, fields, design, fromHz, toHz), findings);
    }

    /// <summary>Earth loss resistance at a frequency of the band for a soil, ohms.</summary>
    public double EarthLossOhm(double conductivitySPerM, double relativePermittivity, double frequencyHz)
    {
        if (last is not { } known || known.Conductivity != conductivitySPerM || known.Permittivity != relativePermittivity)
        {
            var soil = new Soil("fitted soil", relativePermittivity, conductivitySPerM);
            var rows = fields.Select(f => (f.FrequencyHz, RadialLoss.Estimate(soil, screen, f).Total.Value));
            last = known = (conductivitySPerM, relativePermittivity, new LoadTable([.. rows]));
        }

        return known.Table.At(frequencyHz);
    }

    /// <summary>Impedances at the feed terminal, strays across it, at frequencies of the band.</summary>
    public IReadOnlyList<Complex> FeedOhm(FeedInputs inputs, IReadOnlyList<double> frequenciesHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.HeightFactor, LeastHeightFactor, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(inputs.HeightFactor, GreatestHeightFactor, nameof(inputs));
        return [.. frequenciesHz.Select(f =>
        {
            var mast = MastOhm(inputs, f);
            return 1 / ((1 / mast) + new Complex(0, 2 * Math.PI * f * inputs.StrayF));
        })];
    }

    /// <summary>Impedance of the mast at its foot, earth loss in, before the strays.</summary>
    public Complex MastOhm(FeedInputs inputs, double frequencyHz) =>
        sweep.FeedImpedance(frequencyHz * inputs.HeightFactor, feed)
        + (inputs.EarthLossOhm ?? EarthLossOhm(inputs.ConductivitySPerM, inputs.RelativePermittivity, frequencyHz));

    private static double[] Nodes(double fromHz, double toHz)
    {
        var span = Math.Log(toHz / fromHz);
        var count = Math.Clamp(FewestNodes + (int)(NodesPerNaturalLog * span), FewestNodes, MostNodes);
        return [.. Enumerable.Range(0, count).Select(i => fromHz * Math.Exp(span * i / (count - 1)))];
    }

    // Straight lines in the logarithm: the loss is positive and changes by factors, not by steps.
    private sealed class LoadTable((double Hz, double Ohm)[] rows)
    {
        public double At(double hz)
        {
            var i = Math.Clamp(Array.FindLastIndex(rows, r => r.Hz <= hz), 0, rows.Length - 2);
            var share = Math.Log(hz / rows[i].Hz) / Math.Log(rows[i + 1].Hz / rows[i].Hz);
            return rows[i].Ohm * Math.Pow(rows[i + 1].Ohm / rows[i].Ohm, share);
        }
    }
}
