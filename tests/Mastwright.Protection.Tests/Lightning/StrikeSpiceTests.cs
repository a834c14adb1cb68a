using System.Diagnostics;
using System.Globalization;
using System.Text;
using Mastwright.Circuits.Transient;
using Mastwright.Protection.Earthing;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>
/// A whole strike, every part of it, against ngspice: the gap is a switch that closes at its static voltage into a fixed arc in both, and the soil does
/// not break down in either, because ngspice has neither law.
/// </summary>
public class StrikeSpiceTests
{
    [Fact]
    public void A_whole_strike_agrees_with_ngspice()
    {
        if (Which("ngspice") is not { } ngspice)
        {
            Assert.Skip("ngspice is not installed.");
            return;
        }

        var scenario = new StrikeScenario(
            LightningCurrents.Of(LightningLevel.III, StrokeKind.FirstNegative), new(20, 0.05),
            new(new(GapShape.BallToBall, 0.05), 5e-3, AirState.Reference, 0.6, 0.05, 0.001, StrikeMetal.Copper), new(100, 16, 20, 1e-3, 0.02, 2),
            [new("coil", FeedElement.Coil, true, 5e-6), new("shunt", FeedElement.Capacitor, false, 500e-12)], new(40, CableRoute.OnGround), new(true));
        var earth = new RadialEarth(scenario.Earth, SoilIonisation.CriticalFieldCigre);
        var spark = GapBreakdown.PeakVolts(scenario.Gap!.Electrodes, scenario.Gap.SpacingM, scenario.Gap.Air);
        var built = StrikeCircuit.Build(scenario, earth, spark);

        var deck = new StringBuilder("strike\n");
        var ours = new TransientCircuit();
        var n = 0;
        foreach (var part in built.Parts)
        {
            var (a, b, name) = (Node(part.A), Node(part.B), $"x{++n}");
            switch (part)
            {
                case TransientCurrentSource:
                    deck.Append(F($"I{name} {a} {b} PWL("));
                    foreach (var t in Times())
                        deck.Append(F($"{t:R} {scenario.Stroke.CurrentA(t):R} "));
                    deck.Append(")\n");
                    ours = ours.Add(part);
                    break;
                case TransientGap:
                    deck.Append(F($"S{name} {a} {b} {a} {b} gap OFF\n.model gap SW(VT={spark.Value / 2:R} VH={spark.Value / 2:R} RON=0.05 ROFF=1e9)\nC{name} {a} {b} 2p\n"));
                    ours = ours.Gap(part.Name, part.A, part.B, new(new VoltageBreakdown(new(spark.Value)), new ConstantArc(0.05), 2e-12));
                    break;
                case CurrentDependentResistor r:
                    deck.Append(F($"R{name} {a} {b} {r.OhmAt(0):R}\n"));
                    ours = ours.Resistor(part.Name, part.A, part.B, r.OhmAt(0));
                    break;
                case TransientResistor r:
                    deck.Append(F($"R{name} {a} {b} {r.Ohm:R}\n"));
                    ours = ours.Add(part);
                    break;
                case TransientInductor l:
                    deck.Append(F($"L{name} {a} {b} {l.Henry:R}\n"));
                    ours = ours.Add(part);
                    break;
                case TransientCapacitor c:
                    deck.Append(F($"C{name} {a} {b} {c.Farad:R}\n"));
                    ours = ours.Add(part);
                    break;
                default:
                    Assert.Fail($"No translation for {part}.");
                    break;
            }
        }

        // A measure is kept as a vector: it must not bear the name of a node.
        deck.Append(".options reltol=1e-4 method=gear\n.tran 2n 12u 0 2n\n.control\nrun\n");
        deck.Append(F($"meas tran top_plate MAX v({Node("plate")})\nmeas tran top_entry MAX v({Node("entry")})\nmeas tran top_late AVG v({Node("plate")}) from=7.9e-6 to=8.1e-6\n"));
        deck.Append(F($"meas tran top_base MAX v({Node("base")})\n.endc\n.end\n"));
        var measured = RunSpice(ngspice, deck.ToString());

        var raw = ours.Run(new(12e-6) { RelativeTolerance = 1e-4, FloorV = 100, FloorA = 1 });
        Assert.Empty(raw.Findings);
        Assert.Equal(1, raw.Voltage("plate").Max() / measured["top_plate"], 0.01);
        Assert.Equal(1, raw.Voltage("entry").Max() / measured["top_entry"], 0.01);
        Assert.Equal(1, raw.At(raw.Voltage("plate"), 8e-6) / measured["top_late"], 0.01);
        Assert.Equal(1, raw.Voltage("base").Max() / measured["top_base"], 0.01);
    }

    private static IEnumerable<double> Times() => Enumerable.Range(0, 601).Select(i => i * 20e-9);

    private static string Node(string name) => name == "0" ? "0" : name.Replace(' ', '_');

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static Dictionary<string, double> RunSpice(string ngspice, string deck)
    {
        var file = Path.Combine(Path.GetTempPath(), $"strike-{Guid.NewGuid():N}.cir");
        File.WriteAllText(file, deck);
        try
        {
            using var process = Process.Start(new ProcessStartInfo(ngspice, ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            var found = output.Split('\n').Select(l => l.Split('=', StringSplitOptions.TrimEntries)).Where(p => p.Length >= 2)
                .Select(p => (Name: p[0], Value: p[1].Split(' ')[0]))
                .Where(p => double.TryParse(p.Value, CultureInfo.InvariantCulture, out _))
                .ToDictionary(p => p.Name, p => double.Parse(p.Value, CultureInfo.InvariantCulture));
            Assert.True(found.ContainsKey("top_base") && found.ContainsKey("top_late"), output + error.Result);
            return found;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string? Which(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(d => Path.Combine(d, program)).FirstOrDefault(File.Exists);
}
