namespace Mastwright.Circuits.Loss;

/// <summary>How good the parts of a network are, for a design made before the parts are chosen.</summary>
/// <param name="Coil">Loss of every coil.</param>
/// <param name="Capacitor">Loss of every capacitor.</param>
public sealed record PartQuality(CoilLoss Coil, CapacitorLoss Capacitor)
{
    /// <summary>Parts without loss, for textbook comparison only.</summary>
    public static PartQuality Lossless { get; } = new(CoilLoss.None, CapacitorLoss.None);

    /// <summary>
    /// Air-wound coils with Q 250 and good capacitors with Q 2000: what careful home building reaches (common practice, no source).
    /// </summary>
    public static PartQuality HomeBuilt { get; } = FromQ(250, 2000);

    /// <summary>Coils and capacitors of stated Q.</summary>
    /// <param name="coilQ">Q of the coils.</param>
    /// <param name="capacitorQ">Q of the capacitors.</param>
    public static PartQuality FromQ(double coilQ, double capacitorQ) => new(CoilLoss.ConstantQ(coilQ), CapacitorLoss.ConstantQ(capacitorQ));
}
