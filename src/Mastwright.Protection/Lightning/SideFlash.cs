using Mastwright.Model.Trails;

namespace Mastwright.Protection.Lightning;

/// <summary>What lies between the conductor and the metal that must not be struck.</summary>
public enum SeparationMedium
{
    /// <summary>Air, km = 1.</summary>
    Air,

    /// <summary>Brick, concrete or wood, km = 0.5.</summary>
    Solid,
}

/// <summary>How far other metal must stand from conductors that carry the strike.</summary>
public static class SideFlash
{
    private static readonly Source Iec = Source.Standard("IEC 62305-3, clause 6.3", "2010, as quoted in installation guides");

    /// <summary>Separation distance s = ki·kc·l/km in metres.</summary>
    /// <param name="level">Protection level: ki is 0.08, 0.06 or 0.04.</param>
    /// <param name="downConductors">Number of down conductors that share the current: kc is 1, 0.66 or 0.44.</param>
    /// <param name="lengthM">Length along the conductor from the point looked at to the next bond, in metres.</param>
    /// <param name="medium">What lies between.</param>
    public static Trail Distance(LightningLevel level, int downConductors, double lengthM, SeparationMedium medium)
    {
        var ki = level switch
        {
            LightningLevel.I => 0.08,
            LightningLevel.II => 0.06,
            _ => 0.04,
        };
        var kc = downConductors <= 1 ? 1 : downConductors == 2 ? 0.66 : 0.44;
        var km = medium == SeparationMedium.Air ? 1 : 0.5;
        return Trail.Computed("separation distance", "s", ki * kc * lengthM / km, QuantityKind.Length, "s = ki·kc·l/km", Iec,
            Given("ki of the level", "ki", ki), Given("kc of the sharing", "kc", kc), Trail.Given("length to the next bond", "l", lengthM, QuantityKind.Length, Source.DesignFile),
            Given("km of the medium", "km", km))
            .Remark("kc 0.66 and 0.44 are the simple method of the 2010 edition; the 2006 edition printed 0.5 for two.");
    }

    /// <summary>Air distance that a voltage of this crest may jump, at 500 kV/m as positive streamers need, in metres: the strike simulation's own answer.</summary>
    /// <param name="peak">Crest voltage between the two.</param>
    public static Trail JumpDistance(Trail peak) =>
        Trail.Computed("distance a side flash may jump", "sj", peak.Value / 500e3, QuantityKind.Length, "sj = U/(500 kV/m)",
            Source.FromMemory("CIGRE guide to procedures for estimating the lightning performance of transmission lines", "1991"), peak)
            .Within("0.5 to several metres", peak.Value < 250e3 ? "Below half a metre the strength of a gap is higher than 500 kV/m: the figure is on the safe side." : null);

    private static Trail Given(string name, string symbol, double value) => Trail.Given(name, symbol, value, QuantityKind.Ratio, Iec);
}
