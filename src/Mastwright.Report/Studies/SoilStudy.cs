using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>The station solved over its real soil, beside the quick estimate.</summary>
public static class SoilStudy
{
    private const int CurvesAtOnce = 6;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("soil", "Impedance, efficiency, where the power goes and the pattern over the real soil, beside the quick estimate", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Over the real soil", station.Name, station.UnitSystem);
        var answer = SoilRun.Of(station, input.Progress, input.Cancellation);
        document.Text(string.Create(CultureInfo.InvariantCulture,
            $"Soil: {answer.Soil.Name}, conductivity {document.Show(answer.Soil.ConductivitySPerM, QuantityKind.Conductivity, 3)}, relative permittivity {answer.Soil.RelativePermittivity:0.#}. Every radial is solved as a wire in or over it; flat, uniform soil is assumed."));
        document.Findings(input.Placed(answer.Findings));
        foreach (var mast in answer.Bands.GroupBy(b => b.Mast))
        {
            document.Section($"Mast {mast.Key}");
            Impedance(document, [.. mast]);
            Shares(document, [.. mast]);
            Soils(document, [.. mast]);
            Sky(document, [.. mast]);
            Ground(document, [.. mast]);
        }

        Balance(document, answer.Balance);

        document.Add(new Note(NoteKind.Assumption, "Efficiency compares the field along the ground with that of the same mast on perfect ground, as ground systems have been judged since 1937. The share lost in far soil is taken from every low-angle wave, whatever the radials."));
        return document.Build();
    }

    private static void Impedance(DocumentBuilder document, List<SoilBand> bands)
    {
        document.Table("Impedance at the foot, before the insulator, and efficiency: exact beside the estimate", ["Band", "#Exact impedance", "#Estimate", "#Exact earth loss", "#Exact efficiency", "#Estimate", "Apart by"], bands.Select(b => new Cell[]
        {
            b.Band.Title, StudyWords.Ohm(b.ExactOhm), StudyWords.Ohm(b.EstimateOhm), b.Exact is { } e ? document.Show(e.EarthLoss, 3) : "–", b.Exact is { } x ? StudyWords.Share(x.Efficiency.Value) + (x.Efficiency.OutOfRange is null ? "" : " (!)") : "–", StudyWords.Share(b.EstimateEfficiency.Value) + (b.EstimateEfficiency.RangeWarnings().Any() ? " (!)" : ""),
            b.Exact is { } y ? QuantityFormat.Digits(Math.Abs(10 * Math.Log10(y.Efficiency.Value / b.EstimateEfficiency.Value)), 2) + " dB" : "–",
        }));
        if (bands.Where(b => b.Exact is null).Select(b => b.Band.Title).ToList() is { Count: > 0 } high)
        {
            document.Add(new Note(NoteKind.Assumption, $"{string.Join(", ", high)}: the mast is so high that its field along the ground is not its strongest. Efficiency is judged by that field and says nothing here: look at the sky wave's share."));
        }

        var outside = bands.SelectMany(b => b.EstimateEfficiency.RangeWarnings().Concat(b.Exact?.Efficiency.OutOfRange is { } above ? [above] : []).Select(w => (w, b.Band.Title))).GroupBy(x => x.w).ToList();
        foreach (var warning in outside)
        {
            document.Add(new Note(NoteKind.Assumption, $"(!) {string.Join(", ", warning.Select(w => w.Title))}: {warning.Key}."));
        }
    }

    private static void Shares(DocumentBuilder document, List<SoilBand> bands) => document.Table("Where the power goes", ["Band", "#Sky wave", "#Soil, near and far", "#of it answered for by the radials", "#Heat in radials", "#Mast", "#Top wires", "#Guys, metal nearby", "#Network, of the transmitter's"], bands.Select(b => new Cell[]
    {
        b.Band.Title, StudyWords.Share(b.Shares.SkyWave), StudyWords.Share(b.Shares.Soil), b.Shares.SoilNear is { } near ? StudyWords.Share(near) : "–", StudyWords.Share(b.Shares.Radials), StudyWords.Share(b.Shares.Mast), StudyWords.Share(b.Shares.Hat), StudyWords.Share(b.Shares.Guys), b.Shares.Network is { } network ? StudyWords.Share(network) : "–",
    }));

