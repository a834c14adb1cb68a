namespace Mastwright.Protection.Lightning;

/// <summary>The cautions of the lightning pages.</summary>
public static class StrikeCautions
{
    /// <summary>Goes with every lightning figure.</summary>
    public const string Storm =
        "No mast, earth or arrester makes it safe to be at the base, the feed or the radio when a storm is near. Leave them before the first thunder is heard and stay away until half an hour after the last. " +
        "These figures help to choose parts; they do not replace IEC 62305, local codes or a licensed engineer.";
}
