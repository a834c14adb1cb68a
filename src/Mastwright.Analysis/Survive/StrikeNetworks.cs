using System.Collections.Immutable;
using Mastwright.Analysis.Feed;
using Mastwright.Analysis.Results;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Match;
using Mastwright.Model.Design;
using Mastwright.Model.Units;
using Mastwright.Protection.Lightning;

namespace Mastwright.Analysis.Survive;

/// <summary>The network of one band as a strike sees it: its parts in order from the mast.</summary>
/// <param name="Band">The band.</param>
/// <param name="Parts">Its parts.</param>
public sealed record StruckNetwork(string Band, ImmutableArray<FeedPart> Parts);

/// <summary>One band's network in the steepest stroke.</summary>
/// <param name="Network">The network.</param>
/// <param name="Parts">What its parts and the cable behind it went through.</param>
/// <param name="Worst">The part whose peak lies highest against its strength; the highest of all where no strength is known.</param>
/// <param name="WorstStrengthV">The strength of that part, V; null when it is not known.</param>
/// <param name="Use">Peak over strength of that part; parts without a stated strength are counted with the base insulator's, for the order only.</param>
public sealed record NetworkStrike(StruckNetwork Network, ImmutableArray<StruckPart> Parts, StruckPart? Worst, double? WorstStrengthV, double Use);

/// <summary>The networks that can be in circuit when a stroke comes, and the strengths of their parts.</summary>
public static class StrikeNetworks
{
    private const double FollowedS = 10e-6; // peaks on parts come with the front and the firing of the gap

    /// <summary>The networks of every band, in the order of the bands.</summary>
    /// <param name="station">The station: strengths of parts.</param>
    /// <param name="result">The mast's bands.</param>
    public static ImmutableArray<StruckNetwork> Of(Station station, MastResult result) =>
    [
        .. result.Bands.Where(b => b.Match is not null).OrderBy(b => b.FrequencyHz).Select(b => new StruckNetwork(b.Name, PartsOf(station, b.Match!.Ladder))),
    ];

    /// <summary>Bands that have no network: none is followed.</summary>
    public static ImmutableArray<string> LeftOut(MastResult result) => [.. result.Bands.Where(b => b.Match is null).Select(b => b.Name)];

    /// <summary>Cables across the base: parts beside the gap, before any network.</summary>
    public static ImmutableArray<FeedPart> Crossings(Mast mast) =>
    [
        .. mast.Crossings.Select(c => c switch
        {
            { Coil: { } coil } => new FeedPart(CableName(c.Name), FeedElement.Coil, false, coil.InductanceH, c.WithstandPeakV),
            { Transformer: { } transformer } => new FeedPart(CableName(c.Name), FeedElement.Capacitor, false, transformer.CapacitanceF, c.WithstandPeakV),
            // A line joined to the mast at its far end: to a stroke it is the inductance of its loop.
            { Stub: { } stub } => new FeedPart(CableName(c.Name), FeedElement.Coil, false, stub.LineOhm * stub.LengthM / (Vacuum.SpeedOfLightMPerS * stub.VelocityFactor), c.WithstandPeakV),
            _ => throw new ArgumentException("A crossing is a coil, a transformer or a stub.", nameof(mast)),
        }),
    ];

    /// <summary>What a cable across the base is called among the struck parts; no part of the circuit bears such a name by itself.</summary>
    public static string CableName(string crossing) => crossing + ", cable";

