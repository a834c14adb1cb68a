using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>
/// A round post: a steel tube, empty or filled with concrete, with or without bars; or a reinforced concrete shaft without a tube.
/// </summary>
/// <param name="DiameterM">Outside diameter, m.</param>
public sealed record ShaftSection(double DiameterM)
{
    private const double CrushingStrain = 0.003;
    private const int TubeFibres = 360;
    private const double BarModulusPa = 200e9;

    /// <summary>Wall of the tube, m; 0 when there is none.</summary>
    public double WallM { get; init; }

    /// <summary>Yield strength of the tube, Pa.</summary>
    public double TubeYieldPa { get; init; } = 235e6;

    /// <summary>Cylinder strength of the concrete, Pa; 0 when there is none.</summary>
    public double ConcretePa { get; init; }

    /// <summary>Number of bars on a ring.</summary>
    public int Bars { get; init; }

    /// <summary>Diameter of a bar, m.</summary>
    public double BarDiameterM { get; init; }

    /// <summary>Radius of the ring of bars, m.</summary>
    public double BarRingRadiusM { get; init; }

    /// <summary>Yield strength of the bars, Pa.</summary>
    public double BarYieldPa { get; init; } = 420e6;

    private double CoreRadiusM => (DiameterM / 2) - WallM;

    /// <summary>
    /// Bending strength together with an axial force. With a tube: plastic stresses, steel at yield and concrete at 0.95 f'c
    /// (AISC 360 section I1.2a). Without: a linear strain to 0.003 and a stress block of 0.85 f'c (ACI 318 section 22.2).
    /// </summary>
    /// <param name="axialN">Axial force; compression positive, a post pulled up negative.</param>
    public Trail NominalMoment(double axialN)
    {
        // The force grows with the depth of the neutral axis; bisect for it.
        var (low, high) = (1e-6 * DiameterM, 20 * DiameterM);
        for (var i = 0; i < 100; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Forces(middle).Axial < axialN ? (middle, high) : (low, middle);
        }

        var (axial, moment) = Forces(0.5 * (low + high));
        var reached = Math.Abs(axial - axialN) <= 1e-3 * Math.Max(1, Math.Abs(Forces(20 * DiameterM).Axial));
        var n = Trail.Given("axial force in the post", "N", axialN, QuantityKind.Force, AnchorPull.FromAnalysis);
        var d = Trail.Given("diameter of the post", "D", DiameterM, QuantityKind.FineLength, InputSource.Design);
        var t = Trail.Given("wall of its tube", "t", WallM, QuantityKind.FineLength, InputSource.Design);
        var fc = Trail.Given("strength of the concrete", "f'c", ConcretePa, QuantityKind.Stress, InputSource.Design);
        var area = Trail.Given("steel area of all bars", "As", Bars * Math.PI / 4 * BarDiameterM * BarDiameterM, QuantityKind.SectionArea, InputSource.Design);
        return Trail.Computed(
            "nominal bending strength of the post", "Mn", reached ? Math.Max(0, moment) : 0, QuantityKind.Moment,
            WallM > 0 ? "Mn = Σ fy·A·y + 0.95·f'c over the compressed concrete, plastic stresses in balance with N" : "Mn = Σ σ·A·y + 0.85·f'c over the stress block, in balance with N",
            Source.FromMemory(WallM > 0 ? "ANSI/AISC 360, section I1.2a" : "ACI 318, section 22.2", WallM > 0 ? "2016" : "2019"), n, d, t, fc, area)
            .Within("bending and axial force; concrete takes no tension", reached ? null : "The axial force is more than the post can carry.");
    }

    /// <summary>Axial force and moment about the middle for a neutral axis at a depth below the most compressed edge.</summary>
    internal (double Axial, double Moment) Forces(double neutralM)
    {
        var (axial, moment) = Concrete(neutralM);
        if (WallM > 0)
        {
            var radius = CoreRadiusM + (WallM / 2);
            var fibre = 2 * Math.PI * radius * WallM / TubeFibres;
            // The wall's thickness matters to the lever a little: (D³ - d³)/6 against 2·π-ring; the factor makes an empty tube exact.
            var thick = (Math.Pow(DiameterM, 3) - Math.Pow(2 * CoreRadiusM, 3)) / 6 / (4 * radius * radius * WallM);
            for (var k = 0; k < TubeFibres; k++)
            {
                var y = radius * Math.Cos(2 * Math.PI * (k + 0.5) / TubeFibres);
                var force = fibre * Steel(y, neutralM, TubeYieldPa);
                axial += force;
                moment += force * y * thick;
            }
        }

        for (var k = 0; k < Bars; k++)
        {
            var y = BarRingRadiusM * Math.Cos(2 * Math.PI * (k + 0.5) / Bars);
            var force = Math.PI / 4 * BarDiameterM * BarDiameterM * Steel(y, neutralM, BarYieldPa);
            axial += force;
            moment += force * y;
        }

        return (axial, moment);
    }

    private double Steel(double y, double neutralM, double yieldPa)
    {
        var depth = (DiameterM / 2) - y;
        if (WallM > 0)
        {
            // Plastic, with a thin linear band at the neutral axis so that the sum over fibres is continuous.
            return yieldPa * Math.Clamp((neutralM - depth) / (1e-3 * DiameterM), -1, 1);
        }

        return Math.Clamp(BarModulusPa * CrushingStrain * (neutralM - depth) / neutralM, -yieldPa, yieldPa);
    }

    private (double Axial, double Moment) Concrete(double neutralM)
    {
        if (ConcretePa <= 0)
        {
            return (0, 0);
        }

        var plastic = WallM > 0;
        // Block factor β1 of ACI 318: 0.85 up to 28 MPa, less by 0.05 for each 7 MPa above, at least 0.65.
        var block = plastic ? 1 : Math.Clamp(0.85 - (0.05 * (ConcretePa - 28e6) / 7e6), 0.65, 0.85);
        var stress = (plastic ? 0.95 : 0.85) * ConcretePa;
        var r = CoreRadiusM;
        var depth = Math.Clamp((block * neutralM) - (plastic ? WallM : 0), 0, 2 * r);
        // Circular segment: area r²(θ - sin θ cos θ), first moment ⅔ r³ sin³ θ, θ the half angle.
        var theta = Math.Acos(1 - (depth / r));
        var area = r * r * (theta - (Math.Sin(theta) * Math.Cos(theta)));
        return (stress * area, stress * 2 / 3 * Math.Pow(r * Math.Sin(theta), 3));
    }
}
