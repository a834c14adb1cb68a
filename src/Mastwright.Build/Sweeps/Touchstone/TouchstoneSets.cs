using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>All numbers of one frequency.</summary>
/// <param name="Numbers">The frequency and its pairs.</param>
/// <param name="Lines">For each line: how many numbers of the set stand before it, and its first word.</param>
internal sealed record NumberSet(double[] Numbers, IReadOnlyList<(int Before, Word First)> Lines)
{
    public double Frequency => Numbers[0];

    public Word FirstWord => Lines[0].First;

    /// <summary>The line that makes the set longer than it may be; the first line when none does.</summary>
    public (int Before, Word First) Overflow(int expected) => Lines.FirstOrDefault(l => l.Before >= expected, Lines[0]);
}

/// <summary>
/// Gathers lines of numbers into one set for each frequency. A line with an odd count of numbers starts a set
/// (frequency and pairs), a line with an even count goes on with it (pairs only).
/// </summary>
internal sealed class TouchstoneSets(string file)
{
    public List<Finding> Findings { get; } = [];

    public List<NumberSet> Sets { get; } = [];

    public bool Gather(IReadOnlyList<TextLine> lines)
    {
        var current = new List<double>();
        var starts = new List<(int, Word)>();
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            var last = i == lines.Count - 1;
            var numbers = new List<double>();
            foreach (var word in line.Words)
            {
                if (word.TryNumber(out var value))
                {
                    numbers.Add(value);
                    continue;
                }
                if (last && line.EndsFile && word.Column == line.Words[^1].Column)
                {
                    HalfWritten(line, word);
                    Close(current, starts);
                    return true;
                }
                Findings.Add(new("number-bad", Severity.Error, $"\"{word.Text}\" is not a number.", new(file, line.Number, word.Column, ""), word.Text, "a finite number such as -12.5 or 3.1e-2, with a point", "Comments start with !; decimals take a point, not a comma."));
                return false;
            }
            if (numbers.Count % 2 == 1)
            {
                Close(current, starts);
                (current, starts) = ([], []);
            }
            else if (starts.Count == 0)
            {
                Findings.Add(new("set-without-frequency", Severity.Error, "The first data line holds an even count of numbers, so it has no frequency.", new(file, line.Number, 1, ""), line.Content.Trim(), "a frequency followed by pairs of numbers", "Check that no number is missing in this line."));
                return false;
            }
            starts.Add((current.Count, line.Words[0]));
            current.AddRange(numbers);
        }
        Close(current, starts);
        return true;
    }

    private void HalfWritten(TextLine line, Word word) =>
        Findings.Add(new("half-written", Severity.Warning, "The file stops in the middle of this line; everything before it is used.", new(file, line.Number, word.Column, ""), line.Content.Trim(), null, "Compare the last frequency with what was swept; export again if the end is missing."));

    private void Close(List<double> numbers, List<(int, Word)> starts)
    {
        if (starts.Count > 0) Sets.Add(new([.. numbers], starts));
    }
}
