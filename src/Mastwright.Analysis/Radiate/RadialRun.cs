using System.Collections.Immutable;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Radiate;

/// <summary>A layout of radials with what it gives.</summary>
/// <param name="Count">Number of radials.</param>
/// <param name="LengthM">Length of each, m.</param>
/// <param name="Efficiency">Efficiency of the mast over it.</param>
public sealed record RadialChoice(int Count, double LengthM, double Efficiency)
{
    /// <summary>Wire in all, m.</summary>
    public double WireM => Count * LengthM;
}

/// <summary>Best efficiency against total wire in one soil.</summary>
/// <param name="Soil">The soil in words.</param>
/// <param name="Best">The best layout for each amount of wire, rising.</param>
public sealed record RadialCurve(string Soil, ImmutableArray<RadialChoice> Best);

/// <summary>How many radials and how long, for one mast on one band.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="PresentWireM">Wire in the radials of the design, m.</param>
/// <param name="Curves">Efficiency against wire, by the estimate, soil by soil.</param>
/// <param name="SameWire">Layouts of the present amount of wire, solved exactly, or by the estimate where the exact field along the ground is no judge.</param>
/// <param name="Exact">Whether those were solved exactly.</param>
public sealed record RadialBand(string Mast, Band Band, double PresentWireM, ImmutableArray<RadialCurve> Curves, ImmutableArray<RadialChoice> SameWire, bool Exact);

/// <summary>Elevated radials of one mast on one band: every layout solved exactly.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="PresentWireM">Wire in the radials of the design, m.</param>
/// <param name="HeightM">Their height, m.</param>
/// <param name="Choices">Layouts by amount of wire, then by number.</param>
/// <param name="ByField">Whether efficiency is judged by the field along the ground; else it is the share of the power sent to the sky.</param>
public sealed record ElevatedBand(string Mast, Band Band, double PresentWireM, double HeightM, ImmutableArray<RadialChoice> Choices, bool ByField);

/// <summary>How many radials and how long for an amount of wire.</summary>
public static class RadialRun
{
    private static readonly double[] ElevatedBudgets = [0.5, 1, 2, 4];
    private static readonly int[] ElevatedTimes = [1, 2, 4, 8];

    private static readonly int[] Counts = [6, 9, 15, 24, 30, 45, 60, 90, 120];
    private static readonly int[] SolvedCounts = [6, 15, 30, 60, 120];
    private static readonly double[] Budgets = [0.125, 0.25, 0.5, 1, 2, 4];
    private const double ShortestM = 1;

    /// <summary>The bands looked at: this many, the lowest, where the ground costs most.</summary>
    public const int Bands = 3;

    /// <summary>Every mast on its lowest bands.</summary>
    public static ImmutableArray<RadialBand> Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var answers = ImmutableArray.CreateBuilder<RadialBand>();
        var model = WireModels.Of(station);
        foreach (var band in station.Bands.OrderBy(b => b.FrequencyHz).Take(Bands))
        {
            if (WireSolver.Solve(model, band.FrequencyHz, null, cancellation).Solution is not { } perfect)
            {
                continue;
            }

            foreach (var (mast, feed) in station.Masts.Select((m, i) => (m, i)).Where(p => p.m.Radials.Lay != RadialLay.Elevated))
            {
                progress?.Report(new AnalysisStep($"Radials of mast {mast.Name} on {band.Title}", (double)answers.Count / (Bands * station.Masts.Length)));
                answers.Add(Of(station, mast, feed, band, perfect, cancellation));
            }
        }