    private static void Balance(DocumentBuilder document, SoilBalance? balance)
    {
        if (balance is null)
        {
            return;
        }

        document.Section("The balance of power");
        if (balance.Power is not { } power)
        {
            document.Text(balance.LeftOut!);
            return;
        }

        var within = document.Show(power.RadiusM, QuantityKind.Length, 2);
        document.Text($"Every part by an integral of its own, for mast {balance.Mast} on {balance.Band}: of the power fed, {StudyWords.Share(power.SoilW / power.InputW)} heats the soil within {within} of the mast, summed right up to the wires; {StudyWords.Share(power.WiresW / power.InputW)} heats wires; {StudyWords.Share(power.OutwardW / power.InputW)} passes outward through a hood of that radius: {StudyWords.Share(balance.SkyWave)} as the sky wave, the rest to heat soil farther out. Together {StudyWords.Share(power.Closure)}: what is missing or over is the error of the solved currents and fields, and of taking the sector of one radial for all.");
    }

    private static void Soils(DocumentBuilder document, List<SoilBand> bands)
    {
        var soils = bands.MaxBy(b => b.OtherSoils.Length)!.OtherSoils.Select(o => o.Soil).ToList();
        document.Table("What another soil would do, on the lowest bands", ["Band", .. soils.SelectMany(s => new[] { $"#Impedance, {s}", "#Sky wave" })], bands.Where(b => b.OtherSoils.Length == soils.Count && soils.Count > 0).Select(b =>
            b.OtherSoils.SelectMany(o => new Cell[] { StudyWords.Ohm(o.Ohm), StudyWords.Share(o.SkyWave) }).Prepend(b.Band.Title).ToArray()));
    }

    private static void Sky(DocumentBuilder document, List<SoilBand> bands)
    {
        document.Table("Sky wave and ground wave", ["Band", "#Take-off angle", "#Gain there", "#Gain at 5°", "#Gain at 10°", "#Gain at 20°", "#Perfect ground at 10°", "#Field at 1 km, unweakened", "#Field at 1 km over this soil"], bands.Select(b => new Cell[]
        {
            b.Band.Title, document.Show(b.TakeOff.ElevationRad, QuantityKind.Angle, 2), StudyWords.Dbi(b.TakeOff.SoilDbi), StudyWords.Dbi(b.Pattern[5].SoilDbi), StudyWords.Dbi(b.Pattern[10].SoilDbi), StudyWords.Dbi(b.Pattern[20].SoilDbi), StudyWords.Dbi(b.Pattern[10].PerfectDbi),
            document.Show(b.FieldAt1KmVPerM, QuantityKind.ElectricField, 3), document.Show(b.WeakenedAt1KmVPerM, QuantityKind.ElectricField, 3),
        }));
        foreach (var some in bands.Chunk(CurvesAtOnce))
        {
            document.Add(Drawings.Plots.Curves($"Gain of mast {some[0].Mast} against elevation", "Gain over the real soil against elevation towards the strongest bearing; all losses counted. Over perfect ground the curves would not fall towards the horizon.",
                "elevation, degrees", "gain, dBi (no lower than −20)", [.. some.Select((b, i) => new Curve(b.Band.Title, [.. b.Pattern.Select(p => (p.ElevationRad * 180 / Math.PI, Math.Max(-20, p.SoilDbi)))], Drawings.Plots.Dash(i)))]));
        }
    }

    private static void Ground(DocumentBuilder document, List<SoilBand> bands)
    {
        var km = QuantityFormat.UnitFor(5000, QuantityKind.Length, document.Units);
        foreach (var some in bands.Chunk(CurvesAtOnce))
        {
            document.Add(Drawings.Plots.Curves($"Ground wave of mast {some[0].Mast}", $"Field along the ground at full power over this soil against distance, both by decades: Norton's wave from one wavelength out to where the earth's curve begins to matter ({string.Join(", ", some.Select(b => $"{b.Band.Title} {document.Show(b.Ground.FlatToM, QuantityKind.Length, 2)}"))}).",
                new PlotAxis($"distance, {km.Symbol}", true), new PlotAxis("field, mV/m", true), [.. some.Select((b, i) => new Curve(b.Band.Title, [.. b.Ground.Fall.Select(p => (km.FromSi(p.DistanceM), 1e3 * p.FieldVPerM))], Drawings.Plots.Dash(i)))]));
        }

        var uneven = bands.Where(b => b.Ground.RoundDb.Min() < -0.5).ToList();
        document.Text(uneven.Count == 0 ? "Along the ground every band goes out evenly within half a decibel round the compass." : $"Along the ground {string.Join(", ", uneven.Select(b => b.Band.Title))} go out unevenly; the other bands are round within half a decibel.");
        if (uneven.Count > 0)
        {
            document.Add(Polar.Level($"Ground wave of mast {bands[0].Mast} round the compass", "Field along the ground round the compass, decibels below the strongest bearing; north is up.", [.. uneven.Take(4).Select(b => (b.Band.Title, (IReadOnlyList<double>)b.Ground.RoundDb))]));
        }
    }

}
