using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Circuits.Match;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Feed;

/// <summary>The network a band uses, in parts that can be had.</summary>
/// <param name="Built">The network with its real parts.</param>
/// <param name="Asked">What the design asks for; null when the best that can be built was taken.</param>
/// <param name="Findings">Why it is not what was asked for, or cannot be built.</param>
public sealed record ChosenNetwork(Realisation Built, NetworkSpec? Asked, ImmutableArray<Finding> Findings)
{
    /// <summary>The network, tuned and solved with its real parts.</summary>
    public MatchCandidate Match => Built.Candidate;

    /// <summary>Whether the design's wish was met; true when it has none.</summary>
    public bool AsAsked { get; init; } = true;
}

/// <summary>Chooses one network for a band: the one the design names, else the first in rank that can be built. Everything that needs a network asks here.</summary>
public static class NetworkChoice
{
    /// <summary>Chooses.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">Name of the mast.</param>
    /// <param name="band">The band.</param>
    /// <param name="problem">What is to be matched at the band's frequency.</param>
    /// <returns>The choice, or null with the reasons when nothing matches the load.</returns>
    public static (ChosenNetwork? Chosen, ImmutableArray<Finding> Findings) Of(Station station, string mast, Band band, MatchProblem problem)
    {
        var designed = MatchDesigner.Design(problem);
        if (designed.Candidates.IsEmpty)
        {
            return (null, designed.Findings);
        }

        var workshop = FeedProblem.Workshop(station, band);
        var asked = station.Feed.Networks.Where(n => n.Band == band.Title && (n.Mast is null || n.Mast == mast)).OrderBy(n => n.Mast is null).FirstOrDefault();
        if (asked is not null)
        {
            var wanted = designed.Candidates.Where(c => Is(c, asked)).ToList();
            if (wanted.Count > 0)
            {
                var real = AsBuilt(station, wanted, asked, workshop);
                return (new ChosenNetwork(real, asked, real.Findings), designed.Findings);
            }
        }

        var best = BuiltNetworks.Of(designed.Candidates, workshop, enough: 1).First!;
        return (asked is null
            ? new ChosenNetwork(best, null, best.IsComplete ? [] : best.Findings)
            : new ChosenNetwork(best, asked, [Cannot(station, asked, band, designed.Candidates)]) { AsAsked = false }, designed.Findings);
    }

    /// <summary>The circuits' name of a kind of network.</summary>
    public static string IdOf(NetworkWord word) => word switch
    {
        NetworkWord.LShuntAtLine => "l-shunt-at-line",
        NetworkWord.LShuntAtMast => "l-shunt-at-load",
        NetworkWord.Pi => "pi",
        NetworkWord.T => "t",
        NetworkWord.ShuntCoil => "shunt-coil",
        NetworkWord.SeriesCapacitor => "series-capacitor",
        NetworkWord.TappedCoil => "tapped-coil",
        NetworkWord.Transformer => "transformer",
        NetworkWord.QuarterWave => "quarter-wave",
        NetworkWord.LineTransformer => "line-transformer",
        NetworkWord.TwelfthWave => "twelfth-wave",
        NetworkWord.SeriesSection => "series-section",
        _ => "stub",
    };

    private static bool Is(MatchCandidate c, NetworkSpec asked)
    {
        var reactive = c.Ladder.Sections.OfType<ReactiveSection>().ToList();
        var capacitors = reactive.Count(s => !s.IsCoil);
        var coils = c.Ladder.Sections.Count(s => s.ValueKind == QuantityKind.Inductance);
        return c.TopologyId == IdOf(asked.Network)
            && (asked.CoilsH.IsEmpty || asked.CoilsH.Length == coils)
            && (asked.CapacitorsF.IsEmpty || asked.CapacitorsF.Length == capacitors)
            && (asked.CapacitorParts.IsEmpty || asked.CapacitorParts.Length == capacitors)
            && asked.Form switch
            {
                NetworkForm.LowPass => reactive.All(s => s.IsCoil == s.IsSeries),
                NetworkForm.HighPass => reactive.All(s => s.IsCoil != s.IsSeries),
                _ => true,
            };
    }

    // Values as built are put in and stay; what is left open is tuned around them.
    private static Realisation AsBuilt(Station station, List<MatchCandidate> wanted, NetworkSpec asked, Workshop workshop)
    {
        var shop = workshop with { Own = [.. asked.CapacitorParts.Select(p => FeedProblem.Item(station, Catalogue.Default.Capacitors[p]))] };
        if (asked.CoilsH.IsEmpty && asked.CapacitorsF.IsEmpty)
        {
            return BuiltNetworks.Of(wanted, shop, enough: 1).First!;
        }

        var candidate = wanted[0];
        var sections = candidate.Ladder.Sections.ToBuilder();
        var (coils, capacitors, kept) = (new Queue<double>(asked.CoilsH), new Queue<double>(asked.CapacitorsF), new List<int>());
        for (var i = 0; i < sections.Count; i++)
        {
            var values = sections[i].ValueKind switch { QuantityKind.Inductance => coils, QuantityKind.Capacitance => capacitors, _ => [] };
            if (values.TryDequeue(out var value))
            {
                sections[i] = sections[i].WithValue(value);
                kept.Add(i);
            }
        }

        return Realisation.Of(candidate.With(new Ladder(sections.ToImmutable())), shop, [.. kept]);
    }

    private static Finding Cannot(Station station, NetworkSpec asked, Band band, IEnumerable<MatchCandidate> candidates)
    {
        var can = candidates.Select(c => c.TopologyId).Distinct().Select(id => Enum.GetValues<NetworkWord>().First(w => IdOf(w) == id)).Select(Word);
        return new Finding("network-cannot", Severity.Warning, $"The network “{Word(asked.Network)}” asked for on {band.Title} cannot match this mast to {station.Feed.LineOhm:0.#} Ω as described; the best that can is taken instead.",
            Value: Word(asked.Network), Allowed: "one of: " + string.Join(", ", can), WayOut: "Name one of these under “feed: networks”, and as many coils and capacitors as it has.");
    }

    private static string Word(NetworkWord word) => Model.Schema.RecordShape.Of(typeof(NetworkSpec)).Fields.First(f => f.Field.Key == "network").Words.First(w => w.Value.Equals(word)).Word;
}
