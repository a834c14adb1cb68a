using Mastwright.Circuits.Ac;
using Mastwright.Model.Units;

namespace Mastwright.Circuits.Tests.Outside;

/// <summary>
/// A SPICE deck of a network at one frequency, written for the tests by hand and apart from the product's export:
/// losses become series resistors, an impedance becomes a resistor with a coil or a capacitor.
/// </summary>
internal static class DeckOf
{
    public static IEnumerable<string> Network(Network network, double frequencyHz)
    {
        var w = 2 * Math.PI * frequencyHz;
        foreach (var part in network.Parts)
        {
            var n = part.Name;
            switch (part)
            {
                case AcSource s:
                    yield return $"V{n} {n}e {s.Minus} AC {Spice.Number(s.OpenVoltage.Magnitude)} {Spice.Number(s.OpenVoltage.Phase * 180 / Math.PI)}";
                    yield return $"R{n} {n}e {s.Plus} {Spice.Number(s.InternalOhm)}";
                    break;
                case Resistor r:
                    yield return $"R{n} {r.A} {r.B} {Spice.Number(r.ResistanceOhm)}";
                    break;
                case Inductor l:
                    foreach (var e in WithLoss("L", n, l.A, l.B, l.InductanceH, l.Loss.ResistanceOhm(l.InductanceH, frequencyHz)))
                        yield return e;
                    if (l.SelfCapacitanceF > 0)
                        yield return $"C{n} {l.A} {l.B} {Spice.Number(l.SelfCapacitanceF)}";
                    break;
                case Mutual m:
                    yield return $"K{n} L{m.Coil1} L{m.Coil2} {Spice.Number(m.Coupling)}";
                    break;
                case Capacitor c:
                    foreach (var e in WithLoss("C", n, c.A, c.B, c.CapacitanceF, c.Loss.ResistanceOhm(c.CapacitanceF, frequencyHz)))
                        yield return e;
                    break;
                case Line t:
                    Assert.Equal(0, t.Type.LossDbPerM(frequencyHz));
                    var delay = t.LengthM / (t.Type.VelocityFactor * Vacuum.SpeedOfLightMPerS);
                    yield return $"T{n} {t.Near.Hot} {t.Near.Return} {t.Far.Hot} {t.Far.Return} Z0={Spice.Number(t.Type.CharacteristicOhm)} TD={Spice.Number(delay)}";
                    break;
                case MultiportLoad a when a.Impedance.Ports == 1:
                    var z = a.Impedance.At(frequencyHz)[0, 0];
                    yield return $"R{n} {a.Pins[0]} {n}m {Spice.Number(z.Real)}";
                    yield return z.Imaginary >= 0
                        ? $"L{n} {n}m {a.Pins[1]} {Spice.Number(Math.Max(1e-18, z.Imaginary / w))}"
                        : $"C{n} {n}m {a.Pins[1]} {Spice.Number(-1 / (w * z.Imaginary))}";
                    break;
                default:
                    throw new NotSupportedException(part.GetType().Name);
            }
        }
    }

    // SPICE refuses or rounds a resistor of nothing, so a lossless part gets none.
    private static IEnumerable<string> WithLoss(string letter, string name, string a, string b, double value, double ohm)
    {
        yield return $"{letter}{name} {a} {(ohm > 0 ? name + "m" : b)} {Spice.Number(value)}";
        if (ohm > 0)
            yield return $"R{name} {name}m {b} {Spice.Number(ohm)}";
    }
}
