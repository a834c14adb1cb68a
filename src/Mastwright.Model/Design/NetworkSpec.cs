using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The network chosen for a band.</summary>
public sealed record NetworkSpec
{
    /// <summary>The band.</summary>
    [Field("band", "Name of the band it is for.", Required = true)]
    public string Band { get; init; } = "";

    /// <summary>The mast; null for all.</summary>
    [Field("mast", "Name of the mast it is for.", Default = "every mast")]
    public string? Mast { get; init; }

    /// <summary>Which network.</summary>
    [Field("network", "Which network.", Required = true)]
    public NetworkWord Network { get; init; }

    /// <summary>Which of its forms.</summary>
    [Field("form", "Which form, where the network has several.", Default = "any: the best that can be built")]
    public NetworkForm Form { get; init; }

    /// <summary>Values of the coils, H.</summary>
    [Field("coils", "Values of its coils as built, from the line to the mast; leave out to have them computed.", Default = "computed")]
    [Quantity(QuantityKind.Inductance, 1e-9, 1e-3)]
    public ImmutableArray<double> CoilsH { get; init; } = [];

    /// <summary>Values of the capacitors, F.</summary>
    [Field("capacitors", "Values of its capacitors as set, from the line to the mast; leave out to have them computed.", Default = "computed")]
    [Quantity(QuantityKind.Capacitance, 1e-13, 1e-6)]
    public ImmutableArray<double> CapacitorsF { get; init; } = [];

    /// <summary>The capacitors themselves.</summary>
    [Field("capacitor-parts", "The capacitors you have for it, from the line to the mast (see `mastwright list capacitors`).", Default = "chosen from the list")]
    [CatalogueName("capacitors")]
    public ImmutableArray<string> CapacitorParts { get; init; } = [];
}

/// <summary>Kinds of network.</summary>
public enum NetworkWord
{
    /// <summary>L, shunt element at the line.</summary>
    [Word("l-shunt-at-line", "two elements, the one to ground at the line")]
    LShuntAtLine,

    /// <summary>L, shunt element at the mast.</summary>
    [Word("l-shunt-at-mast", "two elements, the one to ground at the mast")]
    LShuntAtMast,

    /// <summary>Pi.</summary>
    [Word("pi", "three elements, two of them to ground")]
    Pi,

    /// <summary>T.</summary>
    [Word("t", "three elements, the middle one to ground")]
    T,

    /// <summary>Coil across the base.</summary>
    [Word("shunt-coil", "a coil across the base alone")]
    ShuntCoil,

    /// <summary>Series capacitor.</summary>
    [Word("series-capacitor", "a capacitor in series alone")]
    SeriesCapacitor,

    /// <summary>Coil with a tap.</summary>
    [Word("tapped-coil", "a coil to ground with a tap")]
    TappedCoil,

    /// <summary>Transformer.</summary>
    [Word("transformer", "a transformer with a series element")]
    Transformer,

    /// <summary>Quarter wave.</summary>
    [Word("quarter-wave", "a quarter wave of line made to measure")]
    QuarterWave,

    /// <summary>Length of line.</summary>
    [Word("line-transformer", "a length of standard line with a series element")]
    LineTransformer,

    /// <summary>Twelfth waves.</summary>
    [Word("twelfth-wave", "two lengths of standard line of about a twelfth wave")]
    TwelfthWave,

    /// <summary>Section of other line.</summary>
    [Word("series-section", "a section of another line let into the feed line")]
    SeriesSection,

    /// <summary>Stub.</summary>
    [Word("stub", "a stub on the feed line")]
    Stub,
}

/// <summary>Forms of a network.</summary>
public enum NetworkForm
{
    /// <summary>Any.</summary>
    [Word("any", "the best that can be built")]
    Any,

    /// <summary>Coils in the path.</summary>
    [Word("low-pass", "coils in the path, capacitors to ground")]
    LowPass,

    /// <summary>Capacitors in the path.</summary>
    [Word("high-pass", "capacitors in the path, coils to ground")]
    HighPass,
}

/// <summary>What a part costs.</summary>
public sealed record PartPrice
{
    /// <summary>The part.</summary>
    [Field("part", "A capacitor of the list (see `mastwright list capacitors`), or `coil` for a wound coil, `transformer` for one, `line` for a metre of it.", Required = true)]
    public string Part { get; init; } = "";

    /// <summary>Its price.</summary>
    [Field("price", "Its price, in your currency.", Required = true)]
    [Quantity(QuantityKind.Ratio, 0, 1e6)]
    public double Price { get; init; }
}
