using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.People;

/// <summary>What can come down, and how far it can reach.</summary>
/// <param name="MastHeightM">Height of the mast above its base in metres.</param>
/// <param name="TopExtraM">Whip, rod or antenna above it in metres.</param>
/// <param name="LongestGuyReachM">Horizontal distance of the farthest guy anchor in metres; 0 without guys.</param>
public sealed record FallingMast(double MastHeightM, double TopExtraM = 0, double LongestGuyReachM = 0);

/// <summary>Something that must not be hit.</summary>
/// <param name="Name">Name, e.g. <c>"neighbour's house"</c>.</param>
/// <param name="DistanceM">Horizontal distance of its nearest point from the mast base in metres.</param>
public sealed record Neighbour(string Name, double DistanceM);

/// <summary>An overhead line.</summary>
/// <param name="Name">Name, e.g. <c>"street line"</c>.</param>
/// <param name="DistanceM">Horizontal distance from the mast base to the nearest conductor, blown towards the mast, in metres.</param>
/// <param name="LineToLineV">Voltage between conductors in volts; null when unknown.</param>
public sealed record OverheadLine(string Name, double DistanceM, double? LineToLineV = null);

/// <summary>The circle a falling mast can reach, and what must lie outside it.</summary>
public static class FallCircle
{
    /// <summary>The caution that goes with power lines.</summary>
    public const string PowerLineCaution =
        "A mast, a guy or a wire that touches or comes near a power line kills. Ask the line's owner before you raise, guy or lower anything that could reach it, even by mishap. " +
        "Local codes and the line's owner may ask for more than this.";

    /// <summary>The caution that goes with falls.</summary>
    public const string FallCaution =
        "Raising, climbing and lowering a mast kills people who stand underneath. Keep the fall circle empty while work is on. Local codes and a licensed engineer come first.";

    private static readonly Source CraneRule = Source.FromMemory("29 CFR 1926.1408, table A, minimum clearance distances");

    /// <summary>Radius the mast can reach when it goes over whole: its height with everything on top. A broken guy whips no farther than its anchor.</summary>
    public static Trail Radius(FallingMast mast)
    {
        var height = Trail.Given("mast height", "H", mast.MastHeightM, QuantityKind.Length, Source.DesignFile);
        var extra = Trail.Given("height of what stands on top", "Ht", mast.TopExtraM, QuantityKind.Length, Source.DesignFile);
        var reach = Trail.Given("farthest guy anchor", "Ra", mast.LongestGuyReachM, QuantityKind.Length, Source.DesignFile);
        return Trail.Computed("fall radius", "Rf", Math.Max(mast.MastHeightM + mast.TopExtraM, mast.LongestGuyReachM), QuantityKind.Length,
            "Rf = max(H + Ht, Ra)", Source.CommonPractice, height, extra, reach)
            .Remark("A guyed mast that breaks mostly folds inside this circle; parts on a slope or in a storm can go beyond it.");
    }

    /// <summary>A check for everything that must not be hit.</summary>
    public static ImmutableArray<Check> Neighbours(FallingMast mast, ImmutableArray<Neighbour> neighbours)
    {
        var radius = Radius(mast);
        return
        [
            .. neighbours.Select(n => Check.AtLeast($"site.fall[{n.Name}]", Trade.Site, $"{n.Name} lies outside the fall circle",
                Trail.Given($"distance of {n.Name}", "d", n.DistanceM, QuantityKind.Length, Source.DesignFile), radius,
                "mast falling whole towards it", "Move the mast, lower it, or agree with the owner and guy for the higher safety class.", FallCaution)),
        ];
    }

    /// <summary>Clearance that cranes and masts under work must keep to a line of this voltage (OSHA table A), in metres; 20 ft when the voltage is unknown.</summary>
    public static Trail WorkClearance(double? lineToLineV)
    {
        const double footM = 0.3048;
        var feet = lineToLineV switch
        {
            null => 20,
            <= 50e3 => 10,
            <= 200e3 => 15,
            <= 350e3 => 20,
            <= 500e3 => 25,
            <= 750e3 => 35,
            _ => 45,
        };
        Trail voltage = lineToLineV is { } v
            ? Trail.Given("line voltage", "U", v, QuantityKind.RmsVoltage, Source.DesignFile)
            : Trail.Assumed("line voltage", "U", 350e3, QuantityKind.RmsVoltage, "voltage unknown: the rule's own distance for lines up to 350 kV");
        return Trail.Computed("working clearance", "c", feet * footM, QuantityKind.Length, "c = table A(U)", CraneRule, voltage)
            .Within("up to 1000 kV", lineToLineV > 1e6 ? "Above 1000 kV the owner of the line sets the clearance." : null);
    }

    /// <summary>A check for every overhead line: outside the fall circle by at least the working clearance.</summary>
    public static ImmutableArray<Check> PowerLines(FallingMast mast, ImmutableArray<OverheadLine> lines)
    {
        var radius = Radius(mast);
        return
        [
            .. lines.Select(line =>
            {
                var clearance = WorkClearance(line.LineToLineV);
                var floor = Trail.Computed("distance to keep", "dmin", radius.Value + clearance.Value, QuantityKind.Length, "dmin = Rf + c", Source.CommonPractice, radius, clearance);
                return Check.AtLeast($"site.power-line[{line.Name}]", Trade.Site, $"{line.Name} cannot be reached by the falling mast",
                    Trail.Given($"distance of {line.Name}", "d", line.DistanceM, QuantityKind.Length, Source.DesignFile), floor,
                    "mast falling whole towards the line", "Move the mast away from the line or lower it; never count on the guys.", PowerLineCaution);
            }),
        ];
    }
}
