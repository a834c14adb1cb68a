using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>What the reader should know besides the text.</summary>
/// <param name="FileName">Name shown in messages; a suffix such as <c>.s1p</c> tells the number of ports of a version 1 text.</param>
/// <param name="ExpectedReferenceOhm">Port impedance of the user's analyser, ohms; a file that says otherwise earns a warning. Null checks nothing.</param>
public sealed record TouchstoneOptions(string FileName, double? ExpectedReferenceOhm = null);

/// <summary>A Touchstone text as read.</summary>
/// <param name="Header">What its head says.</param>
/// <param name="Data">Its numbers, frequencies rising, values in ohms and siemens.</param>
public sealed record TouchstoneFile(TouchstoneHeader Header, NetworkData Data);

/// <summary>
/// Reads network-parameter text files of versions 1.0, 1.1 and 2.0 of the open Touchstone format. Faults come back as
/// findings with line and column; a half-written file yields everything that was written in full.
/// </summary>
public static partial class TouchstoneReader
{
    private const int MaximumPorts = 99;

    /// <summary>Reads a text.</summary>
    public static Reading<TouchstoneFile> Read(string text, TouchstoneOptions options)
    {
        var file = options.FileName;
        var head = new TouchstoneHeadParser(file);
        var lines = TouchstoneText.Lines(text);
        if (lines.Count == 0)
            return new(null, [new("file-empty", Severity.Error, "The file holds no data.", new(file, 1, 1, ""), null, null, "Export the sweep again.")]);
        head.Read(lines);
        if (head.HasErrors) return new(null, [.. head.Findings]);
        var sets = new TouchstoneSets(file);
        if (!sets.Gather(head.NetworkLines)) return new(null, [.. head.Findings, .. sets.Findings]);
        var findings = head.Findings.Concat(sets.Findings).ToList();
        var builder = new Assembly(head.Header, sets, options, findings);
        var data = builder.Build(head.NoiseLines);
        if (data is null || findings.Any(f => f.Severity == Severity.Error)) return new(null, [.. findings]);
        TouchstoneChecks.Add(data, head.Header, options, findings);
        return new(new(head.Header, data), [.. findings]);
    }

