using Mastwright.Model.Trails;

namespace Mastwright.Circuits;

/// <summary>What modulation does to voltages: insulation sees the crest of the envelope, heating its mean.</summary>
internal static class CrestFactor
{
    /// <summary>The factor as an input of a trail.</summary>
    /// <param name="peakFactor">Crest with modulation over the crest at the stated power.</param>
    public static Trail Of(double peakFactor) => Trail.Given("crest with modulation over that at the stated power", "m", peakFactor, QuantityKind.Ratio, Source.DesignFile);
}
