using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Catalog;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Statics;

namespace Mastwright.Analysis.Survive;

/// <summary>One kind of surface on its worst band.</summary>
/// <param name="Band">The band, or group and position.</param>
/// <param name="Surface">The gradient there and where corona would begin.</param>
public sealed record RfCoronaRow(string Band, RfSurface Surface);

/// <summary>Corona under the station's own power around one mast.</summary>
/// <param name="Rows">The worst of each kind of surface, the nearest to its onset first.</param>
/// <param name="Findings">What the solver of the currents had to say.</param>
public sealed record RfCoronaAnswer(ImmutableArray<RfCoronaRow> Rows, ImmutableArray<Finding> Findings);

/// <summary>Corona under the station's own power on top, ring, mast, top wires and guys, from the solved currents of every band and group.</summary>
public static class RfCoronaRun
{
    // The feed of the model is a gap of no length: what its charge does next to it is the model's and not the lead's.
    private const double FeedReachM = 0.1;

    /// <summary>The worst of each kind of surface, the nearest to its onset first.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">The mast.</param>
    /// <param name="outline">Its outline for electrostatics.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static RfCoronaAnswer Of(Station station, int mastIndex, MastOutline outline, CancellationToken cancellation = default)
    {
        var mast = station.Masts[mastIndex];
        var bands = new ImmutableArray<RfCoronaRow>[station.Bands.Length];
        var solutions = new WireSolution[bands.Length];
        var findings = new ImmutableArray<Finding>[bands.Length];
        Parallel.For(0, bands.Length, new ParallelOptions { CancellationToken = cancellation }, b =>
        {
            var band = station.Bands[b];
            (var solution, findings[b]) = MastDrive.Solve(station, band.FrequencyHz, cancellation);
            solutions[b] = solution;
            var drive = MastDrive.Of(station, solution, mastIndex);
            bands[b] = Surfaces(station, mast, outline, band.Title, drive.Driven, Crest(station, band.ModulationPeak) * Math.Sqrt(band.PowerW / drive.ReferenceW));
        });
        var groups = GroupDrives.Of(station, mastIndex, solutions.DistinctBy(s => s.FrequencyHz).ToDictionary(s => s.FrequencyHz), cancellation);
        var together = groups.SelectMany(g => Surfaces(station, mast, outline, g.Name, g.Driven, Crest(station, GroupRun.BandOf(station, g.Group)?.ModulationPeak ?? 1)));
        return new(
            [.. bands.SelectMany(b => b).Concat(together).GroupBy(r => r.Surface.Part).Select(g => g.MaxBy(r => r.Surface.Use)!).OrderByDescending(r => r.Surface.Use)],
            [.. findings.SelectMany(f => f).Concat(groups.SelectMany(g => g.Findings)).DistinctBy(f => f.Message)]);
    }

    private static double Crest(Station station, double modulation) => Math.Sqrt(2) * station.Protection.Mismatch * modulation;

    private static ImmutableArray<RfCoronaRow> Surfaces(Station station, Mast mast, MastOutline outline, string band, DrivenWires driven, double amplitude)
    {
        var (air, roughness) = (SiteAir.Thin(station), StaticsRun.Roughness(station));
        var strand = Math.Min(roughness, CoronaOnset.Stranded);
        List<RfSurface> surfaces = [];
        var topAt = outline.HeightM - Math.Max(1, 0.05 * outline.HeightM);
        double? topCharge = null;
        for (var s = 0; s < driven.Mesh.Segments.Length; s++)
        {
            var segment = driven.Mesh.Segments[s];
            var name = driven.Mesh.Model.Wires[segment.Wire].Name;
            var (a, b) = driven.EndCurrents(s);
            var charge = amplitude * (b - a).Magnitude / (2 * Math.PI * driven.FrequencyHz * segment.LengthM);
            var height = 0.5 * (segment.Start.Z + segment.End.Z);
            if (name.StartsWith($"mast {mast.Name}, run ", StringComparison.Ordinal))
            {
                surfaces.Add(OnMast(mast, height, segment.RadiusM, charge));
                topCharge = Math.Min(segment.Start.Z, segment.End.Z) <= topAt && Math.Max(segment.Start.Z, segment.End.Z) >= topAt ? charge : topCharge;
            }
            else if (name == WireModels.LeadOf(mast.Name) && height > FeedReachM)
            {
                surfaces.Add(RfCorona.Wire("base lead", height, segment.RadiusM, charge, air, roughness));
            }
            else if (name.StartsWith("top wire ", StringComparison.Ordinal) && name.EndsWith($" of {mast.Name}", StringComparison.Ordinal))
            {
                surfaces.Add(RfCorona.Wire("top wires", height, segment.RadiusM, charge, air, strand));
            }
            else if (name.StartsWith("guy ", StringComparison.Ordinal) && name.Contains($" of {mast.Name} to ", StringComparison.Ordinal))
            {
                var level = name[4..name.IndexOf(" of ", StringComparison.Ordinal)];
                var topWire = mast.TopWires is { PartOfGuys: true } && level == $"{mast.Guys.Length}" && name.EndsWith(", piece 1", StringComparison.Ordinal);
                surfaces.Add(RfCorona.Wire(topWire ? "top wires" : $"guys of level {level}", height, segment.RadiusM, charge, air, strand));
            }
        }

        if (topCharge is { } q)
        {
            var shaft = RfCorona.Wire("shaft below the top", topAt, outline.RadiusM, q, air, roughness).GradientVPerM;
            surfaces.AddRange(RfCorona.Top(outline, air, roughness, shaft, topAt));
        }

        return [.. surfaces.GroupBy(x => x.Part).Select(g => new RfCoronaRow(band, g.MaxBy(x => x.Use)!))];

        RfSurface OnMast(Mast of, double height, double radius, double charge)
        {
            var section = of.SectionAt(height);
            if (section.Lattice is not { } lattice)
            {
                return RfCorona.Wire("mast", height, radius, charge, air, roughness);
            }

            var part = Catalogue.Default.Lattices[lattice];
            return RfCorona.Legs("mast legs", height, part.Legs, part.LegDiameterM / 2, part.FaceWidthM / 2 / Math.Sin(Math.PI / part.Legs), charge, air, roughness);
        }
    }
}
