using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>A coil to ground with a tap: line and load hang on its top and its tap.</summary>
/// <param name="InductanceH">Inductance of the whole coil, henries.</param>
/// <param name="TapShare">Turns from ground to the tap over all turns, between 0 and 1.</param>
/// <param name="LoadOnTop">Whether the load hangs on the top and the line on the tap; the other way round otherwise.</param>
/// <param name="Shape">Diameter over length of the whole winding, which settles how its parts couple.</param>
public sealed record TappedCoilSection(double InductanceH, double TapShare, bool LoadOnTop, double Shape = 1) : LadderSection
{
    /// <summary>The loss of this very coil, when its design is known; the network's quality holds otherwise.</summary>
    public CoilLoss? CoilLoss { get; init; }

    /// <inheritdoc/>
    public override string Title => LoadOnTop ? "coil to ground, line on its tap" : "coil to ground, antenna on its tap";

    /// <inheritdoc/>
    public override string Letter => "L";

    /// <inheritdoc/>
    public override bool IsSeries => true;

    /// <inheritdoc/>
    public override double Value => InductanceH;

    /// <inheritdoc/>
    public override QuantityKind ValueKind => QuantityKind.Inductance;

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) => this with { InductanceH = value, Why = null };

    /// <summary>Inductance of the run from ground to the tap alone, henries.</summary>
    public double LowerH => Run(TapShare);

    /// <summary>Inductance of the run from the tap to the top alone, henries.</summary>
    public double UpperH => Run(1 - TapShare);

    // A run of x of the turns has L·x·K(u/x)/K(u).
    private double Run(double x) => InductanceH * x * Nagaoka.Coefficient(Shape / x) / Nagaoka.Coefficient(Shape);

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality)
    {
        var (tap, top) = LoadOnTop ? (left, right) : (right, left);

        var (lower, upper) = (LowerH, UpperH);

        // What is left between the runs is their mutual inductance.
        var mutual = (InductanceH - lower - upper) / 2;
        yield return new Inductor(name, tap, Network.Ground, lower, CoilLoss ?? quality.Coil);
        yield return new Inductor(name + "b", top, tap, upper, CoilLoss ?? quality.Coil);
        yield return new Mutual(name + "k", name, name + "b", mutual / Math.Sqrt(lower * upper));
    }
}

/// <summary>A two-winding transformer, both windings on ground.</summary>
/// <param name="PrimaryH">Inductance of the line's winding, henries.</param>
/// <param name="TurnsRatio">Turns of the line's winding over turns of the load's.</param>
/// <param name="Coupling">Coupling coefficient k, below 1.</param>
public sealed record TransformerSection(double PrimaryH, double TurnsRatio, double Coupling) : LadderSection
{
    /// <inheritdoc/>
    public override string Title => FormattableString.Invariant($"transformer {Ratio.Line}:{Ratio.Load} turns");

    /// <inheritdoc/>
    public override string Letter => "T";

    /// <inheritdoc/>
    public override bool IsSeries => true;

    /// <inheritdoc/>
    public override double Value => TurnsRatio;

    /// <inheritdoc/>
    public override QuantityKind ValueKind => QuantityKind.Ratio;

    /// <summary>The whole numbers of turns, up to 20, nearest the ratio.</summary>
    public (int Line, int Load) Ratio =>
        (from a in Enumerable.Range(2, 19) from b in Enumerable.Range(2, 19) select (Line: a, Load: b))
        .OrderBy(r => Math.Round(Math.Abs(Math.Log((double)r.Line / r.Load / TurnsRatio)), 3)).ThenBy(r => r.Line + r.Load).First();

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) => this with { TurnsRatio = value, Why = null };

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality)
    {
        yield return new Inductor(name, left, Network.Ground, PrimaryH, quality.Coil);
        yield return new Inductor(name + "b", right, Network.Ground, PrimaryH / (TurnsRatio * TurnsRatio), quality.Coil);
        yield return new Mutual(name + "k", name, name + "b", Coupling);
    }
}

/// <summary>A resistor from the path to ground that bleeds static charge from the mast.</summary>
/// <param name="Ohm">Ohms.</param>
public sealed record DrainSection(double Ohm) : LadderSection
{
    /// <inheritdoc/>
    public override string Title => "static drain resistor";

    /// <inheritdoc/>
    public override string Letter => "R";

    /// <inheritdoc/>
    public override bool IsSeries => false;

    /// <inheritdoc/>
    public override double Value => Ohm;

    /// <inheritdoc/>
    public override QuantityKind ValueKind => QuantityKind.Resistance;

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) => new DrainSection(value);

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality) => [new Resistor(name, left, Network.Ground, Ohm)];
}
