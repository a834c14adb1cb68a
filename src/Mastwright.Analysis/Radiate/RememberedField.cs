using Mastwright.Fields.Earth;

namespace Mastwright.Analysis.Radiate;

/// <summary>A field along the ground that works each value out once: the places the earth's loss is summed at do not change with the soil.</summary>
internal sealed class RememberedField(BaseField inner) : BaseField
{
    private readonly Dictionary<double, double> known = [];

    /// <inheritdoc/>
    public override double FrequencyHz => inner.FrequencyHz;

    /// <inheritdoc/>
    public override string Origin => inner.Origin;

    /// <inheritdoc/>
    public override string? OutOfRange => inner.OutOfRange;

    /// <inheritdoc/>
    public override double MeanSquare(double distanceM)
    {
        if (!known.TryGetValue(distanceM, out var value))
        {
            known[distanceM] = value = inner.MeanSquare(distanceM);
        }

        return value;
    }
}
