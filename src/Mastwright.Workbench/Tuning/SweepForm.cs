using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Build.Sweeps;
using Mastwright.Circuits.Coils;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Tune;

namespace Mastwright.Workbench.Tuning;

/// <summary>How a dropped sweep was taken and what is wanted of it, as typed on the page.</summary>
public sealed class SweepForm
{
    /// <summary>Largest file taken, bytes.</summary>
    public const long MostBytes = 4_000_000;

    /// <summary>Most points taken: more than any analyser gives, and few enough to be fitted at once.</summary>
    public const int MostPoints = 20_001;

    private readonly List<Finding> problems = [];

    /// <summary>The mast it was taken at.</summary>
    public string Mast { get; set; } = "";

    /// <summary>Title of the band the network is to be set for; empty for the first inside the sweep.</summary>
    public string Band { get; set; } = "";

    /// <summary>Port of a network with several.</summary>
    public int Port { get; set; } = 1;

    /// <summary>Port impedance of the analyser; empty for what the file says.</summary>
    public string PortImpedance { get; set; } = "";

    /// <summary>Length of the cable between analyser and feed terminal; empty for none.</summary>
    public string CableLength { get; set; } = "";

    /// <summary>Its characteristic impedance.</summary>
    public string CableImpedance { get; set; } = "50 Ω";

    /// <summary>Its velocity factor.</summary>
    public string CableVelocity { get; set; } = "0.66";

    /// <summary>Its loss for 100 m.</summary>
    public string CableLoss { get; set; } = "2 dB";

    /// <summary>Frequency of that loss.</summary>
    public string CableLossAt { get; set; } = "10 MHz";

    /// <summary>Where a choke sits: empty for none, drain across the base, series in the lead.</summary>
    public string Choke { get; set; } = "";

    /// <summary>Its inductance.</summary>
    public string ChokeInductance { get; set; } = "2.5 mH";

    /// <summary>Its resistance.</summary>
    public string ChokeResistance { get; set; } = "8 Ω";

    /// <summary>Inputs to fit.</summary>
    public HashSet<string> Fit { get; } = [.. SweepFitInputs.Usual];

    /// <summary>Coil of the network as it is set now; empty for the design's.</summary>
    public string PresentCoil { get; set; } = "";

    /// <summary>Capacitor of the network as it is set now; empty for the design's.</summary>
    public string PresentCapacitor { get; set; } = "";

    /// <summary>Turns of the tapped coil; empty when it is not to be told in turns.</summary>
    public string CoilTurns { get; set; } = "";

    /// <summary>Its diameter.</summary>
    public string CoilDiameter { get; set; } = "100 mm";

    /// <summary>Its length.</summary>
    public string CoilLength { get; set; } = "160 mm";

    /// <summary>Its wire.</summary>
    public string CoilWire { get; set; } = "4 mm";

    /// <summary>What is asked of the sweep; null with everything that stands in its way.</summary>
    /// <param name="station">The station.</param>
    /// <param name="name">Name of the file.</param>
    /// <param name="text">Its text.</param>
    public (SweepRequest? Request, ImmutableArray<Finding> Findings) Ask(Station station, string name, string text)
    {
        problems.Clear();
        var mast = Math.Max(0, station.Masts.IndexOf(station.Masts.FirstOrDefault(m => m.Name == Mast) ?? station.Masts[0]));
        var between = Between();
        if (SweepFitInputs.Clash(Fit) is { } clash)
        {
            problems.Add(clash);
        }

        var present = new Dictionary<string, double>();
        Put(present, "coil", PresentCoil, QuantityKind.Inductance);
        Put(present, "capacitor", PresentCapacitor, QuantityKind.Capacitance);
        var coil = Coil();
        var reference = Read("Port impedance", PortImpedance, QuantityKind.Resistance, 1, 10000);
        if (problems.Count > 0)
        {
            return (null, [.. problems]);
        }

        var sweep = SweepFile.Read(name, text, Math.Max(1, Port), reference);
        if (sweep.Value is not { } measured)
        {
            return (null, sweep.Findings);
        }

        var points = measured.Impedance?.Points.Length ?? measured.Swr!.Points.Length;
        if (points > MostPoints)
        {
            return (null, [new Finding("sweep-large", Severity.Error, $"{name} has more points than can be fitted.", new Place(name, 0, 0, ""), $"{points}", $"up to {MostPoints}", "Sweep with fewer points, or a narrower band.")]);
        }

        var band = station.Bands.FirstOrDefault(b => b.Title == Band) ?? station.Bands.FirstOrDefault(b => b.FrequencyHz >= measured.FromHz && b.FrequencyHz <= measured.ToHz);
        return (new SweepRequest(station, mast, measured, between, [.. SweepFitInputs.Words.Where(Fit.Contains)], band, present, coil), sweep.Findings);
    }

