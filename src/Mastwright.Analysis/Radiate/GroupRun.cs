using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>A group of masts driven with the asked base currents: drive impedances, powers, gain.</summary>
internal static class GroupRun
{
    private static readonly Source Solver = Source.Derived("docs/theory/fields-wires.md");

    private const string Estimated = "over a perfectly conducting plane, the earth loss of each mast by the quick estimate: real earth takes more at low angles; `mastwright group` solves the group over the soil";

    /// <summary>All switch positions of a group.</summary>
    /// <param name="station">The station.</param>
    /// <param name="group">The group.</param>
    /// <param name="solution">The currents over perfect ground.</param>
    /// <param name="overSoil">The currents over the real soil when the earth is to be exact; null for the estimate.</param>
    public static GroupResult Of(Station station, Group group, WireSolution solution, WireSolution? overSoil = null) => overSoil is null
        ? new(group.Name, [.. Directions(station, group, solution, Earth(station, solution), false)])
        : new(group.Name, [.. Directions(station, group, overSoil, [.. station.Masts.Select(_ => InTheSolution)], true)]);

    /// <summary>What the guys of every mast see in every switch position in which it is fed, in the order of the masts.</summary>
    /// <param name="station">The station.</param>
    /// <param name="solutions">The currents over perfect ground, by frequency.</param>
    /// <param name="soil">The currents over the real soil, where the earth is to be exact.</param>
    public static ImmutableArray<ImmutableArray<GuyDrive>> Guys(Station station, IReadOnlyDictionary<double, WireSolution> solutions, IReadOnlyDictionary<double, WireSolution>? soil = null)
    {
        var drives = station.Masts.Select(_ => ImmutableArray.CreateBuilder<GuyDrive>()).ToList();
        foreach (var group in station.Groups.Where(g => solutions.ContainsKey(g.FrequencyHz)))
        {
            var real = soil?.GetValueOrDefault(group.FrequencyHz);
            var solution = real ?? solutions[group.FrequencyHz];
            var earth = real is null ? Earth(station, solution).Select(e => e.Value).ToList() : [.. station.Masts.Select(_ => 0.0)];
            foreach (var direction in group.Directions)
            {
                var asked = Asked(station, direction);
                var (driven, _) = AtPower(group, solution, asked, earth);
                for (var m = 0; m < drives.Count; m++)
                {
                    if (asked[m] != Complex.Zero)
                    {
                        drives[m].Add(GuyStress.Of(station.Masts[m], $"{group.Name}, {direction.Name}", driven, 1, BandOf(station, group)?.ModulationPeak ?? 1));
                    }
                }
            }
        }

        return [.. drives.Select(d => d.ToImmutable())];
    }

    /// <summary>The base currents a direction asks for, one for each mast.</summary>
    public static Complex[] Asked(Station station, Direction direction) => [.. station.Masts.Select(m => direction.Currents.FirstOrDefault(c => c.Mast == m.Name) is { } c
        ? Complex.FromPolarCoordinates(c.Size, c.PhaseRad) : Complex.Zero)];

    /// <summary>The band whose duty and modulation a group shares: the one nearest in frequency; null when the station has none.</summary>
    public static Band? BandOf(Station station, Group group) => station.Bands.IsEmpty ? null : station.Bands.MinBy(b => Math.Abs(b.FrequencyHz - group.FrequencyHz));

    /// <summary>A group at its full power: the powers into the solved bases and the losses of the earth under them add up to it.</summary>
    /// <param name="group">The group.</param>
    /// <param name="solution">The solved currents.</param>
    /// <param name="asked">Base currents in the ratios asked.</param>
    /// <param name="earthOhm">Earth loss of each mast that is not in the solution, Ω.</param>
    /// <returns>The currents, and the share of the power that goes into the solved bases.</returns>
    public static (DrivenWires Driven, double Share) AtPower(Group group, WireSolution solution, Complex[] asked, IReadOnlyList<double> earthOhm)
    {
        var intoBasesW = solution.DriveCurrents(asked).InputPowerW;
        var wholeW = intoBasesW + asked.Zip(earthOhm, (a, r) => r * a.Magnitude * a.Magnitude).Sum();
        var scale = Math.Sqrt(group.PowerW / wholeW);
        return (solution.DriveCurrents([.. asked.Select(a => a * scale)]), intoBasesW / wholeW);
    }

    private static IEnumerable<DirectionResult> Directions(Station station, Group group, WireSolution solution, Trail[] earth, bool exact) =>
        group.Directions.AsParallel().AsOrdered().Select(d => Direction(station, group, d, solution, earth, exact));

