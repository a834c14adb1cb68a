using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Tests.Coils;

public class CoilDesignTests
{
    [Fact]
    public void Proposals_give_the_inductance_fit_the_box_and_stand_the_current()
    {
        var wish = new CoilWish(12e-6, 1.85e6, new RmsAmps(6), 0.25, 0.3);
        var (proposals, findings) = CoilDesigner.Design(wish);
        Assert.Empty(findings);
        Assert.NotEmpty(proposals);
        Assert.All(proposals, p =>
        {
            Near.Relative(12e-6, p.Report.Inductance.Value, 1e-9);
            Assert.True(p.Report.Coil.OuterDiameterM <= 0.25 && p.Report.Coil.LengthM <= 0.3);
            Assert.True(p.Stress.TemperatureRise.Value <= 60);
        });
        Assert.Equal(proposals.OrderByDescending(p => p.Report.Quality.Value), proposals);
    }

    [Fact]
    public void Asked_for_a_least_Q_the_smallest_coil_that_has_it_comes_first()
    {
        var wish = new CoilWish(12e-6, 1.85e6, new RmsAmps(6), 0.25, 0.3) { LeastQ = 250 };
        var (proposals, _) = CoilDesigner.Design(wish);
        Assert.All(proposals, p => Assert.True(p.Report.Quality.Value >= 250));
        double Room(CoilProposal p) => Math.Pow(p.Report.Coil.OuterDiameterM, 2) * p.Report.Coil.LengthM;
        Assert.Equal(proposals.Select(Room).Order(), proposals.Select(Room));
        Assert.True(Room(proposals[0]) < Room(CoilDesigner.Design(wish with { LeastQ = null }).Proposals[0]));
        Assert.Equal("coil-q", Assert.Single(CoilDesigner.Design(wish with { LeastQ = 9000 }).Findings).Code);
    }

    [Fact]
    public void Installed_coil_keeps_the_stated_share_of_its_Q()
    {
        var coil = new AirCoil(0.1, 20, 7.5e-3, 3e-3);
        Near.Relative(CoilReport.Of(coil, 3.65e6).Quality.Value / 2, CoilReport.Of(coil, 3.65e6, 0.5).Quality.Value, 1e-12);
        Assert.True(CoilReport.Of(coil, 3.65e6, 0.5).Quality.RestsOnAssumption);
    }

    [Fact]
    public void Box_too_small_names_the_room_it_would_take()
    {
        var (proposals, findings) = CoilDesigner.Design(new CoilWish(60e-6, 1.85e6, new RmsAmps(10), 0.05, 0.05));
        Assert.Equal("coil-box", Assert.Single(findings).Code);
        Assert.Single(proposals);
    }

    [Fact]
    public void Coil_above_its_self_resonance_is_refused_with_the_cause()
    {
        var report = CoilReport.Of(new AirCoil(0.2, 60, 6e-3, 3e-3), 14e6);
        Assert.Equal(Severity.Error, Assert.Single(report.Findings).Severity);
        Assert.Equal("coil-beyond-resonance", report.Findings[0].Code);
    }

    [Fact]
    public void Stress_by_hand()
    {
        // 5 A in 10 Ω of reactance: 50 V RMS, 70.71 V peak; heat I²R times duty.
        var report = CoilReport.Of(new AirCoil(0.1, 20, 7.5e-3, 3e-3), 1e6);
        var stress = report.At(new RmsAmps(5), 0.5);
        Near.Relative(Math.Sqrt(2) * 5 * 2 * Math.PI * 1e6 * report.Inductance.Value, stress.PeakVoltage.Value, 1e-4);
        Near.Relative(0.5 * 25 * report.Resistance.Value, stress.Heat.Value, 1e-12);
        Near.Relative(stress.PeakVoltage.Value / 20, stress.PerTurn.Value, 1e-12);
    }
}
