using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Catalog;
using Mastwright.Circuits;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>A band's figures with its checks.</summary>
/// <param name="Result">The figures.</param>
/// <param name="Checks">The checks.</param>
/// <param name="Guys">What every guy insulator and piece sees at full power.</param>
internal sealed record BandAnswer(BandResult Result, ImmutableArray<Check> Checks, GuyDrive Guys);

/// <summary>One mast on one band, from the solved currents to the matched network.</summary>
internal static class BandRun
{
    private static readonly Source Solver = Source.Derived("docs/theory/fields-wires.md");

    private const string SolverRange =
        "straight thin wires over a perfectly conducting plane; earth and radial loss added as a resistance; the other masts' bases open";

    /// <summary>The earth loss and what drives it, for one feed of a solution.</summary>
    public static (DrivenWires Driven, Trail Earth) Drive(Station station, Mast mast, WireSolution solution, int feed)
    {
        var driven = solution.DrivePower(1, feed);
        return (driven, EarthEstimate.Of(mast, Soils.Of(station.Site), BaseField.Of(driven, feed)));
    }

    /// <summary>Loss resistances of the earth under a mast for several conductivities of its soil over that stated, Ω at the base.</summary>
    public static double[] EarthLosses(Mast mast, WireSolution solution, int feed, Soil soil, params ReadOnlySpan<double> factors)
    {
        var field = new RememberedField(BaseField.Of(solution.DrivePower(1, feed), feed));
        var losses = new double[factors.Length];
        for (var i = 0; i < losses.Length; i++)
        {
            losses[i] = EarthEstimate.Of(mast, soil with { ConductivitySPerM = soil.ConductivitySPerM * factors[i] }, field).Value;
        }

        return losses;
    }

