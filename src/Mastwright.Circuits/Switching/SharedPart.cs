using System.Collections.Immutable;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Switching;

/// <summary>A part that several bands could share.</summary>
/// <param name="Title">What it is, e.g. <c>"series coil"</c>.</param>
/// <param name="Uses">The bands that could use it, each with the value it needs, the largest first.</param>
/// <param name="ByTaps">Whether one coil with taps serves; otherwise the values are alike within five percent.</param>
public sealed record SharedPart(string Title, ImmutableArray<(string Band, double Value)> Uses, bool ByTaps)
{
    private const double Alike = 0.05;

    /// <summary>Where each band's tap sits on one coil, turns from its end; null for a band the coil is too small for.</summary>
    /// <param name="coil">The coil; its inductance should be the largest of the uses.</param>
    public ImmutableArray<(string Band, double? Turns)> TapsOn(Coils.AirCoil coil) => [.. Uses.Select(u => (u.Band, coil.TurnsFor(u.Value)))];

    /// <summary>
    /// Looks for parts to share: coils in the same place, one of which with taps would serve all, and capacitors in the same
    /// place of nearly the same value.
    /// </summary>
    public static ImmutableArray<SharedPart> Among(ImmutableArray<BandNetwork> bands)
    {
        var uses = bands.SelectMany(b => b.Match.Ladder.Sections.OfType<ReactiveSection>().Select(s => (Section: s, Band: b.Name))).ToList();
        var shared = ImmutableArray.CreateBuilder<SharedPart>();
        foreach (var coils in uses.Where(u => u.Section.IsCoil).GroupBy(u => u.Section.Title))
            if (coils.Select(c => c.Band).Distinct().Count() > 1)
                shared.Add(new(coils.Key, [.. coils.OrderByDescending(c => c.Section.Value).Select(c => (c.Band, c.Section.Value))], ByTaps: true));
        foreach (var place in uses.Where(u => !u.Section.IsCoil).GroupBy(u => u.Section.Title))
        {
            var rest = place.OrderByDescending(c => c.Section.Value).ToList();
            while (rest.Count > 1)
            {
                var run = rest.TakeWhile(c => c.Section.Value >= rest[0].Section.Value * (1 - Alike)).ToList();
                if (run.Select(c => c.Band).Distinct().Count() > 1)
                    shared.Add(new(place.Key, [.. run.Select(c => (c.Band, c.Section.Value))], ByTaps: false));
                rest.RemoveRange(0, run.Count);
            }
        }

        return shared.ToImmutable();
    }
}
