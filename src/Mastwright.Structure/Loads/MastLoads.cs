using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>A round thing that runs along the mast: a cable, a conduit, a ladder rail.</summary>
/// <param name="Name">What it is.</param>
/// <param name="DiameterM">Outside diameter, m.</param>
public sealed record Alongside(string Name, double DiameterM);

/// <summary>A thing fixed at one height: a ring, a top hat, a side antenna.</summary>
/// <param name="Name">What it is.</param>
/// <param name="AreaM2">Area it turns to the wind, m², bare.</param>
/// <param name="DragCoefficient">Drag coefficient on that area; 1.2 for round rods.</param>
/// <param name="RodDiameterM">Diameter of the rods it is made of, m, from which its ice follows; 0 when ice on it is not counted.</param>
public sealed record PointBody(string Name, double AreaM2, double DragCoefficient = 1.2, double RodDiameterM = 0);

/// <summary>Wind and ice on the mast itself, per length and at points.</summary>
public static class MastLoads
{
    /// <summary>Roughness taken for an iced tube, m: the roughest surface of EN 1991-1-4 table 7.13.</summary>
    private const double IceRoughnessM = 2e-3;

    private static readonly Source Page = Source.Derived("docs/theory/wind.md");

    /// <summary>Wind per length of a vertical mast at a height.</summary>
    /// <param name="load">Wind, direction and ice.</param>
    /// <param name="shape">Tube or lattice.</param>
    /// <param name="heightM">Height above ground, m.</param>
    /// <param name="alongside">Cables and the like that run along the mast and add their own wind.</param>
    public static LineLoad Wind(LoadCase load, MastShape shape, double heightM, ImmutableArray<Alongside> alongside = default)
    {
        var ice = load.Ice?.Method.At(load.Ice.Site, heightM);
        var body = shape is TubeShape ? BodyKind.Tube : BodyKind.Lattice;
        var (p, total) = load.PressureAt(heightM, body);
        var mast = shape switch
        {
            TubeShape tube => OnTube(load.Method, tube, p, total, ice),
            LatticeShape lattice => OnLattice(load, lattice, total, ice),
            _ => throw new ArgumentException($"There is no wind on a {shape.GetType().Name}.", nameof(shape)),
        };
        if (!alongside.IsDefaultOrEmpty)
        {
            Trail[] parts = [mast, .. alongside.Select(a => OnRound(a, total, ice))];
            mast = Trail.Computed("wind per length of mast with what runs along it", "w", parts.Sum(t => t.Value), QuantityKind.LinearForce, "w = sum of its parts, none sheltered", Page, parts);
        }

        return new(mast.Value * load.Direction.Towards, mast);
    }

    /// <summary>Weight of ice per length of mast at a height; points down.</summary>
    public static LineLoad Ice(IceCase ice, MastShape shape, double heightM, ImmutableArray<Alongside> alongside = default)
    {
        var layer = ice.Method.At(ice.Site, heightM);
        Trail weight;
        if (shape is LatticeShape l)
        {
            var total = l.Legs * (layer.WeightNPerM(l.LegDiameterM)
                + (l.DiagonalLengthPerM * layer.WeightNPerM(l.DiagonalDiameterM))
                + (l.HorizontalLengthPerM * layer.WeightNPerM(l.HorizontalDiameterM)));
            weight = Trail.Computed(
                "weight of ice per length of lattice", "wi", total, QuantityKind.LinearForce, "wi = sum over legs and bracing of ρ·g·π·t·(D + t) per length of mast", Source.Derived("docs/theory/ice.md"), layer.Density, layer.Thickness);
        }
        else
        {
            weight = layer.WeightOn(Diameter("diameter", ((TubeShape)shape).DiameterM));
        }

        if (!alongside.IsDefaultOrEmpty)
        {
            Trail[] parts = [weight, .. alongside.Select(a => layer.WeightOn(Diameter(a.Name, a.DiameterM)))];
            weight = Trail.Computed("weight of ice per length with what runs along the mast", "wi", parts.Sum(t => t.Value), QuantityKind.LinearForce, "wi = sum of its parts", Source.Derived("docs/theory/ice.md"), parts);
        }

        return new(new(0, 0, -weight.Value), weight);
    }

