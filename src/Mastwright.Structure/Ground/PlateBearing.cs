using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>A steel plate under the mast or its insulator, on the concrete.</summary>
/// <param name="LengthM">Length, m.</param>
/// <param name="WidthM">Width, m.</param>
/// <param name="ThicknessM">Thickness, m.</param>
/// <param name="LoadedDiameterM">Diameter of the round thing standing on it, m.</param>
public sealed record PlateBearing(double LengthM, double WidthM, double ThicknessM, double LoadedDiameterM)
{
    /// <summary>Yield strength of the plate, Pa.</summary>
    public double YieldPa { get; init; } = 235e6;

    /// <summary>Cylinder strength of the concrete, Pa.</summary>
    public double ConcretePa { get; init; } = 20e6;

    /// <summary>Area of concrete that is concentric with and geometrically like the plate, m²; the plate's own area when it reaches the edge.</summary>
    public double? SupportingAreaM2 { get; init; }

    /// <summary>Bearing on the concrete (ACI 318 section 22.8) and thickness of the plate (AISC Design Guide 1).</summary>
    /// <param name="part">Which base; goes into the names of the checks.</param>
    /// <param name="compressionN">Greatest compression, N, service.</param>
    /// <param name="governingCase">The case, in words.</param>
    /// <param name="factors">Factors of safety.</param>
    public IEnumerable<Check> Examine(string part, double compressionN, string governingCase, GroundFactors factors)
    {
        const string caution = "Grout the plate full and level before it carries load; an uneven seat breaks ceramic.";
        var n = Trail.Given("compression of the mast", "P", compressionN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var a1 = LengthM * WidthM;
        var spread = Math.Min(2, Math.Sqrt(Math.Max(1, (SupportingAreaM2 ?? a1) / a1)));
        var area = Trail.Given("area of the plate", "A1", a1, QuantityKind.Area, InputSource.Design);
        var wide = Trail.Given("area of the concrete under it", "A2", SupportingAreaM2 ?? a1, QuantityKind.Area, InputSource.Design);
        var fc = Trail.Given("strength of the concrete", "f'c", ConcretePa, QuantityKind.Stress, InputSource.Design);
        var fs = GroundFactors.Trail("bearing of concrete", factors.ConcreteBearing);
        yield return Check.AtMost(
            $"stand.base.concrete[{part}]", Trade.Stand, "Concrete under the base plate", n,
            Trail.Computed("allowable compression on the concrete", "Pa", 0.85 * ConcretePa * a1 * spread / fs.Value, QuantityKind.Force, "Pa = 0.85·f'c·A1·min(2, √(A2/A1))/FS", Source.FromMemory("ACI 318, section 22.8.3", "2019"), fc, area, wide, fs),
            governingCase, "Take a larger plate or stronger concrete.", caution);

        var reach = Math.Max(LengthM, WidthM) / 2 - (0.4 * LoadedDiameterM);
        var m = Trail.Computed(
            "overhang of the plate", "m", Math.Max(0, reach), QuantityKind.FineLength, "m = (larger side - 0.8·d)/2", Source.FromMemory("AISC Design Guide 1", "2006"),
            Trail.Given("diameter standing on the plate", "d", LoadedDiameterM, QuantityKind.FineLength, InputSource.Design));
        var fy = Trail.Given("yield strength of the plate", "Fy", YieldPa, QuantityKind.Stress, InputSource.Design);
        var steel = GroundFactors.Trail("steel", factors.Steel);
        yield return Check.AtMost(
            $"stand.base.plate[{part}]", Trade.Stand, "Thickness of the base plate",
            Trail.Computed("thickness wanted", "t", m.Value * Math.Sqrt(2 * steel.Value * Math.Max(0, compressionN) / (YieldPa * a1)), QuantityKind.FineLength, "t = m·√(2·FS·P/(Fy·A1))", Source.FromMemory("AISC Design Guide 1", "2006"), m, n, area, fy, steel),
            Trail.Given("thickness of the plate", "tp", ThicknessM, QuantityKind.FineLength, InputSource.Design), governingCase, "Take a thicker or smaller plate.", caution);
    }
}
