namespace Mastwright.Structure.Raising;

/// <summary>Words that go with every raising calculation, on screen and on paper.</summary>
public static class RaisingCaution
{
    /// <summary>The caution.</summary>
    public const string Text =
        "Raising a mast can kill. These forces are for a slow, steady lift in still air; a snatch, a gust or a slipping anchor can double them. "
        + "Nobody stands under the mast, in its fall circle or in line with a loaded rope. Keep the whole fall circle clear of power lines. "
        + "Side guys are held by people or anchors in line with the hinge throughout; a back line takes over before the mast is upright. "
        + "Rig with rated gear inspected that day, rehearse the signals, stop when the wind rises, and follow local codes, the makers' data and a licensed engineer.";

    /// <summary>The caution for stacking a mast section by section.</summary>
    public const string StackingText =
        "Work on a part-built mast is climbing work: full fall arrest, two people on the ground, no one below the load. The top of a part-built mast is free: "
        + "set temporary guys before lifting the next section, never climb above the highest guys that are tight, and stop when the wind rises. "
        + "Follow local codes, the makers' data and a licensed engineer.";
}
