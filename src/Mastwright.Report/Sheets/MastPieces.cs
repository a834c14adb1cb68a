using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Sheets;

/// <summary>What joins a piece of mast to the one above it.</summary>
/// <param name="What">The joint in words.</param>
/// <param name="Bolts">Bolts with lock nuts.</param>
/// <param name="SleeveM">Length of an inner sleeve, m; 0 for none.</param>
/// <param name="SleeveFor">The tube it fits into; empty for none.</param>
public sealed record MastJoint(string What, int Bolts, double SleeveM = 0, string SleeveFor = "");

/// <summary>A piece of mast as it is put up.</summary>
/// <param name="What">Catalogue section or tube.</param>
/// <param name="BottomM">Its lower end over the mast's foot, m.</param>
/// <param name="LengthM">Its length, m.</param>
/// <param name="WholeM">Length of the piece it is cut from, m; its own when it is used whole.</param>
/// <param name="Above">The joint at its top; null on the last.</param>
public sealed record MastPiece(string What, double BottomM, double LengthM, double WholeM, MastJoint? Above);

/// <summary>A mast as sections and stock lengths from the foot up, with the hardware of every joint.</summary>
public static class MastPieces
{
    private const double ShortestM = 0.01;
    private const int BoltsPerLeg = 2;
    private const int BoltsPerSleeve = 4;
    private const double SleeveDiameters = 6;

    /// <summary>The pieces from the foot up.</summary>
    public static ImmutableArray<MastPiece> Of(Mast mast, UnitSystem units)
    {
        var list = new List<(string What, double LengthM, double WholeM, int Legs, double DiameterM)>();
        foreach (var section in mast.Sections)
        {
            var row = section.Lattice is { } name ? Catalogue.Default.Lattices[name] : null;
            var whole = row?.SectionLengthM ?? (units == UnitSystem.Us ? 20 * 0.3048 : 6);
            for (var left = section.LengthM; left > ShortestM; left -= whole)
            {
                list.Add((row?.Name ?? TubeName(section.Tube!, units), Math.Min(left, whole), whole, row?.Legs ?? 0, section.Tube?.DiameterM ?? 0));
            }
        }

        var pieces = ImmutableArray.CreateBuilder<MastPiece>();
        var at = 0.0;
        for (var i = 0; i < list.Count; i++)
        {
            pieces.Add(new MastPiece(list[i].What, at, list[i].LengthM, list[i].WholeM, i == list.Count - 1 ? null : Joint(list[i], list[i + 1])));
            at += list[i].LengthM;
        }

        return pieces.ToImmutable();
    }

    /// <summary>A tube by its size and metal.</summary>
    public static string TubeName(TubeSection tube, UnitSystem units)
    {
        string Fine(double m) => QuantityFormat.Show(m, QuantityKind.FineLength, units, 3);
        return $"tube {Fine(tube.DiameterM)} × {Fine(tube.WallM)} {tube.Metal}";
    }

    /// <summary>Writes the list of a mast.</summary>
    public static void Write(DocumentBuilder document, Mast mast)
    {
        var pieces = Of(mast, document.Units);
        document.Section($"Sections of mast {mast.Name}");
        document.Table("From the foot up", ["#No.", "Section", "#Lower end over the foot", "#Length", "Cut from", "Joint above", "#Bolts"], pieces.Select((p, i) => new Cell[]
        {
            (i + 1).ToString(CultureInfo.InvariantCulture), p.What, TapeText.Of(p.BottomM, document.Units), TapeText.Of(p.LengthM, document.Units),
            p.WholeM - p.LengthM > ShortestM ? $"one of {document.Show(p.WholeM, QuantityKind.Length)}" : "used whole",
            p.Above?.What ?? "top", p.Above?.Bolts.ToString(CultureInfo.InvariantCulture) ?? "",
        }));
        document.Add(new Note(NoteKind.Assumption, $"Two bolts through every leg of a lattice joint, and an inner sleeve of six diameters with four bolts in a tube joint, every nut locked: common practice, no source. The maker's joint comes first. Guy levels belong at or near a joint's stiff end: {string.Join(", ", mast.Guys.Select(g => document.Show(g.HeightM - mast.Base.HeightM, QuantityKind.Length, 3)))} over the foot."));
    }

    private static MastJoint Joint((string What, double LengthM, double WholeM, int Legs, double DiameterM) below, (string What, double LengthM, double WholeM, int Legs, double DiameterM) above)
    {
        if (below.Legs > 0 && below.What == above.What)
        {
            return new MastJoint($"{below.Legs} legs bolted", BoltsPerLeg * below.Legs);
        }

        if (below.Legs > 0 || above.Legs > 0)
        {
            return new MastJoint("transition piece, to the maker's drawing", BoltsPerLeg * Math.Max(below.Legs, above.Legs));
        }

        return below.What == above.What
            ? new MastJoint("inner sleeve", BoltsPerSleeve, SleeveDiameters * below.DiameterM, below.What)
            : new MastJoint("upper tube slid into the lower, or a turned reducer", BoltsPerSleeve, SleeveDiameters * Math.Max(below.DiameterM, above.DiameterM), below.What);
    }
}
