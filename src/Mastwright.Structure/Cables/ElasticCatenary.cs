using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>
/// A single elastic cable between two points under a load that is uniform per unstressed metre and may point
/// anywhere: weight, ice and wind together.
/// <para>
/// The end forces are found by minimising the complementary energy of the cable, which is strictly convex in the
/// tension, so a Newton step held in check by the slope along it always arrives, taut or slack.
/// Sources: Irvine, Cable Structures, 1981, ch. 1; Jayaraman and Knudson, Computers and Structures 14 (1981) 325-333.
/// Range: linear elastic strand, no bending stiffness, no lumped weights in the line.
/// </para>
/// </summary>
public static class ElasticCatenary
{
    private const int MostIterations = 100;

    /// <summary>Solves the cable.</summary>
    /// <param name="chordM">From the start (anchor) to the end (mast).</param>
    /// <param name="unstressedLengthM">Length without tension, above zero.</param>
    /// <param name="axialStiffnessN">EA, above zero.</param>
    /// <param name="loadNPerM">Load per unstressed metre. A cable without any load is given one of 1e-12 EA in all, downwards, so that its slack shape is defined.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length or stiffness is not a positive finite number.</exception>
    public static CableState Solve(Vec3 chordM, double unstressedLengthM, double axialStiffnessN, Vec3 loadNPerM)
    {
        ThrowUnlessPositive(unstressedLengthM, nameof(unstressedLengthM));
        ThrowUnlessPositive(axialStiffnessN, nameof(axialStiffnessN));
        var distance = chordM.Length;
        ThrowUnlessPositive(distance, nameof(chordM));
        if (loadNPerM.Length * unstressedLengthM < 1e-12 * axialStiffnessN)
        {
            loadNPerM = new Vec3(0, 0, -1e-12 * axialStiffnessN / unstressedLengthM);
        }

        var plane = LoadPlane.Of(chordM, loadNPerM);
        var rise = chordM.Dot(plane.Up);
        var span = Math.Max(chordM.Dot(plane.Across), 1e-9 * distance);
        var (h, v) = Guess(span, rise, distance, unstressedLengthM, axialStiffnessN, plane.Load);
        var half = 0.5 * plane.Load * unstressedLengthM;
        var tolerance = 4e-16 * (distance + unstressedLengthM);
        var converged = false;
        var iteration = 0;
        double best = double.PositiveInfinity, bestH = h, bestV = v;
        var stale = 0;
        for (; iteration < MostIterations && !converged; iteration++)
        {
            var (gh, gv) = Miss(h, v);
            var miss = Math.Sqrt((gh * gh) + (gv * gv));
            if (miss < best)
            {
                (best, bestH, bestV, stale) = (miss, h, v, 0);
            }
            else
            {
                stale++;
            }

            // Below the rounding of the lengths nothing more can be gained.
            if (miss <= tolerance || (stale >= 2 && best <= 1e-12 * distance))
            {
                converged = true;
                break;
            }

            var f = CatenaryKernel.Flexibility(h, v - half, v + half, unstressedLengthM, plane.Load, axialStiffnessN);
            var determinant = (f.HH * f.VV) - (f.HV * f.HV);
            var dh = -((f.VV * gh) - (f.HV * gv)) / determinant;
            var dv = -((f.HH * gv) - (f.HV * gh)) / determinant;
            var share = dh < 0 ? Math.Min(1, -0.9 * h / dh) : 1;
            var slope = (gh * dh) + (gv * dv);
            for (var cut = 0; cut < 40; cut++)
            {
                var (nh, nv) = Miss(h + (share * dh), v + (share * dv));
                var next = (nh * dh) + (nv * dv);
                if (next <= -0.9 * slope || Math.Abs(slope) < 1e-25)
                {
                    break;
                }

                share *= Math.Clamp(-slope / (next - slope), 0.1, 0.7);
            }

            h += share * dh;
            v += share * dv;
        }

        (h, v) = (bestH, bestV);
        converged |= best <= 1e-11 * distance;
        var startPull = (h * plane.Across) + ((v - half) * plane.Up);
        var endPull = -((h * plane.Across) + ((v + half) * plane.Up));
        return new(startPull, endPull, StiffnessOf(h, v - half, v + half), unstressedLengthM, axialStiffnessN, loadNPerM, iteration, converged);

        (double, double) Miss(double atH, double atV)
        {
            var (l, r) = CatenaryKernel.Position(atH, atV - half, atV + half, unstressedLengthM, plane.Load, axialStiffnessN);
            return (l - span, r - rise);
        }

        Stiffness3 StiffnessOf(double atH, double vi, double vj)
        {
            var f = CatenaryKernel.Flexibility(atH, vi, vj, unstressedLengthM, plane.Load, axialStiffnessN);
            var determinant = (f.HH * f.VV) - (f.HV * f.HV);
            return Stiffness3.Dyad(f.VV / determinant, plane.Across, plane.Across)
                + Stiffness3.Dyad(-2 * f.HV / determinant, plane.Across, plane.Up)
                + Stiffness3.Dyad(f.HH / determinant, plane.Up, plane.Up)
                + Stiffness3.Dyad(1 / f.Out, plane.Across.Cross(plane.Up), plane.Across.Cross(plane.Up));
        }
    }

