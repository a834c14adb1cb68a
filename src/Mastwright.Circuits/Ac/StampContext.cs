using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>Where a part writes its equations: the modified nodal system of Ho, Ruehli and Brennan (IEEE Trans. CAS, 1975).</summary>
internal sealed class StampContext(NetworkLayout layout, DenseLu<Complex> matrix, Complex[] rightHandSide, double frequencyHz)
{
    private int _part;

    public double FrequencyHz => frequencyHz;

    public double Omega => 2 * Math.PI * frequencyHz;

    public void MoveTo(int part) => _part = part;

    public int Pin(int index) => layout.PinRows[_part][index];

    public int Branch(int index = 0) => layout.FirstBranch[_part] + index;

    /// <summary>The branch row of another part by name, for couplings.</summary>
    public int BranchOf(string name) => layout.FirstBranch[layout.PartIndex[name]];

    public Part PartNamed(string name) => layout.Parts[layout.PartIndex[name]];

    public void Add(int row, int column, Complex value)
    {
        if (row >= 0 && column >= 0)
            matrix.Add(row, column, value);
    }

    public void AddSource(int row, Complex value)
    {
        if (row >= 0)
            rightHandSide[row] += value;
    }

    /// <summary>An admittance between two rows.</summary>
    public void Admittance(int a, int b, Complex y)
    {
        Add(a, a, y);
        Add(b, b, y);
        Add(a, b, -y);
        Add(b, a, -y);
    }

    /// <summary>A branch whose current flows from row <paramref name="a"/> to row <paramref name="b"/>, with its voltage on its own row.</summary>
    public void BranchBetween(int a, int b, int branch)
    {
        Add(a, branch, 1);
        Add(b, branch, -1);
        Add(branch, a, 1);
        Add(branch, b, -1);
    }
}

/// <summary>Where a part reads its voltages and currents after the solution.</summary>
internal sealed class ReadContext(NetworkLayout layout, Complex[] unknowns, double frequencyHz)
{
    private int _part;

    public double Omega => 2 * Math.PI * frequencyHz;

    public double FrequencyHz => frequencyHz;

    public void MoveTo(int part) => _part = part;

    public Complex Voltage(int firstPin) => Value(layout.PinRows[_part][firstPin]) - Value(layout.PinRows[_part][firstPin + 1]);

    public Complex Current(int branch = 0) => unknowns[layout.FirstBranch[_part] + branch];

    private Complex Value(int row) => row < 0 ? Complex.Zero : unknowns[row];
}

/// <summary>Which node and which branch current sits in which row.</summary>
internal sealed class NetworkLayout
{
    public NetworkLayout(IReadOnlyList<Part> parts)
    {
        Parts = parts;
        PinRows = new int[parts.Count][];
        FirstBranch = new int[parts.Count];
        for (var p = 0; p < parts.Count; p++)
        {
            PartIndex.Add(parts[p].Name, p);
            var pins = parts[p].Pins;
            PinRows[p] = new int[pins.Length];
            for (var i = 0; i < pins.Length; i++)
                PinRows[p][i] = RowOf(pins[i]);
        }

        Size = NodeRows.Count;
        for (var p = 0; p < parts.Count; p++)
        {
            FirstBranch[p] = Size;
            Size += parts[p].BranchCount;
        }
    }

    public IReadOnlyList<Part> Parts { get; }

    public Dictionary<string, int> PartIndex { get; } = [];

    public Dictionary<string, int> NodeRows { get; } = [];

    public int[][] PinRows { get; }

    public int[] FirstBranch { get; }

    public int Size { get; }

    /// <summary>The node or part whose unknown sits in a row, for messages.</summary>
    public string NameOf(int row)
    {
        foreach (var (node, r) in NodeRows)
            if (r == row)
                return $"node {node}";
        for (var p = Parts.Count - 1; p >= 0; p--)
            if (row >= FirstBranch[p] && Parts[p].BranchCount > 0)
                return $"part {Parts[p].Name}";
        return "the network";
    }

    private int RowOf(string node)
    {
        if (node == Network.Ground)
            return -1;
        if (!NodeRows.TryGetValue(node, out var row))
            NodeRows.Add(node, row = NodeRows.Count);
        return row;
    }
}
