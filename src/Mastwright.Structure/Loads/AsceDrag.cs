using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>Force coefficients of ASCE 7 figures 29.4-1 (round shafts) and 29.4-3 (trussed towers).</summary>
internal static class AsceDrag
{
    private const double FootM = 0.3048;
    private const double PsfPa = 47.88025898;

    // Columns: height over diameter 1, 7, 25.
    private static readonly double[] Slenderness = [1, 7, 25];

    public static Trail Tube(TubeShape tube, Trail pressure, Source source)
    {
        var d = Trail.Given("diameter", "D", tube.DiameterM, QuantityKind.FineLength, InputSource.Design);
        var h = Trail.Given("height over diameter", "h/D", tube.SlendernessForDrag, QuantityKind.Ratio, InputSource.Design);
        var flow = Trail.Computed(
            "flow parameter", "D·√qz", tube.DiameterM / FootM * Math.Sqrt(pressure.Value / PsfPa), QuantityKind.Ratio, "D·√qz, D in ft and qz in psf", source, d, pressure);
        double[] row = flow.Value <= 2.5
            ? [0.7, 0.8, 1.2]
            : tube.RelativeRoughness switch
            {
                < 0.01 => [0.5, 0.6, 0.7],
                < 0.05 => [0.7, 0.8, 0.9],
                _ => [0.8, 1.0, 1.2],
            };
        return Trail.Computed(
            "force coefficient of the tube", "Cf", Interpolate(tube.SlendernessForDrag, row), QuantityKind.Ratio,
            "Cf from the figure by h/D, roughness and D·√qz", source, h, flow)
            .Remark(flow.Value <= 2.5 ? "small or slow: the flow is subcritical" : tube.RelativeRoughness < 0.01 ? "moderately smooth" : tube.RelativeRoughness < 0.05 ? "rough" : "very rough");
    }

    public static Trail Lattice(Trail solidity, LatticeShape lattice, double toFaceNormalRad, Source source)
    {
        var e = solidity.Value;
        var square = lattice.Legs == 4;
        var flat = Trail.Computed(
            square ? "force coefficient, square, flat members" : "force coefficient, triangle, flat members", "Cf0",
            square ? (4.0 * e * e) - (5.9 * e) + 4.0 : (3.4 * e * e) - (4.7 * e) + 3.4, QuantityKind.Ratio,
            square ? "Cf0 = 4.0·ε² - 5.9·ε + 4.0" : "Cf0 = 3.4·ε² - 4.7·ε + 3.4", source, solidity);
        var round = lattice.RoundMembers
            ? Trail.Computed("round members", "kr", Math.Min(1, (0.51 * e * e) + 0.57), QuantityKind.Ratio, "kr = 0.51·ε² + 0.57, at most 1", source, solidity)
            : Trail.Given("flat members", "kr", 1, QuantityKind.Ratio, source);
        var along = Math.Sin(2 * toFaceNormalRad);
        var full = Math.Min(1.2, 1 + (0.75 * e));
        var angle = Trail.Given("angle of the wind to the face normal", "θ", toFaceNormalRad, QuantityKind.Angle, InputSource.Design);
        var diagonal = square
            ? Trail.Computed(
                "wind towards the diagonal", "kd", 1 + ((full - 1) * along * along), QuantityKind.Ratio,
                "kd = 1 + (min(1.2, 1 + 0.75·ε) - 1)·sin²2θ", source, solidity, angle)
                .Remark("the figure gives the face and the diagonal; between them sin²2θ is ours")
            : Trail.Given("triangle: the same from every side", "kd", 1, QuantityKind.Ratio, source);
        return Trail.Computed(
            "force coefficient of the lattice", "Cf", flat.Value * round.Value * diagonal.Value, QuantityKind.Ratio, "Cf = Cf0·kr·kd", source, flat, round, diagonal)
            .Within("solidity up to 0.7", e > 0.7 ? "The lattice is so closed that the tower figure no longer holds; with ice treat it as a solid shaft." : null);
    }

    private static double Interpolate(double x, double[] y)
    {
        if (x <= Slenderness[0])
        {
            return y[0];
        }

        for (var i = 1; i < y.Length; i++)
        {
            if (x <= Slenderness[i])
            {
                return y[i - 1] + ((y[i] - y[i - 1]) * (x - Slenderness[i - 1]) / (Slenderness[i] - Slenderness[i - 1]));
            }
        }

        return y[^1];
    }
}
