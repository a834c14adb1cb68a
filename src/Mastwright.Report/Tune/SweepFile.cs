using System.Collections.Immutable;
using Mastwright.Build;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Csv;
using Mastwright.Build.Sweeps.Touchstone;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Tune;

/// <summary>A sweep as it came from the analyser.</summary>
/// <param name="Name">Name of the file.</param>
/// <param name="Text">Its whole text.</param>
/// <param name="Impedance">The impedances; null when it gives no phase.</param>
/// <param name="Swr">The standing-wave ratio; null when the impedance says it.</param>
public sealed record MeasuredSweep(string Name, string Text, ImpedanceSweep? Impedance, SwrSweep? Swr)
{
    /// <summary>Lowest frequency.</summary>
    public double FromHz => Impedance?.FromHz ?? Swr!.Points[0].FrequencyHz;

    /// <summary>Highest frequency.</summary>
    public double ToHz => Impedance?.ToHz ?? Swr!.Points[^1].FrequencyHz;
}

/// <summary>Reads a sweep by what its name says it is: Touchstone, or else a table.</summary>
public static class SweepFile
{
    /// <summary>Reads the text of a file.</summary>
    /// <param name="name">Name of the file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="port">Port of a network with several, from 1.</param>
    /// <param name="referenceOhm">Port impedance of the user's analyser; null when not stated.</param>
    public static Reading<MeasuredSweep> Read(string name, string text, int port = 1, double? referenceOhm = null)
    {
        if (TouchstoneReader.PortsFromName(name) is null && !name.EndsWith(".ts", StringComparison.OrdinalIgnoreCase))
        {
            var table = CsvSweepReader.Read(text, new CsvSweepOptions(name, ReferenceOhm: referenceOhm));
            return new(table.Value is { } t ? new MeasuredSweep(name, text, t.Impedance, t.Swr) : null, table.Findings);
        }

        return TouchstoneReader.Read(text, new TouchstoneOptions(name, referenceOhm)).Then(file =>
            port > file.Data.Ports
                ? new Reading<ImpedanceSweep>(null, [new Finding("sweep-port", Severity.Error, $"The file has {file.Data.Ports} port(s); port {port} was asked for.", new Place(name, 0, 0, ""), $"{port}", $"1 to {file.Data.Ports}", "Name the port the mast was on.")])
                : ImpedanceSweep.FromNetwork(file.Data, port, name))
            .Then(sweep => new Reading<MeasuredSweep>(new MeasuredSweep(name, text, sweep, null), ImmutableArray<Finding>.Empty));
    }
}