    /// <summary>Follows the steepest stroke into every network.</summary>
    /// <param name="scenario">The scenario without a network; its stroke is the one followed.</param>
    /// <param name="networks">The networks.</param>
    /// <param name="insulatorV">Strength of the base insulator, V.</param>
    /// <param name="lineOhm">Impedance of the line behind the network where no cable is described.</param>
    /// <param name="earth">The solved earth.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ImmutableArray<NetworkStrike> Follow(
        StrikeScenario scenario, ImmutableArray<StruckNetwork> networks, double insulatorV, double lineOhm, RadialEarth earth, CancellationToken cancellation)
    {
        var answers = new NetworkStrike[networks.Length];
        Parallel.For(0, networks.Length, new ParallelOptions { CancellationToken = cancellation }, n =>
        {
            var network = networks[n];
            var run = StrikeSimulation.Run(scenario with { Feed = scenario.Feed.AddRange(network.Parts), LineOhm = lineOhm, EndS = FollowedS }, solved: earth, cancellation: cancellation)!;
            var names = network.Parts.ToDictionary(p => p.Name, p => p.StrengthPeakV);
            var parts = run.Parts.Where(p => names.ContainsKey(p.Name) || p.Name == "cable inner").ToImmutableArray();
            double? StrengthOf(StruckPart p) => names.TryGetValue(p.Name, out var strength) ? strength : scenario.Cable?.CableStrengthPeakV;
            double Use(StruckPart p) => p.PeakV.Value / (StrengthOf(p) ?? insulatorV);
            var worst = parts.IsEmpty ? null : parts.MaxBy(Use);
            answers[n] = new(network, parts, worst, worst is null ? null : StrengthOf(worst), worst is null ? 0 : Use(worst));
        });
        return [.. answers];
    }

    /// <summary>The least strength the file states for parts of a kind; null when it states none.</summary>
    public static double? StrengthOf(Station station, PartKind kind)
    {
        var named = station.Protection.Parts.Where(p => KindOf(p) == kind).ToList();
        return named.Count == 0 ? null : named.Min(p => p.WithstandPeakV);
    }

    /// <summary>Parts of which neither the file nor their name says what they are: they are held against the whole base voltage.</summary>
    public static ImmutableArray<WeakPart> AcrossBase(Station station) => [.. station.Protection.Parts.Where(p => KindOf(p) is PartKind.Relay or PartKind.AcrossBase or null)];

    /// <summary>What kind of part it is: as stated, else as its name says; null when neither tells.</summary>
    public static PartKind? KindOf(WeakPart part) => part.Kind
        ?? (Says(part, "capacitor", "condenser") ? PartKind.Capacitor
            : Says(part, "coil", "inductor", "choke", "variometer") ? PartKind.Coil
            : Says(part, "relay") ? PartKind.Relay
            : Says(part, "cable", "coax") ? PartKind.Cable
            : Says(part, "insulator", "feed-through", "bushing") ? PartKind.AcrossBase : null);

    private static bool Says(WeakPart part, params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            if (part.Name.Contains(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    private static ImmutableArray<FeedPart> PartsOf(Station station, Ladder ladder) =>
        [.. ladder.Sections.Select((s, i) => (Section: s, Name: ladder.NameOf(i))).Reverse().SelectMany(s => PartsOf(station, s.Section, s.Name))];

    // From the mast towards the line. The two runs of a tapped coil count without their coupling, a transformer as its winding on the mast's side.
    private static IEnumerable<FeedPart> PartsOf(Station station, LadderSection section, string name)
    {
        FeedPart Coil(string what, bool series, double henry) => new($"{what} {name}", FeedElement.Coil, series, henry, StrengthOf(station, PartKind.Coil));
        FeedPart Line(LineType type, double lengthM, FeedElement element) => new($"{section.Title} {name}", element, element == FeedElement.Line, lengthM / (Vacuum.SpeedOfLightMPerS * type.VelocityFactor),
            StrengthOf(station, PartKind.Cable) ?? FeedProblem.RowOf(type)?.PeakVoltageV)
        {
            LineOhm = type.CharacteristicOhm,
        };
        switch (section)
        {
            case LineSection line:
                return [Line(line.Type, line.LengthM, FeedElement.Line)];
            case StubSection stub:
                return [Line(stub.Type, stub.LengthM, stub.Shorted ? FeedElement.ShortedStub : FeedElement.OpenStub)];
            case ReactiveSection { IsCoil: true } coil:
                return [Coil(coil.Title, coil.IsSeries, coil.Value)];
            case ReactiveSection capacitor:
                return [new FeedPart($"{capacitor.Title} {name}", FeedElement.Capacitor, capacitor.IsSeries, capacitor.Value, StrengthOf(station, PartKind.Capacitor))];
            case TappedCoilSection tapped:
                var (lower, upper) = (Coil("run to ground of coil", false, tapped.LowerH), Coil("run to the tap of coil", true, tapped.UpperH));
                return tapped.LoadOnTop ? [upper, lower] : [lower, upper];
            case TransformerSection transformer:
                return [Coil("winding to ground of transformer", false, transformer.PrimaryH / (transformer.TurnsRatio * transformer.TurnsRatio))];
            default:
                throw new ArgumentException($"What a strike does to a {section.Title} is not known.", nameof(section));
        }
    }
}
