using Mastwright.Model.Trails;

namespace Mastwright.Protection.Lightning;

/// <summary>Inductance of straight conductors whose return is far away (Rosa 1908; Grover), in henries.</summary>
public static class StraightInductance
{
    private static readonly Source Rosa = Source.FromMemory("Rosa, The self and mutual inductances of linear conductors, Bull. Bureau of Standards 4", "1908");

    /// <summary>Round wire at radio frequency and for lightning (no current inside): 0.2 µH/m · l [asinh(l/a) − √(1 + (a/l)²) + a/l].</summary>
    /// <param name="lengthM">Length in metres, positive.</param>
    /// <param name="radiusM">Radius in metres, positive.</param>
    public static Trail Wire(double lengthM, double radiusM)
    {
        var x = radiusM / lengthM;
        return Trail.Computed("inductance of the wire", "L", 2e-7 * lengthM * (Math.Asinh(1 / x) - Math.Sqrt(1 + (x * x)) + x), QuantityKind.Inductance,
            "L = 0.2 µH/m·l·[asinh(l/a) − √(1 + (a/l)²) + a/l]", Rosa, Length(lengthM), Trail.Given("radius", "a", radiusM, QuantityKind.FineLength, Source.DesignFile))
            .Remark("Partial inductance: the return is taken as far away.");
    }

    /// <summary>Flat strap: 0.2 µH/m · l [ln(2l/(w + t)) + ½ + 0.2235 (w + t)/l].</summary>
    /// <param name="lengthM">Length in metres.</param>
    /// <param name="widthM">Width in metres.</param>
    /// <param name="thicknessM">Thickness in metres.</param>
    public static Trail Strap(double lengthM, double widthM, double thicknessM)
    {
        var girth = widthM + thicknessM;
        return Trail.Computed("inductance of the strap", "L", 2e-7 * lengthM * (Math.Log(2 * lengthM / girth) + 0.5 + (0.2235 * girth / lengthM)), QuantityKind.Inductance,
            "L = 0.2 µH/m·l·[ln(2l/(w+t)) + ½ + 0.2235 (w+t)/l]", Rosa, Length(lengthM),
            Trail.Given("width", "w", widthM, QuantityKind.FineLength, Source.DesignFile), Trail.Given("thickness", "t", thicknessM, QuantityKind.FineLength, Source.DesignFile))
            .Within("strap longer than wide", lengthM < girth ? "The strap is shorter than it is wide; the formula is for a slender one." : null);
    }

    private static Trail Length(double lengthM) => Trail.Given("length", "l", lengthM, QuantityKind.Length, Source.DesignFile);
}
