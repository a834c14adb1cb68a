using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Build.Sweeps;
using Mastwright.Circuits.Coils;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Tune;

namespace Mastwright.App.Commands;

/// <summary>The options that say how a sweep was taken and what is wanted of it.</summary>
internal static class SweepOptions
{
    private static readonly Option<string?> MastName = new("--mast") { Description = "The mast; needed when the station has several." };
    private static readonly Option<string?> BandName = new("--band") { Description = "Band, by name or frequency, the network is to be set for; left out, the first band inside the sweep." };
    private static readonly Option<string?> CableText = new("--cable") { Description = "Cable between analyser and feed terminal: \"30 m, impedance=50 Ω, vf=0.66, loss=2.1 dB at=10 MHz\" (loss for 100 m)." };
    private static readonly Option<string?> ChokeText = new("--choke") { Description = "Choke at the base: \"drain, 2.5 mH, 8 Ω\" across it, or \"series, 12 µH, 1 Ω\" in the lead." };
    private static readonly Option<string?> Fit = new("--fit") { Description = "Inputs to fit: earth, stray, height, conductivity, permittivity; or none.", DefaultValueFactory = _ => string.Join(",", SweepFitInputs.Usual) };
    private static readonly Option<string?> Present = new("--present") { Description = "Settings of the network now: \"coil=12.5 µH, capacitor=480 pF\"; left out, those of the design." };
    private static readonly Option<string?> CoilText = new("--coil") { Description = "The tapped coil: \"turns=20, diameter=100 mm, length=160 mm, wire=4 mm\"; taps are then given in turns." };
    private static readonly Option<int> Port = new("--port") { Description = "Port the mast was on, in a file with several.", DefaultValueFactory = _ => 1 };
    private static readonly Option<string?> PortImpedance = new("--port-impedance") { Description = "Port impedance of your analyser, e.g. \"50 Ω\"; a file that says otherwise earns a warning." };

    public static IReadOnlyList<Option> All { get; } = [MastName, BandName, CableText, ChokeText, Fit, Present, CoilText, Port, PortImpedance];

    /// <summary>What is asked; null with the problems.</summary>
    public static (SweepRequest? Request, ImmutableArray<Finding> Problems, ImmutableArray<Finding> Warnings) Read(ParseResult parsed, Written written, Station station, string file)
    {
        var (mast, unknown) = MastChoice.Of(station, written.Text(MastName));
        if (unknown is not null)
        {
            written.Problems.Add(unknown);
        }

        var between = ImmutableArray.CreateBuilder<PlaneElement>();
        if (written.Text(CableText) is { } cable && CableOf(written, cable) is { } c)
        {
            between.Add(c);
        }

        if (written.Text(ChokeText) is { } choke && ChokeOf(written, choke) is { } h)
        {
            between.Add(h);
        }

        ImmutableArray<string> fit = written.Text(Fit) is null or "none" or "" ? [] : [.. written.Text(Fit)!.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(w => w.ToLowerInvariant()).Distinct()];
        if (SweepFitInputs.Clash(fit) is { } clash)
        {
            written.Problems.Add(clash with { Place = Written.Place("--fit") });
        }

        var present = PresentOf(written);
        var coil = written.Text(CoilText) is { } text ? CoilOf(written, text) : null;
        var reference = written.Quantity(PortImpedance, QuantityKind.Resistance, 1, 10000);
        var port = parsed.GetValue(Port);
        if (port < 1)
        {
            written.Problems.Add(new Finding("sweep-port", Severity.Error, "Ports count from 1.", Written.Place("--port"), $"{port}", "1 and above", "Name the port the mast was on."));
        }

        if (written.Problems.Count > 0)
        {
            return (null, [.. written.Problems], []);
        }

        var (content, unreadable) = OutputFile.Read(file);
        if (content is null)
        {
            return (null, [unreadable!], []);
        }

        var sweep = SweepFile.Read(file, content, port, reference);
        if (sweep.Value is not { } measured)
        {
            return (null, sweep.Findings, []);
        }

        var (band, problem) = BandOf(written, station, measured);
        return problem is not null
            ? (null, [problem], [])
            : (new SweepRequest(station, station.Masts.IndexOf(mast!), measured, between.ToImmutable(), fit, band, present, coil), [], sweep.Findings);
    }

    private static (Band? Band, Finding? Problem) BandOf(Written written, Station station, MeasuredSweep sweep)
    {
        if (written.Text(BandName) is not { } name)
        {
            return (station.Bands.FirstOrDefault(b => b.FrequencyHz >= sweep.FromHz && b.FrequencyHz <= sweep.ToHz), null);
        }

        var titled = station.Bands.FirstOrDefault(b => b.Title.Equals(name, StringComparison.OrdinalIgnoreCase) || b.Title.Replace(" ", "", StringComparison.Ordinal).Equals(name, StringComparison.OrdinalIgnoreCase));
        if (titled is not null)
        {
            return (titled, null);
        }

        // A frequency is taken with the power of the nearest band.
        var hz = Model.Units.QuantityText.Read(name, QuantityKind.Frequency);
        return hz.Ok && hz.ValueSi > 0
            ? (station.Bands.MinBy(b => Math.Abs(Math.Log(b.FrequencyHz / hz.ValueSi)))! with { FrequencyHz = hz.ValueSi, Name = null }, null)
            : (null, new Finding("band-unknown", Severity.Error, $"The station has no band “{name}”.", Written.Place("--band"), name, string.Join(", ", station.Bands.Select(b => b.Title)), "Name one of these, or a frequency such as \"3.6 MHz\"."));
    }

