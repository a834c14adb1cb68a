using System.Collections.Immutable;
using Mastwright.Report.Documents;
using Mastwright.Structure.Chains;

namespace Mastwright.Report.Drawings;

/// <summary>A guy piece by piece from the anchor to the mast, with numbers that its table names.</summary>
public static class ChainStrip
{
    private const double StepMm = 9.4;
    private const int InRow = 17;

    /// <summary>The strip of a chain.</summary>
    public static Figure Of(string name, ImmutableArray<ChainPiece> pieces)
    {
        var rows = (pieces.Length + InRow - 1) / InRow;
        var d = new Drawing(170, (rows * 20) + 4, "Pieces of the guy " + name);
        for (var i = 0; i < pieces.Length; i++)
        {
            var (x, y) = (8 + (StepMm * (i % InRow)), 12.0 + (20 * (i / InRow)));
            if (i + 1 < pieces.Length && i % InRow + 1 < InRow)
            {
                d.Line(x, y, x + StepMm, y, pieces[i] is StrandPiece || pieces[i + 1] is StrandPiece ? new Pen(0.7) : Pen.Plain);
            }

            Symbol(d, pieces[i], x, y);
            d.Text(x, y + 7.4, (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), 2.4, Hold.Middle, ground: false);
        }

        d.Text(4, 4, "anchor", 2.4, ground: false);
        var last = pieces.Length - 1;
        d.Text(8 + (StepMm * (last % InRow)) + 3, 4 + (20.0 * (last / InRow)), "mast", 2.4, Hold.End, ground: false);
        return new Figure($"The guy {name} piece by piece from the anchor to the mast; the numbers are those of the table.", d.ToSvg());
    }

    private static void Symbol(Drawing d, ChainPiece piece, double x, double y)
    {
        switch (piece)
        {
            case AnchorEye:
                d.Box(x - 3, y - 3, 3, 6, new Pen(0.3), "#888").Circle(x + 1, y, 1.3, Pen.Plain, "#fff");
                break;
            case MastAttachment:
                d.Box(x, y - 4, 3, 8, new Pen(0.3), "#888").Circle(x - 1, y, 1.3, Pen.Plain, "#fff");
                break;
            case ShacklePiece:
                d.Arc(x + 0.6, y, 2.2, 90, 270, new Pen(0.7)).Line(x + 0.8, y - 2.8, x + 0.8, y + 2.8, new Pen(0.9));
                break;
            case TurnbucklePiece:
                d.Box(x - 3.2, y - 1.3, 6.4, 2.6, new Pen(0.4), "#fff").Line(x - 3.2, y, x - 1, y, new Pen(0.8)).Line(x + 1, y, x + 3.2, y, new Pen(0.8));
                break;
            case ThimblePiece:
                d.Path([(x - 2.4, y), (x - 0.6, y - 1.5), (x + 1.6, y - 1.3), (x + 2.4, y), (x + 1.6, y + 1.3), (x - 0.6, y + 1.5), (x - 2.4, y)], new Pen(0.5));
                break;
            case EndFitting { Kind: EndFittingKind.Clips }:
                foreach (var o in new[] { -2.0, 0, 2 })
                {
                    d.Box(x + o - 0.5, y - 1.3, 1, 2.6, new Pen(0.25), "#555");
                }

                break;
            case EndFitting { Kind: EndFittingKind.WrappedGrip }:
                for (var o = -3.0; o <= 2.4; o += 0.9)
                {
                    d.Line(x + o, y + 0.9, x + o + 0.7, y - 0.9, new Pen(0.35));
                }

                break;
            case EndFitting:
                d.Box(x - 2.6, y - 1, 5.2, 2, new Pen(0.3), "#777");
                break;
            case InsulatorPiece { StrandLoops: true }:
                d.Circle(x, y, 2.5, new Pen(0.4), "#fff").Circle(x - 0.9, y, 0.5, new Pen(0.2), "#000").Circle(x + 0.9, y, 0.5, new Pen(0.2), "#000");
                break;
            case InsulatorPiece:
                d.Box(x - 4, y - 0.8, 8, 1.6, new Pen(0.3), "#fff").Box(x - 4.2, y - 1.2, 1.6, 2.4, new Pen(0.2), "#777").Box(x + 2.6, y - 1.2, 1.6, 2.4, new Pen(0.2), "#777");
                break;
            default:
                d.Line(x - 4, y, x + 4, y, new Pen(0.9));
                break;
        }
    }
}
