using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Materials;

/// <summary>One price.</summary>
/// <param name="Part">Name of the part, as the catalogue and the design write it.</param>
/// <param name="Unit">What is counted.</param>
/// <param name="PricePerUnit">Price of one unit.</param>
/// <param name="Pack">Smallest quantity sold, in the unit; whole packs are bought.</param>
/// <param name="IsInvented">Whether the price is a sample and not anyone's offer.</param>
/// <param name="Note">Supplier, date of the offer.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Price(string Part, MaterialUnit Unit, decimal PricePerUnit, decimal Pack, bool IsInvented, string Note, Place Place);

/// <summary>A price file.</summary>
/// <param name="Currency">Currency of all prices, as written.</param>
/// <param name="Prices">By part name, case ignored.</param>
public sealed record PriceList(string Currency, ImmutableDictionary<string, Price> Prices)
{
    /// <summary>Whether any price in it is a sample.</summary>
    public bool HasInvented => Prices.Values.Any(p => p.IsInvented);
}

/// <summary>
/// Reads a user's price file: a table with the columns part, unit, price, currency and, if wanted, pack, invented, note.
/// Separators are comma, semicolon or tab. A row that cannot be read is named with its line and left out; the rest stands.
/// </summary>
public static class PriceFile
{
    private static readonly string[] Needed = ["part", "unit", "price", "currency"];

    /// <summary>A sample price file. Every price in it is invented and says so; it shows the form, not what things cost.</summary>
    public static string Sample()
    {
        using var stream = typeof(PriceFile).Assembly.GetManifestResourceStream("Mastwright.Build.Materials.sample-prices.csv")
            ?? throw new InvalidOperationException("The sample price file is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a text.</summary>
    public static Reading<PriceList> Read(string text, string fileName)
    {
        var findings = new List<Finding>();
        var separator = Separator(text);
        var prices = new Dictionary<string, Price>(StringComparer.OrdinalIgnoreCase);
        string? currency = null;
        Dictionary<string, int>? columns = null;
        foreach (var row in CsvRows.Read(text, separator))
        {
            if (row.IsBlank || row.Fields[0].StartsWith('#')) continue;
            if (columns is null)
            {
                columns = row.Fields.Select((f, i) => (Name: f.ToLowerInvariant(), i)).GroupBy(c => c.Name).ToDictionary(g => g.Key, g => g.First().i);
                if (Needed.Where(n => !columns.ContainsKey(n)).ToList() is { Count: > 0 } missing)
                    return new(null, [new("price-columns", Severity.Error, $"The price file has no column {string.Join(", ", missing)}.", new(fileName, row.Line, 1, ""), row.Raw.Trim(), "part, unit, price, currency; also pack, invented, note", "Write a first row such as part,unit,price,currency,pack,invented,note.")]);
                continue;
            }
            if (PriceRow.Read(row, columns, separator, fileName, findings) is not { } found) continue;
            if (currency is not null && currency != found.Currency)
            {
                findings.Add(new("price-currency", Severity.Error, $"Prices are in {currency} and in {found.Currency}; they cannot be added.", new(fileName, row.Line, row.ColumnOf(columns["currency"], separator), "currency"), found.Currency, currency, "Turn all prices into one currency."));
                continue;
            }
            currency = found.Currency;
            if (!prices.TryAdd(found.Price.Part, found.Price))
                findings.Add(new("price-twice", Severity.Warning, $"{found.Price.Part} has a price already in line {prices[found.Price.Part].Place.Line}; that one is used.", found.Price.Place, found.Price.Part, null, "Keep one of them."));
        }
        if (columns is null)
            return new(null, [new("price-empty", Severity.Error, "The price file is empty.", new(fileName, 1, 1, ""), null, "part, unit, price, currency; also pack, invented, note", "Start from the sample price file.")]);
        var broken = findings.Any(f => f.Code == "price-currency");
        return new(broken ? null : new(currency ?? "", prices.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase)), [.. findings]);
    }

    private static char Separator(string text)
    {
        var heading = text.TrimStart('\uFEFF').Split('\n').FirstOrDefault(l => l.Trim().Length > 0 && !l.StartsWith('#')) ?? "";
        return new[] { ';', '\t', ',' }.MaxBy(c => heading.Count(h => h == c));
    }

    private sealed class PriceRow
    {
        public static (Price Price, string Currency)? Read(CsvRow row, Dictionary<string, int> columns, char separator, string file, List<Finding> findings)
        {
            string Field(string name) => columns.TryGetValue(name, out var i) && i < row.Fields.Length ? row.Fields[i] : "";
            Place At(string name) => new(file, row.Line, columns.TryGetValue(name, out var i) ? row.ColumnOf(i, separator) : 1, name);
            (Price, string)? Refuse(string code, string message, string column, string allowed, string wayOut)
            {
                findings.Add(new(code, Severity.Warning, message + " The row is left out.", At(column), Field(column), allowed, wayOut));
                return null;
            }
            var part = Field("part");
            if (part.Length == 0) return Refuse("price-part", "The row names no part.", "part", "a part name", "Write the name the catalogue uses.");
            if (PriceUnits.Parse(Field("unit")) is not var (unit, size)) return Refuse("price-unit", $"The price of {part} has no unit that is known.", "unit", PriceUnits.Allowed, "Write one of these units.");
            if (!Money(Field("price"), separator, out var price) || price < 0) return Refuse("price-number", $"The price of {part} cannot be read.", "price", "a number of 0 and above", "Write it as 12.50, without a currency sign.");
            if (Field("currency").Length == 0) return Refuse("price-no-currency", $"The price of {part} has no currency.", "currency", "a currency such as EUR or USD", "Write the currency.");
            var pack = 0m;
            if (Field("pack").Length > 0 && (!Money(Field("pack"), separator, out pack) || pack <= 0)) return Refuse("price-pack", $"The pack size of {part} cannot be read.", "pack", "a number above 0, or nothing", "Write how many units are sold together.");
            if (Field("invented").ToLowerInvariant() is not ("" or "yes" or "no") and var word) return Refuse("price-invented", $"The column invented says \"{word}\".", "invented", "yes or no", "Write yes for a sample price.");
            return (new(part, unit, price / size, pack * size, Field("invented").Equals("yes", StringComparison.OrdinalIgnoreCase), Field("note"), At("part")), Field("currency").ToUpperInvariant());
        }

        private static bool Money(string text, char separator, out decimal value) =>
            decimal.TryParse(separator != ',' && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out value);
    }
}
