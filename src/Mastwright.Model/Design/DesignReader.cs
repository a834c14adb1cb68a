using System.Collections.Immutable;
using Mastwright.Model.Schema;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>What reading a design file gave.</summary>
/// <param name="Station">The station; null when the file cannot be used.</param>
/// <param name="Findings">Everything found, all at once, in the order of the file.</param>
/// <param name="Assumptions">Every default taken.</param>
/// <param name="Places">Where each field stands, by dotted path.</param>
public sealed record DesignReading(
    Station? Station,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Assumption> Assumptions,
    ImmutableDictionary<string, Place> Places)
{
    /// <summary>Whether the file can be used.</summary>
    public bool Ok => Station is not null;
}

/// <summary>Reads design files.</summary>
public static class DesignReader
{
    /// <summary>Reads a design.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="file">Its name for messages.</param>
    /// <param name="catalogueNames">The names in a catalogue list, or null for a list that is not checked.</param>
    /// <param name="migrations">Steps that lift older versions; null for the built-in ones.</param>
    public static DesignReading Read(
        string text, string file, Func<string, IReadOnlyCollection<string>?> catalogueNames, IReadOnlyList<IDesignMigration>? migrations = null)
    {
        var (root, findings) = YamlText.Parse(text, file);
        if (root is null)
        {
            return Refused(findings);
        }

        if (root is not MapText map)
        {
            return Refused(findings.Add(new Finding("not-a-design", Severity.Error, "The file is not a design: it must be a block of fields.", root.Place,
                WayOut: "Start from the commented file that `mastwright new` writes.")));
        }

        var lifted = DesignVersions.Lift(map, migrations ?? DesignVersions.BuiltIn);
        findings = findings.AddRange(lifted.Findings);
        if (lifted.Map is null)
        {
            return Refused(findings);
        }

        var binder = new DesignBinder(catalogueNames);
        var station = (Station)binder.Bind(RecordShape.Root, lifted.Map);
        var places = binder.Places.ToImmutableDictionary();
        var all = findings.AddRange(binder.Findings);

        var broken = all.Select(f => f.Place?.Path ?? "").Where(p => p.Length > 0).ToHashSet();
        all = all.AddRange(DesignRules.Check(station, places, broken, file));
        var sorted = all.OrderBy(f => f.Place?.Line ?? 0).ThenBy(f => f.Place?.Column ?? 0).ToImmutableArray();
        var usable = sorted.All(f => f.Severity != Severity.Error);
        return new DesignReading(usable ? station : null, sorted, [.. binder.Assumptions], places);
    }

    private static DesignReading Refused(ImmutableArray<Finding> findings) =>
        new(null, findings, [], ImmutableDictionary<string, Place>.Empty);
}
