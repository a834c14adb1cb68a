using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Wind and ice on a guy, by the cross-flow principle: only the part of the wind normal to the chord acts,
/// q·Cd·d·|en|·en with en = e - (e·t)t, which gives sin² of the angle between wind and chord.
/// </summary>
public static class CableLoads
{
    /// <summary>Drag coefficient of strand, bare or iced, in subcritical flow.</summary>
    public const double DragCoefficient = 1.2;

    /// <summary>Where the drag coefficient comes from.</summary>
    internal static Source DragSource { get; } = Source.FromMemory("EN 1993-3-1 annex B.2.4 and Hoerner, Fluid-Dynamic Drag, ch. 3: strand and round rods below the drag crisis", "1965");

    private static readonly Source CrossFlow = Source.FromMemory("Hoerner, Fluid-Dynamic Drag, ch. 3: cross-flow principle", "1965");

    /// <summary>Wind per metre of a straight guy from its lower to its upper end; the pressure is the mean over the chord.</summary>
    /// <param name="load">Wind, direction and ice.</param>
    /// <param name="low">Lower end; z is height above ground, m.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="diameterM">Bare diameter, m.</param>
    /// <exception cref="ArgumentException">The ends coincide.</exception>
    public static LineLoad Wind(LoadCase load, Vec3 low, Vec3 high, double diameterM)
    {
        var chord = Direction(low, high);
        var e = load.Direction.Towards;
        var normal = e - (e.Dot(chord) * chord);
        var total = MeanPressure(load, low.Z, high.Z);
        var bare = Trail.Given("strand diameter", "d", diameterM, QuantityKind.FineLength, InputSource.Design);
        var width = load.Ice?.Method.At(load.Ice.Site, Middle(low, high)).IcedDiameter(bare) ?? bare;
        var cd = Trail.Given("drag coefficient of strand", "Cd", DragCoefficient, QuantityKind.Ratio, DragSource);
        var angle = Trail.Computed(
            "angle between wind and chord", "θ", Math.Asin(Math.Min(1, normal.Length)), QuantityKind.Angle, "θ from the wind's direction and the ends of the guy", Source.Derived("docs/theory/wind.md"));
        var force = Trail.Computed(
            "wind per length of guy, normal to its chord", "w", total.Value * cd.Value * width.Value * normal.Length * normal.Length, QuantityKind.LinearForce,
            "w = pG·Cd·d·sin²θ", CrossFlow, total, cd, width, angle);
        return new(total.Value * cd.Value * width.Value * normal.Length * normal, force);
    }

    /// <summary>Weight of ice per metre of guy; points down.</summary>
    public static LineLoad Ice(IceCase ice, Vec3 low, Vec3 high, double diameterM)
    {
        var weight = ice.Method.At(ice.Site, Middle(low, high)).WeightOn(Trail.Given("strand diameter", "D", diameterM, QuantityKind.FineLength, InputSource.Design));
        return new(new(0, 0, -weight.Value), weight);
    }

    // Simpson's rule: the profile is smooth over one guy.
    private static Trail MeanPressure(LoadCase load, double lowM, double highM)
    {
        var a = load.PressureAt(lowM, BodyKind.Cable).Total;
        var m = load.PressureAt((lowM + highM) / 2, BodyKind.Cable).Total;
        var b = load.PressureAt(highM, BodyKind.Cable).Total;
        return Trail.Computed(
            "mean gust pressure over the guy", "pG", (a.Value + (4 * m.Value) + b.Value) / 6, QuantityKind.Pressure, "pG = (p at anchor + 4·p at middle + p at mast)/6", Source.Derived("docs/theory/wind.md"), a, m, b);
    }

    private static double Middle(Vec3 low, Vec3 high) => (low.Z + high.Z) / 2;

    private static Vec3 Direction(Vec3 low, Vec3 high)
    {
        var chord = high - low;
        return chord.Length > 0 ? chord.Unit() : throw new ArgumentException("The ends of the guy coincide.", nameof(high));
    }
}
