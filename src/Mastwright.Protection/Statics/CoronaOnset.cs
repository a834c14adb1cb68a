using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>The surface field at which corona begins, by Peek's laws.</summary>
public static class CoronaOnset
{
    /// <summary>Roughness of a polished surface: 1.</summary>
    public const double Polished = 1.0;

    /// <summary>Roughness of a weathered tube or rod (Peek: 0.93 to 0.98).</summary>
    public const double Weathered = 0.93;

    /// <summary>Roughness of strand (Peek: 0.82 to 0.87).</summary>
    public const double Stranded = 0.82;

    /// <summary>Roughness of a surface with rain drops on it; drops on conductors are quoted between 0.3 and 0.6: 0.5 is assumed.</summary>
    public const double Wet = 0.5;

    private static readonly Source Peek = Source.FromMemory("Peek, Dielectric Phenomena in High-Voltage Engineering", "1929");

    /// <summary>
    /// Onset gradient in V/m peak. A surface curved about alike both ways (larger radius at most twice the smaller) follows the sphere law
    /// 27.2 m δ (1 + 0.54/√(δ r)) kV/cm; all others follow the law of parallel wires, 29.8 m δ (1 + 0.301/√(δ r)), which is lower.
    /// </summary>
    /// <param name="smallRadiusM">Smaller radius of curvature in metres, positive.</param>
    /// <param name="largeRadiusM">Larger radius of curvature in metres; infinite on a cylinder.</param>
    /// <param name="air">The air.</param>
    /// <param name="roughness">Roughness factor m, above 0 to 1.</param>
    public static Trail GradientVPerM(double smallRadiusM, double largeRadiusM, AirState air, double roughness)
    {
        var density = air.RelativeDensity();
        return Trail.Computed("corona onset gradient", "Ec", Gradient(smallRadiusM, largeRadiusM, density.Value, roughness), QuantityKind.ElectricField,
            IsSphere(smallRadiusM, largeRadiusM) ? "Ec = 27.2 m·δ·(1 + 0.54/√(δ·r)) kV/cm, r in cm" : "Ec = 29.8 m·δ·(1 + 0.301/√(δ·r)) kV/cm, r in cm", Peek,
            Trail.Given("roughness factor", "m", roughness, QuantityKind.Ratio, Peek),
            density,
            Trail.Given("radius of curvature", "r", smallRadiusM, QuantityKind.FineLength, Source.DesignFile))
            .Within("radius from 0.1 mm to 20 cm", smallRadiusM is < 1e-4 or > 0.2
                ? $"A radius of {1000 * smallRadiusM:0.###} mm is outside the radii Peek measured (about 0.1 mm to 20 cm)." : null);
    }

    /// <summary>
    /// The surface point that sprays first: the one with the least ratio of onset to gradient, which is not always the one with the greatest gradient.
    /// </summary>
    internal static (SurfacePoint Point, double FieldVPerM, Trail Onset) First(ElectrostaticField field, Func<SurfacePoint, bool> where, AirState air, double roughness)
    {
        var density = air.RelativeDensity().Value;
        var best = (Point: default(SurfacePoint), Field: 0.0, Ratio: double.PositiveInfinity);
        for (var i = 0; i < field.SurfaceFieldVPerM.Length; i++)
        {
            var point = field.Basis.Points[i];
            var size = Math.Abs(field.SurfaceFieldVPerM[i]);
            if (size <= 0 || !where(point))
                continue;
            var ratio = Gradient(point.SmallRadiusM, point.LargeRadiusM, density, roughness) / size;
            if (ratio < best.Ratio)
                best = (point, size, ratio);
        }

        return (best.Point, best.Field, GradientVPerM(best.Point.SmallRadiusM, best.Point.LargeRadiusM, air, roughness));
    }

    /// <summary>Every surface point chosen, by height: the external field for which it would begin to spray when the solution is for 1 V/m.</summary>
    internal static ImmutableArray<(double HeightM, double OnsetVPerM)> Along(ElectrostaticField field, Func<SurfacePoint, bool> where, AirState air, double roughness)
    {
        var density = air.RelativeDensity().Value;
        return
        [
            .. Enumerable.Range(0, field.SurfaceFieldVPerM.Length).Where(i => field.SurfaceFieldVPerM[i] != 0 && where(field.Basis.Points[i]))
                .Select(i => (field.Basis.Points[i].Position.Z, Gradient(field.Basis.Points[i].SmallRadiusM, field.Basis.Points[i].LargeRadiusM, density, roughness) / Math.Abs(field.SurfaceFieldVPerM[i])))
                .OrderBy(p => p.Z),
        ];
    }

    private static bool IsSphere(double smallRadiusM, double largeRadiusM) => largeRadiusM <= 2 * smallRadiusM;

    private static double Gradient(double smallRadiusM, double largeRadiusM, double density, double roughness)
    {
        var root = Math.Sqrt(density * 100 * smallRadiusM);
        return 1e5 * roughness * density * (IsSphere(smallRadiusM, largeRadiusM) ? 27.2 * (1 + (0.54 / root)) : 29.8 * (1 + (0.301 / root)));
    }
}
