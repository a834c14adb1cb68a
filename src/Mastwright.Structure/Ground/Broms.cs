using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>How a post in the ground gives way.</summary>
public enum LateralMode
{
    /// <summary>It turns stiffly in the soil.</summary>
    ShortPost,

    /// <summary>It bends in a plastic hinge.</summary>
    LongPost,
}

/// <summary>What a post can carry sideways.</summary>
/// <param name="Ultimate">Ultimate horizontal force.</param>
/// <param name="HingeDepth">Depth of the greatest moment below ground at that force (below 1.5 diameters in clay as the method counts it).</param>
/// <param name="GreatestMoment">Greatest bending moment at that force.</param>
/// <param name="Mode">How it gives way.</param>
public sealed record LateralCapacity(Trail Ultimate, Trail HingeDepth, Trail GreatestMoment, LateralMode Mode);

/// <summary>Free-headed posts and piles under a horizontal force, by Broms 1964 (J. SMFD ASCE 90, SM2 pp 27-63 and SM3 pp 123-156).</summary>
public static class Broms
{
    private static readonly Source Clay = Source.FromMemory("Broms 1964, lateral resistance of piles in cohesive soils, J. SMFD ASCE 90 SM2");
    private static readonly Source Sand = Source.FromMemory("Broms 1964, lateral resistance of piles in cohesionless soils, J. SMFD ASCE 90 SM3");

    /// <summary>Ultimate force of a post in clay or sand.</summary>
    /// <param name="soil">Clay or sand.</param>
    /// <param name="diameterM">Diameter or width D.</param>
    /// <param name="depthM">Embedded length L.</param>
    /// <param name="eccentricityM">Height e of the force above ground.</param>
    /// <param name="yieldMomentNm">Bending strength of the post; infinite when it is to be taken as stiff.</param>
    /// <exception cref="ArgumentException">The soil is neither clay nor sand.</exception>
    public static LateralCapacity FreeHead(Soil soil, double diameterM, double depthM, double eccentricityM, double yieldMomentNm = double.PositiveInfinity) =>
        soil.IsClay ? InClay(soil, diameterM, depthM, eccentricityM, yieldMomentNm)
        : soil.IsSand ? InSand(soil, diameterM, depthM, eccentricityM, yieldMomentNm)
        : throw new ArgumentException($"{soil.Name} is neither clay nor sand.", nameof(soil));

    /// <summary>Ultimate force of a short post in clay whose head cannot turn: 9 cu D (L - 1.5 D).</summary>
    public static Trail ShortFixedHeadInClay(Soil soil, double diameterM, double depthM)
    {
        var d = Diameter(diameterM);
        var l = Depth(depthM);
        return Trail.Computed(
            "ultimate horizontal force, head held", "Hu", 9 * (soil.UndrainedShearPa ?? 0) * diameterM * Math.Max(0, depthM - (1.5 * diameterM)), QuantityKind.Force, "Hu = 9·cu·D·(L - 1.5·D)", Clay, soil.UndrainedShear, d, l);
    }

    /// <summary>Greatest moment in the post under a force it carries, at the depth where the soil has taken the force up.</summary>
    public static Trail MomentUnder(Soil soil, Trail force, double diameterM, double eccentricityM)
    {
        var d = Diameter(diameterM);
        var e = Eccentricity(eccentricityM);
        var h = force.Value;
        if (soil.IsClay)
        {
            var f = h / (9 * soil.UndrainedShearPa!.Value * diameterM);
            return Trail.Computed(
                "greatest moment in the post", "Mmax", h * (eccentricityM + (1.5 * diameterM) + (0.5 * f)), QuantityKind.Moment, "Mmax = H·(e + 1.5·D + 0.5·f), f = H/(9·cu·D)", Clay, force, e, d, soil.UndrainedShear);
        }

        var kp = EarthPressure.Passive(soil);
        var g = h <= 0 ? 0 : Math.Sqrt(2 * h / (3 * soil.UnitWeight.Value * diameterM * kp.Value));
        return Trail.Computed(
            "greatest moment in the post", "Mmax", h * (eccentricityM + (2 * g / 3)), QuantityKind.Moment, "Mmax = H·(e + 2·f/3), f = √(2·H/(3·γ·D·Kp))", Sand, force, e, soil.UnitWeight, d, kp);
    }