    /// <summary>
    /// The unstressed length that gives a wanted tension at the start (the anchor, where a rigger measures),
    /// or null when no length does: a hanging cable cannot pull less than part of its own weight.
    /// </summary>
    /// <param name="chordM">From the start to the end.</param>
    /// <param name="startTensionN">Wanted tension at the start, above zero.</param>
    /// <param name="axialStiffnessN">EA.</param>
    /// <param name="loadNPerM">Load per unstressed metre.</param>
    public static double? UnstressedLength(Vec3 chordM, double startTensionN, double axialStiffnessN, Vec3 loadNPerM)
    {
        ThrowUnlessPositive(startTensionN, nameof(startTensionN));
        var c = chordM.Length;
        var shortest = c / (1 + (2 * (startTensionN + (loadNPerM.Length * c)) / axialStiffnessN));
        return LengthForTension(length => Solve(chordM, length, axialStiffnessN, loadNPerM).StartTensionN, startTensionN, shortest, c);
    }

    /// <summary>The same for any tension that falls with the length, from a length that is surely too short.</summary>
    internal static double? LengthForTension(Func<double, double> startTension, double startTensionN, double shortestM, double chordM)
    {
        var c = chordM;
        double Excess(double length) => startTension(length) - startTensionN;

        var low = shortestM;
        var high = c;
        double fLow = Excess(low), fHigh = Excess(high);
        for (var step = 1e-4; fHigh > 0; step *= 2)
        {
            if (step > 1)
            {
                return null;
            }

            (low, fLow) = (high, fHigh);
            high = c * (1 + step);
            fHigh = Excess(high);
        }

        // False position with the Illinois cure, then a plain halving when it dawdles.
        for (var i = 0; i < 200 && high - low > 1e-15 * c; i++)
        {
            var mid = i % 8 == 7 || fLow == fHigh ? 0.5 * (low + high) : ((low * fHigh) - (high * fLow)) / (fHigh - fLow);
            mid = Math.Clamp(mid, low, high);
            var f = Excess(mid);
            if (Math.Abs(f) <= 1e-13 * startTensionN)
            {
                return mid;
            }

            if (f > 0)
            {
                (low, fLow, fHigh) = (mid, f, fHigh * 0.5);
            }
            else
            {
                (high, fHigh, fLow) = (mid, f, fLow * 0.5);
            }
        }

        return 0.5 * (low + high);
    }

    // Taut or a little slack: the cubic of the parabolic cable, T²(T + EA(1 - c/L)) = EA (w_n c)²/24 (c/L).
    // Very slack: the guess of Jayaraman and Knudson, which ignores stretch.
    private static (double H, double V) Guess(double span, double rise, double distance, double length, double ea, double load)
    {
        if (length > 1.03 * distance)
        {
            var lambda = Math.Sqrt(Math.Max(3 * (((length * length) - (rise * rise)) / (span * span)) - 3, 1e-6));
            var coth = lambda > 20 ? 1 : 1 / Math.Tanh(lambda);
            var atEnd = 0.5 * load * ((rise * coth) + length);
            return (load * span / (2 * lambda), atEnd - (0.5 * load * length));
        }

        var normal = load * span;
        var constant = ea * normal * normal / 24 * (distance / length);
        var shift = ea * (1 - (distance / length));
        var tension = Math.Max(-shift, 0) + Math.Cbrt(constant);
        for (var i = 0; i < 50; i++)
        {
            var value = (tension * tension * (tension + shift)) - constant;
            var derivative = (3 * tension * tension) + (2 * tension * shift);
            var next = tension - (value / derivative);
            if (Math.Abs(next - tension) < 1e-6 * tension)
            {
                break;
            }

            tension = next;
        }

        tension = Math.Max(tension, 1e-6 * load * length);
        return (tension * span / distance, tension * rise / distance);
    }

    private static void ThrowUnlessPositive(double value, string name)
    {
        if (!(value > 0) || !double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "A positive finite number is needed.");
        }
    }
}
