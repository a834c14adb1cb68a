using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Tests.Match;

public class RealisationTests
{
    private static readonly MatchCandidate Ideal = MatchDesigner.Design(new(LoadImpedance.Constant(new Complex(20, -60)), 50, 1.85e6, 1000, PartQuality.HomeBuilt) { BaseShuntF = 30e-12 })
        .Candidates.First(c => c.TopologyId == "l-shunt-at-line" && c.Ladder.Sections[0].Title == "shunt capacitor");

    private static readonly CapacitorItem Mica = new("mica 1050 pF", CapacitorKind.Mica, 1.05e-9, 1.05e-9, new(2000), new(6), 2e6, CapacitorLoss.ConstantQ(2000), 8);

    [Fact]
    public void Real_parts_carry_their_own_loss_and_the_network_tunes_again()
    {
        var r = Realisation.Of(Ideal, new Workshop([Mica]));
        Assert.Empty(r.Findings);
        var bank = Assert.Single(r.Capacitors).Bank;
        Assert.Equal((1, 2), (bank.InSeries, bank.InParallel));
        var coil = Assert.Single(r.Coils).Proposal;
        Near.Relative(r.Candidate.Ladder.Sections[1].Value, coil.Report.Inductance.Value, 1e-6);
        Assert.InRange(r.Candidate.Swr, 1, 1.1);
        Assert.All(r.Checks, c => Assert.Equal(Verdict.Pass, c.Verdict));
        Assert.Contains(r.Checks, c => c.Id == "feed.capacitor.voltage[C1]");
        var q = 2 * Math.PI * 1.85e6 * coil.Report.Inductance.Value / coil.Report.Resistance.Value;
        var section = (ReactiveSection)r.Candidate.Ladder.Sections[1];
        Near.Relative(q, 2 * Math.PI * 1.85e6 * section.Value / section.CoilLoss!.ResistanceOhm(section.Value, 1.85e6), 0.05);
    }

    [Fact]
    public void Tapped_coil_is_wound_with_its_tap_and_matches_with_its_own_shape_and_Q()
    {
        var tapped = MatchDesigner.Design(new(LoadImpedance.Constant(new Complex(20, -60)), 50, 1.85e6, 1000, PartQuality.HomeBuilt)).Candidates.First(c => c.TopologyId == "tapped-coil");
        var r = Realisation.Of(tapped, new Workshop([]));
        Assert.Empty(r.Findings);
        var coil = Assert.Single(r.Coils);
        Assert.InRange(r.Candidate.Swr, 1, 1.02);
        Assert.InRange(coil.TapTurns!.Value, 0.5, coil.Proposal.Report.Coil.Turns);
        Near.Relative(((TappedCoilSection)r.Candidate.Ladder.Sections[0]).InductanceH, coil.Proposal.Report.Inductance.Value, 0.03);
    }

    [Fact]
    public void Stock_without_an_answer_is_a_finding_naming_the_part()
    {
        var r = Realisation.Of(Ideal, new Workshop([Mica with { PeakRating = new(10) }]));
        Assert.Contains(r.Findings, f => f.Code == "capacitor-rating" && f.Message.StartsWith("C1:", StringComparison.Ordinal));
    }

    // The crest at the open end of a stub is the crest at its foot over cos βl (telegraph equations); twice that with amplitude modulation. A line that stands
    // less cannot be had, whatever its network is worth.
    [Theory]
    [InlineData(1, 1.05, true)]
    [InlineData(1, 0.95, false)]
    [InlineData(2, 1.05, false)]
    [InlineData(2, 2.1, true)]
    public void A_line_in_the_network_must_stand_its_crest(double modulation, double ratingOverCrest, bool stands)
    {
        static MatchCandidate Designed(double? ratingV) => MatchDesigner.Design(new(LoadImpedance.Constant(new Complex(36, -20)), 50, 7.1e6, 1000, PartQuality.HomeBuilt)
        {
            Lines = [LineStock.Coax50 with { PeakRating = ratingV is { } v ? new(v) : null }],
        }).Candidates.First(c => c.TopologyId == "stub" && c.Ladder.Sections.OfType<StubSection>().Any(s => !s.Shorted));
        var ideal = Realisation.Of(Designed(null), new Workshop([])).Candidate;
        var at = Enumerable.Range(0, ideal.Ladder.Sections.Length).First(i => ideal.Ladder.Sections[i] is StubSection);
        var stub = (StubSection)ideal.Ladder.Sections[at];
        var name = ideal.Ladder.NameOf(at);
        var foot = ideal.Solution.Part(name).Ports[0].VoltagePhasor.Magnitude * Math.Sqrt(2);
        var angle = 2 * Math.PI * stub.LengthM / stub.Type.WavelengthM(7.1e6);
        var crest = foot / Math.Abs(Math.Cos(angle));

        var real = Realisation.Of(Designed(ratingOverCrest * crest), new Workshop([]) { PeakFactor = modulation });

        var check = Assert.Single(real.Checks, c => c.Id == $"feed.line.voltage[{name}]");
        Near.Relative(modulation * crest, check.Demand.Value, 0.01);
        Assert.Equal(stands, check.Verdict != Verdict.Fail);
        Assert.Equal(stands, !real.Missing.Contains(name));
        Assert.Equal(stands, real.Findings.All(f => f.Code != "line-rating"));
    }

    [Fact]
    public void Fixed_values_too_far_off_are_said_to_leave_a_mismatch() =>
        Assert.Contains(Realisation.Of(Ideal, new Workshop([Mica with { LowestF = 0.9e-9, HighestF = 0.9e-9 }])).Findings, f => f.Code == "realise-mismatch");

    [Fact]
    public void Every_stress_explains_itself_and_keeps_peak_and_rms_apart()
    {
        var rows = PartStress.Of(Ideal);
        Assert.Equal(["C1", "L1"], rows.Select(r => r.Name));
        foreach (var row in rows)
        {
            Assert.Equal(QuantityKind.PeakVoltage, row.PeakVoltage.Kind);
            Assert.Equal(QuantityKind.RmsVoltage, row.PeakVoltage.Inputs[0].Kind);
            Near.Relative(Math.Sqrt(2), row.PeakVoltage.Value / row.PeakVoltage.Inputs[0].Value, 1e-12);
            Assert.Contains(row.Current.Inputs, t => t.Name == "transmitter power");
        }

        Near.Relative(Ideal.LossW, rows.Sum(r => r.Heat.Value), 1e-9);
    }

    [Fact]
    public void Any_load_from_a_whip_to_a_full_wave_is_matched_and_balanced()
    {
        var random = new Random(5);
        for (var k = 0; k < 60; k++)
        {
            var load = new Complex(Math.Exp(Math.Log(0.05) + (random.NextDouble() * Math.Log(1e5))), (random.Next(2) == 0 ? -1 : 1) * Math.Exp(Math.Log(0.1) + (random.NextDouble() * Math.Log(5e4))));
            var problem = new MatchProblem(LoadImpedance.Constant(load), 50, 1.8e6 + (random.NextDouble() * 28e6), 1000, PartQuality.HomeBuilt) { BaseShuntF = random.NextDouble() * 200e-12 };
            var result = MatchDesigner.Design(problem);
            Assert.NotEmpty(result.Candidates);
            Assert.All(result.Candidates, c => Near.Relative(1000, c.Solution.LoadPowerW + c.LossW, 1e-9));
        }
    }
}
