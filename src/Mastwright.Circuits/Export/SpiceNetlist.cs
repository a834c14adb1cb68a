using System.Globalization;
using System.Text;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Units;

namespace Mastwright.Circuits.Export;

/// <summary>Writes a network as a SPICE netlist.</summary>
public static class SpiceNetlist
{
    /// <summary>
    /// The netlist of a network with an AC analysis around one frequency. Losses and the antenna's impedance are frozen
    /// at that frequency. A lossy line becomes a uniform line with series resistance, R = 2·Z0·α, which is exact in loss
    /// and differs in characteristic impedance by about α/(2β).
    /// </summary>
    /// <param name="network">The network.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="title">First line of the netlist.</param>
    /// <param name="comments">Lines of comment to put on top, e.g. the caution and the design's name.</param>
    public static string Of(Network network, double frequencyHz, string title, params IEnumerable<string> comments)
    {
        Guard.Positive(frequencyHz);
        var text = new StringBuilder();
        text.Append("* ").AppendLine(OneLine(title));
        foreach (var c in comments)
            text.Append("* ").AppendLine(OneLine(c));
        text.AppendLine(CultureInfo.InvariantCulture, $"* Losses and antenna impedance hold at {frequencyHz / 1e6:0.######} MHz. Voltages are RMS if read as amplitudes.");
        var writer = new Writer(text, frequencyHz);
        foreach (var part in network.Parts)
            writer.Write(part);
        text.AppendLine(CultureInfo.InvariantCulture, $".ac lin 201 {Num(frequencyHz * 0.95)} {Num(frequencyHz * 1.05)}");
        text.AppendLine(".end");
        return text.ToString();
    }

    private static string OneLine(string s) => s.ReplaceLineEndings(" ");

