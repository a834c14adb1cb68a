using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Drag of round tubes by EN 1991-1-4 section 7.9 (curves of figure 7.28) and of lattices by EN 1993-3-1 annex B.2.
/// </summary>
internal static class EurocodeDrag
{
    private static readonly Source Tubes = Source.FromMemory("EN 1991-1-4, section 7.9 and fig. 7.28", "2005");
    private static readonly Source Lattices = Source.FromMemory("EN 1993-3-1, annex B.2.1", "2006");

    public static Trail Tube(TubeShape tube, Trail pressure)
    {
        var b = Trail.Given("diameter", "b", tube.DiameterM, QuantityKind.FineLength, InputSource.Design);
        var k = Trail.Given("surface roughness", "k", tube.RoughnessM, QuantityKind.FineLength, InputSource.Design);
        var v = Trail.Computed("peak wind velocity", "v", Math.Sqrt(2 * pressure.Value / Air.DensityKgPerM3), QuantityKind.Speed, "v = √(2·qp/1.25)", Tubes, pressure);
        var re = Trail.Computed("Reynolds number", "Re", tube.DiameterM * v.Value / Air.KinematicViscosityM2PerS, QuantityKind.Ratio, "Re = b·v/15e-6", Tubes, b, v);
        return Trail.Computed(
            "force coefficient of the tube", "cf", TubeCoefficient(re.Value, tube.RoughnessM / tube.DiameterM), QuantityKind.Ratio,
            "cf = larger of 0.11/(Re/1e6)^1.4 and 1.2 + 0.18·lg(10·k/b)/(1 + 0.4·lg(Re/1e6)), at most 1.2", Tubes, re, k, b)
            .Within("Re from 1e4 to 1e7; ends not counted (ψλ = 1 is on the safe side)", re.Value > 1e7 ? "The Reynolds number is beyond the figure." : null);
    }

    /// <summary>The curves of figure 7.28. In still air the cap of 1.2 holds.</summary>
    internal static double TubeCoefficient(double reynolds, double relativeRoughness)
    {
        const double cap = 1.2;
        if (reynolds < 1e4)
        {
            return cap;
        }

        var lg = Math.Log10(reynolds / 1e6);
        var crisis = 0.11 / Math.Pow(reynolds / 1e6, 1.4);
        var rough = cap + (0.18 * Math.Log10(10 * relativeRoughness) / (1 + (0.4 * lg)));
        return Math.Min(cap, Math.Max(crisis, rough));
    }

    public static Trail Lattice(Trail solidity, LatticeShape lattice, double toFaceNormalRad)
    {
        var phi = solidity.Value;
        var square = lattice.Legs == 4;
        var (c1, c2) = square ? (2.25, 1.5) : (1.9, 1.4);
        var normal = lattice.RoundMembers
            ? Trail.Computed(
                "normal force coefficient, round members", "cf0", (c1 * (1 - (c2 * phi))) + ((c1 + 0.875) * phi * phi), QuantityKind.Ratio,
                FormattableString.Invariant($"cf0 = {c1}·(1 - {c2}·φ) + ({c1} + 0.875)·φ²"), Lattices, solidity)
                .Within("subcritical flow on the members (Re up to 4e5), safe above it")
            : Trail.Computed(
                "normal force coefficient, flat members", "cf0", 1.76 * c1 * (1 - (c2 * phi) + (phi * phi)), QuantityKind.Ratio,
                FormattableString.Invariant($"cf0 = 1.76·{c1}·(1 - {c2}·φ + φ²)"), Lattices, solidity);
        var angle = Trail.Given("angle of the wind to the face normal", "θ", toFaceNormalRad, QuantityKind.Angle, InputSource.Design);
        Trail incidence;
        if (square)
        {
            var k1 = lattice.RoundMembers ? 0.8 : 0.55;
            var k2 = phi is > 0.2 and <= 0.5 ? phi : phi is > 0.5 and < 0.8 ? 1 - phi : 0.2;
            var s = Math.Sin(2 * toFaceNormalRad);
            incidence = Trail.Computed(
                "wind incidence factor, square", "Kθ", 1 + (k1 * k2 * s * s), QuantityKind.Ratio,
                FormattableString.Invariant($"Kθ = 1 + K1·K2·sin²2θ, K1 = {k1}, K2 = {k2:G4}"), Lattices, angle, solidity);
        }
        else
        {
            var s = Math.Sin(1.5 * toFaceNormalRad);
            incidence = lattice.RoundMembers
                ? Trail.Given("wind incidence factor, triangle of round members", "Kθ", 1, QuantityKind.Ratio, Lattices)
                : Trail.Computed("wind incidence factor, triangle", "Kθ", 1 - (0.1 * s * s), QuantityKind.Ratio, "Kθ = 1 - 0.1·sin²1.5θ", Lattices, angle);
        }

        return Trail.Computed(
            "force coefficient of the lattice", "cf", normal.Value * incidence.Value, QuantityKind.Ratio, "cf = cf0·Kθ", Lattices, normal, incidence)
            .Within("solidity up to 0.6", phi > 0.6 ? "The lattice is so closed that the annex no longer holds; with ice treat it as a solid shaft." : null);
    }
}
