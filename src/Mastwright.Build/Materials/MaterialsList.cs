using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Materials;

/// <summary>Something the design needs.</summary>
/// <param name="Part">Name of the part, as the catalogue writes it.</param>
/// <param name="Group">Where it goes: mast, guys, earth, feed.</param>
/// <param name="Quantity">How much goes into the station, in <paramref name="Unit"/>.</param>
/// <param name="Unit">What is counted.</param>
/// <param name="WasteFraction">Waste in cutting, as a fraction of the quantity.</param>
/// <param name="Spares">Extra for the shelf, in the unit.</param>
/// <param name="MassKgPerUnit">Mass of one unit, kilograms; null when not known.</param>
/// <param name="Remark">Anything the buyer needs to know.</param>
/// <param name="PriceAs">Name under which it is priced when the price file has no price for the part itself; empty for none.</param>
public sealed record MaterialNeed(
    string Part,
    string Group,
    double Quantity,
    MaterialUnit Unit,
    double WasteFraction = 0,
    double Spares = 0,
    double? MassKgPerUnit = null,
    string Remark = "",
    string PriceAs = "");

/// <summary>One line to buy.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Groups">Where it goes.</param>
/// <param name="Unit">What is counted.</param>
/// <param name="Order">Quantity to order.</param>
/// <param name="WasteQuantity">Waste in it.</param>
/// <param name="SpareQuantity">Spares in it.</param>
/// <param name="Mass">Mass of the order; null when not known.</param>
/// <param name="UnitPrice">Price of a unit; null without a price.</param>
/// <param name="Cost">Cost of the order; null without a price.</param>
/// <param name="IsInventedPrice">Whether the price is a sample.</param>
/// <param name="Remark">Remarks of the needs and the price.</param>
public sealed record MaterialLine(
    string Part,
    ImmutableArray<string> Groups,
    MaterialUnit Unit,
    Trail Order,
    double WasteQuantity,
    double SpareQuantity,
    Trail? Mass,
    decimal? UnitPrice,
    decimal? Cost,
    bool IsInventedPrice,
    string Remark)
{
    /// <summary>Short name of the unit.</summary>
    public string UnitSymbol => PriceUnits.Symbol(Unit);
}

