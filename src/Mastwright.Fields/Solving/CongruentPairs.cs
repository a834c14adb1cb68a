using Mastwright.Fields.Kernels;
using Mastwright.Fields.Meshing;
using Mastwright.Numerics;

namespace Mastwright.Fields.Solving;

/// <summary>
/// Remembers interactions that several pairs of segments share, because a turn about an upright axis or a shift from one mast to an
/// equal one maps one pair onto the other: over flat ground both then have the same interaction. Sixty radials have thirty different
/// distances round the circle, not sixty times sixty. It needs no symmetry of the whole model. Safe to use from many threads.
/// </summary>
internal sealed class CongruentPairs
{
    private const double ToleranceM = 1e-6;
    private const int FinestTurn = 720;

    // Bytes of remembered interactions beyond which pairs on different axes are computed afresh.
    private const long MostBytes = 400L << 20;

    private readonly Frame? _own;
    private readonly Frame? _whole;

    private CongruentPairs(Frame? own, Frame? whole)
    {
        _own = own;
        _whole = whole;
    }

    /// <summary>Looks for congruent segments.</summary>
    public static CongruentPairs Of(WireMesh mesh)
    {
        var axes = Axes(mesh);
        if (axes.Count == 0 || mesh.Segments.Length < 20)
            return new(null, null);
        var nearest = mesh.Segments.Select(s => axes.MinBy(a => Aside(s.Centre, a))).ToArray();
        var own = new Frame(mesh, nearest);
        if (axes.Count == 1)
            return new(own, null);
        double x = 0, y = 0, length = 0;
        foreach (var s in mesh.Segments)
        {
            x += s.LengthM * s.Centre.X;
            y += s.LengthM * s.Centre.Y;
            length += s.LengthM;
        }

        Vec3 middle = new(x / length, y / length, 0);
        var whole = new Frame(mesh, [.. mesh.Segments.Select(_ => middle)]);
        return new(own, whole.Repeats && whole.Bytes < MostBytes ? whole : null);
    }

    /// <summary>The interaction of two segments, computed when no congruent pair has been asked for yet.</summary>
    public PairBlock Get(int p, int q, Func<int, int, PairBlock> compute)
    {
        if (_own is not null && _own.Shares(p, q))
            return _own.Get(p, q, compute);
        return _whole is not null && _whole.Shares(p, q) ? _whole.Get(p, q, compute) : compute(p, q);
    }

    // Where upright segments stand: masts, leads, stubs and rods.
    private static List<Vec3> Axes(WireMesh mesh)
    {
        var axes = new List<(Vec3 At, double LengthM)>();
        foreach (var s in mesh.Segments)
        {
            if (Math.Abs(s.Tangent.Z) < 1 - 1e-9)
                continue;
            var i = axes.FindIndex(a => Aside(s.Centre, a.At) < ToleranceM);
            if (i < 0)
                axes.Add((s.Centre with { Z = 0 }, s.LengthM));
            else
                axes[i] = axes[i] with { LengthM = axes[i].LengthM + s.LengthM };
        }

        // Rods under anchors are no axis of anything: masts are much longer.
        var longest = axes.Select(a => a.LengthM).DefaultIfEmpty().Max();
        return [.. axes.Where(a => a.LengthM > 0.3 * longest).Select(a => a.At)];
    }

    private static double Aside(Vec3 p, Vec3 axis) => double.Hypot(p.X - axis.X, p.Y - axis.Y);

    /// <summary>Segments seen from upright axes: what kind each is, and how far round it stands.</summary>
    private sealed class Frame
    {
        private readonly int[] _axis;
        private readonly int[] _kind;
        private readonly int[] _index;
        private readonly int[] _stride;
        private readonly bool[] _round;
        private readonly int _turn;
        private readonly Slots?[] _slots;

        public Frame(WireMesh mesh, Vec3[] axisOf)
        {
            var n = mesh.Segments.Length;
            var axes = axisOf.Distinct().ToList();
            _axis = [.. axisOf.Select(a => axes.IndexOf(a))];
            _kind = new int[n];
            _index = new int[n];
            var shapes = Enumerable.Range(0, n).Select(s => Shape.Of(mesh.Segments[s], axisOf[s])).ToArray();
            _turn = Turn(shapes, _axis);
            var step = 2 * Math.PI / _turn;
            var kinds = new Dictionary<(Shape, long), int>();
            var strides = new List<int>();
            var round = new List<bool>();

            // Kinds are the same for equal masts, so what one computes the other uses.
            foreach (var family in Enumerable.Range(0, n).GroupBy(s => (Axis: _axis[s], Shape: shapes[s] with { Turned = 0 }, Beyond: Rounded(Rest(shapes[s].Turned, step)))))
            {
                var first = family.Min(s => shapes[s].Turned);
                var onAxis = family.Key.Shape.OnAxis;
                var stride = _turn;
                foreach (var s in family)
                {
                    _index[s] = onAxis ? 0 : (int)Math.Round((shapes[s].Turned - first) / step) % _turn;
                    stride = Divisor(stride, _index[s]);
                }

                var key = (family.Key.Shape, onAxis ? 0 : Rounded(first));
                if (!kinds.TryGetValue(key, out var kind))
                {
                    kinds[key] = kind = strides.Count;
                    strides.Add(stride);
                    round.Add(onAxis);
                }

                strides[kind] = Divisor(strides[kind], stride);
                foreach (var s in family)
                    _kind[s] = kind;
            }

            _stride = [.. strides];
            _round = [.. round];
            Repeats = strides.Count < n;
            Bytes = (long)strides.Count * strides.Count / 2 * (_turn / Math.Max(1, strides.Min())) * 68;
            _slots = Repeats && strides.Count < 6000 ? new Slots?[(long)strides.Count * (strides.Count + 1) / 2] : [];
        }

