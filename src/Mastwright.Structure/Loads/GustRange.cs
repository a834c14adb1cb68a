using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Holds the gust factor's assumption against the mast as it is.</summary>
public static class GustRange
{
    /// <summary>ASCE 7 calls a structure rigid, and G = 0.85 good for it, from 1 Hz up; slower masts answer the gusts.</summary>
    /// <param name="part">Which mast; goes into the check's name.</param>
    /// <param name="lowestFrequency">Its lowest natural frequency.</param>
    public static Check RigidEnough(string part, Trail lowestFrequency) => Check.AtLeast(
        $"stand.mast.gust-range[{part}]", Trade.Stand, "Mast is quick enough for the gust factor", lowestFrequency,
        Trail.Given("lowest frequency of a rigid structure", "n1", 1, QuantityKind.VibrationFrequency, Source.FromMemory("ASCE 7, section 26.2", "2016")), "natural vibration",
        "Stiffen the mast or its guys, or give a gust factor for a flexible structure by section 26.11.5.");
}
