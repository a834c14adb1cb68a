using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Match;

public class BuiltNetworksTests
{
    private static readonly Workshop Shop = new([new CapacitorItem("variable", CapacitorKind.Vacuum, 10e-12, 1000e-12, new PeakVolts(7500), new RmsAmps(40), 10e6, CapacitorLoss.ConstantQ(5000))], 0.15, 0.3);

    private static MatchProblem Problem(Complex load, double f) => new(LoadImpedance.Constant(load), 50, f, 1500, PartQuality.FromQ(300, 2000)) { Band = (f * 0.995, f * 1.005) };

    [Theory]
    [InlineData(20, -60, 1.85e6)]
    [InlineData(60, 12, 24.94e6)]
    [InlineData(42, 2, 28.5e6)]
    [InlineData(145, -322, 7.1e6)]
    public void What_is_offered_can_be_made_and_matches(double r, double x, double f)
    {
        var built = BuiltNetworks.Of(MatchDesigner.Design(Problem(new Complex(r, x), f)).Candidates, Shop);
        Assert.NotEmpty(built.Built);
        foreach (var real in built.Built)
        {
            Assert.True(real.Candidate.Swr <= 1.5);
            Near.Relative(1500, real.Candidate.Solution.LoadPowerW + real.Candidate.LossW, 1e-9);
            Assert.All(real.Coils, c => Assert.True(c.Proposal.Report.Coil.OuterDiameterM <= 0.15 && c.Proposal.Report.Coil.LengthM <= 0.3));
            Assert.All(real.Capacitors, c => Assert.True(c.Bank.WorstUse <= 1));
            Assert.All(real.Candidate.Ladder.Sections.OfType<ReactiveSection>(), s => Assert.True(s.IsCoil ? s.Value >= 50e-9 : s.Value >= 5e-12));
            Assert.All(real.Candidate.Ladder.Sections.OfType<LineSection>(), s => Assert.Contains(s.Type, LineStock.Usual));
        }

        Assert.All(built.Unbuilt, u => Assert.True(u.Missing.Length > 0 || u.Candidate.Swr > 1.5));
        Assert.All(built.Unbuilt.Where(u => u.Missing.Length > 0), u => Assert.Contains(u.Findings, n => n.WayOut is not null));
    }

    [Fact]
    public void Coil_of_a_few_nanohenries_is_refused_with_a_value_that_can_be_wound()
    {
        var ideal = LMatch.Design(Problem(new Complex(49, 3), 28.5e6)).Candidates.First(c => c.Ladder.Sections.Any(s => s is ReactiveSection { IsCoil: true, Value: < 60e-9 }));
        var real = Realisation.Of(ideal, Shop);
        Assert.False(real.IsComplete);
        Assert.Contains(real.Findings, f => f.Code is "coil-none" or "realise-value");
    }

    [Fact]
    public void Voltage_of_a_tapped_coil_is_that_of_its_hot_end()
    {
        var tapped = MatchDesigner.Design(Problem(new Complex(20, -60), 1.85e6)).Candidates.First(c => c.TopologyId == "tapped-coil");
        var stress = Assert.Single(tapped.Stresses);
        var mast = tapped.Solution.Part(Ladder.Antenna);
        Near.Relative(Math.Max(mast.PeakVoltage.Value, Math.Sqrt(2 * 1500 * 50)), stress.Voltage.Value, 1e-6);
        Near.Relative(tapped.LossW, stress.HeatW, 1e-9);
    }

    [Fact]
    public void Network_is_tuned_again_on_the_mast_as_measured()
    {
        foreach (var kind in new[] { "tapped-coil", "l-shunt-at-load", "pi" })
        {
            var drawn = MatchDesigner.Design(Problem(new Complex(20, -60), 1.85e6)).Candidates.First(c => c.TopologyId == kind);
            var measured = Problem(new Complex(24, -68), 1.85e6);
            var tuned = LadderTuner.Retune(drawn.Ladder, measured);
            Assert.NotNull(tuned);
            Assert.Equal(1, new MatchCandidate(kind, kind, tuned, measured).Swr, 1e-5);
        }
    }
}
