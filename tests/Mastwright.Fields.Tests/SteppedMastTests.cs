using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>
/// Masts of tubes of several radii, and tapered ones, against the same outlines solved as bodies of revolution, the flat rings of the steps and
/// the cap at the top with them (own reference computation, scripts/stepped_mast.py, NumPy and SciPy). Every mast is 12 m high on a lead of 0.3 m.
/// </summary>
public class SteppedMastTests
{
    private const double LeadM = 0.3;

    private static readonly Dictionary<string, (double Low, double High, double Length)[]> Masts = new()
    {
        ["plain"] = [(0.025, 0.025, 12)],
        ["narrowing"] = [(0.038, 0.038, 6), (0.0127, 0.0127, 6)],
        ["widening"] = [(0.0127, 0.0127, 6), (0.038, 0.038, 6)],
        ["three"] = [(0.06, 0.06, 4), (0.03, 0.03, 4), (0.01, 0.01, 4)],
        ["taper"] = [(0.06, 0.02, 12)],
        ["steep"] = [(0.15, 0.15, 6), (0.02, 0.02, 6)],
    };

    private static WireModel Mast(string name) => Mast(Masts[name]);

    private static WireModel Mast((double Low, double High, double Length)[] tubes)
    {
        var model = WireModel.Over(Ground.Perfect).With(new Wire("lead", Vec3.Zero, new(0, 0, LeadM), 0.006)).WithFeed("base", "lead");
        var z = LeadM;
        foreach (var ((low, high, length), i) in tubes.Select((t, i) => (t, i)))
        {
            model = model.With(new Wire($"tube {i + 1}", new(0, 0, z), new(0, 0, z + length), low, high, Conductor.Perfect));
            z += length;
        }

        return model;
    }

    private static SolverOptions Refined(double refinement) => new(MeshOptions.Default with { Refinement = refinement });

    /// <summary>
    /// Electrical length within the quarter per cent that holds for one thick tube against Hallén's equation, too, on a fine mesh; half a per cent on the default one.
    /// Flat rings carry nothing here: where a lead of two radii ends in the flange of a mast of 15 cm that takes another tenth of a per cent.
    /// </summary>
    [Theory]
    [InlineData("plain", 5.7881e6, 35.307)]
    [InlineData("narrowing", 6.1683e6, 37.313)]
    [InlineData("widening", 5.4167e6, 32.918)]
    [InlineData("three", 6.3396e6, 37.944)]
    [InlineData("taper", 6.0239e6, 36.357)]
    [InlineData("steep", 6.5000e6, 37.760)]
    public void Resonance_of_tubes_of_unlike_radius_is_that_of_the_body_of_revolution(string mast, double resonanceHz, double resistance)
    {
        foreach (var (refinement, length) in new[] { (4.0, mast == "steep" ? 0.0035 : 0.0025), (1.0, 0.005) })
        {
            var (at, z) = Resonance(Mast(mast), Refined(refinement));
            Near(resonanceHz, at, length);
            Near(resistance, z, 0.01);
        }
    }

    [Theory]
    [InlineData("plain", 9.534, -219.019)]
    [InlineData("narrowing", 8.288, -234.830)]
    [InlineData("widening", 10.856, -204.390)]
    [InlineData("three", 7.670, -228.680)]
    [InlineData("taper", 8.566, -207.667)]
    [InlineData("steep", 6.750, -187.181)]
    public void A_short_mast_of_tubes_has_the_reactance_of_the_body_of_revolution(string mast, double resistance, double reactance) =>
        Near(new System.Numerics.Complex(resistance, reactance), WireSolver.Solve(Mast(mast), 3.6e6, null, TestContext.Current.CancellationToken).Require().FeedImpedance(), mast == "steep" ? 0.015 : 0.01);

    /// <summary>What the steps change against the plain tube: a model that is right within a quarter per cent of the whole could still be blind to them.</summary>
    [Theory]
    [InlineData("narrowing", 6.1683e6)]
    [InlineData("widening", 5.4167e6)]
    [InlineData("three", 6.3396e6)]
    [InlineData("taper", 6.0239e6)]
    public void Steps_move_the_resonance_by_what_they_should_within_three_per_cent(string mast, double resonanceHz) =>
        Near(resonanceHz - 5.7881e6, Resonance(Mast(mast), Refined(4)).Hz - Resonance(Mast("plain"), Refined(4)).Hz, 0.03);

    private static (double Hz, double Ohm) Resonance(WireModel model, SolverOptions options)
    {
        double low = 4e6, high = 8e6, ohm = 0;
        for (var i = 0; i < 22; i++)
        {
            var middle = 0.5 * (low + high);
            var z = WireSolver.Solve(model, middle, options, TestContext.Current.CancellationToken).Require().FeedImpedance();
            ohm = z.Real;
            (low, high) = z.Imaginary > 0 ? (low, middle) : (middle, high);
        }

        return (0.5 * (low + high), ohm);
    }

    [Fact]
    public void Two_tubes_of_one_radius_are_one_tube()
    {
        var whole = Solve(Mast([(0.03, 0.03, 12)]), Refined(4)).FeedImpedance();
        var parts = Solve(Mast([(0.03, 0.03, 7), (0.03, 0.03, 5)]), Refined(4)).FeedImpedance();

        Near(whole, parts, 1e-3);
    }

    [Theory]
    [InlineData("narrowing")]
    [InlineData("steep")]
    [InlineData("taper")]
    public void Finer_cutting_moves_a_stepped_mast_by_less_and_less(string mast)
    {
        System.Numerics.Complex At(double refinement) => Solve(Mast(mast), Refined(refinement)).FeedImpedance();
        var (one, four, eight) = (At(1), At(4), At(8));

        Assert.True((eight - four).Magnitude < (four - one).Magnitude, $"{one} {four} {eight}");
        Near(eight, one, 0.015);
        Near(eight, four, 0.003);
    }

    [Fact]
    public void A_taper_is_what_many_short_tubes_tend_to()
    {
        var taper = Solve(Mast("taper")).FeedImpedance();
        double Off(int tubes) => (Solve(Mast([.. Enumerable.Range(0, tubes).Select(i => 0.06 - (0.04 * (i + 0.5) / tubes)).Select(r => (r, r, 12.0 / tubes))])).FeedImpedance() - taper).Magnitude;

        Assert.True(Off(12) < Off(3), $"{Off(3)} {Off(12)}");
        Assert.InRange(Off(12), 0, 0.005 * taper.Magnitude);
    }
}