        /// <summary>Whether any two segments are of one kind.</summary>
        public bool Repeats { get; }

        /// <summary>Memory it may come to take.</summary>
        public long Bytes { get; }

        public bool Shares(int p, int q) => _slots.Length > 0 && _axis[p] == _axis[q];

        public PairBlock Get(int p, int q, Func<int, int, PairBlock> compute)
        {
            var swapped = _kind[p] > _kind[q];
            if (swapped)
                (p, q) = (q, p);
            int a = _kind[p], b = _kind[q], slot = 0, count = 1;
            if (!_round[a] && !_round[b])
            {
                var stride = _stride[a] == _stride[b] ? _stride[a] : Divisor(_stride[a], _stride[b]);
                count = _turn / stride;
                slot = (_index[q] - _index[p]) / stride;
                slot = slot < 0 ? slot + count : slot;

                // Of two alike, the one behind sees what the one ahead sees, exchanged.
                if (a == b && 2 * slot > count)
                {
                    slot = count - slot;
                    (p, q) = (q, p);
                    swapped = !swapped;
                }
            }

            ref var place = ref _slots[((long)b * (b + 1) / 2) + a];
            var slots = Volatile.Read(ref place);
            if (slots is null)
            {
                slots = new(count);
                slots = Interlocked.CompareExchange(ref place, slots, null) ?? slots;
            }

            if (!Volatile.Read(ref slots.Known[slot]))
            {
                slots.Values[slot] = compute(p, q);
                Volatile.Write(ref slots.Known[slot], true);
            }

            return swapped ? slots.Values[slot].Transposed : slots.Values[slot];
        }

        // The finest turn that the most numerous kind repeats by.
        private static int Turn(Shape[] shapes, int[] axis)
        {
            var most = Enumerable.Range(0, shapes.Length).Where(s => !shapes[s].OnAxis).GroupBy(s => (axis[s], shapes[s] with { Turned = 0 })).MaxBy(g => g.Count());
            if (most is null || most.Count() < 2)
                return 1;
            var angles = most.Select(s => shapes[s].Turned).Order().ToList();
            var closest = Enumerable.Range(1, angles.Count - 1).Select(i => angles[i] - angles[i - 1]).Where(d => d > 1e-6).Append(2 * Math.PI).Min();
            var turn = (int)Math.Round(2 * Math.PI / closest);
            return turn <= FinestTurn && Math.Abs((2 * Math.PI / turn) - closest) < 1e-7 ? turn : 1;
        }

        private static double Rest(double angle, double step)
        {
            var rest = angle - (step * Math.Floor((angle / step) + 1e-6));
            return Math.Max(0, rest);
        }

        private static long Rounded(double angle) => (long)Math.Round(angle / 1e-6);

        private static int Divisor(int a, int b)
        {
            while (b != 0)
                (a, b) = (b, a % b);
            return Math.Max(1, a);
        }
    }

    private sealed class Slots(int count)
    {
        public PairBlock[] Values { get; } = new PairBlock[count];

        public bool[] Known { get; } = new bool[count];
    }

    /// <summary>A segment in coordinates round its axis, in micrometres and microradians; <paramref name="Turned"/> is where it stands, radians.</summary>
    private readonly record struct Shape(long StartOut, long StartUp, long EndOut, long EndUp, long Across, long Radius, double Turned)
    {
        public bool OnAxis => StartOut == 0 && EndOut == 0;

        public static Shape Of(in Segment segment, Vec3 axis)
        {
            Vec3 a = segment.Start - axis, b = segment.End - axis, c = segment.Centre - axis;
            double outA = double.Hypot(a.X, a.Y), outB = double.Hypot(b.X, b.Y);
            var turned = double.Hypot(c.X, c.Y) < ToleranceM ? 0 : Math.Atan2(c.Y, c.X);
            if (turned < -1e-9)
                turned += 2 * Math.PI;

            // Seen from the axis the start lies this far to the side of the line to the centre.
            var across = outA < ToleranceM && outB < ToleranceM ? 0 : (a.Y * Math.Cos(turned)) - (a.X * Math.Sin(turned));
            return new(Micro(outA), Micro(a.Z), Micro(outB), Micro(b.Z), Micro(across), (long)Math.Round(segment.RadiusM / 1e-9), Math.Max(0, turned));
        }

        private static long Micro(double m) => (long)Math.Round(m / ToleranceM);
    }
}
