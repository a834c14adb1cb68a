using Mastwright.Fields.Wires;
using Mastwright.Numerics;

namespace Mastwright.Fields.Earth;

/// <summary>A radial screen under one mast.</summary>
/// <param name="FootM">Where the mast stands, metres; its z is the ground, 0.</param>
/// <param name="Screen">The radials; at or below the surface.</param>
/// <param name="Metal">What the radials are made of.</param>
/// <param name="Jacket">Their insulation, or null for bare wire.</param>
/// <param name="FirstAzimuthRad">Direction of the first radial, counter-clockwise from +x.</param>
/// <param name="RodLengthM">A ground rod straight down from the foot, metres; zero for none.</param>
public sealed record ScreenUnderMast(
    Vec3 FootM, RadialScreen Screen, Conductor Metal, Jacket? Jacket = null, double FirstAzimuthRad = 0, double RodLengthM = 0);

/// <summary>Turns a model made for perfect ground into one over real soil, its ground screens laid out as wires.</summary>
public static class EarthScreens
{
    /// <summary>Radials called to lie on the surface are put this deep, metres: grass and rain do it within a season (common practice, no source).</summary>
    public const double ShallowestM = 0.01;

    // Also the radius of a rod: the usual 16 to 20 mm across.
    private const double StubRadiusM = 0.009;

    /// <summary>
    /// The same wires, feeds and loads over soil, each foot joined to its radials through a short stub. Keep the number of radials a
    /// multiple of the number of guys, with the first radial in line with a guy: the whole station then solves by symmetry.
    /// </summary>
    /// <param name="overPerfectGround">The model; wires that end at z = 0 elsewhere than at a foot are left standing on the soil unjoined.</param>
    /// <param name="soil">The soil.</param>
    /// <param name="screens">One for each mast that is joined to the ground.</param>
    /// <returns>A model with <see cref="Ground.HalfSpace"/> below; its wires "radial 1.1", "stub 1", "rod 1" … count masts and radials from 1.</returns>
    /// <exception cref="ArgumentException">A screen is elevated, or has neither radials nor a rod: join elevated radials to the mast as wires of your own.</exception>
    public static WireModel Lay(WireModel overPerfectGround, Soil soil, params ReadOnlySpan<ScreenUnderMast> screens)
    {
        ArgumentNullException.ThrowIfNull(overPerfectGround);
        var model = overPerfectGround with { Ground = Ground.Over(soil) };
        var mast = 0;
        foreach (var under in screens)
        {
            mast++;
            var screen = under.Screen;
            if (screen.HeightM > 0 || (screen.Count < 1 && !(under.RodLengthM > 0)))
                throw new ArgumentException($"Screen {mast} must have radials on or under the surface, or a rod.", nameof(screens));
            var depthM = screen.Count < 1 ? under.RodLengthM : Math.Max(Math.Max(-screen.HeightM, ShallowestM), 2 * screen.WireRadiusM);
            Vec3 foot = under.FootM with { Z = 0 }, hub = foot with { Z = -depthM };
            model = model.With(new Wire($"stub {mast}", hub, foot, Math.Min(StubRadiusM, 0.4 * depthM), under.Metal));
            if (screen.Count > 0 && under.RodLengthM > depthM)
                model = model.With(new Wire($"rod {mast}", foot with { Z = -under.RodLengthM }, hub, StubRadiusM, under.Metal));
            for (var i = 0; i < under.Screen.Count; i++)
            {
                var (sin, cos) = Math.SinCos(under.FirstAzimuthRad + (2 * Math.PI * i / under.Screen.Count));
                var end = hub + new Vec3(under.Screen.LengthM * cos, under.Screen.LengthM * sin, 0);
                model = model.With(new Wire($"radial {mast}.{i + 1}", hub, end, under.Screen.WireRadiusM, under.Metal) { Jacket = under.Jacket });
            }
        }

        return model;
    }
}
