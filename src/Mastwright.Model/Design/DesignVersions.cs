using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>One step that lifts a file of version <see cref="From"/> to the next.</summary>
public interface IDesignMigration
{
    /// <summary>The version it takes.</summary>
    int From { get; }

    /// <summary>The same file in the next version.</summary>
    MapText Lift(MapText map);
}

/// <summary>Format versions: older files are lifted step by step, newer ones are refused with a clear word.</summary>
public static class DesignVersions
{
    /// <summary>The steps this program knows. Version 1 is the first, so there are none yet.</summary>
    public static IReadOnlyList<IDesignMigration> BuiltIn { get; } = [];

    internal static (MapText? Map, ImmutableArray<Finding> Findings) Lift(MapText map, IReadOnlyList<IDesignMigration> migrations)
    {
        var current = migrations.Count == 0 ? Station.CurrentVersion : Math.Max(Station.CurrentVersion, migrations.Max(m => m.From) + 1);
        if (map["mastwright"] is not ScalarText written)
        {
            return (null, [new Finding("no-version", Severity.Error, "The file does not say which format version it is.", map.Place,
                WayOut: string.Create(CultureInfo.InvariantCulture, $"Put “mastwright: {current}” on the first line."))]);
        }

        if (!int.TryParse(written.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var version) || version < 1)
        {
            return (null, [new Finding("bad-version", Severity.Error, "The format version is not a whole number.", written.Place, written.Text,
                string.Create(CultureInfo.InvariantCulture, $"1 to {current}"), string.Create(CultureInfo.InvariantCulture, $"Write “mastwright: {current}”."))]);
        }

        if (version > current)
        {
            return (null, [new Finding("newer-version", Severity.Error, "The file was written for a newer Mastwright than this one.", written.Place, written.Text,
                string.Create(CultureInfo.InvariantCulture, $"1 to {current}"), "Use a newer Mastwright; nothing in the file has been changed.")]);
        }

        while (version < current && migrations.FirstOrDefault(m => m.From == version) is { } step)
        {
            map = step.Lift(map);
            version++;
        }

        return (map, []);
    }
}
