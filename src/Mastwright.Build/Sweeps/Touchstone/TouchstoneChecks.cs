using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>Looks over data that read well for signs that they mean something else than they seem to.</summary>
internal static class TouchstoneChecks
{
    // A good calibration leaves a reflection at most a few thousandths above 1.
    private const double PassiveLimit = 1.02;

    public static void Add(NetworkData data, TouchstoneHeader header, TouchstoneOptions options, List<Finding> findings)
    {
        var place = new Place(options.FileName, 0, 0, "");
        if (header.Parameter != NetworkParameter.S && !header.IsVersion2 && !header.ReferenceWritten)
            findings.Add(new("reference-assumed", Severity.Warning, $"A version 1 file gives {header.Parameter} parameters relative to a reference and this one names none; 50 Ω was taken.", place, null, "R and a resistance in the option line", "If the values come out wrong by a constant factor, write the analyser's port impedance into the option line."));
        if (options.ExpectedReferenceOhm is { } expected && data.ReferenceOhm.Any(r => Math.Abs(r - expected) > 1e-6 * expected))
            findings.Add(new("reference-differs", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"The file is referred to {string.Join(", ", data.ReferenceOhm)} Ω, the analyser is entered with {expected} Ω."), place, null, null, "Impedances are right if the file is right; correct whichever is wrong."));
        if (data.Parameter == NetworkParameter.S)
        {
            var worst = data.Points.MaxBy(p => Enumerable.Range(0, data.Ports).Max(i => p.Matrix[(i * data.Ports) + i].Magnitude))!;
            var size = Enumerable.Range(0, data.Ports).Max(i => worst.Matrix[(i * data.Ports) + i].Magnitude);
            if (size > PassiveLimit)
                findings.Add(new("reflection-above-one", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"At {worst.FrequencyHz / 1e6:0.####} MHz more comes back than was sent (magnitude {size:0.###}), which an antenna cannot do."), place, null, "a magnitude of at most 1", "Calibrate again at the plane measured from, and check that DB, MA or RI in the option line is what the analyser wrote."));
        }
        if (data.Points.Length < 2)
            findings.Add(new("single-frequency", Severity.Warning, "The file holds one frequency only.", place, null, null, "Sweep a band to see a trend."));
    }
}
