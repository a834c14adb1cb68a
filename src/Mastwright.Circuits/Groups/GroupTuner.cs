using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;

namespace Mastwright.Circuits.Groups;

/// <summary>Trims the coils and capacitors of a feed together: the losses of parts and lines shift the currents a little.</summary>
internal static class GroupTuner
{
    /// <summary>The parts with values that bring the currents, and if asked the match, as near as they can come.</summary>
    /// <param name="parts">Coils and capacitors that may change.</param>
    /// <param name="rest">Everything else, a source named <see cref="GroupFeed.Transmitter"/> included.</param>
    /// <param name="p">The problem.</param>
    /// <param name="matchToo">Whether the transmitter's line is to be matched as well.</param>
    public static IEnumerable<Part> Tune(IReadOnlyList<Part> parts, IReadOnlyList<Part> rest, GroupProblem p, bool matchToo)
    {
        Complex[] Residuals(double[] v)
        {
            if (!new Network(rest.Concat(parts.Select((part, k) => With(part, v[k])))).TrySolve(p.FrequencyHz, out var s, out _))
                return [.. Enumerable.Repeat(new Complex(1e3, 0), p.Masts - (matchToo ? 0 : 1))];
            var ports = s.Part("ANT").Ports;
            var errors = Enumerable.Range(0, p.Masts).Where(k => k != p.Reference).Select(k => (ports[k].CurrentPhasor / ports[p.Reference].CurrentPhasor) - (p.Currents[k] / p.Currents[p.Reference]));
            return matchToo ? [Mismatch.Reflection(s.InputImpedanceOhm(GroupFeed.Transmitter), p.LineOhm), .. errors] : [.. errors];
        }

        if (parts.Count == 0)
            return [];
        var start = parts.Select(part => part is Inductor l ? l.InductanceH : ((Capacitor)part).CapacitanceF).ToArray();
        var (values, _) = KnobSearch.Minimise(Residuals, start, 1e-9);
        return parts.Select((part, k) => With(part, values[k]));
    }

    private static Part With(Part part, double value) => part switch
    {
        Inductor l => new Inductor(l.Name, l.A, l.B, value, l.Loss, l.SelfCapacitanceF),
        Capacitor c => new Capacitor(c.Name, c.A, c.B, value, c.Loss),
        _ => part,
    };
}
