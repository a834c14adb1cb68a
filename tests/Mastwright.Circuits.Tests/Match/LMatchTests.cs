using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Match;

public class LMatchTests
{
    // Textbook pairs: Q = √(Rh/Rl - 1), X = Q·Rl, B = Q/Rh (ARRL Antenna Book, L networks, from memory), computed apart in Python.
    [Theory]
    [InlineData(25, 1.13682102e-6, 909.456818e-12)]
    [InlineData(12.5, .984515885e-6, 1575.22542e-12)]
    [InlineData(36.6, 1.00703608e-6, 550.292938e-12)]
    [InlineData(200, 3.93806354e-6, 393.806354e-12)]
    [InlineData(1000, 9.9105759e-6, 198.211518e-12)]
    public void Resistive_load_at_3500_kHz_needs_the_textbook_coil_and_capacitor(double loadOhm, double coilH, double capacitorF)
    {
        var lowPass = LMatch.Design(loadOhm, 50, 3.5e6, 100, PartQuality.Lossless).Candidates
            .Single(c => c.Ladder.Sections.Any(s => s.Title == "series coil"));
        Near.Relative(coilH, lowPass.Ladder.Sections.Single(s => s.Title == "series coil").Value, 5e-9);
        Near.Relative(capacitorF, lowPass.Ladder.Sections.Single(s => s.Title == "shunt capacitor").Value, 5e-9);
        Near.Equal(50, lowPass.InputImpedanceOhm, 1e-12);
    }

    [Fact]
    public void Short_mast_20_minus_j60_at_1850_kHz_has_the_two_reference_solutions()
    {
        // Reference page section 2.1, computed in Python.
        var found = LMatch.Design(new Complex(20, -60), 50, 1.85e6, 100, PartQuality.Lossless).Candidates
            .Where(c => c.TopologyId == "l-shunt-at-line").ToArray();
        Assert.Equal(2, found.Length);
        var first = found.Single(c => c.Ladder.Sections[0].Title == "shunt capacitor");
        Near.Relative(2107.28865e-12, first.Ladder.Sections[0].Value, 5e-9);
        Near.Relative(7.26907059e-6, first.Ladder.Sections[1].Value, 5e-9);
        var second = found.Single(c => c.Ladder.Sections[0].Title == "shunt coil");
        var w = 2 * Math.PI * 1.85e6;
        Near.Relative(35.505102572, w * second.Ladder.Sections[1].Value, 1e-9);
        Near.Relative(40.824829046, w * second.Ladder.Sections[0].Value, 1e-9);
    }

    [Fact]
    public void Load_120_plus_j80_has_the_two_reference_solutions_with_the_shunt_at_the_load()
    {
        var found = LMatch.Design(new Complex(120, 80), 50, 7e6, 100, PartQuality.Lossless).Candidates;
        Assert.Equal(2, found.Length);
        var w = 2 * Math.PI * 7e6;
        var withCoil = found.Single(c => c.Ladder.Sections[0].Title == "series coil");
        Near.Relative(78.528126596, w * withCoil.Ladder.Sections[0].Value, 1e-9);
        Near.Relative(.0129070915, w * withCoil.Ladder.Sections[1].Value, 1e-8);
        var withCapacitor = found.Single(c => c.Ladder.Sections[0].Title == "series capacitor");
        Near.Relative(1 / .00521478384, w * withCapacitor.Ladder.Sections[1].Value, 1e-8);
    }

