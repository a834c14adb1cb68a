using System.Collections.Immutable;

namespace Mastwright.Fields.Electrostatics;

/// <summary>One boundary element: a stretch of a curve.</summary>
internal readonly record struct MeridianElement(int Body, MeridianCurve Curve, double T0, double T1)
{
    public double Middle => 0.5 * (T0 + T1);
    public double LengthM => Curve.Speed(Middle) * (T1 - T0);
}

/// <summary>
/// Divides outlines into elements. The wanted size at a point is a share of the local radius of curvature; it may grow along the outline only
/// by a fixed rate, also from one piece of outline to the next that touches it, and never exceeds a share of the piece's length.
/// </summary>
internal static class MeridianMesh
{
    private const double TurnPerElementRad = Math.PI / 20;
    private const double GrowthPerLength = 0.4;
    private const double LargestShare = 0.2;
    private const double EndShare = 1.0 / 30; // a straight piece's size at an open end
    private const int Samples = 2000;

    public static ImmutableArray<MeridianElement> Build(IReadOnlyList<AxisymmetricBody> bodies, double refinement)
    {
        var mesh = ImmutableArray.CreateBuilder<MeridianElement>();
        for (var b = 0; b < bodies.Count; b++)
        {
            var pieces = bodies[b].Outline.Select(c => new Piece(c, refinement)).ToArray();
            Match(pieces);
            foreach (var piece in pieces)
            {
                foreach (var (t0, t1) in piece.Divide(refinement))
                    mesh.Add(new(b, piece.Curve, t0, t1));
            }
        }

        return mesh.ToImmutable();
    }

    // Where two pieces touch, both take the smaller size; growth is then limited again. Twice round is enough for a chain of pieces to settle.
    private static void Match(Piece[] pieces)
    {
        for (var round = 0; round < 2; round++)
        {
            foreach (var piece in pieces)
            {
                foreach (var other in pieces)
                {
                    if (ReferenceEquals(piece, other))
                        continue;
                    foreach (var atEnd in (ReadOnlySpan<bool>)[false, true])
                    {
                        foreach (var otherEnd in (ReadOnlySpan<bool>)[false, true])
                        {
                            if (Touch(piece.Tip(atEnd), other.Tip(otherEnd), 1e-6 * piece.LengthM))
                                piece.Limit(atEnd, other.SizeAt(otherEnd));
                        }
                    }
                }
            }
        }
    }

    private static bool Touch((double R, double Z) a, (double R, double Z) b, double within) =>
        Math.Abs(a.R - b.R) + Math.Abs(a.Z - b.Z) < within;

    private sealed class Piece
    {
        private readonly double[] _size = new double[Samples + 1];
        private readonly double[] _step = new double[Samples]; // length between samples
        private readonly double _growth;

        public Piece(MeridianCurve curve, double refinement)
        {
            Curve = curve;
            for (var i = 0; i < Samples; i++)
            {
                _step[i] = curve.Speed((i + 0.5) / Samples) / Samples;
                LengthM += _step[i];
            }

            var largest = LargestShare * LengthM / refinement;
            for (var i = 0; i <= Samples; i++)
                _size[i] = Math.Min(largest, TurnPerElementRad * curve.MeridianRadiusM((double)i / Samples) / refinement);
            if (curve is MeridianLine)
                _size[0] = _size[^1] = EndShare * LengthM / refinement;
            _growth = GrowthPerLength / refinement;
            LimitGrowth();
        }

        public MeridianCurve Curve { get; }

        public double LengthM { get; }

        public (double R, double Z) Tip(bool end) => Curve.Point(end ? 1 : 0);

        public double SizeAt(bool end) => end ? _size[^1] : _size[0];

        public void Limit(bool end, double size)
        {
            if (size >= SizeAt(end))
                return;
            _size[end ? Samples : 0] = size;
            LimitGrowth();
        }

        public IEnumerable<(double T0, double T1)> Divide(double refinement)
        {
            // The count of elements up to a sample is the running integral of 1/size; elements end where it passes equal shares.
            var count = new double[Samples + 1];
            for (var i = 0; i < Samples; i++)
                count[i + 1] = count[i] + (_step[i] * 2 / (_size[i] + _size[i + 1]));
            var n = Math.Max((int)Math.Ceiling(4 * refinement), (int)Math.Ceiling(count[^1]));
            var (t0, sample) = (0.0, 0);
            for (var k = 1; k <= n; k++)
            {
                var target = count[^1] * k / n;
                while (sample < Samples - 1 && count[sample + 1] < target)
                    sample++;
                var t1 = k == n ? 1 : (sample + ((target - count[sample]) / (count[sample + 1] - count[sample]))) / Samples;
                yield return (t0, t1);
                t0 = t1;
            }
        }

        private void LimitGrowth()
        {
            for (var i = 0; i < Samples; i++)
                _size[i + 1] = Math.Min(_size[i + 1], _size[i] + (_growth * _step[i]));
            for (var i = Samples; i > 0; i--)
                _size[i - 1] = Math.Min(_size[i - 1], _size[i] + (_growth * _step[i - 1]));
        }
    }
}
