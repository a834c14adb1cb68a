using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>A length of line in the path.</summary>
/// <param name="Type">Kind of line.</param>
/// <param name="LengthM">Physical length, metres.</param>
public sealed record LineSection(LineType Type, double LengthM) : LadderSection
{
    /// <inheritdoc/>
    public override string Title => $"length of {Type.Name}";

    /// <inheritdoc/>
    public override string Letter => "W";

    /// <inheritdoc/>
    public override bool IsSeries => true;

    /// <inheritdoc/>
    public override double Value => LengthM;

    /// <inheritdoc/>
    public override QuantityKind ValueKind => QuantityKind.Length;

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) => new LineSection(Type, value);

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality) => [new Line(name, left, right, Type, LengthM)];
}

/// <summary>A stub of line from the path to ground.</summary>
/// <param name="Type">Kind of line.</param>
/// <param name="LengthM">Physical length, metres.</param>
/// <param name="Shorted">Whether its far end is shorted; open otherwise.</param>
public sealed record StubSection(LineType Type, double LengthM, bool Shorted) : LadderSection
{
    /// <inheritdoc/>
    public override string Title => (Shorted ? "shorted stub of " : "open stub of ") + Type.Name;

    /// <inheritdoc/>
    public override string Letter => "S";

    /// <inheritdoc/>
    public override bool IsSeries => false;

    /// <inheritdoc/>
    public override double Value => LengthM;

    /// <inheritdoc/>
    public override QuantityKind ValueKind => QuantityKind.Length;

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) => new StubSection(Type, value, Shorted);

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality) =>
        [new Line(name, left, Shorted ? Network.Ground : name + ".end", Type, LengthM)];
}
