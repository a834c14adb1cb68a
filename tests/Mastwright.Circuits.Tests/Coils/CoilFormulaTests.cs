using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Coils;

public class CoilFormulaTests
{
    // NBS Circular 74 / Grover 1946 print .9588 .9201 .8181 .6884 .5255 .3198 .2033; the digits are mpmath's (reference page 1.1).
    [Theory]
    [InlineData(.001, .999575712)]
    [InlineData(.01, 0.995768)]
    [InlineData(.02, 0.991562)]
    [InlineData(.10, 0.958807)]
    [InlineData(.20, 0.920093)]
    [InlineData(.50, 0.818136)]
    [InlineData(1, 0.688423)]
    [InlineData(2, 0.525510)]
    [InlineData(5, 0.319825)]
    [InlineData(10, 0.203324)]
    [InlineData(100, 0.034960)]
    public void Nagaoka_coefficient_of_the_tables(double u, double k) => Near.Absolute(k, Nagaoka.Coefficient(u), 6e-7);

    [Fact]
    public void Nagaoka_series_for_long_coils_joins_the_integrals_smoothly() =>
        Near.Relative(Nagaoka.Coefficient(0.0100001), Nagaoka.Coefficient(0.0099999) - (2e-7 * 4 / (3 * Math.PI)), 1e-9);

    // Wheeler, Proc. IRE 1928: L(µH) = r²N²/(9r + 10l), inches, within 1 % for l > 0.8 r.
    [Theory]
    [InlineData(0.05, 0.1)]
    [InlineData(0.1, 0.15)]
    [InlineData(0.1, 0.045)]
    [InlineData(0.08, 0.4)]
    public void Wheeler_1928_agrees_within_its_one_percent(double d, double l)
    {
        const double Inch = 0.0254;
        var wheeler = 1e-6 * Math.Pow(d / 2 / Inch * 20, 2) / ((9 * d / 2 / Inch) + (10 * l / Inch));
        Near.Relative(wheeler, Nagaoka.SheetInductanceH(d, l, 20), 0.01);
    }

    // Rosa's A = ln(1.7452 d/p) and B by the exact sum of geometric mean distances (reference page 1.2).
    [Theory]
    [InlineData(1.0, 0.556853)]
    [InlineData(.5, -.136294)]
    [InlineData(.1, -1.745732)]
    public void Rosa_A(double ratio, double a) => Near.Absolute(a, RoundWire.RosaA(ratio), 6e-7);

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, .113706)]
    [InlineData(3, .166261)]
    [InlineData(5, .217995)]
    [InlineData(10, .266408)]
    [InlineData(20, .296370)]
    [InlineData(50, .318220)]
    [InlineData(1000, .336395)]
    public void Rosa_B_against_the_exact_sum(double turns, double b) => Near.Absolute(b, RoundWire.RosaB(turns), 2e-5);

    [Fact]
    public void Worked_coil_of_20_turns()
    {
        // Reference page 1.2: D 0.1 m, l 0.15 m, N 20, wire 3 mm.
        var coil = new AirCoil(0.1, 20, 7.5e-3, 3e-3);
        Near.Relative(20.262635e-6, Nagaoka.SheetInductanceH(0.1, 0.15, 20), 1e-7);
        Near.Relative(20.341889e-6, coil.InductanceH, 1e-7);
    }

    // SciPy/mpmath Bessel functions (reference page 1.5); the x column agrees with NBS Circular 74 table XVII.
    [Theory]
    [InlineData(.25, 1.00008137, .999959313)]
    [InlineData(.5, 1.00130073, .999349692)]
    [InlineData(1, 1.02049239, .989767993)]
    [InlineData(2, 1.26464291, .870482596)]
    [InlineData(5, 2.76810760, .396275966)]
    [InlineData(10, 5.25930186, .199585101)]
    [InlineData(20, 10.2546791, .0999507048)]
    [InlineData(100, 50.2509374, .0199996212)]
    public void Skin_effect_of_round_wire(double radiusOverDepth, double resistance, double inductance)
    {
        var z = RoundWire.ImpedanceRatio(radiusOverDepth);
        Near.Relative(resistance, z.Real, 5e-9);
        Near.Relative(inductance, z.Imaginary / (radiusOverDepth * radiusOverDepth / 4), 5e-9 * Math.Max(1, radiusOverDepth / 5));
    }

    [Fact]
    public void Copper_wire_2_mm_at_7_MHz()
    {
        Near.Relative(5.48810149e-3, RoundWire.DcOhmPerM(2e-3, 58e6), 1e-8);
        Near.Relative(.111243715, RoundWire.AcOhmPerM(2e-3, 58e6, 7e6), 1e-8);
        Near.Relative(24.9780e-6, RoundWire.SkinDepthM(58e6, 7e6), 1e-5);
        Near.Relative(30.9814e-6, RoundWire.SkinDepthM(37.7e6, 7e6), 1e-5);
    }

    // Medhurst 1947 as reprinted (reference page 1.3), pF for a coil of 1 cm diameter.
    [Theory]
    [InlineData(50, 5.8)]
    [InlineData(10, 1.32)]
    [InlineData(5, .81)]
    [InlineData(1, .46)]
    [InlineData(.5, .50)]
    [InlineData(.1, .96)]
    public void Medhurst_self_capacitance(double shape, double h) =>
        Near.Relative(h * 1e-12, Medhurst.SelfCapacitanceF(0.01, 0.01 * shape), 1e-9);

    // Medhurst's own fit (from memory) H = .1126 l/D + .08 + .27/√(l/D), within 6 % of the table.
    [Theory]
    [InlineData(.15)]
    [InlineData(.75)]
    [InlineData(1.7)]
    [InlineData(12)]
    [InlineData(27)]
    public void Medhurst_between_the_rows_follows_his_formula(double x) =>
        Near.Relative((.1126 * x) + .08 + (.27 / Math.Sqrt(x)), Medhurst.SelfCapacitanceF(0.01, 0.01 * x) * 1e12, 0.06);

    [Fact]
    public void Medhurst_proximity_table_corners_and_middle()
    {
        Near.Relative(5.31, Medhurst.ProximityFactor(0, 1), 1e-12);
        Near.Relative(1.74, Medhurst.ProximityFactor(2, .5), 1e-12);
        Near.Relative(3.41, Medhurst.ProximityFactor(1e9, 1), 1e-6);
        Near.Relative(1.02, Medhurst.ProximityFactor(0, .05), 1e-12);
    }

    [Fact]
    public void Q_of_an_optimum_coil_comes_near_Callendars_formula()
    {
        // Callendar 1947 (from memory): Q = √f/(6.9/R + 5.4/l), cm, optimum spacing. R 5 cm, l 15 cm, 3.5 MHz: 1075.
        var best = Enumerable.Range(5, 60).Select(i => CoilReport.Of(new AirCoil(0.1, 30, 5e-3, 5e-3 * i / 66.0), 3.5e6).Quality.Value).Max();
        Near.Relative(1075.19, best, 0.1);
    }

    [Fact]
    public void Tap_turns_give_the_asked_inductance()
    {
        var coil = new AirCoil(0.1, 25, 8e-3, 4e-3);
        var turns = coil.TurnsFor(9e-6);
        Assert.NotNull(turns);
        Near.Relative(9e-6, new AirCoil(0.1, turns.Value, 8e-3, 4e-3).InductanceH, 1e-9);
        Assert.Null(coil.TurnsFor(1));
    }
}
