using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;

namespace Mastwright.Report.Book;

/// <summary>Shapes of patterns and of currents, for drawing; their strengths stand in the results.</summary>
internal sealed class Patterns
{
    private const int UprightSteps = 90;
    private const int LevelSteps = 72;
    private readonly Station station;
    private readonly Dictionary<double, WireSolution> solutions;

    private Patterns(Station station, Dictionary<double, WireSolution> solutions) => (this.station, this.solutions) = (station, solutions);

    /// <summary>The currents of a station on all its frequencies; null when they cannot be solved.</summary>
    public static Patterns? Of(Station station, CancellationToken cancellation)
    {
        var frequencies = station.Bands.Select(b => b.FrequencyHz).Concat(station.Groups.Select(g => g.FrequencyHz)).Distinct().ToList();
        var sweep = WireSolver.Sweep(WireModels.Of(station), frequencies, null, cancellation, null);
        return sweep.Solutions.IsEmpty ? null : new Patterns(station, frequencies.Zip(sweep.Solutions).ToDictionary(p => p.First, p => p.Second));
    }

    /// <summary>Decibels below the strongest from the horizon over the zenith to the horizon behind, through the strongest of eight bearings.</summary>
    public IReadOnlyList<double> Upright(int mast, Band band)
    {
        var far = FarField.Of(solutions[band.FrequencyHz].DrivePower(1, mast));
        var azimuth = Enumerable.Range(0, 8).Select(a => a * Math.PI / 4).MaxBy(a => Enumerable.Range(0, 45).Max(e => far.Gain((Math.PI / 2) - (2 * e * Math.PI / 180), a)));
        return Over(far, azimuth);
    }

    /// <summary>The same for a switch position of a group, through its wanted bearing.</summary>
    public IReadOnlyList<double> Upright(Group group, Direction direction) => Over(Far(group, direction), (Math.PI / 2) - direction.BearingRad);

    /// <summary>Decibels below the strongest round the compass from north through east, at the strongest elevation of the wanted bearing.</summary>
    public IReadOnlyList<double> Level(Group group, Direction direction)
    {
        var far = Far(group, direction);
        var wanted = (Math.PI / 2) - direction.BearingRad;
        var elevation = Enumerable.Range(0, 90).Select(e => e * Math.PI / 180).MaxBy(e => far.Gain((Math.PI / 2) - e, wanted));
        return Below([.. Enumerable.Range(0, LevelSteps).Select(i => far.Gain((Math.PI / 2) - elevation, (Math.PI / 2) - (2 * Math.PI * i / LevelSteps)))]);
    }

    /// <summary>Size of the current along the mast over its largest, by height above ground, m.</summary>
    public IReadOnlyList<(double HeightM, double Share)> Current(int mast, Band band)
    {
        var name = station.Masts[mast].Name;
        var driven = solutions[band.FrequencyHz].DrivePower(1, mast);
        var wires = driven.Mesh.Model.Wires.Where(w => w.Name == WireModels.LeadOf(name) || w.Name.StartsWith($"mast {name}, run ", StringComparison.Ordinal));
        var points = wires.SelectMany(w => driven.CurrentsOn(w.Name).Select(c => (HeightM: w.Start.Z + (c.AlongM * (w.End - w.Start).Unit().Z), c.Current.Magnitude))).OrderBy(p => p.HeightM).ToList();
        var most = points.Max(p => p.Magnitude);
        return [.. points.Select(p => (p.HeightM, p.Magnitude / most))];
    }

    private FarField Far(Group group, Direction direction) => FarField.Of(solutions[group.FrequencyHz].DriveCurrents([.. station.Masts.Select(m =>
        direction.Currents.FirstOrDefault(c => c.Mast == m.Name) is { } c ? Complex.FromPolarCoordinates(c.Size, c.PhaseRad) : Complex.Zero)]));

    private static IReadOnlyList<double> Over(FarField far, double azimuth) => Below([.. Enumerable.Range(0, UprightSteps + 1).Select(i => Math.PI * i / UprightSteps)
        .Select(a => a <= Math.PI / 2 ? far.Gain((Math.PI / 2) - a, azimuth) : far.Gain(a - (Math.PI / 2), azimuth + Math.PI))]);

    private static IReadOnlyList<double> Below(List<double> gains)
    {
        var most = gains.Max();
        return [.. gains.Select(g => Math.Max(-60, 10 * Math.Log10(Math.Max(g / most, 1e-9))))];
    }
}
