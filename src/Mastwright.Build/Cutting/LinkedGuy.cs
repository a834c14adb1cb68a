using System.Collections.Immutable;
using Mastwright.Numerics;

namespace Mastwright.Build.Cutting;

/// <summary>One link in the chain of a guy, named from the anchor up.</summary>
/// <param name="Name">Name on the cut list.</param>
public abstract record GuyLink(string Name);

/// <summary>A fitting that does not stretch: shackle, thimble, insulator, turnbuckle at its set length.</summary>
/// <param name="Name">Name on the list.</param>
/// <param name="LengthM">Length between its bearing points, metres.</param>
/// <param name="MassKg">Mass, kilograms.</param>
public sealed record FittingLink(string Name, double LengthM, double MassKg) : GuyLink(Name);

/// <summary>A piece of strand between two fittings.</summary>
/// <param name="Name">Name on the list.</param>
/// <param name="WeightNPerM">Weight of one unstretched metre, N/m.</param>
/// <param name="AxialStiffnessN">Stiffness EA, newtons.</param>
/// <param name="ExpansionPerK">Thermal expansion, 1/K.</param>
/// <param name="UnstressedM">Unstressed length between bearing points when it is given (a piece between insulators); null: the piece shares what is left.</param>
/// <param name="Share">Share of what is left, for pieces without a given length.</param>
/// <param name="LowerAllowanceM">Strand needed beyond the lower bearing point for the end fitting (turn-back under clips, socket), metres.</param>
/// <param name="UpperAllowanceM">The same at the upper end.</param>
public sealed record StrandLink(
    string Name,
    double WeightNPerM,
    double AxialStiffnessN,
    double ExpansionPerK,
    double? UnstressedM = null,
    double Share = 1,
    double LowerAllowanceM = 0,
    double UpperAllowanceM = 0) : GuyLink(Name);

/// <summary>
/// The exact shape of a guy made of strand pieces and rigid fittings. Each strand is an elastic catenary; each fitting
/// lies along the force in its middle. Horizontal force is the same all along, vertical force grows by the weight passed.
/// </summary>
internal sealed class LinkedGuy
{
    private const double Gravity = 9.80665;

    private readonly ImmutableArray<GuyLink> pieces;
    private readonly double span;
    private readonly double rise;

    public LinkedGuy(ImmutableArray<GuyLink> pieces, Vec3 anchorPin, Vec3 mastPin)
    {
        this.pieces = pieces;
        var d = mastPin - anchorPin;
        span = double.Hypot(d.X, d.Y);
        rise = d.Z;
    }

    public double ChordM => double.Hypot(span, rise);

    /// <summary>Unstressed strand lengths that give a tension at the anchor; null when no chain does.</summary>
    public ImmutableArray<double>? LengthsFor(double anchorTensionN)
    {
        // Unknowns: slope angle at the anchor and the length left for the sharing pieces.
        var left = ChordM - pieces.OfType<FittingLink>().Sum(f => f.LengthM) - pieces.OfType<StrandLink>().Sum(s => s.UnstressedM ?? 0);
        var solution = Newton(
            (angle, rest) => End(Lengths(rest), anchorTensionN * Math.Cos(angle), anchorTensionN * Math.Sin(angle)),
            Math.Atan2(rise, span) - (0.5 * Weight(left) / anchorTensionN * span / ChordM),
            left);
        return solution is var (_, length) && length > 0 ? Lengths(length) : null;
    }

    /// <summary>Tension at the anchor of a chain with given unstressed strand lengths; null when it hangs slack.</summary>
    public double? TensionOf(ImmutableArray<double> lengths)
    {
        var strands = pieces.OfType<StrandLink>().Zip(lengths);
        var straight = lengths.Sum() + pieces.OfType<FittingLink>().Sum(f => f.LengthM);
        var flexibility = strands.Sum(s => s.Second / s.First.AxialStiffnessN);
        var weight = strands.Sum(s => s.First.WeightNPerM * s.Second) + (pieces.OfType<FittingLink>().Sum(f => f.MassKg) * Gravity);
        var start = Math.Max((ChordM - straight) / flexibility, weight * 4);
        // Unknowns in logs of tension and in angle, so that a step cannot turn the guy inside out.
        var solution = Newton(
            (logTension, angle) => End(lengths, Math.Exp(logTension) * Math.Cos(angle), Math.Exp(logTension) * Math.Sin(angle)),
            Math.Log(start),
            Math.Atan2(rise, span) - (0.5 * weight / start * span / ChordM));
        return solution is var (log, _) ? Math.Exp(log) : null;
    }

    public ImmutableArray<double> Lengths(double rest)
    {
        var shares = pieces.OfType<StrandLink>().Where(s => s.UnstressedM is null).Sum(s => s.Share);
        return [.. pieces.OfType<StrandLink>().Select(s => s.UnstressedM ?? (rest * s.Share / shares))];
    }

    private double Weight(double left) => pieces.Sum(p => p switch
    {
        FittingLink f => f.MassKg * Gravity,
        StrandLink s => s.WeightNPerM * (s.UnstressedM ?? left),
        _ => 0,
    });

    // How far the chain's upper end misses the mast's pin.
    private (double X, double Z) End(ImmutableArray<double> lengths, double h, double v)
    {
        var (x, z, strand) = (0.0, 0.0, 0);
        foreach (var piece in pieces)
        {
            if (piece is FittingLink fitting)
            {
                var middle = v + (fitting.MassKg * Gravity / 2);
                var t = double.Hypot(h, middle);
                x += fitting.LengthM * h / t;
                z += fitting.LengthM * middle / t;
                v += fitting.MassKg * Gravity;
            }
            else if (piece is StrandLink s)
            {
                var length = lengths[strand++];
                var top = v + (s.WeightNPerM * length);
                var (lower, upper) = (double.Hypot(h, v), double.Hypot(h, top));
                x += (h * length / s.AxialStiffnessN) + (h / s.WeightNPerM * (Math.Asinh(top / h) - Math.Asinh(v / h)));
                z += (((upper * upper) - (lower * lower)) / (2 * s.AxialStiffnessN * s.WeightNPerM)) + ((upper - lower) / s.WeightNPerM);
                v = top;
            }
        }
        return (x - span, z - rise);
    }

    private (double, double)? Newton(Func<double, double, (double X, double Z)> miss, double a, double b)
    {
        for (var i = 0; i < 80; i++)
        {
            var (fx, fz) = miss(a, b);
            if (!double.IsFinite(fx) || !double.IsFinite(fz)) return null;
            var (da, db) = (1e-7, 1e-7 * Math.Max(1, Math.Abs(b)));
            var (ax1, az1) = miss(a + da, b);
            var (ax0, az0) = miss(a - da, b);
            var (bx1, bz1) = miss(a, b + db);
            var (bx0, bz0) = miss(a, b - db);
            var (xa, za, xb, zb) = ((ax1 - ax0) / (2 * da), (az1 - az0) / (2 * da), (bx1 - bx0) / (2 * db), (bz1 - bz0) / (2 * db));
            var det = (xa * zb) - (xb * za);
            var stepA = -((fx * zb) - (fz * xb)) / det;
            var stepB = -((xa * fz) - (za * fx)) / det;
            // Long steps are cut; near the answer they are whole.
            var cut = Math.Min(1, 0.5 / Math.Max(Math.Abs(stepA), 1e-300));
            a += cut * stepA;
            b += cut * stepB;
            if (cut == 1 && double.Hypot(fx, fz) < 1e-11 * ChordM) return (a, b);
        }
        return null;
    }
}
