namespace Mastwright.Catalog.Tests;

/// <summary>Holds catalogue rows against published figures, converted by hand here and not by the reader's own table.</summary>
public class PublishedValuesTest
{
    private static readonly Catalogue Parts = Catalogue.Default;

    [Theory]
    // ASTM A475 table 1, minimum breaking strength in pounds; 3/8 to 1/2 from memory.
    [InlineData("1/8 in EHS", 1830, 32)]
    [InlineData("3/16 in EHS", 3990, 73)]
    [InlineData("1/4 in EHS", 6650, 121)]
    [InlineData("5/16 in EHS", 11200, 205)]
    [InlineData("3/8 in EHS", 15400, 273)]
    [InlineData("1/2 in EHS", 26900, 517)]
    [InlineData("5/16 in High Strength", 8000, 205)]
    [InlineData("5/16 in Siemens-Martin", 5350, 205)]
    [InlineData("5/16 in Common", 3200, 205)]
    [InlineData("5/16 in Utilities", 6000, 225)]
    public void Strand_has_the_standards_strength_and_weight(string name, double pounds, double poundsPerThousandFeet)
    {
        var strand = Parts.Strands[name];
        Assert.Equal(pounds, strand.BreakingN / 4.44822, pounds * 5e-4);
        Assert.Equal(poundsPerThousandFeet, strand.MassPerLengthKgPerM / 0.45359 * 304.8, 0.1);
    }

    [Theory]
    // A maker's data sheet for A475 strand: 22.65 and 51.08 mm²; metallic area of seven wires.
    [InlineData("1/4 in EHS", 22.65)]
    [InlineData("3/8 in EHS", 51.08)]
    public void Strand_has_the_data_sheets_metallic_area(string name, double squareMillimetres) =>
        Assert.Equal(squareMillimetres, Parts.Strands[name].MetallicAreaM2 * 1e6, 0.06);

    [Fact]
    public void Quarter_inch_strand_has_the_stiffness_of_design_practice() =>
        // 23e6 psi on 7 wires of 0.080 in: 809274 lb = 3.600e6 N (modulus from memory of design practice).
        Assert.Equal(3.600e6, Parts.Strands["1/4 in EHS"].AxialStiffnessN, 0.002e6);

    [Theory]
    // RR-C-271: minimum ultimate 20000, 32500 and 47500 lb for 1/2, 5/8 and 3/4 in.
    [InlineData("1/2 in screw-pin shackle", 20000)]
    [InlineData("5/8 in screw-pin shackle", 32500)]
    [InlineData("3/4 in screw-pin shackle", 47500)]
    public void Shackle_breaks_where_the_specification_says(string name, double pounds)
    {
        Assert.Equal(pounds, Parts.Shackles[name].BreakingN / 4.44822, pounds * 1e-4);
        Assert.Equal(5, Parts.Shackles[name].BreakingN / Parts.Shackles[name].WorkingLoadN, 4);
    }

    [Theory]
    // Metric seller's sheet: 0.23, 0.36, 0.54, 1.0, 1.59, 2.36 t.
    [InlineData("1/4x4 in jaw-eye turnbuckle", 0.23)]
    [InlineData("3/8x6 in jaw-jaw turnbuckle", 0.54)]
    [InlineData("1/2x12 in jaw-jaw turnbuckle", 1.0)]
    [InlineData("5/8x12 in jaw-jaw turnbuckle", 1.59)]
    [InlineData("3/4x12 in jaw-jaw turnbuckle", 2.36)]
    public void Turnbuckle_working_load_agrees_with_the_metric_table(string name, double tonnes) =>
        Assert.Equal(tonnes, Parts.Turnbuckles[name].WorkingLoadN / 9806.65, 0.01);

