using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// What a design costs, as a mass: the strand of its guys, a mass for the fittings of every guy, and the concrete whose
/// weight would hold the anchors' pull, counted at a share because a kilogram of concrete costs less than one of strand.
/// It compares designs of one mast and is no price.
/// </summary>
public sealed record SearchCost
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>Mass counted for the fittings of one guy, kg; common practice, no source.</summary>
    public double FittingsKg { get; init; } = 2;

    /// <summary>What a kilogram of concrete counts, in kilograms of strand; common practice, no source.</summary>
    public double ConcreteShare { get; init; } = 0.02;

    /// <summary>The words that say what it is.</summary>
    public string Words => FormattableString.Invariant(
        $"Cost is a mass to compare by, not a price: the guys’ strand, {FittingsKg:0.#} kg for the fittings of each guy, and {100 * ConcreteShare:0.#} % of the concrete whose weight alone would hold the anchors’ largest pulls with the anchor factor (common practice, no source).");

    /// <summary>The cost of a mast's guys and anchors, kg.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="anchorPullsN">Largest pull on each anchor.</param>
    public double Of(Station station, Mast mast, IReadOnlyDictionary<string, double> anchorPullsN)
    {
        var guys = mast.Guys.SelectMany(l => StandModel.AnchorsOf(mast, l).Select(a => (Level: l, Anchor: a))).ToList();
        var strand = guys.Sum(g => StandModel.StrandOf(g.Level.Strand).MassKgPerM * double.Hypot(g.Anchor.DistanceM, g.Level.HeightM - g.Anchor.RiseM));
        var concrete = anchorPullsN.Values.Sum() * station.Limits.AnchorFactor / GravityMPerS2;
        return strand + (FittingsKg * guys.Count) + (ConcreteShare * concrete);
    }
}