    /// <summary>Number of ports a file name promises; null when it promises nothing.</summary>
    public static int? PortsFromName(string fileName) =>
        SuffixPattern().Match(fileName) is { Success: true } m ? int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"\.[sSyYzZhHgG](\d{1,2})[pP]$", RegexOptions.CultureInvariant)]
    private static partial Regex SuffixPattern();

    private sealed class Assembly(TouchstoneHeader header, TouchstoneSets sets, TouchstoneOptions options, List<Finding> findings)
    {
        private int ports;
        private TouchstoneMatrix matrix = null!;

        public NetworkData? Build(IReadOnlyList<TextLine> noiseLines)
        {
            if (sets.Sets.Count == 0)
            {
                Error("no-data", "The file has a head but no data.", new("", 1, 1), null, "Export the sweep again.");
                return null;
            }
            if (Ports() is not { } n) return null;
            ports = n;
            if (header.Parameter is NetworkParameter.H or NetworkParameter.G && ports != 2)
            {
                Error("hybrid-ports", $"{header.Parameter} parameters belong to two-ports; this file has {ports} port(s).", sets.Sets[0].FirstWord, "2 ports", "Export S parameters.");
                return null;
            }
            if (header.ReferenceOhm.Length != 1 && header.ReferenceOhm.Length != ports)
            {
                Error("reference-count", $"The file gives {header.ReferenceOhm.Length} references for {ports} port(s).", sets.Sets[0].FirstWord, $"1 or {ports} resistances", "Give one resistance for all ports or one for each.");
                return null;
            }
            ImmutableArray<double> reference = header.ReferenceOhm.Length == ports ? header.ReferenceOhm : [.. Enumerable.Repeat(header.ReferenceOhm[0], ports)];
            matrix = new(header, ports, reference);

            var points = new List<NetworkPoint>();
            var noise = Points(points);
            if (noise is null) return null;
            if (noiseLines.Count > 0)
            {
                var noiseSets = new TouchstoneSets(options.FileName);
                var whole = noiseSets.Gather(noiseLines);
                findings.AddRange(noiseSets.Findings);
                if (!whole) return null;
                noise.AddRange(noiseSets.Sets);
            }
            CheckCounts(points.Count, noise.Count);
            return new(header.Parameter, reference, Sorted(points), [.. noise.Where(s => s.Numbers.Length == 5).Select(s => matrix.Noise(s.Numbers))]);
        }

        // Returns the sets that turned out to be noise data, or null after an error.
        private List<NumberSet>? Points(List<NetworkPoint> points)
        {
            var expected = matrix.NumbersInSet;
            var noise = new List<NumberSet>();
            for (var i = 0; i < sets.Sets.Count; i++)
            {
                var set = sets.Sets[i];
                if (!header.IsVersion2 && ports == 2 && set.Numbers.Length == 5 && points.Count > 0 && set.Frequency * header.FrequencyUnitHz <= points[^1].FrequencyHz)
                {
                    noise.AddRange(sets.Sets.Skip(i));
                    break;
                }
                if (set.Numbers.Length == expected)
                {
                    points.Add(new(set.Frequency * header.FrequencyUnitHz, matrix.Entries(set.Numbers)));
                    continue;
                }
                var last = i == sets.Sets.Count - 1;
                if (last && set.Numbers.Length < expected && points.Count > 0)
                {
                    HalfWritten(set.FirstWord, set.Numbers.Length, expected);
                    break;
                }
                var over = set.Overflow(expected);
                if (last && over.Before == expected && over == set.Lines[^1])
                {
                    points.Add(new(set.Frequency * header.FrequencyUnitHz, matrix.Entries(set.Numbers[..expected])));
                    HalfWritten(over.First, set.Numbers.Length - expected, expected);
                    break;
                }
                Error("set-size", $"This frequency has {set.Numbers.Length} numbers; {ports} port(s) need {expected}.", over.First, $"{expected} numbers", "Check this line for a missing or doubled number.");
                return null;
            }
            foreach (var bad in noise.Where(s => s.Numbers.Length != 5))
                Error("noise-size", $"A noise line has {bad.Numbers.Length} numbers.", bad.FirstWord, "5 numbers: frequency, least noise figure, magnitude, angle, noise resistance", "If these lines are not noise data, the frequencies before them do not rise: sort the file.");
            return noise;
        }

        private void HalfWritten(Word word, int found, int expected)
        {
            if (findings.Any(f => f.Code == "half-written")) return;
            findings.Add(new("half-written", Severity.Warning, $"The last frequency has {found} numbers instead of {expected}; it is left out and everything before it is used.", Where(word), word.Text, $"{expected} numbers", "Compare the last frequency with what was swept; export again if the end is missing."));
        }

        private int? Ports()
        {
            var first = sets.Sets[0];
            var promised = PortsFromName(options.FileName);
            if (header.Ports is { } declared)
            {
                if (promised is { } p && p != declared) Warn("ports-differ", $"The name of the file promises {p} port(s), [Number of Ports] says {declared}; the keyword is followed.", first.FirstWord, "Rename the file.");
                return Limited(declared, first);
            }
            // Version 1: the name promises, the numbers decide.
            var pairs = (first.Numbers.Length - 1) / 2;
            var n = (int)Math.Round(Math.Sqrt(pairs));
            if (pairs >= 1 && n * n == pairs)
            {
                if (promised is { } p && p != n)
                    Warn("ports-differ", $"The name of the file promises {p} port(s), but each frequency has the {first.Numbers.Length} numbers of {n} port(s); it is read as {n}.", first.FirstWord, $"Rename the file to end in .s{n}p.");
                return Limited(n, first);
            }
            if (promised is { } hint && first.Overflow(1 + (2 * hint * hint)).Before == 1 + (2 * hint * hint)) return Limited(hint, first);
            Error("ports-unclear", $"The first frequency has {first.Numbers.Length} numbers, which fits no number of ports.", first.FirstWord, "3 numbers for one port, 9 for two ports", "Check the first data line for a missing number.");
            return null;
        }

        private int? Limited(int n, NumberSet first)
        {
            if (n <= MaximumPorts) return n;
            Error("ports-too-many", $"The file claims {n} ports.", first.FirstWord, $"1 to {MaximumPorts}", "Export the ports of the antenna only.");
            return null;
        }

        private ImmutableArray<NetworkPoint> Sorted(List<NetworkPoint> points)
        {
            var sorted = points.OrderBy(p => p.FrequencyHz).ToList();
            if (!sorted.SequenceEqual(points)) Warn("frequency-unsorted", "The frequencies do not rise; they were put in order.", FirstFall(points), "Check that the file is one sweep and not several joined.");
            var unique = new List<NetworkPoint>(sorted.Count);
            foreach (var point in sorted)
            {
                if (unique.Count > 0 && point.FrequencyHz == unique[^1].FrequencyHz)
                    Warn("frequency-repeated", string.Create(CultureInfo.InvariantCulture, $"The frequency {point.FrequencyHz / 1e6:0.######} MHz comes twice; its first values are used."), sets.Sets[0].FirstWord, "Keep one sweep in the file.");
                else unique.Add(point);
            }
            if (unique[0].FrequencyHz < 0) Error("frequency-negative", "A frequency is below zero.", sets.Sets[0].FirstWord, "0 Hz and above", "Check the frequency column.");
            return [.. unique];
        }

        private Word FirstFall(List<NetworkPoint> points)
        {
            for (var i = 1; i < points.Count; i++)
                if (points[i].FrequencyHz < points[i - 1].FrequencyHz) return sets.Sets[i].FirstWord;
            return sets.Sets[0].FirstWord;
        }

        private void CheckCounts(int frequencies, int noise)
        {
            if (header.FrequencyCount is { } f && f != frequencies)
                Warn("frequency-count", $"The file announces {f} frequencies and holds {frequencies}.", sets.Sets[^1].FirstWord, "The file may be cut short; compare the last frequency with what was swept.");
            if (header.NoiseCount is { } c && c != noise)
                Warn("noise-count", $"The file announces {c} noise frequencies and holds {noise}.", sets.Sets[^1].FirstWord, "The file may be cut short.");
        }

        private Place Where(Word word) => new(options.FileName, word.Line, word.Column, "");

        private void Error(string code, string message, Word word, string? allowed, string wayOut) =>
            findings.Add(new(code, Severity.Error, message, Where(word), word.Text is "" ? null : word.Text, allowed, wayOut));

        private void Warn(string code, string message, Word word, string wayOut) =>
            findings.Add(new(code, Severity.Warning, message, Where(word), word.Text, null, wayOut));
    }
}
