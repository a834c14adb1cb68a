using Mastwright.Numerics;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Tests.Support;

/// <summary>The two masts of the reference tables: tube masts with one and two guy levels, three anchors.</summary>
internal static class ReferenceMasts
{
    public const double G = 9.80665;
    public const double Modulus = 205e9;

    public static MastSegment Tube(double height, double outerM, double wallM, double bottom = 0)
    {
        var inner = outerM - (2 * wallM);
        var area = Math.PI / 4 * ((outerM * outerM) - (inner * inner));
        var second = Math.PI / 64 * (Math.Pow(outerM, 4) - Math.Pow(inner, 4));
        return new("tube", bottom, height, Modulus * area, Modulus * second, Modulus / 2.6 * 2 * second, area * 7850 * G);
    }

    public static readonly GuyCable Strand = new(2.26e-5, 3.73e6 / 2.26e-5, 0.00635, 1.766);

    public static Vec3 Anchor(double radius, double azimuthDeg, double z = 0) =>
        new(radius * Math.Cos(azimuthDeg * Math.PI / 180), radius * Math.Sin(azimuthDeg * Math.PI / 180), z);

    /// <summary>Case A: 20 m, one level at 15 m, anchors at 10 m.</summary>
    public static GuyedMast MastA(params double[] azimuths) => new(
        Vec3.Zero,
        [Tube(20, 0.1143, 0.0045)],
        [.. azimuths.Select(a => new Guy($"15/{a}", Anchor(10, a), 15, Strand, GuySetting.OfLength(18.013230)))]);

    /// <summary>Case B: 30 m, levels at 14 and 28 m, anchors at 12 and 18 m.</summary>
    public static GuyedMast MastB(params double[] azimuths) => new(
        Vec3.Zero,
        [Tube(30, 0.1397, 0.005)],
        [
            .. azimuths.Select(a => new Guy($"14/{a}", Anchor(12, a), 14, Strand, GuySetting.OfLength(18.424247))),
            .. azimuths.Select(a => new Guy($"28/{a}", Anchor(18, a), 28, Strand, GuySetting.OfLength(33.259816))),
        ]);

    public static LoadCase Still { get; } = new("still air");

    /// <summary>Wind on the mast as given; wind on guys normal to the undeformed chord: p d |e_n| e_n.</summary>
    public static LoadCase Wind(GuyedMast mast, double pressurePa, double windAzimuthDeg, params LineLoad[] onMast)
    {
        var e = Anchor(1, windAzimuthDeg);
        return new($"wind {windAzimuthDeg}")
        {
            MastLoads = onMast,
            GuyLoads = [.. mast.Guys.Select(g => new GuyLoad(g.Name, WindOnGuy(g.UndeformedChord(mast.FootM), e, pressurePa * g.Cable.DiameterM)))],
        };
    }

    public static LoadCase WindA(GuyedMast mast, double azimuthDeg = 0) =>
        Wind(mast, 960, azimuthDeg, LineLoad.Uniform(0, 20, 110 * Anchor(1, azimuthDeg)));

    public static LoadCase WindB(GuyedMast mast, double azimuthDeg = 0) =>
        Wind(mast, 1080, azimuthDeg, LineLoad.Uniform(0, 15, 120 * Anchor(1, azimuthDeg)), LineLoad.Uniform(15, 30, 150 * Anchor(1, azimuthDeg)));

    public static Vec3 WindOnGuy(Vec3 chord, Vec3 direction, double forcePerM)
    {
        var t = chord.Unit();
        var n = direction - (direction.Dot(t) * t);
        return forcePerM * n.Length * n;
    }
}
