using System.Globalization;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Sheets;

/// <summary>What to buy: quantities with waste and spares, weights, prices.</summary>
public static class MaterialsSheet
{
    /// <summary>The study, with the user's own prices or the invented samples.</summary>
    public static Study Study { get; } = new("materials", "What to buy: quantities with waste and spares, weights, and prices", Document) { TakesPrices = true };

    private static Document Document(StudyInput input)
    {
        var document = new DocumentBuilder("Materials", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station, input.Result, input.Prices ?? SamplePrices());
        return document.Build();
    }

    /// <summary>The sample prices, every one of them invented.</summary>
    public static Reading<PriceList> SamplePrices() => PriceFile.Read(PriceFile.Sample(), "sample-prices.csv");

    /// <summary>Writes the sheet.</summary>
    /// <param name="document">Where to.</param>
    /// <param name="station">The station.</param>
    /// <param name="result">Its result, for the networks.</param>
    /// <param name="prices">Prices, the user's own or the sample.</param>
    public static void Write(DocumentBuilder document, Station station, Analysis.Results.StationResult result, Reading<PriceList> prices)
    {
        document.Findings(prices.Findings);
        var reading = MaterialsList.Of(Needs.Of(station, result), prices.Value);
        if (reading.Value is not { } list)
        {
            document.Findings(reading.Findings);
            return;
        }

        var money = list.Currency.Length > 0 ? list.Currency : "money";
        foreach (var group in list.Lines.GroupBy(l => l.Groups[0]))
        {
            var columns = Columns(document, money).Where(c => c.Always || group.Any(l => c.Text(l).Length > 0)).ToList();
            document.Table(char.ToUpperInvariant(group.Key[0]) + group.Key[1..], [.. columns.Select(c => c.Head)], group.Select(l => columns.Select(c => (Cell)c.Text(l)).ToArray()));
        }

        document.Table("Sum", ["What", "#Value"],
        [
            ["lines with a price", $"{list.Lines.Length - list.Unpriced.Length} of {list.Lines.Length}"],
            [list.HasInventedPrices ? "cost of these, on invented sample prices" : "cost of these", $"{list.TotalCost.ToString("0.00", CultureInfo.InvariantCulture)} {list.Currency}"],
            ["weight of the lines with a known weight", document.Show(list.TotalMass, 3)],
        ]);
        if (list.HasInventedPrices)
        {
            document.Text("* An invented sample price: nobody's offer.");
        }

        document.Findings(reading.Findings);
        document.Add(new Note(NoteKind.Assumption, "Reinforcement is the least the sheet of concrete and bars lists; radials are pinned once a metre: common practice, no source. Winch, ropes, harness, fence, locks and tools are not in the list."));
    }

    // A column that would be empty in a group is left out there.
    private static IEnumerable<(string Head, bool Always, Func<MaterialLine, string> Text)> Columns(DocumentBuilder document, string money) =>
    [
        ("Part", true, l => l.Part),
        ("#Order", true, l => Quantity(document, l.Order.Value, l.Unit)),
        ("#Waste in it", false, l => l.WasteQuantity > 0 ? Quantity(document, l.WasteQuantity, l.Unit) : ""),
        ("#Spares in it", false, l => l.SpareQuantity > 0 ? Quantity(document, l.Unit == MaterialUnit.Each ? Math.Floor(l.Order.Value - l.Order.Inputs[0].Value - l.WasteQuantity + 1e-9) : l.SpareQuantity, l.Unit) : ""),
        ("#Weight", false, l => l.Mass is { } m ? document.Show(m, 3) : ""),
        ("#Unit price", true, l => l.UnitPrice is { } p ? UnitPrice(document, p, l.Unit) + (l.IsInventedPrice ? "*" : "") : ""),
        ($"#Cost, {money}", true, l => l.Cost is { } c ? c.ToString("0.00", CultureInfo.InvariantCulture) : ""),
        ("Remark", false, l => l.Remark),
    ];

    private static string Quantity(DocumentBuilder document, double value, MaterialUnit unit) => unit switch
    {
        MaterialUnit.Metre => document.Show(value, QuantityKind.Length),
        MaterialUnit.SquareMetre => document.Show(value, QuantityKind.Area, 3),
        MaterialUnit.CubicMetre => document.Units == UnitSystem.Us ? QuantityFormat.Digits(value / Math.Pow(0.9144, 3), 3) + " yd³" : document.Show(value, QuantityKind.Volume, 3),
        MaterialUnit.Kilogram => document.Show(value, QuantityKind.Mass, 3),
        _ => QuantityFormat.Digits(value, 4),
    };

    private static string UnitPrice(DocumentBuilder document, decimal price, MaterialUnit unit)
    {
        var us = document.Units == UnitSystem.Us;
        var (size, word) = unit switch
        {
            MaterialUnit.Metre => us ? (0.3048m, "/ft") : (1m, "/m"),
            MaterialUnit.SquareMetre => us ? (0.3048m * 0.3048m, "/ft²") : (1m, "/m²"),
            MaterialUnit.CubicMetre => us ? (0.9144m * 0.9144m * 0.9144m, "/yd³") : (1m, "/m³"),
            MaterialUnit.Kilogram => us ? (0.45359237m, "/lb") : (1m, "/kg"),
            _ => (1m, " each"),
        };
        return (price * size).ToString("0.00", CultureInfo.InvariantCulture) + word;
    }
}
