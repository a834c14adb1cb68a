using System.Collections.Immutable;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Drawing;

/// <summary>What a symbol on a schematic stands for.</summary>
public enum SymbolKind
{
    /// <summary>The transmitter and its line.</summary>
    Transmitter,

    /// <summary>A coil.</summary>
    Coil,

    /// <summary>A capacitor.</summary>
    Capacitor,

    /// <summary>A resistor.</summary>
    Resistor,

    /// <summary>A length of line.</summary>
    Line,

    /// <summary>A stub with an open end.</summary>
    OpenStub,

    /// <summary>A stub with a shorted end.</summary>
    ShortedStub,

    /// <summary>A coil with a tap, from the top rail to ground.</summary>
    TappedCoil,

    /// <summary>A two-winding transformer.</summary>
    Transformer,

    /// <summary>The mast.</summary>
    Antenna,
}

/// <summary>A place on the drawing, in grid units: x to the right from the transmitter, y down from the hot rail; ground is at y = 2.</summary>
/// <param name="X">Columns to the right.</param>
/// <param name="Y">Rows down.</param>
public readonly record struct GridPoint(double X, double Y);

/// <summary>A symbol between two places.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Reference name, e.g. <c>L1</c>.</param>
/// <param name="Title">What a builder calls it.</param>
/// <param name="Value">Value in SI units; NaN for the transmitter and the antenna.</param>
/// <param name="ValueKind">What the value measures.</param>
/// <param name="From">Line's side, or top.</param>
/// <param name="To">Load's side, or ground.</param>
/// <param name="Voltage">Highest voltage across it at full power.</param>
/// <param name="Current">Highest current through it at full power.</param>
/// <param name="HeatW">Heat in it at full power, watts.</param>
public sealed record Symbol(SymbolKind Kind, string Name, string Title, double Value, QuantityKind ValueKind, GridPoint From, GridPoint To, PeakVolts Voltage, RmsAmps Current, double HeatW);

/// <summary>A wire between two places.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
public readonly record struct Wire(GridPoint From, GridPoint To);

/// <summary>A network as symbols, wires and dots on a neutral grid, for any renderer.</summary>
/// <param name="Symbols">The parts.</param>
/// <param name="Wires">The wires.</param>
/// <param name="Dots">Where wires join.</param>
/// <param name="Width">Grid units across.</param>
/// <param name="Height">Grid units down.</param>
public sealed record Schematic(ImmutableArray<Symbol> Symbols, ImmutableArray<Wire> Wires, ImmutableArray<GridPoint> Dots, double Width, double Height)
{
    private const double Ground = 2;

    // Room for the lettering beside an upright part, and for a coil or transformer with its lettering.
    private const double Beside = 1.25;
    private const double Coupled = 2.6;

    /// <summary>Lays a match out: transmitter at the left, antenna at the right, hot rail on top, ground below.</summary>
    public static Schematic Of(MatchCandidate candidate)
    {
        var symbols = ImmutableArray.CreateBuilder<Symbol>();
        var wires = ImmutableArray.CreateBuilder<Wire>();
        var dots = ImmutableArray.CreateBuilder<GridPoint>();
        var x = 0.0;
        void Put(SymbolKind kind, string name, string title, double value, QuantityKind valueKind, GridPoint from, GridPoint to)
        {
            if (candidate.Stresses.FirstOrDefault(s => s.Name == name) is { } stress)
            {
                symbols.Add(new(kind, name, title, value, valueKind, from, to, stress.Voltage, stress.Current, stress.HeatW));
                return;
            }

            var part = candidate.Solution.Part(name);
            symbols.Add(new(kind, name, title, value, valueKind, from, to, part.PeakVoltage, part.HighestCurrent, part.DissipationW));
        }

        void Across(double length)
        {
            wires.Add(new(new(x, 0), new(x + length, 0)));
            x += length;
        }

        Put(SymbolKind.Transmitter, Ladder.Transmitter, "transmitter", double.NaN, QuantityKind.Power, new(0, 0), new(0, Ground));
        Across(1);
        for (var i = 0; i < candidate.Ladder.Sections.Length; i++)
        {
            var section = candidate.Ladder.Sections[i];
            var kind = KindOf(section);
            if (kind is SymbolKind.TappedCoil or SymbolKind.Transformer)
            {
                Put(kind, candidate.Ladder.NameOf(i), section.Title, section.Value, section.ValueKind, new(x, 0), new(x + Coupled, Ground));
                x += Coupled;
            }
            else if (section.IsSeries)
            {
                Put(kind, candidate.Ladder.NameOf(i), section.Title, section.Value, section.ValueKind, new(x, 0), new(x + 2, 0));
                x += 2;
            }
            else
            {
                Put(kind, candidate.Ladder.NameOf(i), section.Title, section.Value, section.ValueKind, new(x, 0), new(x, Ground));
                dots.Add(new(x, 0));
                dots.Add(new(x, Ground));
                Across(Beside);
            }
        }

        if (candidate.Problem.BaseShuntF > 0)
        {
            Put(SymbolKind.Capacitor, Ladder.BaseInsulator, "base insulator", candidate.Problem.BaseShuntF, QuantityKind.Capacitance, new(x, 0), new(x, Ground));
            dots.Add(new(x, 0));
            dots.Add(new(x, Ground));
        }

        Across(Beside);
        Put(SymbolKind.Antenna, Ladder.Antenna, "mast", double.NaN, QuantityKind.Resistance, new(x, 0), new(x, Ground));
        wires.Add(new(new(0, Ground), new(x, Ground)));
        return new(symbols.ToImmutable(), wires.ToImmutable(), dots.ToImmutable(), x, Ground);
    }

    private static SymbolKind KindOf(LadderSection section) => section switch
    {
        ReactiveSection { IsCoil: true } => SymbolKind.Coil,
        ReactiveSection => SymbolKind.Capacitor,
        LineSection => SymbolKind.Line,
        StubSection { Shorted: true } => SymbolKind.ShortedStub,
        StubSection => SymbolKind.OpenStub,
        TappedCoilSection => SymbolKind.TappedCoil,
        TransformerSection => SymbolKind.Transformer,
        _ => SymbolKind.Resistor,
    };
}
