using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match.Topologies;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>Two-element matching of any load to a line: all solutions, solved with real parts at power.</summary>
public static class LMatch
{
    private static readonly ITopology[] Forms = [new LShuntAtLine(), new LShuntAtLoad()];

    /// <summary>
    /// All two-element networks that match a load to a line, the one losing least first. The closed form gives the
    /// element values; every voltage, current and loss comes from the nodal solution with the parts' losses in.
    /// </summary>
    /// <param name="loadOhm">Load impedance, ohms.</param>
    /// <param name="lineOhm">Line impedance, ohms.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="powerW">Transmitter power, watts.</param>
    /// <param name="quality">How good the parts are.</param>
    /// <returns>One to four candidates, or findings saying why the load cannot be matched.</returns>
    public static MatchResult Design(Complex loadOhm, double lineOhm, double frequencyHz, double powerW, PartQuality quality)
    {
        if (!Complex.IsFinite(loadOhm))
        {
            return new([], [new(
                "match-load-not-finite",
                Severity.Error,
                "The load impedance is not a finite number.",
                Value: FormattableString.Invariant($"{loadOhm.Real:G6} + j{loadOhm.Imaginary:G6} Ω"),
                Allowed: "finite resistance and reactance",
                WayOut: "Check the antenna model, or enter the measured impedance.")]);
        }

        return Design(new MatchProblem(LoadImpedance.Constant(loadOhm), lineOhm, frequencyHz, powerW, quality));
    }

    /// <summary>All two-element networks for a stated problem, the one losing least first.</summary>
    public static MatchResult Design(MatchProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new([], faults);
        var candidates = Forms
            .SelectMany(form => form.Synthesise(problem).Select(ladder => new MatchCandidate(form.Id, form.Title, ladder, problem)))
            .DistinctBy(Fingerprint)
            .OrderBy(c => c.LossW)
            .ToImmutableArray();
        return new(candidates, []);
    }

    // At R = Z0 or G = 1/Z0 both forms fall together into one element.
    private static string Fingerprint(MatchCandidate candidate) =>
        string.Join('|', candidate.Ladder.Sections.Select(s => FormattableString.Invariant($"{s.Title} {s.Value:E9}")));
}
