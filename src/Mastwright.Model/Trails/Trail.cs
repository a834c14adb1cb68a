using System.Collections.Immutable;

namespace Mastwright.Model.Trails;

/// <summary>
/// One number with its answer to "why?": what it is, the formula it came from, the inputs that went in
/// (each with a trail of its own), the source, and the range in which the model holds.
/// </summary>
/// <param name="Name">The quantity in plain trade words, e.g. <c>"base peak voltage"</c>.</param>
/// <param name="Symbol">The symbol used in <paramref name="Formula"/>, e.g. <c>"Vp"</c>.</param>
/// <param name="Value">The number in SI units; NaN is never stored (see <see cref="Trail.Computed"/>).</param>
/// <param name="Kind">What the number measures, which fixes its SI unit.</param>
/// <param name="Formula">The formula as text, e.g. <c>"Vp = √2·I·|Z|"</c>; empty for a given value.</param>
/// <param name="Source">Where the formula or the value comes from.</param>
/// <param name="Inputs">The numbers that went in, in the order of the formula.</param>
/// <param name="Range">The range of the model in words; empty when it holds without limit.</param>
/// <param name="OutOfRange">A plain sentence when this very number lies outside that range; null when it is inside.</param>
/// <param name="Note">Anything else the reader needs, e.g. a convergence estimate; null when there is nothing to say.</param>
public sealed record Trail(
    string Name,
    string Symbol,
    double Value,
    QuantityKind Kind,
    string Formula,
    Source Source,
    ImmutableArray<Trail> Inputs,
    string Range = "",
    string? OutOfRange = null,
    string? Note = null)
{
    /// <summary>A value that was given rather than computed: by the design file, a catalogue row, a standard's table.</summary>
    public static Trail Given(string name, string symbol, double value, QuantityKind kind, Source source, string? note = null) =>
        new(name, symbol, Finite(name, value), kind, "", source, [], Note: note);

    /// <summary>A value the program filled in because the design is silent; <paramref name="why"/> says on what ground.</summary>
    public static Trail Assumed(string name, string symbol, double value, QuantityKind kind, string why) =>
        new(name, symbol, Finite(name, value), kind, "", new Source(why, SourceKind.Assumed), []);

    /// <summary>A value computed from <paramref name="inputs"/> by <paramref name="formula"/>.</summary>
    /// <exception cref="ArithmeticException">The value is NaN: a fault of ours, never of the user's, and never passed on.</exception>
    public static Trail Computed(
        string name, string symbol, double value, QuantityKind kind, string formula, Source source, params ReadOnlySpan<Trail> inputs) =>
        new(name, symbol, Finite(name, value), kind, formula, source, [.. inputs]);

    /// <summary>The same trail with its model's range in words and, when violated, the sentence that says so.</summary>
    public Trail Within(string range, string? outOfRange = null) => this with { Range = range, OutOfRange = outOfRange };

    /// <summary>The same trail with a remark.</summary>
    public Trail Remark(string note) => this with { Note = note };

    /// <summary>All warnings of models outside their range, from this number and everything it rests on.</summary>
    public IEnumerable<string> RangeWarnings() =>
        Inputs.SelectMany(i => i.RangeWarnings()).Concat(OutOfRange is null ? [] : [OutOfRange]).Distinct();

    /// <summary>Whether any number underneath was assumed rather than given or computed.</summary>
    public bool RestsOnAssumption => Source.Kind == SourceKind.Assumed || Inputs.Any(i => i.RestsOnAssumption);

    private static double Finite(string name, double value) =>
        double.IsNaN(value) ? throw new ArithmeticException($"{name} is not a number") : value;
}