        return answers.ToImmutable();
    }

    /// <summary>Every mast with elevated radials on its lowest bands.</summary>
    public static ImmutableArray<ElevatedBand> Elevated(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var answers = ImmutableArray.CreateBuilder<ElevatedBand>();
        foreach (var mast in station.Masts.Where(m => m.Radials.Lay == RadialLay.Elevated))
        {
            foreach (var band in station.Bands.OrderBy(b => b.FrequencyHz).Take(Bands))
            {
                progress?.Report(new AnalysisStep($"Elevated radials of mast {mast.Name} on {band.Title}", (double)answers.Count / (Bands * station.Masts.Length)));
                answers.Add(Elevated(station, mast, band, cancellation));
            }
        }

        return answers.ToImmutable();
    }

    private static ElevatedBand Elevated(Station station, Mast mast, Band band, CancellationToken cancellation)
    {
        var wire = WireM(mast);
        var guys = Math.Max(3, mast.Anchors.Length);
        var layouts = ElevatedBudgets.SelectMany(b => ElevatedTimes.Select(t => (N: t * guys, L: b * wire / (t * guys)))).Where(c => c.L >= ShortestM && c.L <= Longest(band.FrequencyHz, c.L)).ToList();
        var solved = new List<(RadialChoice Sky, double? Field)>();
        foreach (var (n, length) in layouts)
        {
            var laid = station with { Masts = [mast with { Radials = mast.Radials with { Count = n, LengthM = length, Shortened = [] } }], Groups = [] };
            var over = WireSolver.Solve(WireModels.Of(laid), band.FrequencyHz, null, cancellation).Solution;
            if (over is not null && SoilSolver.Solve(SoilModels.Of(laid).Model, band.FrequencyHz, cancellation).Solution is { } real)
            {
                solved.Add((new(n, length, Fields.Results.FarField.Of(real.DrivePower(1)).RadiatedPowerW), EarthJudgement.Of(mast, real, over, 0)?.Efficiency.Value));
            }
        }

        var byField = solved.Count > 0 && solved.All(s => s.Field is not null);
        return new(mast.Name, band, wire, mast.Radials.HeightM!.Value, [.. solved.Select(s => byField ? s.Sky with { Efficiency = s.Field!.Value } : s.Sky)], byField);
    }

    /// <summary>One mast on one band; null when its radials are elevated or the currents could not be solved.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">Which mast, from 0.</param>
    /// <param name="band">The band.</param>
    /// <param name="seen">Told every layout weighed in this soil, and whether it was solved exactly.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static RadialBand? One(Station station, int mastIndex, Band band, Action<RadialChoice, bool> seen, CancellationToken cancellation = default)
    {
        var mast = station.Masts[mastIndex];
        return mast.Radials.Lay == RadialLay.Elevated || WireSolver.Solve(WireModels.Of(station), band.FrequencyHz, null, cancellation).Solution is not { } perfect
            ? null : Of(station, mast, mastIndex, band, perfect, cancellation, seen);
    }

    /// <summary>Wire in the radials of a mast, m.</summary>
    public static double WireM(Mast mast) => Enumerable.Range(0, mast.Radials.Count).Sum(i => mast.Radials.LengthTowards(2 * Math.PI * i / mast.Radials.Count));

    private static RadialBand Of(Station station, Mast mast, int feed, Band band, WireSolution perfect, CancellationToken cancellation, Action<RadialChoice, bool>? seen = null)
    {
        var (driven, wireOhm, radiationOhm) = Resistances(perfect, feed);
        var field = new TabulatedField(BaseField.Of(driven, feed));
        var soil = Soils.Of(station.Site);
        var wire = WireM(mast);
        double Estimate(Soil s, int n, double length)
        {
            var loss = RadialLoss.Estimate(s, new(n, length, mast.Radials.WireDiameterM / 2, -mast.Radials.DepthM), field).Total.Value;
            return radiationOhm / (radiationOhm + wireOhm + loss);
        }

        RadialChoice Weighed(Soil s, RadialChoice choice)
        {
            if (s == soil)
            {
                cancellation.ThrowIfCancellationRequested();
                seen?.Invoke(choice, false);
            }

            return choice;
        }

        RadialChoice Best(Soil s, double budget) =>
            Counts.Select(n => (N: n, L: Longest(field.FrequencyHz, budget / n))).Where(c => c.L >= ShortestM).Select(c => Weighed(s, new RadialChoice(c.N, c.L, Estimate(s, c.N, c.L)))).DefaultIfEmpty(new RadialChoice(6, ShortestM, Estimate(s, 6, ShortestM))).MaxBy(c => c.Efficiency)!;

        RadialCurve Curve(string title, double factor)
        {
            var s = soil with { ConductivitySPerM = factor * soil.ConductivitySPerM };
            return new(title, [.. Budgets.Select(b => Best(s, b * wire))]);
        }

        var options = SolvedCounts.Append(mast.Radials.Count).Select(n => RadialPlan.Rounded(n, mast.Anchors.Length)).Distinct().Order()
            .Where(n => wire / n >= ShortestM).ToList();
        var solved = Solve(station, mast, feed, band, perfect, soil, [.. options.Select(n => (n, wire / n))], cancellation, seen);
        return new(mast.Name, band, wire, [Curve("half as conducting", 0.5), Curve("this soil", 1), Curve("twice as conducting", 2)],
            solved ?? [.. options.Select(n => new RadialChoice(n, wire / n, Estimate(soil, n, wire / n)))], solved is not null);
    }

    // The mast alone: its neighbours would forbid long radials, and their layout is not the question.
    private static ImmutableArray<RadialChoice>? Solve(
        Station station, Mast mast, int feed, Band band, WireSolution perfect, Soil soil, ImmutableArray<(int N, double LengthM)> options, CancellationToken cancellation, Action<RadialChoice, bool>? seen)
    {
        var alone = station with { Masts = [mast] };
        var over = station.Masts.Length == 1 ? perfect : WireSolver.Solve(WireModels.Of(alone), band.FrequencyHz, null, cancellation).Solution;
        var own = station.Masts.Length == 1 ? feed : 0;
        var choices = ImmutableArray.CreateBuilder<RadialChoice>();
        foreach (var (n, length) in options)
        {
            var model = SoilModels.Of(alone, soil, m => RadialPlan.Of(alone, m, n, length)).Model;
            if (over is null || SoilSolver.Solve(model, band.FrequencyHz, cancellation).Solution is not { } real || EarthJudgement.Of(mast, real, over, own) is not { } judged)
            {
                return null;
            }

            choices.Add(new(n, length, judged.Efficiency.Value));
            seen?.Invoke(choices[^1], true);
        }

        return choices.ToImmutable();
    }

    // Beyond half a wavelength wire is better spent on more radials; the estimate gives none of it back either.
    private static double Longest(double frequencyHz, double lengthM) => Math.Min(lengthM, 0.5 * Vacuum.WavelengthM(frequencyHz));

    private static (Fields.Results.DrivenWires Driven, double WireOhm, double RadiationOhm) Resistances(WireSolution perfect, int feed)
    {
        var driven = perfect.DrivePower(1, feed);
        var wire = driven.LossPowerW / Math.Pow(driven.FeedCurrents[feed].Magnitude, 2);
        return (driven, wire, perfect.FeedImpedance(feed).Real - wire);
    }

    // The field falls smoothly with distance: a table in the logarithm of it serves all layouts.
    private sealed class TabulatedField(BaseField of) : BaseField
    {
        private const int PerE = 16;
        private readonly Dictionary<int, double> table = [];

        public override double FrequencyHz => of.FrequencyHz;

        public override string Origin => of.Origin;

        public override string? OutOfRange => of.OutOfRange;

        public override double MeanSquare(double distanceM)
        {
            var x = PerE * Math.Log(distanceM);
            var i = (int)Math.Floor(x);
            return Math.Exp(At(i) + ((x - i) * (At(i + 1) - At(i))));
        }

        private double At(int i)
        {
            if (!table.TryGetValue(i, out var value))
            {
                table[i] = value = Math.Log(of.MeanSquare(Math.Exp((double)i / PerE)));
            }

            return value;
        }
    }
}
