using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Export;

/// <summary>Scattering parameters of a network, measured as an instrument would: a source behind the reference resistance at one port, the same resistance at the others.</summary>
public static class PortParameters
{
    /// <summary>The S matrix of a passive network at a frequency.</summary>
    /// <param name="parts">Parts of the network without sources.</param>
    /// <param name="ports">Hot node of each port against ground.</param>
    /// <param name="referenceOhm">Reference resistance, ohms.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    public static Complex[,] Scattering(IEnumerable<Part> parts, ImmutableArray<string> ports, double referenceOhm, double frequencyHz)
    {
        var passive = parts.ToList();
        var s = new Complex[ports.Length, ports.Length];
        for (var j = 0; j < ports.Length; j++)
        {
            // An open voltage of two gives an incident wave of one.
            var sources = ports.Select((p, k) => new AcSource($"port {k + 1}", p, Network.Ground, k == j ? 2 : 0, referenceOhm));
            var solution = new Network(passive.Concat<Part>(sources)).Solve(frequencyHz);
            for (var i = 0; i < ports.Length; i++)
                s[i, j] = solution.NodeVoltage(ports[i]) - (i == j ? 1 : 0);
        }

        return s;
    }
}
