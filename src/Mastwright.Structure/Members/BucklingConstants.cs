namespace Mastwright.Structure.Members;

/// <summary>
/// Buckling constants of the Aluminum Design Manual 2015, tables B.4.1 (annealed and weld zones) and B.4.2 (artificially aged), from memory.
/// </summary>
internal sealed record BucklingConstants(double YieldPa, double ModulusPa, double Bc, double Dc, double Cc, double Bt, double Dt, double Btb, double Dtb)
{
    private const double Ksi = 6.894757e6;

    /// <summary>Table B.4.2, for T5 and T6 tempers.</summary>
    public static BucklingConstants Aged(MemberMetal metal)
    {
        var (fy, e) = (metal.YieldPa, metal.ModulusPa);
        var bc = fy * (1 + Math.Sqrt(fy / (2250 * Ksi)));
        var dc = bc / 10 * Math.Sqrt(bc / e);
        var bt = fy * (1 + Math.Pow(fy / (50000 * Ksi), 0.2));
        var btb = 1.5 * fy * (1 + Math.Pow(fy / (50000 * Ksi), 0.2));
        return new(fy, e, bc, dc, 0.41 * bc / dc, bt, bt / 4.5 * Math.Cbrt(bt / e), btb, btb / 2.7 * Math.Cbrt(btb / e));
    }

    /// <summary>Table B.4.1, for zones softened by a weld.</summary>
    public static BucklingConstants Annealed(MemberMetal metal)
    {
        var (fy, e) = (metal.WeldedYieldPa, metal.ModulusPa);
        var bc = fy * (1 + Math.Sqrt(fy / (1000 * Ksi)));
        var dc = bc / 20 * Math.Sqrt(6 * bc / e);
        var bt = fy * (1 + Math.Pow(fy / (6500 * Ksi), 0.2));
        var btb = 1.5 * fy * (1 + Math.Pow(fy / (6500 * Ksi), 0.2));
        return new(fy, e, bc, dc, 2 * bc / (3 * dc), bt, bt / 3.7 * Math.Cbrt(bt / e), btb, btb / 2.7 * Math.Cbrt(btb / e));
    }

    /// <summary>Member buckling stress of section E.2 at a slenderness.</summary>
    public double Column(double slenderness)
    {
        var lambda1 = (Bc - YieldPa) / Dc;
        return slenderness <= lambda1 ? YieldPa
            : slenderness < Cc ? (Bc - (Dc * slenderness)) * (0.85 + (0.15 * (Cc - slenderness) / (Cc - lambda1)))
            : 0.85 * Math.PI * Math.PI * ModulusPa / (slenderness * slenderness);
    }

    /// <summary>Stress of a tube wall in uniform compression, section B.5.4.5.</summary>
    public double TubeCompression(double radiusOverWall) => Math.Min(YieldPa, Math.Max(0, Wall(radiusOverWall, Bt, Dt)));

    /// <summary>Stress of a tube wall in bending, section B.5.5.4.</summary>
    public double TubeBending(double radiusOverWall)
    {
        var crossing = Math.Pow((Btb - Bt) / (Dtb - Dt), 2);
        return radiusOverWall <= crossing ? Btb - (Dtb * Math.Sqrt(radiusOverWall)) : Wall(radiusOverWall, Bt, Dt);
    }

    // The inelastic line up to where it meets the elastic curve. The curve lies below the line again only beyond it.
    private double Wall(double radiusOverWall, double b, double d)
    {
        var root = Math.Sqrt(radiusOverWall);
        var line = b - (d * root);
        var elastic = Math.PI * Math.PI * ModulusPa / (16 * radiusOverWall * Math.Pow(1 + (root / 35), 2));
        return Math.Min(line, elastic) > 0 ? Math.Min(line, elastic) : elastic;
    }
}
