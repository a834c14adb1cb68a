using Mastwright.Catalog;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>Fittings chosen anew for another strand: the lightest shackle and turnbuckle of the same make, and an insulator, that develop the whole strand.</summary>
public static class Fittings
{
    /// <summary>The level with another strand and what fits it; null when the catalogue has nothing that develops it.</summary>
    /// <param name="level">The level as it is.</param>
    /// <param name="strand">The strand it is to have.</param>
    public static GuyLevel? For(GuyLevel level, string strand)
    {
        if (strand == level.Strand)
        {
            return level;
        }

        var breaking = StandModel.StrandOf(strand).BreakingN;
        if (InsulatorFor(level.Insulator, breaking) is not { } insulator)
        {
            return null;
        }

        var changed = level with { Strand = strand, Insulator = insulator };
        if (level.Hardware is not { } hardware)
        {
            return changed;
        }

        var shackle = ShackleFor(hardware.Shackle, breaking);
        var turnbuckle = TurnbuckleFor(hardware.Turnbuckle, breaking);
        return shackle is null || turnbuckle is null ? null : changed with
        {
            Hardware = hardware with
            {
                Shackle = shackle,
                ShackleLengthM = LengthOf(hardware.ShackleLengthM, shackle == hardware.Shackle, Catalogue.Default.Shackles[shackle].InsideLengthM),
                Turnbuckle = turnbuckle,
                TurnbuckleLengthM = LengthOf(hardware.TurnbuckleLengthM, turnbuckle == hardware.Turnbuckle, Catalogue.Default.Turnbuckles[turnbuckle].ClosedLengthM),
                Clips = Math.Max(hardware.Clips, ClipFor(strand)?.ClipsForStrand ?? 0),
                ClipTorqueNm = hardware.ClipTorqueNm is { } stated ? Math.Round(ClipFor(strand)?.TorqueNm ?? stated, 3) : null,
            },
        };
    }

    // A measured length belongs to the piece it was measured on; another piece has the length of its row, to what the file can write.
    private static double? LengthOf(double? measuredM, bool same, double rowM) => measuredM is null || same ? measuredM : Math.Round(rowM, 6);

    // An insulator that is strong enough stays: its place in the radiation is not the structure's to change.
    private static string? InsulatorFor(string present, double breakingN)
    {
        var row = Catalogue.Default.StrainInsulators[present];
        return row.StrengthN >= breakingN ? present
            : Catalogue.Default.StrainInsulators.All.Where(i => i.Kind == row.Kind && i.StrengthN >= breakingN).MinBy(i => i.StrengthN)?.Name;
    }

    private static string? ShackleFor(string present, double breakingN)
    {
        var row = Catalogue.Default.Shackles[present];
        return Catalogue.Default.Shackles.All.Where(s => s.Pin == row.Pin && s.BreakingN >= breakingN).MinBy(s => s.BreakingN)?.Name;
    }

    private static string? TurnbuckleFor(string present, double breakingN)
    {
        var row = Catalogue.Default.Turnbuckles[present];
        return Catalogue.Default.Turnbuckles.All.Where(t => t.Ends == row.Ends && t.BreakingN >= breakingN && t.TakeUpM >= row.TakeUpM - 1e-6).OrderBy(t => t.BreakingN).ThenBy(t => t.TakeUpM).FirstOrDefault()?.Name;
    }

    private static Clip? ClipFor(string strand) =>
        Catalogue.Default.Clips.All.Where(c => c.RopeM >= StandModel.StrandOf(strand).DiameterM - 1e-6).MinBy(c => c.RopeM);

    /// <summary>The lines of a level that differ, as the file would write them.</summary>
    /// <param name="path">Path of the level.</param>
    /// <param name="was">The level as it is.</param>
    /// <param name="now">The level changed.</param>
    public static IEnumerable<DesignChange> Changes(string path, GuyLevel was, GuyLevel now)
    {
        DesignChange Line(string key, string value) => new($"{path}.{key}", key[(key.LastIndexOf('.') + 1)..], value);
        if (now.Strand != was.Strand)
        {
            yield return Line("strand", now.Strand);
        }

        if (now.Insulator != was.Insulator)
        {
            yield return Line("insulator", now.Insulator);
        }

        if (now.Hardware is { } h && was.Hardware is { } old)
        {
            foreach (var (key, a, b) in Words(old).Zip(Words(h), (a, b) => (a.Key, a.Words, b.Words)).Where(x => x.Item2 != x.Item3))
            {
                yield return Line("hardware." + key, b!);
            }
        }
    }

    // What a change of strand may change, as the file writes it; null where the file leaves it out.
    private static IEnumerable<(string Key, string? Words)> Words(GuyHardware h) =>
    [
        ("shackle", h.Shackle), ("shackle-length", h.ShackleLengthM is { } s ? HardwareWords.Mm(s) : null),
        ("turnbuckle", h.Turnbuckle), ("turnbuckle-length", h.TurnbuckleLengthM is { } t ? HardwareWords.Mm(t) : null),
        ("clips", $"{h.Clips}"), ("clip-torque", h.ClipTorqueNm is { } torque ? HardwareWords.Torque(torque) : null),
    ];
}
