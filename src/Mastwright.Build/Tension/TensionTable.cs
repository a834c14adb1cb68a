using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tension;

/// <summary>Tensions at the anchors, one for each guy in the table's order, at a temperature (K) and a wind speed (m/s; 0 is calm).</summary>
public delegate ImmutableArray<Trail> AnchorTensions(double temperatureK, double windMs);

/// <summary>One line of a tension table.</summary>
/// <param name="Guy">The guy.</param>
/// <param name="TemperatureK">Temperature.</param>
/// <param name="WindMs">Wind speed; 0 in calm air.</param>
/// <param name="Targets">What to read at that temperature and wind.</param>
public sealed record TensionTableRow(GuySpan Guy, double TemperatureK, double WindMs, TensionTargets Targets);

/// <summary>The tension of every guy against temperature, in calm air and in a light wind.</summary>
/// <param name="Guys">Guys in the order of the lines.</param>
/// <param name="TemperaturesK">Temperatures, rising.</param>
/// <param name="WindsMs">Wind speeds, rising.</param>
/// <param name="Rows">Lines by guy, then temperature, then wind.</param>
public sealed record TensionTable(
    ImmutableArray<GuySpan> Guys,
    ImmutableArray<double> TemperaturesK,
    ImmutableArray<double> WindsMs,
    ImmutableArray<TensionTableRow> Rows)
{
    /// <summary>Builds the table from a solver; lines for tensions a guy cannot hang with are left out with a finding.</summary>
    /// <param name="guys">The guys.</param>
    /// <param name="temperaturesK">Temperatures.</param>
    /// <param name="windsMs">Wind speeds, 0 for calm.</param>
    /// <param name="tensions">The structural solver.</param>
    /// <param name="options">What targets to give.</param>
    /// <param name="cancellation">Stops the work between two calls of the solver.</param>
    public static Reading<TensionTable> Build(
        IReadOnlyList<GuySpan> guys,
        IReadOnlyList<double> temperaturesK,
        IReadOnlyList<double> windsMs,
        AnchorTensions tensions,
        TargetOptions? options = null,
        CancellationToken cancellation = default)
    {
        ImmutableArray<double> temperatures = [.. temperaturesK.Order()];
        ImmutableArray<double> winds = [.. windsMs.Order()];
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var rows = new List<(int Guy, TensionTableRow Row)>();
        foreach (var temperature in temperatures)
        {
            foreach (var wind in winds)
            {
                cancellation.ThrowIfCancellationRequested();
                var all = tensions(temperature, wind);
                if (all.Length != guys.Count) throw new ArgumentException($"The solver gave {all.Length} tensions for {guys.Count} guys.", nameof(tensions));
                for (var g = 0; g < guys.Count; g++)
                {
                    var targets = TensionTargets.For(guys[g], all[g], options);
                    findings.AddRange(targets.Findings);
                    if (targets.Value is { } found) rows.Add((g, new(guys[g], temperature, wind, found)));
                }
            }
        }
        return new(new([.. guys], temperatures, winds, [.. rows.OrderBy(r => r.Guy).Select(r => r.Row)]), findings.ToImmutable());
    }

    /// <summary>Builds the table from tensions already at hand: [temperature, wind, guy].</summary>
    public static Reading<TensionTable> Build(IReadOnlyList<GuySpan> guys, IReadOnlyList<double> temperaturesK, IReadOnlyList<double> windsMs, double[,,] anchorTensionsN, Source source, TargetOptions? options = null)
    {
        if (anchorTensionsN.GetLength(0) != temperaturesK.Count || anchorTensionsN.GetLength(1) != windsMs.Count || anchorTensionsN.GetLength(2) != guys.Count)
            throw new ArgumentException("The array is [temperature, wind, guy].", nameof(anchorTensionsN));
        int Index(IReadOnlyList<double> list, double value) => list.ToList().IndexOf(value);
        return Build(guys, temperaturesK, windsMs, (t, w) =>
            [.. guys.Select((g, i) => Trail.Given($"tension of guy {g.Name} at the anchor", "Ta", anchorTensionsN[Index(temperaturesK, t), Index(windsMs, w), i], QuantityKind.Force, source))], options);
    }

    /// <summary>Tension at the anchor at a temperature between the lines, by straight lines; null outside the table.</summary>
    public double? AnchorTensionN(string guy, double temperatureK, double windMs = 0)
    {
        var lines = Rows.Where(r => r.Guy.Name == guy && r.WindMs == windMs).ToList();
        for (var i = 0; i < lines.Count; i++)
        {
            if (lines[i].TemperatureK == temperatureK) return lines[i].Targets.GaugeReading.Value;
            if (i == 0 || lines[i].TemperatureK < temperatureK || lines[i - 1].TemperatureK > temperatureK) continue;
            var (a, b) = (lines[i - 1], lines[i]);
            var share = (temperatureK - a.TemperatureK) / (b.TemperatureK - a.TemperatureK);
            return a.Targets.GaugeReading.Value + (share * (b.Targets.GaugeReading.Value - a.Targets.GaugeReading.Value));
        }
        return null;
    }

    /// <summary>
    /// A solver for guys whose pins stay put except that the mast grows with temperature: right for a stiff, straight
    /// mast, and a first answer before the structural solver has run.
    /// </summary>
    /// <param name="guys">The guys.</param>
    /// <param name="setTensionsN">Tension at each anchor at the set temperature.</param>
    /// <param name="setTemperatureK">Temperature at which those hold.</param>
    /// <param name="strandExpansionPerK">Thermal expansion of the strand, 1/K.</param>
    /// <param name="mastExpansionPerK">Thermal expansion of the mast, 1/K.</param>
    /// <param name="pinHeightsM">Height of each guy's pin above the mast's foot, metres.</param>
    public static AnchorTensions StiffMast(IReadOnlyList<GuySpan> guys, IReadOnlyList<double> setTensionsN, double setTemperatureK, double strandExpansionPerK, double mastExpansionPerK, IReadOnlyList<double> pinHeightsM) =>
        (temperature, wind) =>
        {
            if (wind != 0) throw new ArgumentOutOfRangeException(nameof(wind), wind, "Guys with fixed pins say nothing about wind.");
            return [.. guys.Select((guy, i) => Tension(guy, i, temperature - setTemperatureK))];

            Trail Tension(GuySpan guy, int i, double warmer)
            {
                var given = Trail.Given($"set tension of guy {guy.Name}", "T0", setTensionsN[i], QuantityKind.Force, Source.DesignFile);
                var set = GuyCurve.ForAnchorTension(guy, setTensionsN[i]) ?? throw new ArgumentException($"Guy {guy.Name} cannot hang with its set tension.", nameof(setTensionsN));
                var grown = guy with { RiseM = guy.RiseM + (pinHeightsM[i] * mastExpansionPerK * warmer) };
                var curve = GuyCurve.ForUnstretched(grown, set.UnstretchedM * (1 + (strandExpansionPerK * warmer)));
                var trail = Trail.Computed($"tension of guy {guy.Name} at the anchor", "Ta", curve?.AtAnchorN ?? 0, QuantityKind.Force,
                    "elastic catenary of length L0(1 + α ΔT) to a pin raised by α_mast z ΔT", Source.Derived("tension-methods.md"), given,
                    Trail.Given("temperature difference", "ΔT", warmer, QuantityKind.TemperatureDifference, Source.DesignFile));
                return trail.Within("stiff mast: pins move only by the mast's own growth", curve is null ? $"Guy {guy.Name} goes slack or beyond 2 % stretch at this temperature." : null);
            }
        };
}
