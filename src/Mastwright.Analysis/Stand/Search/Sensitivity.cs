using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>What one changed input does to the structural verdict.</summary>
/// <param name="Input">The input and its step in words, e.g. <c>"wind speed +10 %"</c>.</param>
/// <param name="Group">What the step belongs to; two steps of one input share it.</param>
/// <param name="Use">Largest use of capacity with the step.</param>
/// <param name="Change">Change of that use against the design as it is.</param>
/// <param name="Worst">The check that governs with the step.</param>
/// <param name="Passes">Whether every check still passes.</param>
public sealed record SensitivityLine(string Input, string Group, double Use, double Change, Check? Worst, bool Passes);

/// <summary>Which input moves the verdict most.</summary>
/// <param name="Use">Largest use of capacity of the design as it is, by the same look.</param>
/// <param name="Worst">The check that governs it.</param>
/// <param name="Passes">Whether it passes.</param>
/// <param name="Lines">Every step, the one that moves the verdict most first.</param>
public sealed record SensitivityResult(double Use, Check? Worst, bool Passes, ImmutableArray<SensitivityLine> Lines);

/// <summary>Changes one input after the other by ±10 % or its natural step and judges the mast anew.</summary>
public static class Sensitivity
{
    private const int Directions = 12;

    /// <summary>Looks at every input of one mast.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">Which mast, from 0.</param>
    /// <param name="progress">Told what is changed; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static SensitivityResult Of(Station station, int mastIndex, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var mast = station.Masts[mastIndex];
        Judgement Judged(Station s, Mast m, string words)
        {
            var answer = StandRun.Of(s, m, cancellation, Directions, screens: false);
            return Judge.From(new Candidate(words, m, []), answer, 0, false);
        }