    private static Trail[] Earth(Station station, WireSolution solution) =>
        [.. Enumerable.Range(0, station.Masts.Length).AsParallel().AsOrdered().Select(i => BandRun.Drive(station, station.Masts[i], solution, i).Earth)];

    private static DirectionResult Direction(Station station, Group group, Direction direction, WireSolution solution, Trail[] earth, bool exact)
    {
        var masts = station.Masts;
        var asked = Asked(station, direction);

        // The solver's gain counts the power into its own feeds; the earth's share is taken off here.
        var (driven, share) = AtPower(group, solution, asked, [.. earth.Select(e => e.Value)]);
        var far = FarField.Of(driven);
        var azimuth = (Math.PI / 2) - direction.BearingRad;
        var elevation = StrongestElevation(far, azimuth);
        var gain = share * far.Gain((Math.PI / 2) - elevation, azimuth);
        var back = share * far.Gain((Math.PI / 2) - elevation, azimuth + Math.PI);
        var gainDb = 10 * Math.Log10(gain);
        var oneDb = OneMastDb(solution, earth, asked);
        var drives = masts.Select((m, i) => Drive(m.Name, driven, i, asked[i], earth[i], exact)).Where(d => d is not null).Select(d => d!);
        return new DirectionResult(
            direction.Name,
            [.. drives],
            Decibels("gain in the wanted direction", "G", gainDb, "G = 10·log(4π·|E|²r²/(η0·P))")
                .Remark($"at {elevation * 180 / Math.PI:0}° above the horizon, bearing {direction.BearingRad * 180 / Math.PI:0}°")
                .Within(exact ? "flat uniform soil; all losses counted" : Estimated),
            Decibels("front to back", "F/B", 10 * Math.Log10(gain / Math.Max(back, 1e-12)), "F/B = G(wanted) − G(opposite), same elevation"),
            Decibels("gain over one mast", "ΔG", gainDb - oneDb, "ΔG = G − G(one mast, mean over bearings, others open)"))
        {
            Pattern = Patterns.Cuts(far, azimuth, elevation, share),
        };
    }

    // One mast with the others open: they bend its pattern a little, so its gain is the mean over all bearings, the same for every direction.
    private static double OneMastDb(WireSolution solution, IReadOnlyList<Trail> earth, Complex[] asked)
    {
        const int Bearings = 24;
        var first = Array.FindIndex(asked, a => a != Complex.Zero);
        var far = FarField.Of(solution.DrivePower(1, first));
        var r = solution.FeedImpedance(first).Real;
        var mean = Enumerable.Range(0, Bearings).Select(b => 2 * Math.PI * b / Bearings).Average(azimuth => far.Gain((Math.PI / 2) - StrongestElevation(far, azimuth), azimuth));
        return 10 * Math.Log10(mean * r / (r + earth[first].Value));
    }

    // Over the real soil nothing is added to what the solution says.
    private static Trail InTheSolution => Trail.Computed("earth loss beyond the solution", "Rg", 0, QuantityKind.Resistance,
        "the currents are solved over the real soil: its loss is in the drive resistance", Source.Derived("docs/theory/fields-soil.md"));

    private static DriveResult? Drive(string mast, DrivenWires driven, int feed, Complex asked, Trail earth, bool exact)
    {
        if (asked == Complex.Zero)
        {
            return null;
        }

        var z = driven.DriveImpedance(feed) + earth.Value;
        var i = driven.FeedCurrents[feed].Magnitude;
        var resistance = Trail.Computed("drive resistance", "Rd", z.Real, QuantityKind.Resistance, "Rd = Re(Σ Zij·Ij / Ii) + Rg", Solver, earth)
            .Within(exact ? "flat uniform soil; radials of neighbours coupled" : "earth loss of each mast by the quick estimate, as if it stood alone: the earth currents of neighbours are not coupled; `mastwright group` solves them");
        var current = Trail.Computed("base current", "I", i, QuantityKind.RmsCurrent, "I scaled so that Σ Rd·I² is the group's power", Solver, resistance);
        return new DriveResult(
            mast, z, current,
            Trail.Computed("base peak voltage", "Vp", Math.Sqrt(2) * i * z.Magnitude, QuantityKind.PeakVoltage, "Vp = √2·I·|Zd|", Solver, current, resistance),
            Trail.Computed("power taken", "P", i * i * z.Real, QuantityKind.Power, "P = I²·Rd", Solver, current, resistance));
    }

    private static double StrongestElevation(FarField far, double azimuth) =>
        Enumerable.Range(0, 90).Select(e => e * Math.PI / 180).MaxBy(e => far.Gain((Math.PI / 2) - e, azimuth));

    private static Trail Decibels(string name, string symbol, double value, string formula) =>
        Trail.Computed(name, symbol, value, QuantityKind.Decibel, formula, Solver);
}
