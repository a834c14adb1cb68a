using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>Uplift of buried plates by Meyerhof and Adams 1968 (Canadian Geotechnical Journal 5, 225-244).</summary>
public static class PlateUplift
{
    private const double Degree = Math.PI / 180;
    private const double CoefficientKu = 0.95;

    private static readonly Source Paper = Source.FromMemory("Meyerhof and Adams 1968, Canadian Geotechnical Journal 5, 225-244");

    // Rows by friction angle: coefficient m of the shape factor and the depth over width where failure turns deep.
    private static readonly (double Degrees, double M, double LimitRatio)[] Table =
        [(20, 0.05, 2.5), (25, 0.10, 3), (30, 0.15, 4), (35, 0.25, 5), (40, 0.35, 7), (45, 0.50, 9), (48, 0.60, 11)];

    /// <summary>Ultimate uplift of a rectangular plate, width at most length.</summary>
    /// <param name="soil">Clay or sand.</param>
    /// <param name="widthM">Width B.</param>
    /// <param name="lengthM">Length L.</param>
    /// <param name="depthM">Depth D of the plate below ground.</param>
    /// <exception cref="ArgumentException">The soil is neither clay nor sand.</exception>
    public static Trail Rectangle(Soil soil, double widthM, double lengthM, double depthM)
    {
        var (b, l) = (Math.Min(widthM, lengthM), Math.Max(widthM, lengthM));
        var width = Trail.Given("width of the plate", "B", b, QuantityKind.Length, InputSource.Design);
        var length = Trail.Given("length of the plate", "L", l, QuantityKind.Length, InputSource.Design);
        return soil.IsClay ? Clay(soil, b * l, b, depthM, width, length) : SandUplift(soil, depthM, b, b * l, (s, h) => (2 * s * b) + l - b, "2·s·B + L - B", width, length);
    }

    /// <summary>Ultimate uplift of a round plate.</summary>
    public static Trail Circle(Soil soil, double diameterM, double depthM)
    {
        var diameter = Trail.Given("diameter of the plate", "B", diameterM, QuantityKind.Length, InputSource.Design);
        var area = Math.PI / 4 * diameterM * diameterM;
        return soil.IsClay ? Clay(soil, area, diameterM, depthM, diameter) : SandUplift(soil, depthM, diameterM, area, (s, h) => Math.PI / 2 * s * diameterM, "π/2·s·B", diameter);
    }

    /// <summary>Shape factor s = 1 + m·H/B with its limit on H.</summary>
    internal static (double Shape, double EffectiveDepthM) Shape(double frictionRad, double widthM, double depthM)
    {
        var (m, limit) = Row(frictionRad / Degree);
        var h = Math.Min(depthM, limit * widthM);
        return (1 + (m * h / widthM), h);
    }

    private static Trail SandUplift(Soil soil, double depth, double width, double area, Func<double, double, double> perimeter, string perimeterText, params Trail[] sides)
    {
        if (!soil.IsSand)
        {
            throw new ArgumentException($"{soil.Name} is neither clay nor sand.", nameof(soil));
        }

        var phi = soil.FrictionAngleRad!.Value;
        var (shape, h) = Shape(phi, width, depth);
        var gamma = soil.UnitWeight;
        var d = Trail.Given("depth of the plate", "D", depth, QuantityKind.Length, InputSource.Design);
        var w = Trail.Computed("weight of soil on the plate", "W", gamma.Value * area * depth, QuantityKind.Force, "W = γ·A·D", Paper, [gamma, d, .. sides]);
        var s = Trail.Computed("shape factor", "s", shape, QuantityKind.Ratio, "s = 1 + m·H/B, m and the greatest H/B by friction angle", Paper, soil.FrictionAngle, d);
        var shallow = h >= depth;
        var shear = gamma.Value * ((2 * depth) - h) * h * perimeter(shape, h) * CoefficientKu * Math.Tan(phi);
        var degrees = phi / Degree;
        return Trail.Computed(
            "ultimate uplift of the plate", "Qu", w.Value + shear, QuantityKind.Force,
            shallow ? $"Qu = W + γ·D²·({perimeterText})·Ku·tan φ, Ku = 0.95 (shallow)" : $"Qu = W + γ·(2·D - H)·H·({perimeterText})·Ku·tan φ, Ku = 0.95 (deep)", Paper, w, gamma, d, s, soil.FrictionAngle)
            .Within("friction angle 20° to 48°, level ground, fill compacted to the soil around", degrees is < 20 or > 48 ? "The friction angle is outside the table; the nearest row is used." : null);
    }

    private static Trail Clay(Soil soil, double area, double width, double depth, params Trail[] sides)
    {
        var d = Trail.Given("depth of the plate", "D", depth, QuantityKind.Length, InputSource.Design);
        var gamma = soil.UnitWeight;
        var nu = Trail.Computed("uplift factor in clay", "Nu", Math.Min(9, 2 * depth / width), QuantityKind.Ratio, "Nu = 2·D/B, at most 9", Paper, [d, .. sides]);
        return Trail.Computed(
            "ultimate uplift of the plate", "Qu", area * ((soil.UndrainedShearPa!.Value * nu.Value) + (gamma.Value * depth)), QuantityKind.Force, "Qu = A·(cu·Nu + γ·D)", Paper, [soil.UndrainedShear, nu, gamma, d, .. sides])
            .Within("quick loading; under a steady pull clay drains and gives way at less");
    }

    private static (double M, double Limit) Row(double degrees)
    {
        if (degrees <= Table[0].Degrees)
        {
            return (Table[0].M, Table[0].LimitRatio);
        }

        for (var i = 1; i < Table.Length; i++)
        {
            var (a, b) = (Table[i - 1], Table[i]);
            if (degrees <= b.Degrees)
            {
                var t = (degrees - a.Degrees) / (b.Degrees - a.Degrees);
                return (a.M + (t * (b.M - a.M)), a.LimitRatio + (t * (b.LimitRatio - a.LimitRatio)));
            }
        }

        return (Table[^1].M, Table[^1].LimitRatio);
    }
}
