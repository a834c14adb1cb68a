using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>
/// A quadrature hybrid of two tightly coupled coils and two capacitors, L = Z0/ω each winding, C = 1/(2ω·Z0) at each end,
/// with quarter waves to the masts. It splits voltage, not current, and sends what the masts reflect alike into its dump
/// resistor: so the currents are right only as far as the masts are, and the errors show it.
/// </summary>
public static class HybridFeed
{
    /// <summary>What it is called.</summary>
    public const string Title = "quadrature hybrid";

    // Insulators and strays across the bases turn the currents asked of the feed a little off the right angle.
    private const double NearDegrees = 20;

    /// <summary>Designs the feed for currents in phase, opposed or in quadrature.</summary>
    /// <param name="problem">The group.</param>
    /// <param name="coupling">Coupling of the hybrid's windings; a twisted pair on a ring reaches 0.99 and more (common practice, no source).</param>
    public static GroupResult Design(GroupProblem problem, double coupling = 0.995)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new(null, faults);
        var reference = problem.Currents[problem.Reference];
        var ratios = problem.Currents.Select(i => i / reference).ToList();
        if (ratios.Any(r => r == Complex.Zero || Math.Abs(Off(r)) > NearDegrees))
            return new(null, [new("group-hybrid-phase", Severity.Error, "A quadrature hybrid gives 0°, 90°, 180° and 270° only; other phases are asked.", WayOut: "Use independent networks, current forcing with L networks, or lines of arbitrary length.")]);
        var quadrants = ratios.Select(Quadrant).ToList();
        if (quadrants.All(q => q % 2 == 0))
            return new(null, [new("group-hybrid-useless", Severity.Error, "All currents are in phase or opposed: no hybrid is needed.", WayOut: "Use current forcing.")]);

        // The coupled port leads the through port by 90°. The sign that saves half waves decides which masts go where.
        var leads = quadrants.Count(q => q == 1) > quadrants.Count(q => q == 3);
        var parts = new List<Part>(Hybrid(problem, coupling)) { problem.Antenna() };
        var quarters = CurrentForcing.QuartersToReach(problem);
        for (var k = 0; k < problem.Masts; k++)
        {
            var quadrature = quadrants[k] % 2 == 1;
            var port = quadrature == leads ? "coupled" : "through";
            var over = quadrants[k] == (quadrature ? (leads ? 3 : 1) : 2);
            parts.Add(new Line($"W{k + 1}", port, GroupProblem.MastNode(k), problem.Feeder, problem.Feeder.LengthM((quarters + (over ? 2 : 0)) * Math.PI / 2, problem.FrequencyHz)));
        }

        var feed = new GroupFeed(Title, new Network(parts), problem, []);
        var findings = DriveTable.Of(problem).Findings.ToBuilder();
        if (feed.DumpPowerW > 0.1 * problem.PowerW)
            findings.Add(new("group-dump", Severity.Warning, "More than a tenth of the power goes into the dump resistor.", Value: FormattableString.Invariant($"{feed.DumpPowerW:0} W of {problem.PowerW:0} W"), WayOut: "Choose lines that bring each port nearer the hybrid's impedance, or use current forcing."));
        if (feed.WorstError > 0.1)
            findings.Add(new("group-hybrid-error", Severity.Warning, "A hybrid does not force currents; one mast is more than a tenth off.", Value: FormattableString.Invariant($"{feed.WorstError:0.00} of the reference current"), WayOut: "Correct the masts to equal drive impedances, or use current forcing with an L network."));
        return new(new GroupFeed(feed.Title, feed.Network, problem, findings.ToImmutable()), findings.ToImmutable());
    }

    private static int Quadrant(Complex ratio) => ((int)Math.Round(ratio.Phase / (Math.PI / 2)) + 4) % 4;

    private static double Off(Complex ratio) => ((ratio.Phase * 180 / Math.PI) + 720 + 45) % 90 - 45;

    private static IEnumerable<Part> Hybrid(GroupProblem p, double coupling)
    {
        var (l, c) = (p.LineOhm / p.Omega, 1 / (2 * p.Omega * p.LineOhm));
        yield return AcSource.Transmitter(GroupFeed.Transmitter, "line", Network.Ground, p.PowerW, p.LineOhm);
        yield return new Inductor("LH1", "line", "through", l, p.Quality.Coil);
        yield return new Inductor("LH2", "coupled", "dump", l, p.Quality.Coil);
        yield return new Mutual("MH", "LH1", "LH2", coupling);
        yield return new Capacitor("CH1", "line", "coupled", c, p.Quality.Capacitor);
        yield return new Capacitor("CH2", "through", "dump", c, p.Quality.Capacitor);
        yield return new Resistor(GroupFeed.Dump, "dump", Network.Ground, p.LineOhm);
    }
}
