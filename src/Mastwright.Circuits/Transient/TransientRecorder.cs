using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Transient;

/// <summary>Writes down every accepted step.</summary>
internal sealed class TransientRecorder(TransientWiring wiring)
{
    private readonly List<double> _times = [];
    private readonly List<double>[] _nodes = [.. wiring.Nodes.Select(_ => new List<double>())];
    private readonly List<double>[] _currents = [.. wiring.Companions.Select(_ => new List<double>())];
    private readonly Dictionary<string, List<double>> _far = wiring.Lines.ToDictionary(l => l.Part.Name, _ => new List<double>());
    private readonly List<TransientEvent> _events = [];

    public void Add(StageSystem system, double timeS)
    {
        _times.Add(timeS);
        for (var n = 0; n < _nodes.Length; n++)
            _nodes[n].Add(system.X[n]);
        for (var c = 0; c < _currents.Length; c++)
            _currents[c].Add(wiring.Companions[c].Current(system, timeS));
        foreach (var line in wiring.Lines)
            _far[line.Part.Name].Add(line.FarCurrent(system, timeS));
    }

    public void Event(double timeS, string part, TransientEventKind kind) => _events.Add(new(timeS, part, kind));

    public TransientResult ToResult(IEnumerable<Finding> findings) => new(
        [.. _times],
        wiring.Nodes.ToDictionary(n => n.Key, n => _nodes[n.Value].ToArray()),
        wiring.Companions.Select((c, i) => (c.Part, Values: _currents[i].ToArray())).ToDictionary(p => p.Part.Name, p => (p.Part, p.Values)),
        _far.ToDictionary(f => f.Key, f => f.Value.ToArray()),
        [.. _events],
        [.. findings]);
}