    [Theory]
    [InlineData(20, -60)]
    [InlineData(8, -250)]
    [InlineData(120, 80)]
    [InlineData(30, 90)]
    [InlineData(45, -20)]
    [InlineData(400, -900)]
    [InlineData(60, 3)]
    public void Every_solution_with_lossy_parts_agrees_with_ngspice_in_each_voltage_and_current(double r, double x)
    {
        var found = LMatch.Design(new Complex(r, x), 50, 1.85e6, 1000, PartQuality.FromQ(200, 1500)).Candidates;
        Assert.InRange(found.Length, 2, 4);
        foreach (var candidate in found)
        {
            var plain = candidate.Network.Solve(1.85e6);
            var spice = Spice.Ac(DeckOf.Network(candidate.Network, 1.85e6), 1.85e6);
            foreach (var node in candidate.Network.Nodes)
                Near.Equal(spice[node], plain.NodeVoltage(node), 1e-9);
            foreach (var coil in candidate.Network.Parts.OfType<Inductor>())
                Near.Equal(spice[$"l{coil.Name}#branch".ToLowerInvariant()], plain.Part(coil.Name).Ports[0].CurrentPhasor, 1e-9);
        }
    }

    [Theory]
    [InlineData(20, -60)]
    [InlineData(120, 80)]
    [InlineData(3, -400)]
    [InlineData(2500, 1200)]
    public void Lossless_solutions_match_exactly_and_power_balances_with_losses(double r, double x)
    {
        foreach (var c in LMatch.Design(new Complex(r, x), 50, 3.65e6, 1500, PartQuality.Lossless).Candidates)
            Near.Equal(50, c.InputImpedanceOhm, 1e-10);
        foreach (var c in LMatch.Design(new Complex(r, x), 50, 3.65e6, 1500, PartQuality.FromQ(250, 2000)).Candidates)
        {
            Near.Relative(1500, c.Solution.LoadPowerW + c.Solution.LossW, 1e-9);
            Near.Relative(1500, c.Solution.InputPowerW, 1e-12);
            Assert.True(c.LossW > 0);
        }
    }

    [Fact]
    public void Load_already_at_the_line_needs_nothing()
    {
        var only = Assert.Single(LMatch.Design(50, 50, 7e6, 100, PartQuality.HomeBuilt).Candidates);
        Assert.Empty(only.Ladder.Sections);
        Assert.Equal(1, only.Swr, 1e-12);
    }

    [Fact]
    public void Load_of_line_resistance_with_reactance_also_has_the_one_element_answer()
    {
        var found = LMatch.Design(new Complex(50, -30), 50, 7e6, 100, PartQuality.HomeBuilt).Candidates;
        Assert.Contains(found, c => c.Ladder.Sections.Length == 1 && c.Ladder.Sections[0].Title == "series coil");
    }

    [Theory]
    [InlineData(0, 10, "match-no-resistance")]
    [InlineData(-4, 10, "match-negative-resistance")]
    [InlineData(double.NaN, 0, "match-load-not-finite")]
    [InlineData(double.PositiveInfinity, 0, "match-load-not-finite")]
    public void Impossible_load_is_a_finding_with_a_way_out(double r, double x, string code)
    {
        var result = LMatch.Design(new Complex(r, x), 50, 7e6, 100, PartQuality.HomeBuilt);
        Assert.Empty(result.Candidates);
        var finding = Assert.Single(result.Findings);
        Assert.Equal(code, finding.Code);
        Assert.False(string.IsNullOrWhiteSpace(finding.WayOut));
    }

    [Fact]
    public void Bad_line_power_and_frequency_are_all_reported_at_once()
    {
        var codes = LMatch.Design(30, -50, 0, double.NaN, PartQuality.HomeBuilt).Findings.Select(f => f.Code);
        Assert.Equal(["match-line", "match-frequency", "match-power"], codes);
    }

    [Fact]
    public void Element_values_explain_themselves_down_to_the_load()
    {
        var best = LMatch.Design(new Complex(20, -60), 50, 1.85e6, 100, PartQuality.HomeBuilt).Candidates[0];
        foreach (var section in best.Ladder.Sections)
        {
            Assert.NotNull(section.Why);
            Assert.Equal(section.Value, section.Why.Value);
            Assert.Contains(Flatten(section.Why), t => t.Name == "load resistance");
        }
    }

    private static IEnumerable<Mastwright.Model.Trails.Trail> Flatten(Mastwright.Model.Trails.Trail t) => t.Inputs.SelectMany(Flatten).Prepend(t);
}
