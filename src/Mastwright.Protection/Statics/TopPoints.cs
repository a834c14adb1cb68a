using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>Thin metal at a mast's top that no axis of symmetry holds: whiskers, leg ends, the rod among them.</summary>
/// <param name="Name">What it is, e.g. <c>"whiskers"</c>.</param>
/// <param name="Wires">Its wires, round ended; none may begin on the axis of another part.</param>
public sealed record TopPart(string Name, ImmutableArray<Wire> Wires);

/// <summary>Whiskers, leg ends, rods and ring on a mast's top in the atmospheric field, by charge simulation in three dimensions, all drained to earth.</summary>
public static class TopPoints
{
    private static readonly Source Engine = Source.Derived("docs/theory/corona-static.md");

    /// <summary>Whiskers spread evenly round a point on the axis.</summary>
    /// <param name="count">How many.</param>
    /// <param name="fromM">Height they spring from, in metres.</param>
    /// <param name="clearM">Distance from the axis at which they begin, in metres: outside the shaft.</param>
    /// <param name="lengthM">Length of each in metres.</param>
    /// <param name="radiusM">Radius of each in metres.</param>
    /// <param name="slopeRad">Slope above level.</param>
    public static TopPart Whiskers(int count, double fromM, double clearM, double lengthM, double radiusM, double slopeRad) => new("whiskers",
    [
        .. Enumerable.Range(0, count).Select(k =>
        {
            var (s, c) = Math.SinCos(2 * Math.PI * k / count);
            var along = new Vec3(c * Math.Cos(slopeRad), s * Math.Cos(slopeRad), Math.Sin(slopeRad));
            var from = new Vec3(clearM * c, clearM * s, fromM);
            return new Wire(from, from + (lengthM * along), radiusM, true);
        }),
    ]);

    /// <summary>Upper ends of the legs of a lattice.</summary>
    /// <param name="legs">Number of legs.</param>
    /// <param name="topM">Height of their ends in metres.</param>
    /// <param name="lengthM">Length of leg modelled apart from the shaft, in metres.</param>
    /// <param name="circleRadiusM">Radius of the circle through the legs in metres.</param>
    /// <param name="legRadiusM">Radius of a leg in metres.</param>
    public static TopPart LegEnds(int legs, double topM, double lengthM, double circleRadiusM, double legRadiusM) => new("leg ends",
    [
        .. Enumerable.Range(0, legs).Select(k =>
        {
            var (s, c) = Math.SinCos(2 * Math.PI * k / legs);
            return new Wire(new(circleRadiusM * c, circleRadiusM * s, topM - lengthM), new(circleRadiusM * c, circleRadiusM * s, topM), legRadiusM, true);
        }),
    ]);

    /// <summary>Solves the parts on a shaft; one place for each part, the earliest to spray first.</summary>
    /// <param name="mast">Shaft, rod and ring; where leg ends are given the shaft must end where they begin.</param>
    /// <param name="parts">The parts besides rod and ring.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    /// <param name="weathers">Fields to hold them against.</param>
    /// <param name="cancellation">Cancels.</param>
    public static ImmutableArray<CoronaPlace> Solve(
        MastOutline mast, ImmutableArray<TopPart> parts, AirState air, double roughness, ImmutableArray<Weather> weathers, CancellationToken cancellation = default)
    {
        List<(string Name, ImmutableArray<Wire> Wires)> all = [("shaft", mast.AxisWires(roundTop: false)), .. parts.Select(p => (p.Name, p.Wires))];
        if (mast.Ring is { } ring)
            all.Add(("ring", Wire.LevelRing(new(0, 0, ring.LevelM), ring.RingDiameterM / 2, ring.TubeDiameterM / 2)));
        var basis = WireElectrostatics.Solve([.. all.Select(p => new WireConductor(p.Name, p.Wires))], segmentM: mast.HighestM / 12, cancellation: cancellation);
        var field = basis.With([.. all.Select(_ => ConductorState.Earthed)], 1);
        return
        [
            .. all.Select((p, i) => (p.Name, Body: i)).Where(p => p.Name != "shaft" || mast.RodLengthM > 0)
                .Select(p => Place(p.Name == "shaft" ? "rod" : p.Name, p.Body, field, air, roughness, weathers)).OrderBy(p => p.OnsetField.Value),
        ];
    }

    private static CoronaPlace Place(string part, int body, ElectrostaticField field, AirState air, double roughness, ImmutableArray<Weather> weathers)
    {
        var (point, gain, gradient) = CoronaOnset.First(field, p => p.Body == body, air, roughness);
        var enhancement = Trail.Computed($"field enhancement, {part}", "kE", gain, QuantityKind.Ratio, "kE = σ/(ε0·E0), charge simulation in three dimensions", Engine)
            .Remark("Tip gradients come out about 3 % low; cut or square ends spray earlier than the round ones taken.");
        var onset = Trail.Computed($"atmospheric field at onset, {part}", "E1", gradient.Value / gain, QuantityKind.ElectricField, "E1 = Ec/kE", Engine, gradient, enhancement);
        return new(part, point.Position.Z, enhancement, gradient, onset,
            [.. weathers.Select(w => Check.AtMost($"survive.corona[{part}, {w.Name}]", Trade.Survive, $"No corona on the {part} ({w.Name})", w.FieldVPerM, onset, w.Name,
                "Blunt or cap them, shorten them, or shield them with a ring.", StaticStudy.Caution))]);
    }
}