        var now = Judged(station, mast, "as it is");
        var steps = Site(station).Select(s => (s.Words, s.Group, s.Station, Mast: mast)).Concat(Masts(mast, station.UnitSystem).Select(m => (m.Words, m.Group, Station: station, m.Mast))).ToList();
        var lines = new List<SensitivityLine>();
        foreach (var step in steps)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Report(new AnalysisStep($"Mast {mast.Name}: {step.Words}", (double)lines.Count / steps.Count));
            var j = Judged(step.Station, step.Mast, step.Words);
            lines.Add(new SensitivityLine(step.Words, step.Group, j.Use, double.IsInfinity(j.Use) && double.IsInfinity(now.Use) ? 0 : j.Use - now.Use, j.Worst, j.Passes));
        }

        var ranked = lines.GroupBy(l => l.Group).OrderByDescending(g => g.Max(l => Math.Abs(l.Change))).SelectMany(g => g).ToImmutableArray();
        return new SensitivityResult(now.Use, now.Worst, now.Passes, ranked);
    }

    private static IEnumerable<(string Words, string Group, Station Station)> Site(Station station)
    {
        var site = station.Site;
        var us = station.UnitSystem == UnitSystem.Us;
        Station With(Model.Design.Site changed) => station with { Site = changed };
        foreach (var k in new[] { 1.1, 0.9 })
        {
            if (site.Wind.SpeedMPerS is { } speed)
            {
                yield return ($"wind speed {Signed(k)}", "wind", With(site with { Wind = site.Wind with { SpeedMPerS = k * speed } }));
            }
            else if (site.Wind.PressurePa is { } pressure)
            {
                yield return ($"wind pressure {Signed(k)}", "wind", With(site with { Wind = site.Wind with { PressurePa = k * pressure } }));
            }

            if (site.Ice.GlazeClass is { } glaze)
            {
                var other = Math.Clamp(glaze + (k > 1 ? 1 : -1), 1, 5);
                yield return ($"glaze class G{other}", "ice", With(site with { Ice = site.Ice with { GlazeClass = other } }));
            }
            else if (site.Ice.ThicknessM > 0)
            {
                yield return ($"ice thickness {Signed(k)}", "ice", With(site with { Ice = site.Ice with { ThicknessM = k * site.Ice.ThicknessM } }));
                yield return ($"wind with ice {Signed(k)}", "ice wind", With(site with { Ice = site.Ice with { WindSpeedMPerS = k * site.Ice.WindSpeedMPerS } }));
            }
        }

        if (site.Ice.ThicknessM <= 0)
        {
            var ice = us ? 0.25 * 0.0254 : 0.006;
            yield return ($"{(us ? "1/4 in" : "6 mm")} of ice where the file has none", "ice", With(site with { Ice = site.Ice with { ThicknessM = ice } }));
        }

        foreach (var exposure in Enum.GetValues<Exposure>().Where(e => e != site.Wind.Exposure && site.Wind.Method != WindMethod.StatedPressure))
        {
            yield return ($"exposure {exposure.ToString().ToLowerInvariant()}", "exposure", With(site with { Wind = site.Wind with { Exposure = exposure } }));
        }

        var (kelvin, degrees) = us ? (20 / 1.8, "20 °F") : (10, "10 °C");
        yield return ($"coldest {degrees} colder", "temperature", With(site with { ColdestK = site.ColdestK - kelvin }));
        yield return ($"hottest {degrees} hotter", "temperature", With(site with { HottestK = site.HottestK + kelvin }));
    }

    private static IEnumerable<(string Words, string Group, Mast Mast)> Masts(Mast mast, UnitSystem units)
    {
        foreach (var k in new[] { 1.1, 0.9 })
        {
            yield return ($"initial tension {Signed(k)}", "tension", mast with { Guys = [.. mast.Guys.Select(g => g with { InitialTension = Times(g.InitialTension, k) })] });
            yield return ($"anchor distance {Signed(k)}", "anchors", mast with { Anchors = [.. mast.Anchors.Select(a => a with { DistanceM = k * a.DistanceM })] });
            if (mast.Sections.Any(s => s.Tube is not null))
            {
                yield return ($"tube wall {Signed(k)}", "section", mast with { Sections = [.. mast.Sections.Select(s => s.Tube is { } t ? s with { Tube = t with { WallM = Math.Min(k * t.WallM, t.DiameterM / 2) } } : s)] });
                yield return ($"tube diameter {Signed(k)}", "tube diameter", mast with { Sections = [.. mast.Sections.Select(s => s.Tube is { } t && k * t.DiameterM > 2 * t.WallM ? s with { Tube = t with { DiameterM = k * t.DiameterM } } : s)] });
            }

            if (mast.Attachments.Any(a => a.DragAreaM2 > 0))
            {
                yield return ($"drag of what is fixed to the mast {Signed(k)}", "attachments", mast with { Attachments = [.. mast.Attachments.Select(a => a with { DragAreaM2 = k * a.DragAreaM2 })] });
            }
        }

        foreach (var (step, words) in new[] { (1, "one size up"), (-1, "one size down") })
        {
            var strands = mast.Guys.Select(g => Beside(StrandSearch.Sizes(g.Strand), g.Strand, step)).ToList();
            if (strands.All(s => s is not null))
            {
                yield return ($"strand {words} at every level", "strand", mast with { Guys = [.. mast.Guys.Select((g, l) => g with { Strand = strands[l]! })] });
            }

            var lattices = mast.Sections.Select(s => s.Lattice is null ? null : Beside([.. Like(s.Lattice)], s.Lattice, step)).ToList();
            if (mast.Sections.Any(s => s.Lattice is not null) && mast.Sections.Zip(lattices, (s, l) => s.Lattice is null || l is not null).All(x => x))
            {
                yield return ($"lattice {words} ({lattices.First(l => l is not null)})", "lattice", mast with { Sections = [.. mast.Sections.Select((s, i) => s.Lattice is null ? s : s with { Lattice = lattices[i] })] });
            }
        }

        foreach (var (level, l) in mast.Guys.Select((g, l) => (g, l)))
        {
            foreach (var way in new[] { 1, -1 })
            {
                var (step, words) = units == UnitSystem.Us ? (2 * 0.3048, "2 ft") : (0.5, "0.5 m");
                var height = level.HeightM + (way * step);
                if (height > mast.Base.HeightM + 1 && height <= mast.TopM)
                {
                    yield return ($"guys of level {l + 1} {words} {(way > 0 ? "higher" : "lower")}", $"height {l}", mast with { Guys = mast.Guys.SetItem(l, level with { HeightM = height }) });
                }
            }
        }
    }

    private static InitialTension Times(InitialTension tension, double k) =>
        tension.ForceN is { } force ? InitialTension.Force(k * force) : InitialTension.Share(k * tension.ShareOfStrength!.Value);

    private static IEnumerable<string> Like(string lattice)
    {
        var row = Catalogue.Default.Lattices[lattice];
        return Catalogue.Default.Lattices.All.Where(x => x.Legs == row.Legs && x.Metal == row.Metal).OrderBy(x => x.FaceWidthM).ThenBy(x => x.MassPerLengthKgPerM).Select(x => x.Name);
    }

    private static string? Beside(ImmutableArray<string> row, string name, int step)
    {
        var at = row.IndexOf(name) + step;
        return at >= 0 && at < row.Length ? row[at] : null;
    }

    private static string Signed(double k) => k > 1 ? "+10 %" : "−10 %";
}
