using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>A coil or a capacitor, in series with the path or from the path to ground.</summary>
public sealed record ReactiveSection : LadderSection
{
    private ReactiveSection(bool series, bool coil, double value) => (IsSeries, IsCoil, Value) = (series, coil, Guard.Positive(value));

    /// <summary>A coil in series, henries.</summary>
    public static ReactiveSection SeriesCoil(double inductanceH) => new(true, true, inductanceH);

    /// <summary>A capacitor in series, farads.</summary>
    public static ReactiveSection SeriesCapacitor(double capacitanceF) => new(true, false, capacitanceF);

    /// <summary>A coil to ground, henries.</summary>
    public static ReactiveSection ShuntCoil(double inductanceH) => new(false, true, inductanceH);

    /// <summary>A capacitor to ground, farads.</summary>
    public static ReactiveSection ShuntCapacitor(double capacitanceF) => new(false, false, capacitanceF);

    /// <summary>Whether it is a coil; a capacitor otherwise.</summary>
    public bool IsCoil { get; }

    /// <inheritdoc/>
    public override bool IsSeries { get; }

    /// <inheritdoc/>
    public override double Value { get; }

    /// <summary>The loss of this very coil, when its design is known; the network's quality holds otherwise.</summary>
    public CoilLoss? CoilLoss { get; init; }

    /// <summary>The coil's own capacitance, farads.</summary>
    public double SelfCapacitanceF { get; init; }

    /// <summary>The loss of this very capacitor, when it is known; the network's quality holds otherwise.</summary>
    public CapacitorLoss? CapacitorLoss { get; init; }

    /// <inheritdoc/>
    public override string Title => (IsSeries ? "series " : "shunt ") + (IsCoil ? "coil" : "capacitor");

    /// <inheritdoc/>
    public override string Letter => IsCoil ? "L" : "C";

    /// <inheritdoc/>
    public override QuantityKind ValueKind => IsCoil ? QuantityKind.Inductance : QuantityKind.Capacitance;

    /// <inheritdoc/>
    public override LadderSection WithValue(double value) =>
        new ReactiveSection(IsSeries, IsCoil, value) { CoilLoss = CoilLoss, CapacitorLoss = CapacitorLoss, SelfCapacitanceF = SelfCapacitanceF };

    internal override IEnumerable<Part> Build(string name, string left, string right, PartQuality quality)
    {
        var end = IsSeries ? right : Network.Ground;
        yield return IsCoil
            ? new Inductor(name, left, end, Value, CoilLoss ?? quality.Coil, SelfCapacitanceF)
            : new Capacitor(name, left, end, Value, CapacitorLoss ?? quality.Capacitor);
    }
}