    [Theory]
    // 49 CFR 178.46 table 2 (6061-T6: 35000 / 38000 psi) and the welding codes' 24 ksi.
    [InlineData("6061-T6", 35, 38, 24)]
    // Aluminum Design Manual, from memory.
    [InlineData("6063-T6", 25, 30, 17)]
    public void Aluminium_has_published_strengths(string name, double yieldKsi, double ultimateKsi, double weldedKsi)
    {
        var metal = Parts.Metals[name];
        Assert.Equal(yieldKsi, metal.YieldPa!.Value / 6.894757e6, 0.03);
        Assert.Equal(ultimateKsi, metal.UltimatePa!.Value / 6.894757e6, 0.03);
        Assert.Equal(weldedKsi, metal.WeldedUltimatePa!.Value / 6.894757e6, 0.03);
    }

    [Theory]
    // IBC table 1806.2: psf, psf per foot.
    [InlineData("crystalline bedrock", 12000, 1200)]
    [InlineData("sedimentary rock", 4000, 400)]
    [InlineData("sandy gravel", 3000, 200)]
    [InlineData("sand", 2000, 150)]
    [InlineData("clay", 1500, 100)]
    public void Soil_has_the_codes_presumptive_values(string name, double bearingPsf, double lateralPsfPerFoot)
    {
        var soil = Parts.MechanicalSoils[name];
        Assert.Equal(bearingPsf, soil.BearingPa!.Value / 47.88026, bearingPsf * 1e-5);
        Assert.Equal(lateralPsfPerFoot, soil.LateralPaPerM!.Value * 0.3048 / 47.88026, lateralPsfPerFoot * 1e-5);
    }

    [Theory]
    // ASTM B258 table, diameter in inches.
    [InlineData("4/0 AWG copper", 0.4600)]
    [InlineData("10 AWG copper", 0.1019)]
    [InlineData("12 AWG copper", 0.0808)]
    [InlineData("18 AWG copper", 0.0403)]
    public void Wire_gauge_agrees_with_the_printed_table(string name, double inches) =>
        Assert.Equal(inches, Parts.Wires[name].DiameterM / 0.0254, 5e-5);

    [Theory]
    // MIL-C-17 nominal attenuation in dB per 100 ft, from memory.
    [InlineData("RG-58", 10e6, 1.4)]
    [InlineData("RG-58", 100e6, 4.9)]
    [InlineData("RG-213", 10e6, 0.55)]
    [InlineData("RG-213", 100e6, 1.9)]
    public void Coaxial_line_has_about_the_nominal_loss(string name, double frequencyHz, double decibelPerHundredFeet) =>
        Assert.Equal(decibelPerHundredFeet, Parts.Lines[name].LossDbPer100M(frequencyHz) * 0.3048, decibelPerHundredFeet * 0.1);

    [Theory]
    // ASTM A615 nominal areas in square inches.
    [InlineData("#3 bar", 0.11)]
    [InlineData("#5 bar", 0.31)]
    [InlineData("#8 bar", 0.79)]
    public void Reinforcing_bar_has_its_nominal_area(string name, double squareInches) =>
        Assert.Equal(squareInches, Parts.Bars[name].AreaM2 / (0.0254 * 0.0254), 0.005);

    [Fact]
    public void Concrete_has_its_named_strength()
    {
        Assert.Equal(3000, Parts.Concretes["3000 psi concrete"].CylinderStrengthPa / 6894.757, 0.1);
        Assert.Equal(25e6, Parts.Concretes["C25/30 concrete"].CylinderStrengthPa);
    }

    [Theory]
    // ANSI C29.4 strain insulators, from memory: strength lb, wet flashover kV.
    [InlineData("ANSI 54-1", 10000, 12)]
    [InlineData("ANSI 54-4", 20000, 23)]
    public void Strain_insulator_has_the_class_rating(string name, double pounds, double wetKilovolt)
    {
        Assert.Equal(pounds, Parts.StrainInsulators[name].StrengthN / 4.44822, 1);
        Assert.Equal(wetKilovolt * 1000, Parts.StrainInsulators[name].WetFlashoverV);
    }
}
