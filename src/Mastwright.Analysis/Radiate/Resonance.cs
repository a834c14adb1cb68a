using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Radiate;

/// <summary>
/// Finds the lowest frequency at which a mast's feed reactance vanishes while rising: its first resonance. Masts alike ask for
/// the same frequencies, and one solution serves them all.
/// </summary>
/// <param name="model">The wires.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class Resonance(WireModel model, CancellationToken cancellation)
{
    // Frequencies are asked for on a lattice this fine, as a share of the quarter wave, so that like masts meet on it.
    private const double Lattice = 1e-5;

    private readonly Dictionary<double, WireSolution> solved = [];

    /// <summary>The first resonance; null when none lies between half and one and a quarter of the quarter-wave guess.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="reachM">Length from the feed to the farthest end of the radiating wire, which guesses the quarter wave.</param>
    public Trail? First(int feed, double reachM)
    {
        var quarterHz = Vacuum.SpeedOfLightMPerS / (4 * reachM);
        double Reactance(double f) => At(f).FeedImpedance(feed).Imaginary;
        double OnLattice(double f) => Math.Round(f / (Lattice * quarterHz)) * (Lattice * quarterHz);

        // The reactance of a mast rises through its first resonance; guys that ring of themselves may add steps on the way.
        var low = 0.5 * quarterHz;
        var xLow = Reactance(low);
        if (xLow >= 0)
        {
            return null;
        }

        for (var high = 0.85 * quarterHz; high <= 1.26 * quarterHz; high += 0.2 * quarterHz)
        {
            var xHigh = Reactance(high);
            if (xHigh >= 0)
            {
                return Trail.Computed("first resonance", "f0", Root(Reactance, OnLattice, low, xLow, high, xHigh), QuantityKind.Frequency,
                    "X(f0) = 0 of the solved feed impedance, without the insulator's capacitance", Source.Derived("docs/theory/fields-wires.md"));
            }

            (low, xLow) = (high, xHigh);
        }

        return null;
    }

    private WireSolution At(double frequencyHz)
    {
        if (!solved.TryGetValue(frequencyHz, out var solution))
        {
            solved[frequencyHz] = solution = WireSolver.Solve(model, frequencyHz, null, cancellation).Require();
        }

        return solution;
    }

    // Regula falsi with the Illinois step: the reactance is nearly straight here, three or four solves do.
    private static double Root(Func<double, double> f, Func<double, double> onLattice, double a, double fa, double b, double fb)
    {
        for (var i = 0; i < 8 && b - a > 1e-4 * b; i++)
        {
            var c = onLattice(((a * fb) - (b * fa)) / (fb - fa));
            var fc = f(c);
            if (Math.Abs(fc) < 0.05)
            {
                return c;
            }

            if (fc > 0)
            {
                (b, fb, fa) = (c, fc, fa / 2);
            }
            else
            {
                (a, fa, fb) = (c, fc, fb / 2);
            }
        }

        return ((a * fb) - (b * fa)) / (fb - fa);
    }
}
