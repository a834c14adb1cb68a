using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>
/// One T network a mast, all hanging on the transmitter's line, solved directly for the demanded currents. Each takes the
/// share of power its mast needs as a pure resistance V²/P and turns the phase by what its current asks (see
/// <see cref="PhaseLag.T"/>; the mast's reactance is taken off X2). The inputs in parallel are the line's impedance, so
/// nothing else is needed to match. Power may flow backwards through a T for a mast that gives power.
/// </summary>
public static class IndependentNetworks
{
    /// <summary>What it is called.</summary>
    public const string Title = "independent networks";

    private static readonly double LeastSine = Math.Sin(15 * Math.PI / 180);

    /// <summary>Designs the networks; with feeders where the problem gives them a length.</summary>
    public static GroupResult Design(GroupProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new(null, faults);
        var table = DriveTable.Of(problem);
        var ends = table.Drives.Where(d => d.CurrentPhasor != Complex.Zero).Select(d => AtBox(d, problem)).ToList();
        var total = ends.Sum(e => e.PowerW);
        var phases = Enumerable.Range(0, 360).Select(d => d * Math.PI / 180);
        var choice = phases.Select(o => (Offset: o, Stress: ends.Sum(e => Stress(e, o, total, problem)))).MinBy(c => c.Stress);
        if (double.IsInfinity(choice.Stress))
            return new(null, [new("group-phase", Severity.Error, "No common phase keeps every network clear of 0° and 180°, where its parts grow without limit.", WayOut: "Add a length of line to one mast, or use current forcing.")]);
        var rest = new List<Part> { AcSource.Transmitter(GroupFeed.Transmitter, "line", Network.Ground, problem.PowerW, problem.LineOhm), problem.Antenna() };
        var parts = new List<Part>();
        foreach (var e in ends)
        {
            var (x1, x2, x3) = Reactances(e, choice.Offset, total, problem);
            var n = (e.Mast + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
            Series(n + "a", "line", "t" + n, x1);
            Series(n + "c", "t" + n, e.Node, x2);
            parts.Add(GroupParts.Reactance(n + "b", "t" + n, Network.Ground, x3, problem)!);
        }

        // A reactance of nothing is a wire; the trimming takes up what it leaves.
        void Series(string name, string from, string to, double ohm)
        {
            if (Math.Abs(ohm) < 0.01 * problem.LineOhm)
                rest.Add(new Resistor("bond" + name, from, to, 0));
            else
                parts.Add(GroupParts.Reactance(name, from, to, ohm, problem)!);
        }

        rest.AddRange(ends.Where(e => problem.FeederM(e.Mast) > 0).Select(e => new Line($"W{e.Mast + 1}", e.Node, GroupProblem.MastNode(e.Mast), problem.Feeder, problem.FeederM(e.Mast))));
        rest.AddRange(Idle(table));
        var tuned = GroupTuner.Tune(parts, rest, problem, matchToo: true);
        var network = new Network(rest.Concat(tuned));
        var feed = new GroupFeed(Title, network, problem, table.Findings);
        if (feed.WorstError < 0.01)
            return new(feed, table.Findings);
        var findings = table.Findings.Add(new(
            "group-untuned",
            Severity.Warning,
            "The losses of the parts keep the currents from their values: a mast that takes almost no power is fed through parts that lose more than it takes.",
            Value: FormattableString.Invariant($"{feed.WorstError:0.000} of the reference current"),
            Allowed: "0.01",
            WayOut: "Use parts of higher Q, ask slightly other currents, or use current forcing."));
        return new(new GroupFeed(feed.Title, network, problem, findings), findings);
    }

    // A mast that is to carry nothing is left open; a grain of capacitance keeps its node defined.
    private static IEnumerable<Part> Idle(DriveTable table) =>
        table.Drives.Where(d => d.CurrentPhasor == Complex.Zero).Select(d => new Switch($"open{d.Mast + 1}", GroupProblem.MastNode(d.Mast), Network.Ground, closed: false, openF: 1e-15));

    private static BoxEnd AtBox(MastDrive d, GroupProblem p)
    {
        var length = p.FeederM(d.Mast);
        if (length == 0)
            return new(d.Mast, GroupProblem.MastNode(d.Mast), d.VoltagePhasor, d.CurrentPhasor);
        var wave = new StandingWave(p.Feeder, length, p.FrequencyHz, d.VoltagePhasor, d.CurrentPhasor);
        return new(d.Mast, $"box{d.Mast + 1}", wave.VoltageAt(length), wave.CurrentAt(length));
    }

    private static (double X1, double X2, double X3) Reactances(BoxEnd e, double offset, double total, GroupProblem p)
    {
        // The common voltage is √(P·Z0) at phase zero; a current that should lead by φ lags by β = offset - φ.
        var r1 = total * p.LineOhm / e.PowerW;
        var z = e.Voltage / e.Current;
        var (x1, x2, x3) = PhaseLag.T(r1, z.Real, offset - e.Current.Phase + (r1 < 0 ? Math.PI : 0));
        return (x1, x2 - z.Imaginary, x3);
    }

    private static double Stress(BoxEnd e, double offset, double total, GroupProblem p)
    {
        if (Math.Abs(Math.Sin(offset - e.Current.Phase)) < LeastSine)
            return double.PositiveInfinity;
        var (x1, x2, x3) = Reactances(e, offset, total, p);
        var i1 = Math.Sqrt(Math.Abs(e.PowerW * total * p.LineOhm)) / (total * p.LineOhm / Math.Abs(e.PowerW));
        var i2 = e.Current.Magnitude;
        return (Math.Abs(x1) * i1 * i1) + (Math.Abs(x2) * i2 * i2) + (Math.Abs(x3) * ((i1 * i1) + (i2 * i2)));
    }

    private sealed record BoxEnd(int Mast, string Node, Complex Voltage, Complex Current)
    {
        public double PowerW => (Voltage * Complex.Conjugate(Current)).Real;
    }
}
