using Mastwright.Fields.Electrostatics;
using Mastwright.Numerics;

namespace Mastwright.Protection.Lightning;

/// <summary>The wires of a mast's earth: radials, rods and ring where they lie.</summary>
public static class EarthElectrodes
{
    /// <summary>The most radials solved: beyond some two dozen the resistance hardly falls, and the fields of more would only cost time.</summary>
    public const int MostArms = 24;

    private const int RingSides = 24;

    // The leakage changes fastest next to the hub, where the radials crowd each other, and at their ends: shorter sources there.
    private static readonly double[] HubCutsM = [0.3, 1, 2, 4, 8];
    private const double EndCut = 0.95;

    /// <summary>Number of radials solved.</summary>
    /// <param name="earth">The earth.</param>
    public static int ArmsOf(StruckEarth earth) => Math.Min(earth.Radials, MostArms);

    /// <summary>Longest line source for a solution of these electrodes, in metres; shorter wires are divided by three at least.</summary>
    /// <param name="earth">The earth.</param>
    public static double SegmentM(StruckEarth earth) => earth.RadialLengthM / 8;

    /// <summary>The radials.</summary>
    /// <param name="earth">The earth.</param>
    public static IReadOnlyList<Wire> Radials(StruckEarth earth)
    {
        var arms = ArmsOf(earth);
        var wires = new List<Wire>();
        double[] cuts = [0, .. HubCutsM.Where(c => c < 0.6 * earth.RadialLengthM), EndCut * earth.RadialLengthM, earth.RadialLengthM];
        for (var i = 0; i < arms; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / arms);
            for (var k = 1; k < cuts.Length; k++)
                wires.Add(new(new(cuts[k - 1] * c, cuts[k - 1] * s, -earth.DepthM), new(cuts[k] * c, cuts[k] * s, -earth.DepthM), earth.RadialRadiusM));
        }

        return wires;
    }

    /// <summary>The rods, each in two halves; empty without rods.</summary>
    /// <param name="earth">The earth.</param>
    public static IReadOnlyList<Wire> Rods(StruckEarth earth)
    {
        // Between two radials, so that no rod pierces a wire; one rod stands close to the plate.
        var radius = earth.Rods == 1 ? Math.Min(earth.RodDistanceM, 0.3) : earth.RodDistanceM;
        return [.. Enumerable.Range(0, earth.Rods).SelectMany(k =>
        {
            var (s, c) = Math.SinCos((Math.PI / ArmsOf(earth)) + (2 * Math.PI * k / earth.Rods));
            Vec3 At(double depth) => new(radius * c, radius * s, -depth);
            return new[] { new Wire(At(0), At(earth.RodLengthM / 2), earth.RodRadiusM), new Wire(At(earth.RodLengthM / 2), At(earth.RodLengthM), earth.RodRadiusM) };
        })];
    }

    /// <summary>The buried ring; empty without one.</summary>
    /// <param name="earth">The earth.</param>
    public static IReadOnlyList<Wire> Ring(StruckEarth earth)
    {
        if (earth.Ring is not { } ring)
            return [];

        // A ring at the radials' own depth would lie in them: a hand's breadth apart the thin-wire sources stay apart too.
        var depth = Math.Abs(ring.DepthM - earth.DepthM) < 0.05 ? earth.DepthM + 0.05 : ring.DepthM;
        Vec3 Corner(int side)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * (side + 0.25) / RingSides);
            return new(ring.DiameterM / 2 * c, ring.DiameterM / 2 * s, -depth);
        }

        return [.. Enumerable.Range(0, RingSides).Select(k => new Wire(Corner(k), Corner(k + 1), ring.WireRadiusM))];
    }
}
