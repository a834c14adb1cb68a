using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Ac;

/// <summary>
/// Parts wired between named nodes, solved by modified nodal analysis for one frequency at a time.
/// Immutable and safe to share between threads.
/// </summary>
public sealed class Network
{
    /// <summary>The name of the reference node.</summary>
    public const string Ground = "0";

    private readonly NetworkLayout _layout;

    /// <summary>Wires parts together.</summary>
    /// <exception cref="ArgumentException">Two parts share a name, or a coupling names a coil that is not there.</exception>
    public Network(IEnumerable<Part> parts)
    {
        Parts = [.. parts];
        if (Parts.GroupBy(p => p.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two parts are named {twice.Key}.", nameof(parts));
        foreach (var m in Parts.OfType<Mutual>())
            foreach (var coil in new[] { m.Coil1, m.Coil2 })
                if (!Parts.Any(p => p is Inductor && p.Name == coil))
                    throw new ArgumentException($"{m.Name} couples {coil}, which is no coil of this network.", nameof(parts));
        _layout = new NetworkLayout(Parts);
    }

    /// <summary>Wires parts together.</summary>
    public Network(params ReadOnlySpan<Part> parts)
        : this(parts.ToArray().AsEnumerable())
    {
    }

    /// <summary>The parts in the order given.</summary>
    public ImmutableArray<Part> Parts { get; }

    /// <summary>The nodes other than ground.</summary>
    public IEnumerable<string> Nodes => _layout.NodeRows.Keys;

    /// <summary>The same network with a part of the same name replaced.</summary>
    public Network With(Part replacement) => new(Parts.Select(p => p.Name == replacement.Name ? replacement : p));

    /// <summary>Solves at one frequency.</summary>
    /// <exception cref="InvalidOperationException">The network has no unique solution; <see cref="TrySolve"/> says why without throwing.</exception>
    public AcSolution Solve(double frequencyHz) =>
        TrySolve(frequencyHz, out var solution, out var problem) ? solution : throw new InvalidOperationException(problem.Message);

    /// <summary>Solves at one frequency, or says which node or part leaves the network without a unique solution.</summary>
    /// <param name="frequencyHz">Frequency, hertz, above zero.</param>
    /// <param name="solution">The solution when there is one.</param>
    /// <param name="problem">Why there is none.</param>
    public bool TrySolve(double frequencyHz, [NotNullWhen(true)] out AcSolution? solution, [NotNullWhen(false)] out Finding? problem)
    {
        Guard.Positive(frequencyHz);
        (solution, problem) = (null, null);
        var matrix = new DenseLu<Complex>(_layout.Size);
        var unknowns = new Complex[_layout.Size];
        var stamp = new StampContext(_layout, matrix, unknowns, frequencyHz);
        for (var p = 0; p < Parts.Length; p++)
        {
            stamp.MoveTo(p);
            Parts[p].Stamp(stamp);
        }

        var bad = matrix.Factor();
        if (bad >= 0)
        {
            problem = new(
                "network-singular",
                Severity.Error,
                $"The network has no unique solution: {_layout.NameOf(bad)} is left without a path, or parts resonate without loss.",
                WayOut: "Connect every node to the rest of the network and to ground, and give parts a loss.");
            return false;
        }

        matrix.Solve(unknowns);
        solution = new AcSolution(this, _layout, unknowns, frequencyHz);
        return true;
    }
}
