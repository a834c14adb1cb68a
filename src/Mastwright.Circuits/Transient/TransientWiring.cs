namespace Mastwright.Circuits.Transient;

/// <summary>Rows of the nodal system and the working parts of one run.</summary>
internal sealed class TransientWiring
{
    private readonly Dictionary<string, int> _rows = [];
    private readonly List<Companion> _companions = [];

    public TransientWiring(TransientCircuit circuit)
    {
        // A gap's electrodes are a capacitor of their own in the account of currents.
        var parts = circuit.Parts.SelectMany<TransientPart, TransientPart>(p =>
            p is TransientGap { Model.CapacitanceF: > 0 } g ? [g, new TransientCapacitor(g.Name + ".C", g.A, g.B, g.Model.CapacitanceF, 0)] : [p]).ToList();
        foreach (var p in parts)
        {
            RowOf(p.A);
            RowOf(p.B);
        }

        Size = _rows.Count;
        foreach (var p in parts)
            _companions.Add(Create(p, RowOf(p.A), RowOf(p.B)));
        foreach (var m in circuit.Mutuals)
            Couple(m);
    }

    public int Size { get; private set; }

    public IReadOnlyDictionary<string, int> Nodes => _rows;

    public IReadOnlyList<Companion> Companions => _companions;

    public IEnumerable<LineCompanion> Lines => _companions.OfType<LineCompanion>();

    public IEnumerable<NonlinearCompanion> Nonlinear => _companions.OfType<NonlinearCompanion>();

    public IReadOnlyList<GapCompanion> Gaps => field ??= [.. _companions.OfType<GapCompanion>()];

    public string NameOf(int row) => _rows.FirstOrDefault(r => r.Value == row).Key is { } node ? $"Node {node}" : "A branch";

    private int RowOf(string node)
    {
        if (node == TransientCircuit.Ground)
            return -1;
        if (!_rows.TryGetValue(node, out var row))
            _rows.Add(node, row = _rows.Count);
        return row;
    }

    private Companion Create(TransientPart part, int a, int b) => part switch
    {
        TransientResistor r => new ResistorCompanion(r, a, b, _ => r.Ohm),
        CurrentDependentResistor r => new CurrentDependentCompanion(r, a, b),
        TransientInductor l => new InductorCompanion(l, a, b, Size++),
        TransientCapacitor c => new CapacitorCompanion(c, a, b),
        TransientCurrentSource i => new CurrentSourceCompanion(i, a, b),
        TransientVoltageSource v => new VoltageSourceCompanion(v, a, b, Size++),
        TransientSwitch s => new SwitchCompanion(s, a, b),
        TransientGap g => new GapCompanion(g, a, b),
        TransientLine t => new LineCompanion(t, a, b),
        _ => throw new ArgumentException($"{part.GetType().Name} is not a part this engine knows."),
    };

    private void Couple(TransientMutual m)
    {
        var one = (InductorCompanion)_companions.Single(c => c.Part.Name == m.Coil1);
        var two = (InductorCompanion)_companions.Single(c => c.Part.Name == m.Coil2);
        var henry = m.Coupling * Math.Sqrt(((TransientInductor)one.Part).Henry * ((TransientInductor)two.Part).Henry);
        one.Couple(henry, two);
        two.Couple(henry, one);
    }
}
