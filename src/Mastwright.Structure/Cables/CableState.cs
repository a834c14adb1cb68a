using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>
/// A cable at rest between two points under a uniform load: the forces at both ends and the stiffness.
/// </summary>
/// <param name="StartPullN">Force of the cable on what holds its start (the anchor).</param>
/// <param name="EndPullN">Force of the cable on what holds its end (the mast). Both pulls add up to the whole load on the cable.</param>
/// <param name="Stiffness">Change of the force that must be applied at the end per displacement of the end, the start held.</param>
/// <param name="UnstressedLengthM">Length without tension at the temperature of the case.</param>
/// <param name="AxialStiffnessN">EA of the cable; of one made of pieces, that of an even cable with the same stretch.</param>
/// <param name="LoadNPerM">The load per unstressed metre; of a cable made of pieces, the mean.</param>
/// <param name="Iterations">Newton steps spent.</param>
/// <param name="Converged">False when the closed form could not be satisfied; the forces then mean nothing.</param>
public readonly record struct CableState(
    Vec3 StartPullN,
    Vec3 EndPullN,
    Stiffness3 Stiffness,
    double UnstressedLengthM,
    double AxialStiffnessN,
    Vec3 LoadNPerM,
    int Iterations,
    bool Converged)
{
    /// <summary>The pieces the cable is made of; null for an even cable.</summary>
    public IReadOnlyList<CableSpan>? Spans { get; init; }

    /// <summary>Tension at the start (the anchor).</summary>
    public double StartTensionN => StartPullN.Length;

    /// <summary>Tension at the end (the mast).</summary>
    public double EndTensionN => EndPullN.Length;

    /// <summary>The larger of the two end tensions. Under a uniform load the largest tension is always at an end.</summary>
    public double LargestTensionN => Math.Max(StartTensionN, EndTensionN);

    /// <summary>The tension vector at unstressed arc length <paramref name="arcM"/> from the start, pointing towards the end.</summary>
    public Vec3 TensionAt(double arcM)
    {
        if (Spans is null)
        {
            return StartPullN - (arcM * LoadNPerM);
        }

        var tension = StartPullN;
        foreach (var s in Spans)
        {
            if (arcM <= s.UnstressedLengthM)
            {
                return tension - (arcM * s.LoadNPerM);
            }

            tension -= s.TotalLoadN;
            arcM -= s.UnstressedLengthM;
        }

        return tension;
    }

    /// <summary>
    /// The point at unstressed arc length <paramref name="arcM"/> from the start, relative to the start.
    /// Source: Irvine, Cable Structures, 1981, ch. 1, written for a load in any direction.
    /// </summary>
    public Vec3 PointAt(double arcM)
    {
        if (arcM <= 0)
        {
            return Vec3.Zero;
        }

        var point = Vec3.Zero;
        var tension = StartPullN;
        foreach (var s in Spans ?? [new CableSpan(UnstressedLengthM, AxialStiffnessN, LoadNPerM)])
        {
            var arc = Math.Min(arcM, s.UnstressedLengthM);
            point += s.Reach(tension, arc);
            tension -= s.TotalLoadN;
            arcM -= arc;
            if (arcM <= 0)
            {
                break;
            }
        }

        return point;
    }

    /// <summary>Largest distance of the cable from its chord, measured at right angles to the chord, by sampling and refining.</summary>
    public double SagM()
    {
        var chord = PointAt(UnstressedLengthM);
        var along = chord.Unit();
        var self = this;
        double Off(double s)
        {
            var p = self.PointAt(s);
            return (p - (p.Dot(along) * along)).Length;
        }

        // The distance from the chord has a single peak, so golden-section search finds it.
        double a = 0, b = UnstressedLengthM;
        var ratio = (Math.Sqrt(5) - 1) / 2;
        double c = b - (ratio * (b - a)), d = a + (ratio * (b - a));
        double fc = Off(c), fd = Off(d);
        for (var i = 0; i < 60 && b - a > 1e-9 * UnstressedLengthM; i++)
        {
            if (fc > fd)
            {
                (b, d, fd) = (d, c, fc);
                c = b - (ratio * (b - a));
                fc = Off(c);
            }
            else
            {
                (a, c, fc) = (c, d, fd);
                d = a + (ratio * (b - a));
                fd = Off(d);
            }
        }

        return Math.Max(fc, fd);
    }
}
