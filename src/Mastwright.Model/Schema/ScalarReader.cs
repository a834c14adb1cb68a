using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Schema;

/// <summary>Reads single values of the design file by the form of their field.</summary>
internal sealed class ScalarReader(Func<string, IReadOnlyCollection<string>?> catalogueNames)
{
    public List<Finding> Findings { get; } = [];

    /// <summary>The value, or null after a finding.</summary>
    public object? Read(FieldShape field, ScalarText scalar) => field.Form switch
    {
        FieldForm.Quantity => ReadQuantity(field, scalar),
        FieldForm.Text => ReadText(field, scalar),
        FieldForm.YesNo => ReadYesNo(field, scalar),
        FieldForm.Word => ReadWord(field, scalar),
        FieldForm.Tension => ReadTension(field, scalar),
        _ => throw new InvalidOperationException("A block is no single value."),
    };

    private object? ReadQuantity(FieldShape field, ScalarText scalar)
    {
        var limits = field.Quantity;
        var reading = QuantityText.Read(scalar.Text, limits?.Kind ?? QuantityKind.Count);
        if (!reading.Ok)
        {
            Findings.Add(new Finding("not-a-quantity", Severity.Error, $"“{field.Field.Key}”: {reading.Problem}.", scalar.Place, scalar.Text,
                limits is null ? null : FieldWords.AllowedRange(limits), reading.WayOut));
            return null;
        }

        if (limits is not null && (reading.ValueSi < limits.Min * (1 - 1e-12) || reading.ValueSi > limits.Max * (1 + 1e-12)))
        {
            Findings.Add(new Finding("out-of-range", Severity.Error,
                $"“{field.Field.Key}” is outside the range that makes sense.", scalar.Place, scalar.Text, FieldWords.AllowedRange(limits),
                "Check the number and its unit."));
            return null;
        }

        if (field.ItemType == typeof(double))
        {
            return reading.ValueSi;
        }

        if (reading.ValueSi == Math.Round(reading.ValueSi))
        {
            return (int)reading.ValueSi;
        }

        Findings.Add(new Finding("not-whole", Severity.Error, $"“{field.Field.Key}” must be a whole number.", scalar.Place, scalar.Text,
            limits is null ? null : FieldWords.AllowedRange(limits), "Round it."));
        return null;
    }

    private string? ReadText(FieldShape field, ScalarText scalar)
    {
        if (field.Field.Required && string.IsNullOrWhiteSpace(scalar.Text))
        {
            Findings.Add(new Finding("empty-text", Severity.Error, $"“{field.Field.Key}” is empty.", scalar.Place, WayOut: FieldWords.HowToWrite(field)));
            return null;
        }

        if (scalar.Text.Any(c => char.IsControl(c) && c is not '\n' and not '\t'))
        {
            Findings.Add(new Finding("control-character", Severity.Error, $"“{field.Field.Key}” holds a control character.", scalar.Place,
                WayOut: "Retype the text; it was probably pasted from somewhere odd."));
            return null;
        }

        if (field.CatalogueList is { } list && catalogueNames(list) is { } names)
        {
            if (names.FirstOrDefault(n => NearMiss.SameWord(n, scalar.Text)) is { } known)
            {
                return known;
            }

            var near = NearMiss.Of(scalar.Text, names);
            Findings.Add(new Finding("not-in-catalogue", Severity.Error,
                $"“{field.Field.Key}”: “{scalar.Text}” is not in the catalogue." + (near is null ? "" : $" Did you mean “{near}”?"),
                scalar.Place, scalar.Text, "a name from " + list, $"`mastwright list {list}` shows every name with its data."));
            return null;
        }

        return scalar.Text;
    }

    private object? ReadYesNo(FieldShape field, ScalarText scalar)
    {
        switch (scalar.Text.ToLowerInvariant())
        {
            case "yes" or "true":
                return true;
            case "no" or "false":
                return false;
            default:
                Findings.Add(new Finding("not-yes-or-no", Severity.Error, $"“{field.Field.Key}” takes yes or no.", scalar.Place, scalar.Text, "yes, no",
                    FieldWords.HowToWrite(field)));
                return null;
        }
    }

    private object? ReadWord(FieldShape field, ScalarText scalar)
    {
        var match = field.Words.FirstOrDefault(w => w.Word == scalar.Text.ToLowerInvariant());
        if (match.Value is not null)
        {
            return match.Value;
        }

        var words = field.Words.Select(w => w.Word).ToList();
        var near = NearMiss.Of(scalar.Text, words);
        Findings.Add(new Finding("unknown-word", Severity.Error,
            $"“{field.Field.Key}” does not know “{scalar.Text}”." + (near is null ? "" : $" Did you mean “{near}”?"), scalar.Place, scalar.Text,
            string.Join("; ", field.Words.Select(w => $"{w.Word} ({w.Meaning})")), near is null ? FieldWords.HowToWrite(field) : $"Write “{near}”."));
        return null;
    }

    private object? ReadTension(FieldShape field, ScalarText scalar)
    {
        var share = QuantityText.Read(scalar.Text, QuantityKind.Ratio);
        var force = QuantityText.Read(scalar.Text, QuantityKind.Force);
        if (share.Ok && scalar.Text.TrimEnd().EndsWith('%'))
        {
            return share.ValueSi is >= 0.005 and <= 0.6 ? InitialTension.Share(share.ValueSi) : OutOfRange(field, scalar);
        }

        if (force.Ok)
        {
            return force.ValueSi is >= 1 and <= 1e6 ? InitialTension.Force(force.ValueSi) : OutOfRange(field, scalar);
        }

        Findings.Add(new Finding("not-a-tension", Severity.Error, $"“{field.Field.Key}”: {force.Problem}.", scalar.Place, scalar.Text,
            TensionRange, FieldWords.HowToWrite(field)));
        return null;
    }

    private const string TensionRange = "0.5 % to 60 % of breaking strength, or 1 N to 1000 kN";

    private object? OutOfRange(FieldShape field, ScalarText scalar)
    {
        Findings.Add(new Finding("out-of-range", Severity.Error, $"“{field.Field.Key}” is outside the range that makes sense.", scalar.Place,
            scalar.Text, TensionRange, string.Create(CultureInfo.InvariantCulture, $"Common practice is 8 % to 15 %.")));
        return null;
    }
}