    private ImmutableArray<PlaneElement> Between()
    {
        var between = ImmutableArray.CreateBuilder<PlaneElement>();
        if (CableLength.Trim().Length > 0)
        {
            const string without = "Give it, or empty the cable's length for no cable.";
            var (length, ohm, loss, at) = (
                Need("Cable length", CableLength, QuantityKind.Length, 0, 2000, without), Need("Cable impedance", CableImpedance, QuantityKind.Resistance, 5, 1000, without),
                Need("Cable loss", CableLoss, QuantityKind.Decibel, 0, 1000, without), Need("Frequency of the loss", CableLossAt, QuantityKind.Frequency, 1e3, 1e10, without));
            var velocity = Number("Velocity factor", CableVelocity, 0.1, 1);
            if (length is { } m && ohm is { } z && velocity is { } v && loss is { } db && at is { } hz)
            {
                between.Add(new Cable(z, m, v, db / 100, hz));
            }
        }

        if (Choke is "drain" or "series")
        {
            const string without = "Give it, or choose no choke.";
            var (henry, series) = (Need("Choke inductance", ChokeInductance, QuantityKind.Inductance, 1e-9, 10, without), Need("Choke resistance", ChokeResistance, QuantityKind.Resistance, 0, 1e5, without));
            if (henry is { } l && series is { } r)
            {
                var branch = new Choke(r, l);
                between.Add(Choke == "drain" ? new DrainChoke(branch) : new SeriesChoke(branch));
            }
        }

        return between.ToImmutable();
    }

    private AirCoil? Coil()
    {
        if (CoilTurns.Trim().Length == 0)
        {
            return null;
        }

        const string without = "Give it, or empty the coil's turns for an answer without turns.";
        var turns = Number("Turns", CoilTurns, 1, 1000);
        var (diameter, length, wire) = (
            Need("Coil diameter", CoilDiameter, QuantityKind.FineLength, 0.003, 2, without), Need("Coil length", CoilLength, QuantityKind.FineLength, 0.003, 5, without), Need("Coil wire", CoilWire, QuantityKind.FineLength, 1e-4, 0.1, without));
        if (turns is not { } n || diameter is not { } d || length is not { } l || wire is not { } w)
        {
            return null;
        }

        if (l / n >= w)
        {
            return new AirCoil(d, n, l / n, w);
        }

        problems.Add(new Finding("coil-bad", Severity.Error, "The turns of the coil have no room on its length.", Value: $"{CoilTurns} turns of {CoilWire} on {CoilLength}", WayOut: "Measure the coil again."));
        return null;
    }

    private void Put(Dictionary<string, double> present, string name, string text, QuantityKind kind)
    {
        if (Read("Present " + name, text, kind, kind == QuantityKind.Inductance ? 1e-10 : 1e-14, 1) is { } si)
        {
            present[name] = si;
        }
    }

    private double? Number(string field, string text, double least, double most)
    {
        if (double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
        {
            return value;
        }

        problems.Add(new Finding("value-bad", Severity.Error, $"{field}: this cannot be used.", Value: text, Allowed: string.Create(CultureInfo.InvariantCulture, $"{least} to {most}"), WayOut: "Write a number with a point."));
        return null;
    }

    // A field that was emptied: nothing is made up in its place.
    private double? Need(string field, string text, QuantityKind kind, double least, double most, string wayOut)
    {
        if (text.Trim().Length == 0)
        {
            problems.Add(new Finding("value-missing", Severity.Error, $"{field} is empty.", WayOut: wayOut));
        }

        return Read(field, text, kind, least, most);
    }

    private double? Read(string field, string text, QuantityKind kind, double least, double most)
    {
        if (text.Trim().Length == 0)
        {
            return null;
        }

        var read = QuantityText.Read(text, kind);
        if (read.Ok && read.ValueSi >= least && read.ValueSi <= most)
        {
            return read.ValueSi;
        }

        string Show(double v) => QuantityFormat.Show(v, kind, UnitSystem.Metric);
        problems.Add(read.Ok
            ? new Finding("value-range", Severity.Error, $"{field} is out of range.", Value: text, Allowed: $"{Show(least)} to {Show(most)}", WayOut: "Check the number and its unit.")
            : new Finding("value-bad", Severity.Error, $"{field} cannot be used: {read.Problem}.", Value: text, WayOut: read.WayOut));
        return null;
    }
}
