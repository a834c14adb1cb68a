using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Ac;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Radiate;

/// <summary>Where the power into a mast goes, as shares of it.</summary>
/// <param name="SkyWave">Leaves as the sky wave.</param>
/// <param name="Soil">Heats the soil, near and far.</param>
/// <param name="SoilNear">The part of that which the ground system answers for; null where the comparison with perfect ground says nothing.</param>
/// <param name="Radials">Heats the radials and rods.</param>
/// <param name="Mast">Heats the mast and its lead.</param>
/// <param name="Guys">Heats the guys and metal nearby.</param>
/// <param name="Hat">Heats top wires and their rim.</param>
public sealed record PowerShares(double SkyWave, double Soil, double? SoilNear, double Radials, double Mast, double Guys, double Hat)
{
    /// <summary>Heats coils and capacitors of the network chosen for the band, as a share of the transmitter's power; null without a network.</summary>
    public double? Network { get; init; }
}

/// <summary>The wave along the ground.</summary>
/// <param name="RoundDb">Decibels below the strongest round the compass from north through east, evenly spaced.</param>
/// <param name="Fall">Distance, m, and field there, V/m at the band's power, over this soil towards the strongest bearing.</param>
/// <param name="FlatToM">Distance to which a flat earth may be assumed, m.</param>
public sealed record GroundWaveCut(ImmutableArray<double> RoundDb, ImmutableArray<(double DistanceM, double FieldVPerM)> Fall, double FlatToM);

/// <summary>Gain at an elevation, dBi.</summary>
/// <param name="ElevationRad">Elevation above the horizon, rad.</param>
/// <param name="SoilDbi">Over the real soil.</param>
/// <param name="PerfectDbi">Over perfect ground without loss.</param>
public readonly record struct GainAt(double ElevationRad, double SoilDbi, double PerfectDbi);

/// <summary>One mast on one band over the real soil beside the quick estimate.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="ExactOhm">Impedance at the foot over the soil, Ω.</param>
/// <param name="EstimateOhm">Impedance by the estimate, Ω.</param>
/// <param name="Exact">Efficiency and losses, exact; null where the mast's field along the ground is not its strongest, so that the comparison says nothing.</param>
/// <param name="EstimateEfficiency">Efficiency by the estimate.</param>
/// <param name="Shares">Where the power goes.</param>
/// <param name="Pattern">Gain against elevation towards the strongest of eight bearings.</param>
/// <param name="TakeOff">The strongest direction.</param>
/// <param name="FieldAt1KmVPerM">Field at 1 km before the soil on the way weakens it, V/m at the band's power.</param>
/// <param name="WeakenedAt1KmVPerM">The same with that weakening, V/m.</param>
/// <param name="OtherSoils">Impedance and share sent to the sky with half and twice the conductivity, for the lowest bands.</param>
/// <param name="Unknowns">Unknown currents solved for.</param>
public sealed record SoilBand(
    string Mast, Band Band, Complex ExactOhm, Complex EstimateOhm, EarthComparison? Exact, Trail EstimateEfficiency, PowerShares Shares,
    ImmutableArray<GainAt> Pattern, GainAt TakeOff, double FieldAt1KmVPerM, double WeakenedAt1KmVPerM, ImmutableArray<(string Soil, Complex Ohm, double SkyWave)> OtherSoils, int Unknowns)
{
    /// <summary>The wave along the ground.</summary>
    public required GroundWaveCut Ground { get; init; }
}

/// <summary>All masts and bands over the real soil.</summary>
/// <param name="Soil">The soil.</param>
/// <param name="Bands">Mast by mast, band by band.</param>
/// <param name="Findings">How the solved wires differ from the design, and what stood in the way.</param>
public sealed record SoilAnswer(Soil Soil, ImmutableArray<SoilBand> Bands, ImmutableArray<Finding> Findings)
{
    /// <summary>The balance of power on the lowest band; null where nothing is buried, for several masts, or where the currents could not be solved.</summary>
    public SoilBalance? Balance { get; init; }
}

/// <summary>The station solved over its real soil.</summary>
public static class SoilRun
{
    /// <summary>Other soils are tried on this many bands, the lowest, where soil matters most.</summary>
    public const int VariedBands = 3;

