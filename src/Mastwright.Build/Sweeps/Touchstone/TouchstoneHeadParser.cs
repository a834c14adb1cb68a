using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>Reads option line and keywords, and hands on the lines that hold numbers.</summary>
internal sealed class TouchstoneHeadParser(string file)
{
    private static readonly string[] MustHave = ["number of ports", "number of frequencies", "network data"];

    private readonly HashSet<string> seen = new(StringComparer.OrdinalIgnoreCase);
    private bool optionSeen;
    private bool inInformation;
    private bool inReference;
    private bool inNoise;
    private bool ended;

    public List<Finding> Findings { get; } = [];

    public TouchstoneHeader Header { get; private set; } = TouchstoneHeader.Default;

    public List<TextLine> NetworkLines { get; } = [];

    public List<TextLine> NoiseLines { get; } = [];

    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    public void Read(IEnumerable<TextLine> lines)
    {
        var last = 0;
        foreach (var line in lines)
        {
            last = line.Number;
            if (ended) break;
            if (inInformation && line.First != '[') continue;
            if (line.First == '[') Keyword(line);
            else if (line.First == '#') Option(line);
            else Numbers(line);
        }
        if (!Header.IsVersion2) return;
        foreach (var name in MustHave.Where(n => !seen.Contains(n)))
            Error("keyword-missing", $"The version 2 keyword [{name}] is missing.", last, 1, null, null, "The file may be half-written; export it again from the analyser.");
        if (Header.Ports == 2 && !seen.Contains("two-port data order"))
            Error("keyword-missing", "A version 2 two-port file must say [Two-Port Data Order].", last, 1, null, "21_12 or 12_21", "Add the line [Two-Port Data Order] 21_12 if S21 comes before S12.");
        if (!ended && !HasErrors) Warn("end-missing", "The version 2 file has no [End]; it may be cut short.", last, 1, null, "[End]", "Compare the last frequency with what was swept, and export again if it is too low.");
    }

    private void Numbers(TextLine line)
    {
        if (inReference)
        {
            ReferenceValues(line.Words);
            return;
        }
        if (inNoise) NoiseLines.Add(line);
        else if (Header.IsVersion2 && !seen.Contains("network data"))
            Error("text-unexpected", $"\"{line.Words[0].Text}\" stands where a keyword was expected.", line.Number, line.Words[0].Column, line.Words[0].Text, "a keyword in [ ]", "Comments start with !.");
        else NetworkLines.Add(line);
    }

    private void Option(TextLine line)
    {
        if (NetworkLines.Count > 0)
        {
            Warn("option-after-data", "This option line comes after the first data and is ignored, as the format asks.", line.Number, 1, line.Content.Trim(), null, "If it was meant, split the file there.");
            return;
        }
        if (optionSeen)
        {
            Warn("option-repeated", "Only the first option line counts; this one is ignored.", line.Number, 1, line.Content.Trim(), null, "Delete one of them.");
            return;
        }
        optionSeen = true;
        var words = line.Words.ToList();
        if (words[0].Text.Length > 1) words[0] = new(words[0].Text[1..], line.Number, words[0].Column + 1);
        else words.RemoveAt(0);
        for (var i = 0; i < words.Count; i++)
        {
            if (words[i].Is("R"))
            {
                i = OptionReference(words, i);
                continue;
            }
            OptionWord(words[i]);
        }
    }

    private int OptionReference(List<Word> words, int at)
    {
        var values = ImmutableArray.CreateBuilder<double>();
        var i = at + 1;
        for (; i < words.Count && words[i].TryNumber(out var value); i++)
        {
            if (value <= 0) ReferenceError(words[i]);
            values.Add(value);
        }
        if (values.Count == 0)
            Error("reference-missing", "R stands in the option line without a resistance behind it.", words[at].Line, words[at].Column, "R", "a resistance above 0 Ω", "Write for example R 50.");
        else
            Header = Header with { ReferenceOhm = values.ToImmutable(), ReferenceWritten = true, Version = Header.Version == "1.0" && values.Count > 1 ? "1.1" : Header.Version };
        return i - 1;
    }

    private void OptionWord(Word word)
    {
        switch (word.Text.ToUpperInvariant())
        {
            case "HZ": Header = Header with { FrequencyUnitHz = 1 }; break;
            case "KHZ": Header = Header with { FrequencyUnitHz = 1e3 }; break;
            case "MHZ": Header = Header with { FrequencyUnitHz = 1e6 }; break;
            case "GHZ": Header = Header with { FrequencyUnitHz = 1e9 }; break;
            case "S": Header = Header with { Parameter = NetworkParameter.S }; break;
            case "Y": Header = Header with { Parameter = NetworkParameter.Y }; break;
            case "Z": Header = Header with { Parameter = NetworkParameter.Z }; break;
            case "H": Header = Header with { Parameter = NetworkParameter.H }; break;
            case "G": Header = Header with { Parameter = NetworkParameter.G }; break;
            case "DB": Header = Header with { Form = NumberForm.DecibelAngle }; break;
            case "MA": Header = Header with { Form = NumberForm.MagnitudeAngle }; break;
            case "RI": Header = Header with { Form = NumberForm.RealImaginary }; break;
            default:
                Error("option-unknown", $"The option line holds \"{word.Text}\", which means nothing there.", word.Line, word.Column, word.Text, "Hz kHz MHz GHz, S Y Z H G, DB MA RI, R and a resistance", "Write for example # MHz S RI R 50.");
                break;
        }
    }