    private static string Num(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private sealed class Writer(StringBuilder text, double f)
    {
        private readonly double _omega = 2 * Math.PI * f;
        private readonly Dictionary<string, string> _names = [];
        private readonly Dictionary<string, string> _nodes = [];

        public void Write(Part part)
        {
            var n = Safe(part.Name, _names);
            switch (part)
            {
                case AcSource s:
                    Line($"V{n} {n}_emf {Node(s.Minus)} AC {Num(s.OpenVoltage.Magnitude)} {Num(s.OpenVoltage.Phase * 180 / Math.PI)}");
                    Impedance($"{n}_int", $"{n}_emf", Node(s.Plus), s.InternalOhm, 0);
                    break;
                case CurrentDrive i:
                    Line($"I{n} {Node(i.From)} {Node(i.Into)} AC {Num(i.Current.Magnitude)} {Num(i.Current.Phase * 180 / Math.PI)}");
                    break;
                case Resistor r:
                    Impedance(n, Node(r.A), Node(r.B), r.ResistanceOhm, 0);
                    break;
                case Inductor l:
                    Coil(n, l);
                    break;
                case Mutual m:
                    Line($"K{n} L{Safe(m.Coil1, _names)} L{Safe(m.Coil2, _names)} {Num(m.Coupling)}");
                    break;
                case Capacitor c:
                    var esr = c.CapacitanceF > 0 ? c.Loss.ResistanceOhm(c.CapacitanceF, f) : 0;
                    Line($"C{n} {Node(c.A)} {(esr > 0 ? n + "_m" : Node(c.B))} {Num(c.CapacitanceF)}");
                    if (esr > 0)
                        Line($"R{n} {n}_m {Node(c.B)} {Num(esr)}");
                    break;
                case Switch { Closed: true } s:
                    Impedance(n, Node(s.A), Node(s.B), s.ClosedOhm, 0);
                    break;
                case Switch s:
                    Line($"C{n} {Node(s.A)} {Node(s.B)} {Num(s.OpenF)}");
                    break;
                case Ac.Line t:
                    Transmission(n, t);
                    break;
                case MultiportLoad a:
                    Antenna(n, a);
                    break;
            }
        }

        private void Coil(string n, Inductor l)
        {
            var r = l.Loss.ResistanceOhm(l.InductanceH, f);
            Line($"L{n} {Node(l.A)} {(r > 0 ? n + "_m" : Node(l.B))} {Num(l.InductanceH)}");
            if (r > 0)
                Line($"R{n} {n}_m {Node(l.B)} {Num(r)}");
            if (l.SelfCapacitanceF > 0)
                Line($"C{n} {Node(l.A)} {Node(l.B)} {Num(l.SelfCapacitanceF)}");
        }

        private void Transmission(string n, Ac.Line t)
        {
            var (z0, v, alpha) = (t.Type.CharacteristicOhm, t.Type.VelocityFactor * Vacuum.SpeedOfLightMPerS, t.Type.PropagationPerM(f).Real);
            if (alpha == 0)
            {
                Line($"T{n} {Node(t.Near.Hot)} {Node(t.Near.Return)} {Node(t.Far.Hot)} {Node(t.Far.Return)} Z0={Num(z0)} TD={Num(t.LengthM / v)}");
                return;
            }

            Line($"O{n} {Node(t.Near.Hot)} {Node(t.Near.Return)} {Node(t.Far.Hot)} {Node(t.Far.Return)} line_{n}");
            Line($".model line_{n} LTRA(R={Num(2 * z0 * alpha)} L={Num(z0 / v)} C={Num(1 / (z0 * v))} G=0 LEN={Num(t.LengthM)})");
        }

        // One port is an impedance. More ports: each current is copied through its impedances and the voltages added up.
        private void Antenna(string n, MultiportLoad a)
        {
            var z = a.Impedance.At(f);
            var ports = a.Impedance.Ports;
            if (ports == 1)
            {
                Impedance(n, Node(a.Pins[0]), Node(a.Pins[1]), z[0, 0].Real, z[0, 0].Imaginary);
                return;
            }

            for (var i = 0; i < ports; i++)
            {
                Line($"V{n}_s{i} {Node(a.Pins[2 * i])} {n}_p{i}_0 0");
                for (var j = 0; j < ports; j++)
                {
                    Line($"F{n}_{i}_{j} 0 {n}_z{i}_{j} V{n}_s{j} 1");
                    Impedance($"{n}_{i}_{j}", $"{n}_z{i}_{j}", "0", z[i, j].Real, z[i, j].Imaginary);
                    Line($"E{n}_{i}_{j} {n}_p{i}_{j} {(j == ports - 1 ? Node(a.Pins[(2 * i) + 1]) : $"{n}_p{i}_{j + 1}")} {n}_z{i}_{j} 0 1");
                }
            }
        }

        private void Impedance(string n, string a, string b, double r, double x)
        {
            if (x == 0)
            {
                // SPICE takes no resistor of nothing; a source of nothing is a bond.
                Line(r == 0 ? $"V{n} {a} {b} 0" : $"R{n} {a} {b} {Num(r)}");
                return;
            }

            var middle = r == 0 ? b : n + "_m";
            Line(x > 0 ? $"L{n} {a} {middle} {Num(x / _omega)}" : $"C{n} {a} {middle} {Num(-1 / (_omega * x))}");
            if (x < 0)
                Line($"R{n}_dc {a} {middle} 1e12");
            if (r != 0)
                Line($"R{n} {middle} {b} {Num(r)}");
        }

        private string Node(string name) => name == Network.Ground ? name : Safe(name, _nodes);

        // SPICE knows no case and no blanks; what would fall together gets a number.
        private static string Safe(string name, Dictionary<string, string> known)
        {
            if (known.TryGetValue(name, out var safe))
                return safe;
            var plain = string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_'));
            safe = plain;
            for (var k = 2; known.Values.Contains(safe, StringComparer.OrdinalIgnoreCase); k++)
                safe = $"{plain}_{k}";
            known.Add(name, safe);
            return safe;
        }

        private void Line(string s) => text.AppendLine(s);
    }
}
