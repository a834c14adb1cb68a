using System.Diagnostics;
using System.Globalization;
using System.Text;
using Mastwright.Circuits.Transient;
using Mastwright.Protection.Earthing;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Support;

/// <summary>
/// One strike as a circuit of ours and as an ngspice deck, part for part: the gap a switch that closes at its static voltage into a fixed arc in both, and no
/// breakdown of the soil in either, because ngspice has neither law.
/// </summary>
internal sealed class StrikeDeck
{
    private const double EndS = 12e-6;
    private readonly StringBuilder _deck = new("strike\n");
    private TransientCircuit _ours = new();

    public StrikeDeck(StrikeScenario scenario)
    {
        var earth = new RadialEarth(scenario.Earth, SoilIonisation.CriticalFieldCigre);
        var spark = GapBreakdown.PeakVolts(scenario.Gap!.Electrodes, scenario.Gap.SpacingM, scenario.Gap.Air).Value;
        var n = 0;
        var circuit = StrikeCircuit.Build(scenario, earth, GapBreakdown.PeakVolts(scenario.Gap.Electrodes, scenario.Gap.SpacingM, scenario.Gap.Air));
        var names = new Dictionary<string, string>();
        foreach (var part in circuit.Parts)
        {
            names[part.Name] = $"x{++n}";
            Translate(part, $"x{n}", scenario.Stroke, spark);
        }

        foreach (var mutual in circuit.Mutuals)
        {
            _deck.Append(F($"Kx{++n} L{names[mutual.Coil1]} L{names[mutual.Coil2]} {mutual.Coupling:R}\n"));
            _ours = _ours.Mutual(mutual.Name, mutual.Coil1, mutual.Coil2, mutual.Coupling);
        }

        // A measure is kept as a vector: it must not bear the name of a node.
        _deck.Append(F($".options reltol=1e-4 method=gear\n.tran 2n {EndS:R} 0 2n\n.control\nrun\n"));
        _deck.Append("meas tran top_plate MAX v(plate)\nmeas tran top_entry MAX v(entry)\nmeas tran top_late AVG v(plate) from=7.9e-6 to=8.1e-6\n");
        _deck.Append("let across = abs(v(inner_end) - v(entry))\nmeas tran top_radio MAX across\nmeas tran top_base MAX v(base)\n.endc\n.end\n");
    }

    /// <summary>A usual station under a first negative stroke of level III.</summary>
    public static StrikeScenario Usual => new(
        LightningCurrents.Of(LightningLevel.III, StrokeKind.FirstNegative), new(20, 0.05),
        new(new(GapShape.BallToBall, 0.05), 5e-3, AirState.Reference, 0.6, 0.05, 0.001, StrikeMetal.Copper), new(100, 16, 20, 1e-3, 0.02, 2),
        [new("coil", FeedElement.Coil, true, 5e-6), new("shunt", FeedElement.Capacitor, false, 500e-12)], new(40, CableRoute.OnGround), new(true));

    public TransientResult RunOurs() => _ours.Run(new(EndS) { RelativeTolerance = 1e-4, FloorV = 100, FloorA = 1 });

    public Dictionary<string, double> RunSpice(string ngspice)
    {
        var file = Path.Combine(Path.GetTempPath(), $"strike-{Guid.NewGuid():N}.cir");
        File.WriteAllText(file, _deck.ToString());
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
            return found.ContainsKey("top_base") && found.ContainsKey("top_late") ? found : throw new InvalidOperationException(output + error.Result);
        }
        finally
        {
            File.Delete(file);
        }
    }

    public static string? Which(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(d => Path.Combine(d, program)).FirstOrDefault(File.Exists);

    private void Translate(TransientPart part, string name, HeidlerStroke stroke, double spark)
    {
        var (a, b) = (Node(part.A), Node(part.B));
        switch (part)
        {
            case TransientCurrentSource:
                _deck.Append(F($"I{name} {a} {b} PWL("));
                for (var i = 0; i <= 600; i++)
                    _deck.Append(F($"{i * EndS / 600:R} {stroke.CurrentA(i * EndS / 600):R} "));
                _deck.Append(")\n");
                _ours = _ours.Add(part);
                break;
            case TransientGap gap:
                // The base gap at its static voltage, an arrester at its own.
                var level = gap.Model.Breakdown is VoltageBreakdown own ? own.Level.Value : spark;
                _deck.Append(F($"S{name} {a} {b} {a} {b} m{name} OFF\n.model m{name} SW(VT={level / 2:R} VH={level / 2:R} RON=0.05 ROFF=1e9)\nC{name} {a} {b} 2p\n"));
                _ours = _ours.Gap(part.Name, part.A, part.B, new(new VoltageBreakdown(new(level)), new ConstantArc(0.05), 2e-12));
                break;
            case CurrentDependentResistor r:
                _deck.Append(F($"R{name} {a} {b} {r.OhmAt(0):R}\n"));
                _ours = _ours.Resistor(part.Name, part.A, part.B, r.OhmAt(0));
                break;
            case TransientResistor r:
                _deck.Append(F($"R{name} {a} {b} {r.Ohm:R}\n"));
                _ours = _ours.Add(part);
                break;
            case TransientInductor l:
                _deck.Append(F($"L{name} {a} {b} {l.Henry:R}\n"));
                _ours = _ours.Add(part);
                break;
            case TransientCapacitor c:
                _deck.Append(F($"C{name} {a} {b} {c.Farad:R}\n"));
                _ours = _ours.Add(part);
                break;
            default:
                throw new InvalidOperationException($"No translation for {part}.");
        }
    }

    private static string Node(string name) => name.Replace(' ', '_');

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
