using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Drawing;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Drawing;

public class DrawingTests
{
    private static IEnumerable<MatchCandidate> Candidates() =>
        new[] { new Complex(20, -60), new Complex(120, 80), new Complex(70, -5) }
            .SelectMany(z => MatchDesigner.Design(new(LoadImpedance.Constant(z), 50, 3.65e6, 1000, PartQuality.Lossless) { BaseShuntF = 50e-12, Lines = [.. Circuits.Lines.LineStock.Usual.Select(l => new Circuits.Lines.LineType(l.Name, l.CharacteristicOhm, l.VelocityFactor))] }).Candidates);

    [Fact]
    public void Path_runs_unbroken_from_the_antenna_to_the_line()
    {
        foreach (var c in Candidates())
        {
            var arcs = SmithPath.Of(c);
            Near.Equal(c.Problem.Load.At(3.65e6)[0, 0], arcs[0].Points[0].ImpedanceOhm, 1e-12);
            for (var i = 1; i < arcs.Length; i++)
                Near.Equal(arcs[i - 1].Points[^1].ImpedanceOhm, arcs[i].Points[0].ImpedanceOhm, 1e-9);
            Near.Equal(c.InputImpedanceOhm, arcs[^1].Points[^1].ImpedanceOhm, 1e-9);
        }
    }

    [Fact]
    public void Arcs_lie_on_the_circles_of_the_chart()
    {
        foreach (var arc in Candidates().SelectMany(c => SmithPath.Of(c)))
        {
            var first = arc.Points[0].ImpedanceOhm;
            foreach (var point in arc.Points)
            {
                if (arc.Title.StartsWith("series", StringComparison.Ordinal))
                    Near.Relative(first.Real, point.ImpedanceOhm.Real, 1e-9);
                else if (arc.Title.StartsWith("shunt", StringComparison.Ordinal) || arc.Title.Contains("stub") || arc.Section == "CB")
                    Near.Relative((1 / first).Real, (1 / point.ImpedanceOhm).Real, 1e-9);
                else if (arc.Title.EndsWith("50 Ω coax", StringComparison.Ordinal) && !arc.Title.Contains("two"))
                    Near.Absolute(arc.Points[0].Reflection.Magnitude, point.Reflection.Magnitude, 1e-9);
            }
        }
    }

    [Fact]
    public void Schematic_shows_every_section_once_and_joins_up()
    {
        foreach (var c in Candidates())
        {
            var drawing = Schematic.Of(c);
            Assert.Equal(c.Ladder.Sections.Length + 3, drawing.Symbols.Length);
            Assert.Equal(drawing.Symbols.Select(s => s.Name).Distinct().Count(), drawing.Symbols.Length);
            Assert.All(drawing.Symbols, s => Assert.True(s.From.X >= 0 && s.To.X <= drawing.Width && s.To.Y <= drawing.Height));

            // The hot rail has no hole: wires and series symbols cover it end to end.
            var spans = drawing.Wires.Where(w => w.From.Y == 0).Select(w => (w.From.X, w.To.X))
                .Concat(drawing.Symbols.Where(s => s.From.X < s.To.X).Select(s => (s.From.X, s.To.X))).Order().ToList();
            var reached = 0.0;
            foreach (var (from, to) in spans)
            {
                Assert.True(from <= reached);
                reached = Math.Max(reached, to);
            }

            Assert.Equal(drawing.Width, reached);
        }
    }
}
