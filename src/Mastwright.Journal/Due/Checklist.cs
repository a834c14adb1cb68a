using System.Collections.Immutable;
using NodaTime;

namespace Mastwright.Journal.Due;

/// <summary>What makes an item due besides the calendar.</summary>
/// <param name="GustMs">A gust from this speed on, m/s; null for none.</param>
/// <param name="IceM">Radial ice from this thickness on, metres; null for none.</param>
/// <param name="Lightning">Lightning here or near.</param>
public sealed record StormTrigger(double? GustMs = null, double? IceM = null, bool Lightning = false)
{
    /// <summary>No storm makes it due.</summary>
    public static StormTrigger None { get; } = new();
}

/// <summary>One thing to be looked at again and again.</summary>
/// <param name="Key">Stable key, e.g. <c>"mast A/guy A1/turnbuckle"</c>.</param>
/// <param name="Mast">The mast; empty for the station.</param>
/// <param name="Label">What to look at and what is right.</param>
/// <param name="Every">Time between two looks.</param>
/// <param name="After">Storms after which to look.</param>
/// <param name="Source">Where the interval comes from.</param>
/// <param name="Caution">A caution that belongs beside it; empty for none.</param>
public sealed record ChecklistItem(string Key, string Mast, string Label, Period Every, StormTrigger After, string Source, string Caution = "");

/// <summary>A guy, as far as upkeep goes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="HasTurnbuckle">Whether it ends in a turnbuckle.</param>
/// <param name="HasClips">Whether wire-rope clips hold it.</param>
/// <param name="Insulators">How many insulators are in it.</param>
public sealed record GuyParts(string Name, bool HasTurnbuckle, bool HasClips, int Insulators);

/// <summary>A mast, as far as upkeep goes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Guys">Its guys.</param>
/// <param name="HasBaseInsulator">Whether it stands on an insulator.</param>
/// <param name="HasGap">Whether it has a spark gap.</param>
/// <param name="Radials">Number of radials.</param>
/// <param name="HasFence">Whether a fence keeps people off.</param>
/// <param name="IsSteel">Whether it can rust.</param>
public sealed record MastParts(string Name, ImmutableArray<GuyParts> Guys, bool HasBaseInsulator, bool HasGap, int Radials, bool HasFence, bool IsSteel);

/// <summary>Makes the checklist of a station from what it is made of.</summary>
public static class Checklist
{
    private const string Custom = "common practice, no source";
    private const string Standard = "guyed masts every three years: ANSI/TIA-222 annex on maintenance, from memory; shorter here by common practice, no source";
    private const string Climb = "Do not climb or work at height without training, a second person and fall protection.";
    private const string Power = "Transmitter off and locked out, the mast earthed, before anything at the base is touched.";

    /// <summary>Gust from which guys and footings are looked at again, m/s: a full gale by the Beaufort scale (from memory).</summary>
    public const double StormGustMs = 24.5;

    /// <summary>Radial ice from which clips and sag are looked at again, metres.</summary>
    public const double IceM = 0.005;

    /// <summary>The items of a station.</summary>
    /// <param name="masts">Its masts.</param>
    public static ImmutableArray<ChecklistItem> For(IReadOnlyList<MastParts> masts) => [.. masts.SelectMany(Items)];

    private static IEnumerable<ChecklistItem> Items(MastParts m)
    {
        var storm = new StormTrigger(GustMs: StormGustMs, IceM: IceM);
        var strike = new StormTrigger(Lightning: true);
        ChecklistItem Item(string part, string label, Period every, StormTrigger after, string source, string caution = "") =>
            new($"{m.Name}/{part}", m.Name, label, every, after, source, caution);

        foreach (var g in m.Guys)
        {
            yield return Item($"{g.Name}/tension", $"Guy {g.Name}: tension against the table", Period.FromYears(1), storm, Standard, "A guy stores energy: change one by a little at a time.");
            yield return Item($"{g.Name}/strand", $"Guy {g.Name}: strand without broken wires, rust or chafe, end fittings whole", Period.FromYears(1), storm, Standard, Climb);
            if (g.HasTurnbuckle) yield return Item($"{g.Name}/turnbuckle", $"Guy {g.Name}: turnbuckle locked by its wire, thread to spare both ways", Period.FromMonths(6), storm, Custom);
            if (g.HasClips) yield return Item($"{g.Name}/clips", $"Guy {g.Name}: clips at their torque, saddles on the live end", Period.FromYears(1), storm, Custom);
            if (g.Insulators > 0) yield return Item($"{g.Name}/insulators", $"Guy {g.Name}: {g.Insulators} insulator(s) without cracks or burn marks", Period.FromYears(1), new(GustMs: StormGustMs, IceM: IceM, Lightning: true), Custom, Climb);
        }
        yield return Item("plumb", "Mast plumb and straight within its tolerance", Period.FromYears(1), storm, Standard);
        yield return Item("joints", "Section joints: bolts tight, welds without cracks", Period.FromYears(3), storm, Standard, Climb);
        yield return Item("footing", "Footing and anchors: no heave, cracks, washed-out ground or rust at ground line", Period.FromYears(1), storm, Standard);
        if (m.IsSteel) yield return Item("rust", "Zinc and paint whole, no rust", Period.FromYears(1), StormTrigger.None, Custom, Climb);
        if (m.HasBaseInsulator) yield return Item("base-insulator", "Base insulator clean, without cracks or tracking, pivot free", Period.FromMonths(6), new(GustMs: StormGustMs, Lightning: true), Custom, Power);
        if (m.HasGap) yield return Item("gap", "Spark gap at its setting, faces clean, no insects or drops", Period.FromMonths(6), new(GustMs: StormGustMs, Lightning: true), Custom, Power);
        if (m.Radials > 0) yield return Item("radials", $"{m.Radials} radials whole, joints at the ring bright and tight", Period.FromYears(1), strike, Custom, Power);
        yield return Item("earth", "Earth electrode and its joints, arrester and drain path whole", Period.FromYears(1), strike, Custom, Power);
        yield return Item("feed", "Feed point, coils, capacitors and cabinet: tight, dry, no burn marks", Period.FromYears(1), strike, Custom, Power);
        yield return Item("sweep", "Impedance sweep at the base, laid over the last one", Period.FromYears(1), strike, Custom, Power);
        if (m.HasFence) yield return Item("fence", "Fence and gate closed, warning signs readable", Period.FromMonths(3), new(GustMs: StormGustMs), Custom);
    }
}
