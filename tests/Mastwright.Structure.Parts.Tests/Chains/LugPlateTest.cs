using Mastwright.Model.Trails;
using Mastwright.Structure.Chains;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Chains;

public class LugPlateTest
{
    private const double Inch = 0.0254;
    private const double Kip = 4448.2216;

    private static readonly MemberMetal A36 = new("A36", MetalFamily.Steel, 29000 * Members.Metals.Ksi, 36 * Members.Metals.Ksi, 58 * Members.Metals.Ksi, 7850, Source.FromMemory("AISC"));

    // AISC Design Examples, D.7 (from memory): plate 1/2 × 4 1/4 in, pin 1 in in a hole of 1 1/32 in, a = 2 1/4 in.
    private static readonly LugPlate Plate = new(0.5 * Inch, 4.25 * Inch, 1.03125 * Inch, 1 * Inch, 2.25 * Inch, A36);

    [Fact]
    public void Pin_connected_plate_of_the_design_examples()
    {
        var check = Plate.Examine("x", 20 * Kip, AiscRules.Lrfd.Factors, "case");
        double[] nominalKips = [93.4, 95.7, 32.4, 76.5];
        double[] factors = [0.75, 0.75, 0.75, 0.9];
        Assert.Equal(4, check.Capacity.Inputs.Length);
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(nominalKips[i] * factors[i], check.Capacity.Inputs[i].Value / Kip, 0.06);
        }

        // Bearing governs: 24.3 kips.
        Assert.Equal(24.3, check.Capacity.Value / Kip, 0.01);
        Assert.Contains("bearing", check.Title);
        Assert.Equal(32.4, Plate.BreakingN / Kip, 0.01);
        Assert.Empty(check.Capacity.RangeWarnings());
    }

    [Fact]
    public void Hole_too_near_the_end_is_flagged() =>
        Assert.NotEmpty((Plate with { EndDistanceM = 0.5 * Inch }).Examine("x", 1e3, AiscRules.Lrfd.Factors, "case").Capacity.RangeWarnings());
}
