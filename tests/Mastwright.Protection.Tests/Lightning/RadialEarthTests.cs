using Mastwright.Fields.Electrostatics;
using Mastwright.Protection.Earthing;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>Electrodes solved together, and the ring in the transient.</summary>
public class RadialEarthTests
{
    private static RadialEarth Solve(StruckEarth earth) => new(earth, SoilIonisation.CriticalFieldCigre);

    // Circuit theory: what the electrodes show among each other is, in parallel, the whole; mutual effect raises each above itself alone.
    [Fact]
    public void Electrodes_in_parallel_are_the_whole_and_each_shows_more_than_alone()
    {
        var all = Solve(new StruckEarth(100, 8, 10, 1e-3, 0.1, 4) { Ring = new(6, 4e-3, 0.5) });
        var parallel = 1 / ((1 / all.RadialsOhm.Value) + (1 / all.RodsOhm!.Value) + (1 / all.RingOhm!.Value));
        Assert.Equal(1, parallel / all.Solved.ResistanceOhm, 1e-9);
        Assert.True(all.RadialsOhm.Value > Solve(new StruckEarth(100, 8, 10, 1e-3, 0.1)).RadialsOhm.Value);
        Assert.True(all.RodsOhm.Value > EarthElectrode.Rod(100, 2.4, 0.008).Value / 4);
        Assert.True(all.Solved.ResistanceOhm < Solve(new StruckEarth(100, 8, 10, 1e-3, 0.1, 4)).Solved.ResistanceOhm);
    }

    // Dwight 1936, two rods side by side: ρ/(4πL)(ln(4L/a) − 1) + ρ/(4πs)(1 − L²/3s² + 2L⁴/5s⁴), 100 Ω·m, 2.4 m, 16 mm, 5 m apart: 21.696 Ω. Each of two groups shows twice that.
    [Fact]
    public void Two_rods_as_two_electrodes_agree_with_dwight()
    {
        Wire Rod(double x) => new(new(x, 0, 0), new(x, 0, -2.4), 0.008);
        var pair = BuriedConductors.SolveGroups([[Rod(0)], [Rod(5)]], 100, 0.2);
        Assert.Equal(1, pair.ResistanceOhm / 21.696151, 0.02);
        Assert.Equal(1, pair.GroupOhm(0) / (2 * pair.ResistanceOhm), 1e-6);
        Assert.Equal(1, pair.GroupOhm(0) / pair.GroupOhm(1), 1e-6);
    }

    // Sunde (from memory): a buried wire of length l, radius a, depth d shows ρ/(πl)·(ln(2l/√(2ad)) − 1).
    [Theory]
    [InlineData(20, 0.004, 0.5)]
    [InlineData(60, 0.002, 0.3)]
    public void A_buried_wire_agrees_with_sunde(double length, double radius, double depth)
    {
        var sunde = 100 / (Math.PI * length) * (Math.Log(2 * length / Math.Sqrt(2 * radius * depth)) - 1);
        Assert.Equal(1, EarthElectrode.BuriedWire(100, length, radius, depth).Value / sunde, 0.02);
        Assert.Equal(1, BuriedConductors.Solve([new(new(0, 0, -depth), new(length, 0, -depth), radius)], 100, 0.3).ResistanceOhm / sunde, 0.03);
    }

    // The star of eight arms of 10 m from a Galerkin solution with Legendre polynomials of degree 7 on each arm, done outside with NumPy (see EarthTests): the earth
    // of the strike, its electrodes laid by number and length, must come to the same resistance.
    [Fact]
    public void Radials_laid_by_number_are_the_star_solved_outside() =>
        Assert.Equal(1, Solve(new StruckEarth(100, 8, 10, 4e-3, 0.5)).Solved.ResistanceOhm / 3.960477, 0.005);

    // Convergence: steps of a metre between two radials, which hang on differences, against sources of a quarter of a metre all along.
    [Fact]
    public void Step_voltages_hardly_change_with_finer_sources()
    {
        var earth = new StruckEarth(200, 8, 20, 1e-3, 0.02, 2);
        var usual = Solve(earth).Solved;
        var fine = BuriedConductors.Solve([.. EarthElectrodes.Radials(earth), .. EarthElectrodes.Rods(earth)], 200, 0.25);
        var (s, c) = Math.SinCos(Math.PI / 8);
        double Step(BuriedConductors e, double r) => e.SurfaceShare(r * c, r * s) - e.SurfaceShare((r + 1) * c, (r + 1) * s);
        Assert.Equal(1, usual.ResistanceOhm / fine.ResistanceOhm, 0.003);
        Assert.All([0.5, 1, 2, 3, 5, 8, 12, 20], r => Assert.Equal(1, Step(usual, r) / Step(fine, r), 0.03));
    }

    [Fact]
    public void Electrodes_lie_where_the_file_puts_them()
    {
        var earth = new StruckEarth(100, 60, 20, 1e-3, 0.02, 3, 2.4, 0.008) { RodDistanceM = 3, Ring = new(8, 4e-3, 0.02) };
        var (radials, rods, ring) = (EarthElectrodes.Radials(earth), EarthElectrodes.Rods(earth), EarthElectrodes.Ring(earth));
        Assert.Equal(24 * 20, radials.Sum(w => w.LengthM), 1e-9);
        Assert.Equal(3 * 2.4, rods.Sum(w => w.LengthM), 1e-9);
        Assert.All(rods, w => Assert.Equal(3, double.Hypot(w.Start.X, w.Start.Y), 1e-9));

        // A polygon of n sides in a circle of diameter D is n·D·sin(π/n) round; it keeps off the radials it would lie in.
        Assert.Equal(ring.Count * 8 * Math.Sin(Math.PI / ring.Count), ring.Sum(w => w.LengthM), 1e-9);
        Assert.All(ring, w => Assert.Equal(-0.07, w.Start.Z, 1e-12));
        Assert.Empty(EarthElectrodes.Ring(earth with { Ring = null }));
    }

    [Fact]
    public void A_ring_lowers_the_rise_of_the_plate()
    {
        var scenario = Support.StrikeDeck.Usual with { EndS = 10e-6, Cable = null, House = null, Feed = [] };
        var ring = scenario with { Earth = scenario.Earth with { Ring = new(8, 4e-3, 0.5) } };
        Assert.True(StrikeSimulation.Run(ring)!.PlatePeakV.Value < StrikeSimulation.Run(scenario)!.PlatePeakV.Value);
        Assert.Equal(["strike-ring-depth"], (scenario with { Earth = scenario.Earth with { Ring = new(8, 4e-3, 9) } }).Faults().Select(f => f.Code));
    }
}
