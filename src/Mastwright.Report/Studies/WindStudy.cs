using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Wind and ice on mast and guys, every combination, and what governs.</summary>
public static class WindStudy
{
    private const string Caution =
        "A map's wind is not the worst that can blow, and a hill, a gap or a cliff makes it stronger. Stay off the mast and out of its fall circle in wind and ice. Local codes and a licensed engineer come first.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("wind", "Wind and ice over the height, drag on mast and guys, every combination, and which governs", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Wind, ice and temperature", input.Station.Name, input.Station.UnitSystem).Caution(Caution);
        foreach (var (mast, result) in input.Station.Masts.Zip(input.Result.Masts))
        {
            var picture = WindPicture.Of(input.Station, mast, result.Stand.GustFactor);
            document.Section($"Mast {mast.Name}");
            Method(document, input.Station, picture);
            Heights(document, picture);
            Directions(document, picture);
            Guys(document, picture);
            Combinations(document, result.Stand);
            Roses(document, input.Station, mast, result.Stand);
        }

        return document.Build();
    }

    private static void Method(DocumentBuilder document, Station station, WindPicture picture)
    {
        var wind = station.Site.Wind;
        var ground = wind.Method == WindMethod.StatedPressure ? "" : $", {wind.Exposure.ToString().ToLowerInvariant()} country, topographic factor {wind.Topography:0.##}";
        document.Text(string.Create(CultureInfo.InvariantCulture,
            $"Wind by {picture.Method}{(wind.SpeedMPerS is { } v ? ", " + document.Show(v, QuantityKind.Speed, 3) : "")}{ground}; factor on wind and ice {picture.Factor:0.##}; gust factor {picture.Gust.Value:0.##} ({Notes(picture.Gust)})."));
        if (picture.Layer is { } layer)
        {
            var how = station.Site.Ice.GlazeClass is null && picture.Ice is { } m && m.StartsWith("ASCE", StringComparison.Ordinal) ? $"with a gust of {document.Show(station.Site.Ice.WindSpeedMPerS, QuantityKind.Speed, 3)}" : "with its share of the wind";
            document.Text($"Ice by {picture.Ice}: {document.Show(layer.Thickness, 3)} thick at the top, {document.Show(layer.Density, 3)}, {how}.");
        }

        document.Text(string.Create(CultureInfo.InvariantCulture,
            $"Temperature: tensioned at {document.Show(station.Site.TensioningTemperatureK, QuantityKind.Temperature, 3)}, looked at from {document.Show(station.Site.ColdestK, QuantityKind.Temperature, 3)} to {document.Show(station.Site.HottestK, QuantityKind.Temperature, 3)}; wind blows cold and hot, ice at freezing. {LoadCases.Directions} wind directions."));
        foreach (var warning in picture.Gust.RangeWarnings().Distinct())
        {
            document.Add(new Note(NoteKind.Remark, warning));
        }
    }

    private static string Notes(Trail gust) => string.Join("; ", new[] { gust.Source.Title, gust.Note }.Where(x => !string.IsNullOrEmpty(x)));

    private static void Heights(DocumentBuilder document, WindPicture picture)
    {
        var tubes = picture.Heights.Any(h => h.Reynolds is not null);
        var iced = picture.Layer is not null;
        document.Table("Over the height", ["#Height", "#Velocity pressure", "#Force coefficient", .. tubes ? ["#Reynolds number"] : Array.Empty<string>(), "#Wind per length", .. iced ? ["#With ice", "#Weight of ice"] : Array.Empty<string>()],
            picture.Heights.Reverse().Select(h => (Cell[])
            [
                document.Show(h.HeightM, QuantityKind.Length, 3), document.Show(h.Pressure, 3), document.Show(h.Drag, 3),
                .. tubes ? [h.Reynolds is { } re ? re.ToString("0.0e0", CultureInfo.InvariantCulture) : ""] : Array.Empty<Cell>(),
                document.Show(h.PerM, 3), .. iced ? [document.Show(h.IcedPerM!, 3), document.Show(h.IceNPerM, QuantityKind.LinearForce, 3)] : Array.Empty<Cell>(),
            ]));
        var pressure = QuantityFormat.UnitFor(picture.Heights.Max(h => h.Pressure.Value), QuantityKind.Pressure, document.Units);
        var length = QuantityFormat.UnitFor(1, QuantityKind.Length, document.Units);
        var line = QuantityFormat.UnitFor(1, QuantityKind.LinearForce, document.Units);
        var up = picture.Heights.Select(h => length.FromSi(h.HeightM)).ToList();
        document.Add(Plots.Curves("Velocity pressure", "Velocity pressure over the height, before gust factor and drag.",
            $"velocity pressure, {pressure.Symbol}", $"height, {length.Symbol}", [Curve.Of(picture.Method, picture.Heights.Select(h => pressure.FromSi(h.Pressure.Value)), up)]));
        var lines = new List<Curve> { Curve.Of("wind, bare", [.. picture.Heights.Select(h => line.FromSi(h.PerM.Value))], up) };
        if (iced)
        {
            lines.Add(Curve.Of("wind with ice", [.. picture.Heights.Select(h => line.FromSi(h.IcedPerM!.Value))], up));
            lines.Add(Curve.Of("weight of ice", [.. picture.Heights.Select(h => line.FromSi(h.IceNPerM))], up));
        }

        document.Add(Plots.Curves("Force per length", "Force per length of mast.", $"force per length, {line.Symbol}", $"height, {length.Symbol}", lines));
    }

    private static void Directions(DocumentBuilder document, WindPicture picture)
    {
        if (picture.Solidity is not { } solidity)
        {
            return;
        }

        document.Text($"Lattice: solidity {document.Show(solidity, 3)}{(picture.IcedSolidity is { } iced ? $", {document.Show(iced, 3)} with ice" : "")}. By direction, one turn between faces:");
        var distinct = picture.Lattice.GroupBy(w => Math.Round(w.OffFaceRad, 6)).Select(g => g.First()).OrderBy(w => w.OffFaceRad);
        document.Table("Force on the lattice by wind direction", ["#Off the face", "#Force coefficient", "#Wind per length"], distinct.Select(w => new Cell[]
        {
            document.Show(w.OffFaceRad, QuantityKind.Angle, 3), document.Show(w.Drag, 3), document.Show(w.PerM, 3),
        }));
        if (picture.Lattice.Max(w => w.PerM.Value) - picture.Lattice.Min(w => w.PerM.Value) < 1e-9)
        {
            document.Add(new Note(NoteKind.Remark, "By this method a triangle of round members takes the same from every side."));
        }
    }

    private static void Guys(DocumentBuilder document, WindPicture picture)
    {
        var iced = picture.Layer is not null;
        document.Table("Wind and ice on the guys, before factors", ["#Level", "Strand", "#Own weight", "#Wind in line", "#Wind across", .. iced ? ["#Across, iced", "#Weight of ice"] : Array.Empty<string>()], picture.Guys.Select(g => (Cell[])
        [
            $"{g.Level}", g.Strand, document.Show(g.WeightNPerM, QuantityKind.LinearForce, 3), document.Show(g.PerM, 3), document.Show(g.AcrossPerM, 3),
            .. iced ? [document.Show(g.IcedPerM!, 3), document.Show(g.IceNPerM, QuantityKind.LinearForce, 3)] : Array.Empty<Cell>(),
        ]));
    }

    private static void Combinations(DocumentBuilder document, StandResult stand)
    {
        var stable = stand.Cases.Where(c => c.Stable).ToList();
        document.Table($"All {stand.Cases.Length} combinations, by kind", ["Combination", "#Directions", "#Top moves", "#Foot, most", "#Foot, least", "#Guy, most", "#Moment, most"], stand.Cases.GroupBy(c => c.Kind).Select(g => g.Any(c => c.Stable)
            ? new Cell[]
            {
                g.Key, g.Count(c => !c.Stable) is > 0 and var bad ? new Cell($"{g.Count()}, {bad} without equilibrium", Verdict.Fail) : $"{g.Count()}", document.Show(g.Where(c => c.Stable).Max(c => c.TopDeflectionM), QuantityKind.FineLength, 3), document.Show(g.Where(c => c.Stable).Max(c => c.BaseCompressionN), QuantityKind.Force, 3),
                document.Show(g.Where(c => c.Stable).Min(c => c.BaseCompressionN), QuantityKind.Force, 3), document.Show(g.Where(c => c.Stable).Max(c => c.LargestGuyN), QuantityKind.Force, 3), document.Show(g.Where(c => c.Stable).Max(c => c.LargestMomentNm), QuantityKind.Moment, 3),
            }
            : [g.Key, $"{g.Count()}", new Cell("no equilibrium", Verdict.Fail), "", "", "", ""]));
        if (stable.Count == 0)
        {
            return;
        }

        (string What, Func<CaseResult, double> Size, QuantityKind Kind)[] asked =
        [
            ("movement of the top", c => c.TopDeflectionM, QuantityKind.FineLength), ("compression at the foot", c => c.BaseCompressionN, QuantityKind.Force),
            ("guy tension", c => c.LargestGuyN, QuantityKind.Force), ("bending moment", c => c.LargestMomentNm, QuantityKind.Moment),
        ];
        document.Table("What governs", ["Largest", "#Value", "Combination"], asked.Select(a => (a, Worst: stable.MaxBy(a.Size)!)).Select(x => new Cell[]
        {
            x.a.What, document.Show(x.a.Size(x.Worst), x.a.Kind, 3), x.Worst.Name,
        }));
    }

    private static void Roses(DocumentBuilder document, Station station, Mast mast, StandResult stand)
    {
        foreach (var kind in stand.Cases.Where(c => c.WindFromRad is not null && c.Stable).GroupBy(c => c.Kind).OrderByDescending(g => g.Max(c => c.LargestGuyN)).Take(station.Site.Ice.ThicknessM > 0 ? 2 : 1))
        {
            for (var level = 1; level <= mast.Guys.Length; level++)
            {
                document.Add(TensionRose.Of(document.Units, $"Mast {mast.Name}, level {level}: {kind.Key}", level, [.. kind.OrderBy(c => c.WindFromRad)], station.Limits.GuyFactor));
            }
        }
    }
}
