using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Drawings of currents and near fields.</summary>
internal static partial class RadiatePlots
{
    private const double LeftMm = 12;
    private const double TopMm = 8;
    private const double WideMm = 146;
    private const double HighMm = 96;

    // The side view looks along this bearing, off any usual line of guys, so that guys do not cover each other.
    private const double ViewRad = 0.35;

    // Current of a wire is drawn beside it, this far for the largest.
    private const double LargestMm = 14;

    /// <summary>The kind of a wire: its name without the numbers and names that tell alike ones apart.</summary>
    public static string Family(string wire) => Radial().Replace(Guy().Replace(Screen().Replace(TopWire().Replace(wire, "top wires of "), "screen of "), "guys, level $1 of $2, piece $3"), "radials of ");

    /// <summary>A side view of the wires above ground with the current drawn beside each.</summary>
    public static Figure Currents(BandCurrents band, UnitSystem units)
    {
        var unit = QuantityFormat.UnitFor(1, QuantityKind.Length, units);
        var wires = band.Wires.Where(w => w.AmpsRms.Length > 1 && Math.Max(w.FromM.Z, w.ToM.Z) > 0.05).ToList();
        var ends = wires.SelectMany(w => new[] { Side(w.FromM), Side(w.ToM) }).ToList();
        var (low, high, top) = (ends.Min(p => p.X), ends.Max(p => p.X), ends.Max(p => p.Y));
        var scale = Math.Min((WideMm - (2 * LargestMm)) / Math.Max(high - low, 1), (HighMm - LargestMm) / top);
        var middle = (low + high) / 2;
        var most = wires.Max(w => w.AmpsRms.Max());
        var d = new Drawing(170, TopMm + HighMm + 12, $"Currents, mast {band.Mast}, {band.Band.Title}");
        (double X, double Y) At((double X, double Y) p) => (LeftMm + (WideMm / 2) + ((p.X - middle) * scale), TopMm + HighMm - (p.Y * scale));
        d.Line(LeftMm, TopMm + HighMm, LeftMm + WideMm, TopMm + HighMm, Pen.Bold);
        foreach (var w in wires)
        {
            var (a, b) = (At(Side(w.FromM)), At(Side(w.ToM)));
            d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
            var length = double.Hypot(b.X - a.X, b.Y - a.Y);
            if (length < 0.5)
            {
                continue;
            }

            var (nx, ny) = ((b.Y - a.Y) / length, -(b.X - a.X) / length);
            var span = Math.Max(w.AlongM[^1], 1e-9);
            d.Path(w.AlongM.Zip(w.AmpsRms, (s, i) => (a.X + ((b.X - a.X) * s / span) + (nx * LargestMm * i / most), a.Y + ((b.Y - a.Y) * s / span) + (ny * LargestMm * i / most))), new Pen(0.4, "1.2 0.6"));
        }

        d.Line(LeftMm, TopMm + HighMm + 6, LeftMm + LargestMm, TopMm + HighMm + 6, new Pen(0.4, "1.2 0.6"));
        d.Text(LeftMm + LargestMm + 2, TopMm + HighMm + 7, $"{QuantityFormat.Digits(most, 3)} A RMS, drawn beside the wire", 2.6, ground: false);
        return new Figure($"Side view of mast {band.Mast} on {band.Band.Title}; the current of each wire is drawn beside it with dashes, the largest {QuantityFormat.Digits(most, 3)} A RMS. Radials are left out.", d.ToSvg())
        {
            Data = new FigureData($"distance from the wire's start, {unit.Symbol}", "current, A RMS", [.. wires.Select(w => new FigureSeries(w.Wire, [.. w.AlongM.Zip(w.AmpsRms, (s, amps) =>
            {
                var (a, b) = (At(Side(w.FromM)), At(Side(w.ToM)));
                var t = s / Math.Max(w.AlongM[^1], 1e-9);
                return new FigurePoint(unit.FromSi(s), amps, a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t));
            })]))]),
        };
    }

    /// <summary>The electric field in an upright sheet from the mast outward, in shades a factor of two apart.</summary>
    public static Figure Map(MastNearField field, UnitSystem units)
    {
        var (columns, rows) = (NearFieldRun.MapColumns, NearFieldRun.MapRows);
        var unit = QuantityFormat.UnitFor(1, QuantityKind.Length, units);
        var most = Math.Ceiling(Math.Log2(field.Map.Max(f => f.ElectricVPerM)));
        var (w, h) = (WideMm / columns, (HighMm - 10) / rows);
        var d = new Drawing(170, TopMm + HighMm + 16, $"Electric field, mast {field.Mast}, {field.Band.Title}");
        const int shades = 8;
        string Shade(int k) => string.Create(CultureInfo.InvariantCulture, $"#{75 + (k * 24):x2}{75 + (k * 24):x2}{75 + (k * 24):x2}");
        for (var c = 0; c < columns; c++)
        {
            for (var r = 0; r < rows; r++)
            {
                var k = Math.Clamp((int)Math.Floor(most - Math.Log2(Math.Max(field.Map[(c * rows) + r].ElectricVPerM, 1e-9))), 0, shades - 1);
                d.Box(LeftMm + (c * w), TopMm + HighMm - 10 - ((r + 1) * h), w + 0.05, h + 0.05, new Pen(0, Colour: Shade(k)), Shade(k));
            }
        }

        var floor = TopMm + HighMm - 10;
        var (reach, height) = (field.Map[^1].DistanceM * columns / (columns - 0.5), field.Map[^1].HeightM * rows / (rows - 0.5));
        d.Line(LeftMm, floor, LeftMm + WideMm, floor, Pen.Bold);
        foreach (var t in RoundSteps.Enclosing(0, unit.FromSi(reach)).Where(t => t <= unit.FromSi(reach)))
        {
            d.Text(LeftMm + (t / unit.FromSi(reach) * WideMm), floor + 4, t.ToString("0.##", CultureInfo.InvariantCulture), 2.3, Hold.Middle);
        }

        foreach (var t in RoundSteps.Enclosing(0, unit.FromSi(height)).Where(t => t <= unit.FromSi(height)))
        {
            d.Text(LeftMm - 1.5, floor - (t / unit.FromSi(height) * (HighMm - 10)) + 0.8, t.ToString("0.##", CultureInfo.InvariantCulture), 2.3, Hold.End);
        }

        d.Text(LeftMm + (WideMm / 2), floor + 8, $"distance from the mast and height, {unit.Symbol}", 2.6, Hold.Middle);
        for (var k = 0; k < shades; k++)
        {
            var x = LeftMm + (k * WideMm / shades);
            d.Box(x, floor + 11, 5, 4, Pen.Plain, Shade(k));
            d.Text(x + 6, floor + 14, (k == shades - 1 ? "under " : "over ") + QuantityFormat.Digits(Math.Pow(2, most - (k == shades - 1 ? k : k + 1)), 3), 2.2, ground: false);
        }

        return new Figure($"Electric field, V/m RMS, in an upright sheet midway between two guys of mast {field.Mast} on {field.Band.Title}; shades a factor of two apart.", d.ToSvg())
        {
            Data = new FigureData($"distance from the mast, {unit.Symbol}", "electric field, V/m RMS", [.. Enumerable.Range(0, rows).Select(row => new FigureSeries($"at height {QuantityFormat.Digits(unit.FromSi(field.Map[row].HeightM), 3)} {unit.Symbol}",
                [.. Enumerable.Range(0, columns).Select(c => field.Map[(c * rows) + row]).Select((p, c) => new FigurePoint(unit.FromSi(p.DistanceM), p.ElectricVPerM, LeftMm + ((c + 0.5) * w), floor - ((row + 0.5) * h)))]))]),
        };
    }

    private static (double X, double Y) Side(Vec3 p) => ((p.X * Math.Cos(ViewRad)) + (p.Y * Math.Sin(ViewRad)), Math.Max(0, p.Z));

    [GeneratedRegex(@"^radial \d+ of ")]
    private static partial Regex Radial();

    [GeneratedRegex(@"^guy (\d+) of (.*) to .*, piece (\d+)$")]
    private static partial Regex Guy();

    [GeneratedRegex(@"^screen( rim)? [\d.]+ of ")]
    private static partial Regex Screen();

    [GeneratedRegex(@"^top wire \d+ of ")]
    private static partial Regex TopWire();
}