    private static LateralCapacity InClay(Soil soil, double diameter, double depth, double e, double yieldMoment)
    {
        var cu = soil.UndrainedShearPa!.Value;
        var perLength = 9 * cu * diameter;
        // Short: H·(e + 1.5D + f/2) = 2.25·cu·D·g² with f = H/(9·cu·D), g = L - 1.5D - f becomes f² + 2pf - a² = 0.
        var a = Math.Max(0, depth - (1.5 * diameter));
        var lever = e + (1.5 * diameter);
        var p = (2 * lever) + a;
        var shortF = a > 0 ? -p + Math.Sqrt((p * p) + (a * a)) : 0;
        var shortMoment = perLength * shortF * (lever + (0.5 * shortF));
        var isLong = shortMoment > yieldMoment;
        var f = isLong ? -lever + Math.Sqrt((lever * lever) + (2 * yieldMoment / perLength)) : shortF;
        var force = perLength * f;
        var (d, l, ec) = (Diameter(diameter), Depth(depth), Eccentricity(e));
        var hu = Trail.Computed(
            "ultimate horizontal force", "Hu", force, QuantityKind.Force,
            isLong ? "Hu·(e + 1.5·D + Hu/(18·cu·D)) = My (long post)" : "Hu·(e + 1.5·D + f/2) = 2.25·cu·D·(L - 1.5·D - f)², f = Hu/(9·cu·D) (short post)", Clay, [soil.UndrainedShear, d, l, ec, .. Hinge(isLong, yieldMoment)])
            .Within("undrained clay, free head, post at least 4 diameters deep", depth < 4 * diameter ? "The post is stubbier than the method was made for." : null);
        return new(
            hu,
            Trail.Computed("depth of the greatest moment below 1.5 D", "f", f, QuantityKind.Length, "f = Hu/(9·cu·D)", Clay, hu, soil.UndrainedShear, d),
            Trail.Computed("greatest moment in the post", "Mmax", force * (lever + (0.5 * f)), QuantityKind.Moment, "Mmax = Hu·(e + 1.5·D + 0.5·f)", Clay, hu, ec, d),
            isLong ? LateralMode.LongPost : LateralMode.ShortPost);
    }

    private static LateralCapacity InSand(Soil soil, double diameter, double depth, double e, double yieldMoment)
    {
        var kp = EarthPressure.Passive(soil);
        var unit = soil.UnitWeight.Value * diameter * kp.Value;
        double FlexureDepth(double h) => Math.Sqrt(2 * h / (3 * unit));
        double Moment(double h) => h * (e + (2 * FlexureDepth(h) / 3));
        var shortForce = 0.5 * unit * Math.Pow(depth, 3) / (e + depth);
        var isLong = Moment(shortForce) > yieldMoment;
        var force = isLong ? Bisect(Moment, yieldMoment, shortForce) : shortForce;
        var (d, l, ec) = (Diameter(diameter), Depth(depth), Eccentricity(e));
        var hu = Trail.Computed(
            "ultimate horizontal force", "Hu", force, QuantityKind.Force, isLong ? "Hu·(e + 2·f/3) = My (long post)" : "Hu = ½·γ·D·L³·Kp/(e + L) (short post)", Sand, [soil.UnitWeight, d, l, ec, kp, .. Hinge(isLong, yieldMoment)])
            .Within("dry or uniform sand, free head, post at least 4 diameters deep", depth < 4 * diameter ? "The post is stubbier than the method was made for." : null);
        return new(
            hu,
            Trail.Computed("depth of the greatest moment", "f", FlexureDepth(force), QuantityKind.Length, "f = √(2·Hu/(3·γ·D·Kp))", Sand, hu, soil.UnitWeight, d, kp),
            Trail.Computed("greatest moment in the post", "Mmax", Moment(force), QuantityKind.Moment, "Mmax = Hu·(e + 2·f/3)", Sand, hu, ec),
            isLong ? LateralMode.LongPost : LateralMode.ShortPost);
    }

    // The moment grows with the force, so halving the interval always closes in; 80 halvings exhaust a double.
    private static double Bisect(Func<double, double> moment, double target, double upper)
    {
        var (low, high) = (0.0, upper);
        for (var i = 0; i < 80; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = moment(middle) < target ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    // A stiff post has no bending strength to show.
    private static Trail[] Hinge(bool bends, double yieldMomentNm) =>
        bends ? [Trail.Given("bending strength of the post", "My", yieldMomentNm, QuantityKind.Moment, InputSource.Design)] : [];

    private static Trail Diameter(double value) => Trail.Given("diameter of the post", "D", value, QuantityKind.FineLength, InputSource.Design);

    private static Trail Depth(double value) => Trail.Given("embedded length", "L", value, QuantityKind.Length, InputSource.Design);

    private static Trail Eccentricity(double value) => Trail.Given("height of the force above ground", "e", value, QuantityKind.Length, InputSource.Design);
}