    /// <summary>Wind on a thing fixed at one height.</summary>
    public static PointLoad Wind(LoadCase load, PointBody body, double heightM)
    {
        var (_, total) = load.PressureAt(heightM, BodyKind.Tube);
        var bare = Trail.Given($"area of {body.Name}", "A", body.AreaM2, QuantityKind.Area, InputSource.Design);
        var cd = Trail.Given($"drag coefficient of {body.Name}", "Cd", body.DragCoefficient, QuantityKind.Ratio, InputSource.Design);
        var area = bare;
        if (load.Ice is { } ice && body.RodDiameterM > 0)
        {
            var t = ice.Method.At(ice.Site, heightM).Thickness;
            var rod = Diameter("rod diameter", body.RodDiameterM);
            area = Trail.Computed($"iced area of {body.Name}", "Ai", body.AreaM2 * (1 + (2 * t.Value / body.RodDiameterM)), QuantityKind.Area, "Ai = A·(1 + 2·t/d)", Source.Derived("docs/theory/ice.md"), bare, t, rod);
        }

        var force = Trail.Computed($"wind on {body.Name}", "F", total.Value * cd.Value * area.Value, QuantityKind.Force, "F = pG·Cd·A", Page, total, cd, area);
        return new(force.Value * load.Direction.Towards, force);
    }

    /// <summary>Weight of ice on a thing fixed at one height; points down. Zero when its rod diameter is not given.</summary>
    public static PointLoad Ice(IceCase ice, PointBody body, double heightM)
    {
        var layer = ice.Method.At(ice.Site, heightM);
        var rod = Diameter("rod diameter", body.RodDiameterM);
        var area = Trail.Given($"area of {body.Name}", "A", body.AreaM2, QuantityKind.Area, InputSource.Design);
        // Rods of total length A/d turned square to the wind show the area A.
        var value = body.RodDiameterM > 0 ? layer.WeightNPerM(body.RodDiameterM) * body.AreaM2 / body.RodDiameterM : 0;
        var weight = Trail.Computed($"weight of ice on {body.Name}", "Wi", value, QuantityKind.Force, "Wi = ρ·g·π·t·(d + t)·A/d", Source.Derived("docs/theory/ice.md"), layer.Density, layer.Thickness, rod, area);
        return new(new(0, 0, -value), weight);
    }

    private static Trail OnTube(IWindMethod method, TubeShape tube, Trail pressure, Trail total, IceLayer? ice)
    {
        var bare = Diameter("diameter", tube.DiameterM);
        var width = ice?.IcedDiameter(bare) ?? bare;
        var seen = ice is null
            ? tube
            : tube with { DiameterM = width.Value, RoughnessM = Math.Max(tube.RoughnessM, IceRoughnessM), RelativeRoughness = Math.Max(tube.RelativeRoughness, 0.02) };
        var cd = method.TubeDrag(seen, pressure);
        return Trail.Computed("wind per length of tube", "w", total.Value * cd.Value * width.Value, QuantityKind.LinearForce, "w = pG·Cf·D", Page, total, cd, width);
    }

    private static Trail OnLattice(LoadCase load, LatticeShape lattice, Trail total, IceLayer? ice)
    {
        var area = lattice.SolidAreaPerM(ice?.Thickness);
        var solidity = lattice.Solidity(area, ice?.Thickness);
        // Azimuth the wind blows towards is opposite to the one it comes from.
        var angle = lattice.ToFaceNormal(load.Direction.FromAzimuthRad + Math.PI);
        var cd = load.Method.LatticeDrag(solidity, lattice, angle);
        return Trail.Computed("wind per length of lattice", "w", total.Value * cd.Value * area.Value, QuantityKind.LinearForce, "w = pG·Cf·As", Page, total, cd, area);
    }

    private static Trail OnRound(Alongside thing, Trail total, IceLayer? ice)
    {
        var bare = Diameter(thing.Name, thing.DiameterM);
        var width = ice?.IcedDiameter(bare) ?? bare;
        var cd = Trail.Given("drag coefficient of a round cable", "Cd", CableLoads.DragCoefficient, QuantityKind.Ratio, CableLoads.DragSource);
        return Trail.Computed($"wind per length of {thing.Name}", "w", total.Value * cd.Value * width.Value, QuantityKind.LinearForce, "w = pG·Cd·D", Page, total, cd, width);
    }

    private static Trail Diameter(string what, double valueM) => Trail.Given(what, "D", valueM, QuantityKind.FineLength, InputSource.Design);
}