/// <summary>The materials list of a station.</summary>
/// <param name="Lines">Lines by first group, then in the order needed.</param>
/// <param name="Currency">Currency of the prices; empty without any.</param>
/// <param name="TotalCost">Sum of the costs there are.</param>
/// <param name="TotalMass">Sum of the masses there are.</param>
/// <param name="Unpriced">Parts without a price: the total is short of them.</param>
/// <param name="Unweighed">Parts without a mass.</param>
/// <param name="HasInventedPrices">Whether any price in the total is a sample.</param>
public sealed record MaterialsList(
    ImmutableArray<MaterialLine> Lines,
    string Currency,
    decimal TotalCost,
    Trail TotalMass,
    ImmutableArray<string> Unpriced,
    ImmutableArray<string> Unweighed,
    bool HasInventedPrices)
{
    private const int NamedInFinding = 6;
    private static readonly Source Derived = Source.CommonPractice;

    /// <summary>
    /// Adds up needs of the same part, puts waste and spares on, rounds pieces up to whole ones and packs to whole packs,
    /// and prices the lines. A price in another kind of unit than the need is a finding at its line and is not used.
    /// </summary>
    public static Reading<MaterialsList> Of(IReadOnlyList<MaterialNeed> needs, PriceList? prices = null)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var need in needs.Where(n => !(n.Quantity >= 0) || !double.IsFinite(n.Quantity) || !(n.WasteFraction >= 0) || !(n.Spares >= 0) || n.MassKgPerUnit is < 0))
            findings.Add(new("need-bad", Severity.Error, $"The quantity, waste, spares or mass of {need.Part} cannot be.", null, need.Quantity.ToString(CultureInfo.InvariantCulture), "0 and above", "Correct the part in the design."));
        if (findings.Count > 0) return new(null, findings.ToImmutable());
        var lines = needs
            .GroupBy(n => (Part: n.Part.ToUpperInvariant(), n.Unit))
            .Select(g => Line([.. g], prices, findings))
            .OrderBy(l => needs.Select(n => n.Group).Distinct().ToList().IndexOf(l.Groups[0]))
            .ToImmutableArray();
        var mass = Trail.Computed("mass of all lines with a known mass", "ΣM", lines.Sum(l => l.Mass?.Value ?? 0), QuantityKind.Mass, "ΣM", Derived, [.. lines.Where(l => l.Mass is not null).Select(l => l.Mass!)]);
        ImmutableArray<string> unpriced = [.. lines.Where(l => l.Cost is null).Select(l => l.Part)];
        if (prices is not null && unpriced.Length > 0)
            findings.Add(new("price-missing", Severity.Warning, $"{unpriced.Length} of {lines.Length} lines have no price; the total is short of them: {string.Join(", ", unpriced.Take(NamedInFinding))}{(unpriced.Length > NamedInFinding ? $" and {unpriced.Length - NamedInFinding} more" : "")}.", null, null, null, "Add them to the price file."));
        var invented = lines.Any(l => l.IsInventedPrice);
        if (invented)
            findings.Add(new("price-sample", Severity.Warning, "The total rests on sample prices that are invented.", null, null, null, "Enter real offers in a price file of your own."));
        return new(
            new(lines, prices?.Currency ?? "", lines.Sum(l => l.Cost ?? 0), mass, unpriced, [.. lines.Where(l => l.Mass is null).Select(l => l.Part)], invented),
            findings.ToImmutable());
    }

    private static MaterialLine Line(ImmutableArray<MaterialNeed> needs, PriceList? prices, ImmutableArray<Finding>.Builder findings)
    {
        var first = needs[0];
        var kind = first.Unit switch
        {
            MaterialUnit.Metre => QuantityKind.Length,
            MaterialUnit.SquareMetre => QuantityKind.Area,
            MaterialUnit.CubicMetre => QuantityKind.Volume,
            MaterialUnit.Kilogram => QuantityKind.Mass,
            _ => QuantityKind.Count,
        };
        var quantity = needs.Sum(n => n.Quantity);
        var waste = needs.Sum(n => n.Quantity * n.WasteFraction);
        var spares = needs.Sum(n => n.Spares);
        var exact = quantity + waste + spares;
        // A billionth below a whole piece is a whole piece, not one more.
        var order = first.Unit == MaterialUnit.Each ? Math.Ceiling(exact - 1e-9) : exact;

        Price? price = null;
        if (prices is not null && (prices.Prices.TryGetValue(first.Part, out var found) || (first.PriceAs.Length > 0 && prices.Prices.TryGetValue(first.PriceAs, out found))))
        {
            if (found.Unit == first.Unit) price = found;
            else findings.Add(new("price-other-unit", Severity.Warning, $"{first.Part} is needed by {PriceUnits.Symbol(first.Unit)} and priced by {PriceUnits.Symbol(found.Unit)}; the price is not used.", found.Place, PriceUnits.Symbol(found.Unit), PriceUnits.Symbol(first.Unit), "Give the price in the unit of the need."));
        }
        if (price is { Pack: > 0 }) order = (double)price.Pack * Math.Ceiling((order / (double)price.Pack) - 1e-9);

        var trail = Trail.Computed($"order of {first.Part}", "Q", order, kind, price is { Pack: > 0 } ? "Q = whole packs of (q + waste + spares)" : first.Unit == MaterialUnit.Each ? "Q = whole pieces of (q + waste + spares)" : "Q = q + waste + spares", Derived,
            Trail.Given("quantity built in", "q", quantity, kind, Source.DesignFile),
            Trail.Given("waste", "waste", waste, kind, Source.DesignFile),
            Trail.Given("spares", "spares", spares, kind, Source.DesignFile));
        var masses = needs.Select(n => n.MassKgPerUnit).FirstOrDefault(m => m is not null);
        var mass = first.Unit == MaterialUnit.Kilogram ? 1 : masses;
        var remarks = needs.Select(n => n.Remark).Append(price?.Note ?? "").Append(price is { IsInvented: true } ? "sample price, invented" : "").Where(r => r.Length > 0).Distinct();
        return new(
            first.Part,
            [.. needs.Select(n => n.Group).Distinct()],
            first.Unit,
            trail,
            waste,
            spares,
            mass is { } each ? Trail.Computed($"mass of {first.Part}", "M", order * each, QuantityKind.Mass, "M = Q m", Derived, trail) : null,
            price?.PricePerUnit,
            price is null ? null : Math.Round((decimal)order * price.PricePerUnit, 2, MidpointRounding.AwayFromZero),
            price?.IsInvented ?? false,
            string.Join("; ", remarks));
    }
}
