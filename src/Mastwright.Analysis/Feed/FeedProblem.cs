using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Design;
using CatalogueCapacitor = Mastwright.Catalog.Capacitor;
using CatalogueLine = Mastwright.Catalog.Line;

namespace Mastwright.Analysis.Feed;

/// <summary>What the design says about feeding, as the circuits want it.</summary>
public static class FeedProblem
{
    private const double EdgeShare = 0.005;

    // Rating of a capacitor's current holds here; above it skin effect lowers it.
    private const double CapacitorRatedHz = 10e6;

    // A stub longer than this is no capacitor any more.
    private const double LongestStubWavelengths = 0.08;

    // What the ends of a stub carry (common practice, no source: the inner conductor of a 10 mm cable).
    private const double StubCurrentA = 10;

    /// <summary>The edges of a band: as stated, else half a per cent to either side.</summary>
    public static (double LowHz, double HighHz) Edges(Band band) =>
        (band.LowHz ?? band.FrequencyHz * (1 - EdgeShare), band.HighHz ?? band.FrequencyHz * (1 + EdgeShare));

    /// <summary>What is to be matched.</summary>
    /// <param name="station">The station.</param>
    /// <param name="band">The band.</param>
    /// <param name="load">The mast.</param>
    /// <param name="shuntF">Capacitance across its base.</param>
    public static MatchProblem Of(Station station, Band band, LoadImpedance load, double shuntF) =>
        new(load, station.Feed.LineOhm, band.FrequencyHz, band.PowerW, PartQuality.FromQ(station.Feed.CoilQ, station.Feed.CapacitorQ))
        {
            Band = Edges(band),
            BaseShuntF = shuntF,
            Lines = Lines(),
        };

    /// <summary>The room and the stock on a band.</summary>
    public static Workshop Workshop(Station station, Band band) => Workshop(station, band.FrequencyHz, band);

    /// <summary>The room and the stock at a frequency.</summary>
    /// <param name="station">The station.</param>
    /// <param name="frequencyHz">Frequency, Hz.</param>
    /// <param name="mode">The band whose duty and modulation hold there.</param>
    public static Workshop Workshop(Station station, double frequencyHz, Band mode) =>
        new([.. Catalogue.Default.Capacitors.All.Select(c => Item(station, c)), Stub(frequencyHz)], station.Feed.BoxDiameterM, station.Feed.BoxLengthM) { DutyRatio = mode.Duty, PeakFactor = mode.ModulationPeak };

    /// <summary>A capacitor of the catalogue with its ratings and its price.</summary>
    public static CapacitorItem Item(Station station, CatalogueCapacitor c) => new(
        c.Name, Kind(c.Kind), c.MinimumF, c.MaximumF, new PeakVolts(c.PeakVoltageV), new RmsAmps(c.CurrentA), CapacitorRatedHz, CapacitorLoss.ConstantQ(c.Quality), Price(station, c.Name));

    /// <summary>A kind of line of the catalogue.</summary>
    public static LineType Type(CatalogueLine row) =>
        new(row.Name, row.ImpedanceOhm, row.VelocityFactor, row.LossRoot / 100 / Math.Sqrt(1e6), row.LossLinear / 100 / 1e6) { PeakRating = new PeakVolts(row.PeakVoltageV) };

    /// <summary>Kinds of line at hand for sections and stubs: two usual cables, and pairs of each in parallel.</summary>
    public static ImmutableArray<LineType> Lines()
    {
        LineType[] single = [Type(Catalogue.Default.Lines["RG-213"]), Type(Catalogue.Default.Lines["RG-11"])];
        return [.. single, .. single.Select(l => new LineType(Doubled(l.Name), l.CharacteristicOhm / 2, l.VelocityFactor, l.SkinDb, l.DielectricDb) { PeakRating = l.PeakRating })];
    }

    /// <summary>The catalogue's row of a kind of line, also of two in parallel; null when it is none of the catalogue's.</summary>
    public static CatalogueLine? RowOf(LineType type) => Catalogue.Default.Lines.All.FirstOrDefault(l => type.Name == l.Name || type.Name == Doubled(l.Name));

    private static string Doubled(string name) => $"two {name} in parallel";

    /// <summary>What a network costs with the prices of the design; null when any is unknown.</summary>
    public static double? Price(Station station, Realisation real)
    {
        var banks = real.Capacitors.ToDictionary(c => c.Section, c => c.Bank.Price);
        return real.Candidate.Ladder.Sections.Select((s, i) => s switch
        {
            ReactiveSection { IsCoil: false } => banks.GetValueOrDefault(real.Candidate.Ladder.NameOf(i)),
            ReactiveSection or TappedCoilSection => Price(station, "coil"),
            TransformerSection => Price(station, "transformer"),
            LineSection or StubSection => s.Value * Price(station, "line"),
            _ => 0,
        }).Aggregate((double?)0, (sum, p) => sum + p);
    }

    private static double? Price(Station station, string part) =>
        station.Feed.Prices.FirstOrDefault(p => p.Part.Equals(part, StringComparison.OrdinalIgnoreCase))?.Price;

    // An open stub is cut to any value, so it counts as one that can be set.
    private static CapacitorItem Stub(double frequencyHz)
    {
        var row = Catalogue.Default.Lines["RG-213"];
        var line = Type(row);
        CapacitorItem Of(double lengthM) => CapacitorItem.CoaxStub(line, lengthM, new PeakVolts(row.PeakVoltageV), new RmsAmps(StubCurrentA), frequencyHz);
        var (least, most) = (Of(0.1), Of(LongestStubWavelengths * line.WavelengthM(frequencyHz)));
        return most with { Name = $"open stub of {row.Name}, cut to length", LowestF = least.HighestF };
    }

    private static CapacitorKind Kind(string word) =>
        Enum.TryParse<CapacitorKind>(word.Split(' ')[0], ignoreCase: true, out var kind) ? kind : CapacitorKind.Ceramic;
}
