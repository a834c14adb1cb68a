using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Crossing;

namespace Mastwright.Analysis.Survive;

/// <summary>One crossing with its answer.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="Answer">Its effect on each band, its checks and its strike path.</param>
public sealed record CrossingCase(string Name, CrossingAnswer Answer);

/// <summary>Maps the cables across a base to their effect.</summary>
public static class CrossingRun
{
    /// <summary>Every crossing of a mast.</summary>
    /// <param name="station">The station: the modulation of its bands.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="result">Its bands.</param>
    /// <param name="strikePeakV">Peak voltage across the base in a strike; null to leave the strike out.</param>
    public static ImmutableArray<CrossingCase> Of(Station station, Mast mast, MastResult result, Trail? strikePeakV)
    {
        var bands = result.Bands.Select(b => new CrossingBand(b.Name, b.FrequencyHz, b.FeedOhm, b.PowerW, station.Bands.First(x => x.Title == b.Name).ModulationPeak)).ToImmutableArray();
        return
        [
            .. mast.Crossings.Select(c =>
            {
                var answer = BaseCrossing.Judge(DeviceOf(c), bands, strikePeakV);
                return new CrossingCase(c.Name, answer with { Checks = [.. answer.Checks.Select(k => AsCaution(k with { Id = CheckIds.Of(k.Id, mast.Name) }))] });
            }),
        ];
    }

    /// <summary>The crossing as the physics sees it.</summary>
    public static CrossingDevice DeviceOf(CrossingSpec spec) => spec switch
    {
        { Coil: { } coil } => new CoilCrossing(spec.Name, coil.InductanceH, coil.Q, coil.SelfCapacitanceF, coil.Turns, spec.WithstandPeakV),
        { Stub: { } stub } => new StubCrossing(spec.Name, stub.LineOhm, stub.LengthM, stub.VelocityFactor, StrengthPeakV: spec.WithstandPeakV),
        { Transformer: { } transformer } => new TransformerCrossing(spec.Name, transformer.CapacitanceF, transformer.LossTangent, spec.WithstandPeakV),
        _ => throw new ArgumentException("A crossing is a coil, a transformer or a stub.", nameof(spec)),
    };

    // A band that is detuned can be matched with the crossing in place: something to know, not a danger.
    private static Check AsCaution(Check check) =>
        check.Verdict == Verdict.Fail && check.Id.StartsWith("survive.crossing.detuning", StringComparison.Ordinal) ? check with { Verdict = Verdict.Caution } : check;
}