    /// <summary>Everything, for every mast and band.</summary>
    public static SoilAnswer Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = Soils.Of(station.Site);
        (string Title, Soil Soil)[] others = [("half as conducting", soil with { ConductivitySPerM = soil.ConductivitySPerM / 2 }), ("twice as conducting", soil with { ConductivitySPerM = soil.ConductivitySPerM * 2 })];
        var exact = SoilModels.Of(station, soil);
        var bands = ImmutableArray.CreateBuilder<SoilBand>();
        var findings = new List<Finding>(exact.Findings);
        SoilBalance? balance = null;
        for (var b = 0; b < station.Bands.Length; b++)
        {
            var band = station.Bands[b];
            progress?.Report(new AnalysisStep($"Solving {band.Title} over the soil", (double)b / station.Bands.Length));
            var perfect = WireSolver.Solve(WireModels.Of(station), band.FrequencyHz, null, cancellation);
            var real = SoilSolver.Solve(exact.Model, band.FrequencyHz, cancellation);
            findings.AddRange(perfect.Findings.Concat(real.Findings));
            if (perfect.Solution is not { } over || real.Solution is not { } under)
            {
                continue;
            }

            if (station.Bands.All(x => x.FrequencyHz >= band.FrequencyHz))
            {
                balance = SoilBalance.Of(station, band, under, cancellation);
            }

            var lowest = station.Bands.Count(x => x.FrequencyHz < band.FrequencyHz) < VariedBands;
            var varied = others.Where(_ => lowest).Select(o => (o.Title, SoilSolver.Solve(SoilModels.Of(station, o.Soil).Model, band.FrequencyHz, cancellation).Solution)).ToList();
            for (var m = 0; m < station.Masts.Length; m++)
            {
                var feed = m;
                bands.Add(One(station, station.Masts[m], m, band, soil, over, under,
                    [.. varied.Where(v => v.Solution is not null).Select(v => (v.Title, v.Solution!.FeedImpedance(feed), FarField.Of(v.Solution.DrivePower(1, feed)).RadiatedPowerW))]));
            }
        }

        return new(soil, bands.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]) { Balance = balance };
    }

    private static SoilBand One(Station station, Mast mast, int feed, Band band, Soil soil, WireSolution perfect, WireSolution real, ImmutableArray<(string, Complex, double)> others)
    {
        var comparison = EarthJudgement.Of(mast, real, perfect, feed);
        var estimate = BandRun.Of(station, mast, band, perfect, feed).Result;
        var driven = real.DrivePower(1, feed);
        FarField far = FarField.Of(driven), farPerfect = FarField.Of(perfect.DrivePower(1, feed));
        var azimuth = Enumerable.Range(0, 8).Select(i => i * Math.PI / 4).MaxBy(a => Enumerable.Range(1, 44).Max(e => far.Gain((Math.PI / 2) - (e * Math.PI / 90), a)));
        var pattern = Enumerable.Range(0, 91).Select(e => At(far, farPerfect, e * Math.PI / 180, azimuth)).ToImmutableArray();
        var round = Enumerable.Range(0, Bearings).Select(a => far.FieldAt1KmVPerM(band.PowerW, (Math.PI / 2) - (2 * Math.PI * a / Bearings))).ToList();
        var field = round.Max();
        var problem = FeedProblem.Of(station, band, LoadImpedance.Constant(real.FeedImpedance(feed)), BandRun.BaseCapacitanceF(station, mast));
        var match = NetworkChoice.Of(station, mast.Name, band, problem).Chosen?.Match;
        var flat = GroundWave.FlatEarthLimitM(band.FrequencyHz);
        var nearest = Vacuum.WavelengthM(band.FrequencyHz);
        return new(
            mast.Name, band, real.FeedImpedance(feed), estimate.MastOhm, comparison, estimate.Efficiency, Shares(driven, far.RadiatedPowerW, comparison?.Efficiency.Value) with { Network = match?.LossW / band.PowerW },
            pattern, pattern.MaxBy(p => p.SoilDbi), field, field * GroundWave.Attenuation(soil, band.FrequencyHz, 1000).Magnitude, others, real.Mesh.UnknownCount)
        {
            Ground = new([.. round.Select(f => 2 * Db(f / field))], [.. Enumerable.Range(0, Steps + 1).Select(i => nearest * Math.Pow(flat / nearest, (double)i / Steps))
                .Select(d => (d, field * 1000 / d * GroundWave.Attenuation(soil, band.FrequencyHz, d).Magnitude))], flat),
        };
    }

    private const int Bearings = 36;
    private const int Steps = 30;

    /// <summary>Shares of the power into the feed.</summary>
    internal static PowerShares Shares(DrivenWires driven, double skyW, double? efficiency)
    {
        double radials = 0, mast = 0, guys = 0, hat = 0;
        foreach (var (part, watts) in driven.LossByPart().Select(p => (p.Part, p.PowerW / driven.InputPowerW)))
        {
            bool Is(params ReadOnlySpan<string> words)
            {
                foreach (var word in words)
                {
                    if (part.StartsWith(word, StringComparison.Ordinal))
                    {
                        return true;
                    }
                }

                return false;
            }

            if (Is("guy ", "insulator ", WireModels.MetalPrefix))
            {
                guys += watts;
            }
            else if (Is("mast ", "lead "))
            {
                mast += watts;
            }
            else if (Is("top "))
            {
                hat += watts;
            }
            else
            {
                radials += watts;
            }
        }

        var heat = radials + mast + guys + hat;
        var sky = skyW / driven.InputPowerW;
        return new(sky, 1 - sky - heat, efficiency is { } eta ? Math.Max(0, 1 - eta - heat) : null, radials, mast, guys, hat);
    }

    private static GainAt At(FarField soil, FarField perfect, double elevationRad, double azimuthRad)
    {
        var zenith = (Math.PI / 2) - elevationRad;
        return new(elevationRad, Db(soil.Gain(zenith, azimuthRad)), Db(perfect.Gain(zenith, azimuthRad)));
    }

    /// <summary>Decibels of a ratio, no less than −60.</summary>
    internal static double Db(double ratio) => Math.Max(-60, 10 * Math.Log10(Math.Max(ratio, 1e-30)));
}