    private static Cable? CableOf(Written written, string text)
    {
        var count = written.Problems.Count;
        var (length, z, vf, loss, at) = (double.NaN, 50.0, 0.66, 0.0, 10e6);
        foreach (var part in Parts(text))
        {
            switch (part.Name)
            {
                case "" or "length": length = written.Quantity("--cable", part.Value, QuantityKind.Length, 0, 2000) ?? 0; break;
                case "impedance" or "z": z = written.Quantity("--cable", part.Value, QuantityKind.Resistance, 5, 1000) ?? z; break;
                case "vf": vf = written.Number("--cable", part.Value) ?? vf; break;
                case "loss": loss = written.Quantity("--cable", part.Value, QuantityKind.Decibel, 0, 1000) ?? 0; break;
                case "at": at = written.Quantity("--cable", part.Value, QuantityKind.Frequency, 1e3, 1e10) ?? at; break;
                default: Unknown(written, "--cable", part.Name, "length, impedance, vf, loss, at"); break;
            }
        }

        if (double.IsNaN(length))
        {
            written.Problems.Add(new Finding("cable-length", Severity.Error, "The cable's length is missing.", Written.Place("--cable"), text, WayOut: "Begin with it: \"30 m, vf=0.66\"."));
        }
        else if (vf is not (> 0.1 and <= 1))
        {
            written.Problems.Add(new Finding("cable-velocity", Severity.Error, "The velocity factor cannot be.", Written.Place("--cable"), text, "above 0.1 to 1", "0.66 for solid, 0.8 to 0.88 for foamed polyethylene; the maker says."));
        }

        return written.Problems.Count > count ? null : new Cable(z, length, vf, loss / 100, at);
    }

    private static PlaneElement? ChokeOf(Written written, string text)
    {
        var count = written.Problems.Count;
        var parts = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is < 2 or > 4 || parts[0] is not ("drain" or "series"))
        {
            written.Problems.Add(new Finding("choke-bad", Severity.Error, "This does not describe a choke.", Written.Place("--choke"), text, "drain or series, inductance, resistance, own capacitance", "Write it like \"drain, 2.5 mH, 8 Ω\"."));
            return null;
        }

        var inductance = written.Quantity("--choke", parts[1], QuantityKind.Inductance, 1e-9, 10);
        var resistance = parts.Length > 2 ? written.Quantity("--choke", parts[2], QuantityKind.Resistance, 0, 1e5) : 0;
        var capacitance = parts.Length > 3 ? written.Quantity("--choke", parts[3], QuantityKind.Capacitance, 0, 1e-8) : 0;
        if (written.Problems.Count > count)
        {
            return null;
        }

        var branch = new Choke(resistance!.Value, inductance!.Value, capacitance!.Value);
        return parts[0] == "drain" ? new DrainChoke(branch) : new SeriesChoke(branch);
    }

    private static Dictionary<string, double> PresentOf(Written written)
    {
        var present = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, value) in written.Pairs("--present", written.Text(Present)))
        {
            var kind = name.StartsWith('C') || name.StartsWith("cap", StringComparison.OrdinalIgnoreCase) ? QuantityKind.Capacitance : QuantityKind.Inductance;
            kind = name.Equals("coil", StringComparison.OrdinalIgnoreCase) ? QuantityKind.Inductance : kind;
            if (written.Quantity("--present", value, kind, kind == QuantityKind.Inductance ? 1e-10 : 1e-14, 1) is { } si)
            {
                present[name] = si;
            }
        }

        return present;
    }

    private static AirCoil? CoilOf(Written written, string text)
    {
        var count = written.Problems.Count;
        var (turns, diameter, length, wire) = (double.NaN, double.NaN, double.NaN, double.NaN);
        foreach (var part in Parts(text))
        {
            switch (part.Name)
            {
                case "turns": turns = written.Number("--coil", part.Value) ?? 0; break;
                case "diameter": diameter = written.Quantity("--coil", part.Value, QuantityKind.FineLength, 0.003, 2) ?? 0; break;
                case "length": length = written.Quantity("--coil", part.Value, QuantityKind.FineLength, 0.003, 5) ?? 0; break;
                case "wire": wire = written.Quantity("--coil", part.Value, QuantityKind.FineLength, 1e-4, 0.1) ?? 0; break;
                default: Unknown(written, "--coil", part.Name, "turns, diameter, length, wire"); break;
            }
        }

        if (written.Problems.Count == count && !(turns >= 1 && diameter > 0 && length > 0 && wire > 0 && length / turns >= wire))
        {
            written.Problems.Add(new Finding("coil-bad", Severity.Error, "This does not describe a coil: turns, diameter, length and wire are needed, and the turns must have room on the length.", Written.Place("--coil"), text, WayOut: "Write it like \"turns=20, diameter=100 mm, length=160 mm, wire=4 mm\"."));
        }

        return written.Problems.Count > count ? null : new AirCoil(diameter, turns, length / turns, wire);
    }

    private static IEnumerable<(string Name, string Value)> Parts(string text)
    {
        // "loss=2.1 dB at=10 MHz" reads better than a comma between the two.
        foreach (var part in text.Replace(" at=", ", at=", StringComparison.Ordinal).Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var at = part.IndexOf('=', StringComparison.Ordinal);
            yield return at < 0 ? ("", part) : (part[..at].Trim().ToLowerInvariant(), part[(at + 1)..].Trim());
        }
    }

    private static void Unknown(Written written, string field, string name, string allowed) =>
        written.Problems.Add(new Finding("part-unknown", Severity.Error, $"“{name}” is not known here.", Written.Place(field), name, allowed, "Name one of these with its value."));
}
