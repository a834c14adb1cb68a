using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>The magnetic coupling of two coils of the same network: M = k·√(L1·L2), dots at the coils' first nodes.</summary>
public sealed record Mutual : Part
{
    /// <summary>Couples two coils.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="coil1">Name of one coil.</param>
    /// <param name="coil2">Name of the other.</param>
    /// <param name="coupling">Coupling coefficient k, from -1 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">k is outside -1 to 1.</exception>
    public Mutual(string name, string coil1, string coil2, double coupling)
        : base(name)
    {
        if (!(Math.Abs(coupling) <= 1))
            throw new ArgumentOutOfRangeException(nameof(coupling), coupling, "The coupling lies from -1 to 1.");
        (Coil1, Coil2, Coupling) = (coil1, coil2, coupling);
    }

    /// <summary>Name of one coil.</summary>
    public string Coil1 { get; }

    /// <summary>Name of the other coil.</summary>
    public string Coil2 { get; }

    /// <summary>Coupling coefficient k.</summary>
    public double Coupling { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [];

    internal override int BranchCount => 0;

    internal override void Stamp(StampContext at)
    {
        var l1 = ((Inductor)at.PartNamed(Coil1)).InductanceH;
        var l2 = ((Inductor)at.PartNamed(Coil2)).InductanceH;
        var reactance = new Complex(0, at.Omega * Coupling * Math.Sqrt(l1 * l2));
        at.Add(at.BranchOf(Coil1), at.BranchOf(Coil2), -reactance);
        at.Add(at.BranchOf(Coil2), at.BranchOf(Coil1), -reactance);
    }

    internal override PartState Read(ReadContext at) => new(this, [], default, default);
}