    private void Keyword(TextLine line)
    {
        inReference = false;
        var close = line.Content.IndexOf(']', StringComparison.Ordinal);
        var column = line.Words[0].Column;
        if (close < 0)
        {
            Error("keyword-open", "A keyword is not closed.", line.Number, column, line.Content.Trim(), "[Keyword] value", "Add the missing ].");
            return;
        }
        var name = string.Join(' ', line.Content[(line.Content.IndexOf('[', StringComparison.Ordinal) + 1)..close].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
        var values = line.Words.Where(w => w.Column > close + 1).ToList();
        if (values.Count == 0 && close + 1 < line.Content.Length && line.Content[(close + 1)..].Trim() is { Length: > 0 } glued)
            values.Add(new(glued, line.Number, close + 2));
        if (inInformation && name != "end information") return;
        seen.Add(name);
        Apply(name, values, line, column);
    }

    private void Apply(string name, List<Word> values, TextLine line, int column)
    {
        switch (name)
        {
            case "version": Version(values, line); break;
            case "number of ports": if (Count(values, line) is { } ports) Header = Header with { Ports = ports }; break;
            case "number of frequencies": if (Count(values, line) is { } count) Header = Header with { FrequencyCount = count }; break;
            case "number of noise frequencies": if (Count(values, line) is { } noise) Header = Header with { NoiseCount = noise }; break;
            case "two-port data order": TwoPortOrder(values, line); break;
            case "matrix format": Format(values, line); break;
            case "reference":
                inReference = true;
                Header = Header with { ReferenceOhm = [], ReferenceWritten = true };
                ReferenceValues(values);
                break;
            case "begin information": inInformation = true; break;
            case "end information": inInformation = false; break;
            case "network data": inNoise = false; break;
            case "noise data": inNoise = true; break;
            case "end": ended = true; break;
            case "mixed-mode order":
                Error("mixed-mode", "Mixed-mode parameters are not read here.", line.Number, column, line.Content.Trim(), "single-ended data", "Export single-ended S parameters from the analyser.");
                break;
            default:
                Warn("keyword-unknown", $"The keyword [{name}] is not known and is passed over.", line.Number, column, line.Content.Trim(), null, "Check its spelling.");
                break;
        }
    }

    private void Version(List<Word> values, TextLine line)
    {
        var text = values.Count > 0 ? values[0].Text : "";
        if (text is not ("2.0" or "2.1"))
            Error("version-unknown", $"The file says it follows version \"{text}\" of the format.", line.Number, line.Words[0].Column, text, "2.0 or 2.1; version 1 files carry no [Version]", "Export it as version 1 or 2.0.");
        else if (optionSeen || seen.Count > 1 || NetworkLines.Count > 0)
            Error("version-late", "[Version] must be the first line that is not a comment.", line.Number, 1, line.Content.Trim(), null, "Move it to the top.");
        else Header = Header with { Version = text };
    }

    private int? Count(List<Word> values, TextLine line)
    {
        if (values.Count > 0 && int.TryParse(values[0].Text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0) return n;
        Error("count-bad", $"{line.Content.Trim()} gives no usable count.", line.Number, line.Words[0].Column, values.Count > 0 ? values[0].Text : "", "a whole number above 0", "Count the frequencies or ports and write the number behind the keyword.");
        return null;
    }

    private void TwoPortOrder(List<Word> values, TextLine line)
    {
        var text = values.Count > 0 ? values[0].Text : "";
        if (text is "21_12" or "12_21") Header = Header with { TwoPortOrder2112 = text == "21_12" };
        else Error("order-unknown", "[Two-Port Data Order] has no known value.", line.Number, line.Words[0].Column, text, "21_12 or 12_21", "Write 21_12 if S21 comes before S12.");
    }

    private void Format(List<Word> values, TextLine line)
    {
        if (values.Count > 0 && Enum.TryParse<MatrixFormat>(values[0].Text, ignoreCase: true, out var format) && !char.IsDigit(values[0].Text[0])) Header = Header with { Matrix = format };
        else Error("matrix-format-unknown", "[Matrix Format] has no known value.", line.Number, line.Words[0].Column, values.Count > 0 ? values[0].Text : "", "Full, Lower or Upper", "Write Full when every entry is given.");
    }

    private void ReferenceValues(IReadOnlyList<Word> words)
    {
        foreach (var word in words)
        {
            if (word.TryNumber(out var value) && value > 0) Header = Header with { ReferenceOhm = Header.ReferenceOhm.Add(value) };
            else ReferenceError(word);
        }
    }

    private void ReferenceError(Word word) =>
        Error("reference-bad", "A port's reference resistance cannot be used.", word.Line, word.Column, word.Text, "a resistance above 0 Ω", "Write the analyser's port impedance, mostly 50.");

    private void Error(string code, string message, int line, int column, string? value, string? allowed, string? wayOut) =>
        Findings.Add(new(code, Severity.Error, message, new(file, line, column, ""), value, allowed, wayOut));

    private void Warn(string code, string message, int line, int column, string? value, string? allowed, string? wayOut) =>
        Findings.Add(new(code, Severity.Warning, message, new(file, line, column, ""), value, allowed, wayOut));
}
