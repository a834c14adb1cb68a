namespace Mastwright.Circuits.Transient;

/// <summary>Times a step must end on: source kinks, contacts, and the arrival of jumps over lines.</summary>
internal sealed class BreakQueue(IEnumerable<double> delays, double apart)
{
    // A jump is announced through this many passages of a line; later ones are found by the watch on each line's bend.
    private const int Passages = 3;
    private readonly double[] _delays = [.. delays];
    private readonly SortedDictionary<double, int> _times = [];

    public double Next => _times.Count == 0 ? double.PositiveInfinity : _times.First().Key;

    public void Add(double at, int passage = 0)
    {
        if (!_times.ContainsKey(at) && !_times.Keys.Any(k => Math.Abs(k - at) < apart))
            _times.Add(at, passage);
    }

    /// <summary>A jump at a time reaches the far end of every line a delay later.</summary>
    public void Echo(double from, int passage = 0)
    {
        if (passage < Passages)
            foreach (var delay in _delays)
                Add(from + delay, passage + 1);
    }

    /// <summary>Drops the times reached and sends their echoes on. Returns whether there were any.</summary>
    public bool Reached(double t)
    {
        var any = false;
        while (_times.Count > 0 && _times.First() is var (at, passage) && at <= t + (apart / 2))
        {
            _times.Remove(at);
            Echo(at, passage);
            any = true;
        }

        return any;
    }
}