    /// <summary>Everything about a mast on a band.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="band">The band.</param>
    /// <param name="solution">The currents over perfect ground.</param>
    /// <param name="feed">The mast's feed.</param>
    /// <param name="overSoil">The currents over the real soil when the earth is to be exact; null for the estimate.</param>
    public static BandAnswer Of(Station station, Mast mast, Band band, WireSolution solution, int feed, WireSolution? overSoil = null)
    {
        var exact = overSoil is null ? null : EarthJudgement.Of(mast, overSoil, solution, feed);
        var driven = solution.DrivePower(1, feed);
        var earth = exact?.EarthLoss ?? EarthEstimate.Of(mast, Soils.Of(station.Site), BaseField.Of(driven, feed));
        var lossless = solution.FeedImpedance(feed);
        var current2 = Math.Pow(driven.FeedCurrents[feed].Magnitude, 2);
        var frequency = Trail.Given("frequency", "f", band.FrequencyHz, QuantityKind.Frequency, Source.DesignFile);
        var unknowns = Trail.Given("unknown currents", "n", solution.Mesh.UnknownCount, QuantityKind.Count, Solver);
        var solved = Trail.Computed("feed resistance over perfect ground", "R0", lossless.Real, QuantityKind.Resistance,
            "R0 = Re(V/I) of the solved currents", Solver, frequency, unknowns).Within(SolverRange);
        var wire = Trail.Computed("loss resistance of wires and insulators", "Rw", driven.LossPowerW / current2, QuantityKind.Resistance,
            "Rw = Σ heat in wires / |I|²", Solver, frequency);
        var radiation = Trail.Computed("radiation resistance at the base", "Rr", lossless.Real - wire.Value, QuantityKind.Resistance, "Rr = R0 − Rw", Solver, solved, wire);
        var efficiency = exact?.Efficiency ?? Fields.Earth.Efficiency.Of(radiation, wire, earth);

        var mastOhm = overSoil?.FeedImpedance(feed) ?? (lossless + earth.Value);
        var base_ = BasePoint.Of(mastOhm, band.PowerW, band.FrequencyHz, BaseCapacitanceF(station, mast));
        var (network, unmatched) = NetworkChoice.Of(station, mast.Name, band, FeedProblem.Of(station, band, Circuits.Ac.LoadImpedance.Constant(mastOhm), BaseCapacitanceF(station, mast)));

        // Over the soil the far field counts all losses itself.
        var far = FarField.Of(overSoil?.DrivePower(1, feed) ?? driven);
        var earthShare = overSoil is null ? lossless.Real / (lossless.Real + earth.Value) : 1;
        var (gain, elevation, azimuth) = Strongest(far);
        var field = StrongestAtGround(far, band.PowerW) * Math.Sqrt(earthShare);
        var result = new BandResult
        {
            Name = band.Title,
            FrequencyHz = band.FrequencyHz,
            PowerW = band.PowerW,
            MastOhm = mastOhm,
            FeedOhm = new Complex(base_.TerminalResistance.Value, base_.TerminalReactance.Value),
            FeedResistance = WithSolved(base_.TerminalResistance, solved, earth),
            FeedReactance = WithSolved(base_.TerminalReactance, solved, earth),
            EarthLossOhm = earth,
            Efficiency = efficiency,
            BaseCurrentRms = WithSolved(base_.MastCurrent, solved, earth),
            BasePeakV = WithSolved(base_.PeakVoltage, solved, earth),
            Network = network,
            Unmatched = unmatched,
            GainDbi = Trail.Computed("gain at the strongest elevation", "G", 10 * Math.Log10(gain * earthShare), QuantityKind.Decibel,
                    "G = 10·log(4π·|E|²r²/(η0·P))", Solver, efficiency)
                .Within(overSoil is null ? "over a perfectly conducting plane: real earth takes more at low angles" : "flat uniform soil")
                .Remark($"strongest at {elevation * 180 / Math.PI:0}° above the horizon"),
            FieldAt1KmVPerM = Trail.Computed("field at 1 km", "E1", field, QuantityKind.ElectricField,
                    "E1 = |E|r/1 km at the ground for the stated power, earth loss at the base included", Source.Standard("Recommendation ITU-R BS.561-2"), efficiency)
                .Within("without the weakening by real soil on the way"),
            Pattern = Patterns.Cuts(far, azimuth, elevation, earthShare),
            Currents = Patterns.Currents(driven, base_.MastCurrent.Value / driven.FeedCurrents[feed].Magnitude),
        };
        var wanted = Check.AtLeast($"radiate.efficiency[{mast.Name}, {band.Title}]", Trade.Radiate, "Radiation efficiency", efficiency,
            Trail.Given("efficiency wanted", "ηmin", station.Limits.Efficiency, QuantityKind.Ratio, Source.DesignFile), $"mast {mast.Name}, {band.Title}",
            "Lay more and longer radials first; then top-load or lengthen the mast.");
        var drive = MastDrive.Of(overSoil ?? solution, feed, () => earth.Value);
        var fields = drive.FieldsNear(station, mast);
        var guys = GuyStress.OfBand(mast, band, drive.Driven, drive.ReferenceW);
        return new BandAnswer(result, [wanted, .. FeedChecks.Of(station, mast, result), .. PeopleRun.Of(station, mast, band, drive, fields), .. FenceRun.AtFence(station, mast, band, drive, fields)], guys);
    }

    /// <summary>Capacitance across the base: the insulator and the strays.</summary>
    public static double BaseCapacitanceF(Station station, Mast mast) =>
        Catalogue.Default.BaseInsulators[mast.Base.Insulator].CapacitanceF + station.Feed.StrayCapacitanceF;

    private static Trail WithSolved(Trail trail, params ReadOnlySpan<Trail> below) => trail with { Inputs = [.. trail.Inputs, .. below] };

    // A mast alone is almost round in plan; eight azimuths find the strongest lobe of bent top wires and guys well enough.
    private static (double Gain, double ElevationRad, double AzimuthRad) Strongest(FarField far)
    {
        var best = (Gain: 0.0, Elevation: 0.0, Azimuth: 0.0);
        for (var a = 0; a < 8; a++)
        {
            for (var e = 0; e <= 88; e += 2)
            {
                var elevation = e * Math.PI / 180;
                var gain = far.Gain((Math.PI / 2) - elevation, a * Math.PI / 4);
                best = gain > best.Gain ? (gain, elevation, a * Math.PI / 4) : best;
            }
        }

        return best;
    }

    private static double StrongestAtGround(FarField far, double powerW) =>
        Enumerable.Range(0, 8).Max(a => far.FieldAt1KmVPerM(powerW, a * Math.PI / 4));
}
