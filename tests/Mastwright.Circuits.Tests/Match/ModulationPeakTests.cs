using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Switching;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Match;

/// <summary>
/// Amplitude modulation of 100 % has an envelope of twice the carrier, so its peak envelope power is four times the carrier's (any text on modulation):
/// insulation must stand what a carrier of four times the power asks, while current and heat stay those of the carrier.
/// </summary>
public class ModulationPeakTests
{
    private const double Carrier = 1000;
    private const double Crest = 2;

    private static readonly CapacitorItem Vacuum = new("vacuum 2000 pF", CapacitorKind.Vacuum, 50e-12, 4e-9, new(15e3), new(60), 10e6, CapacitorLoss.ConstantQ(5000));

    private static MatchCandidate Match(double powerW, double frequencyHz = 1.85e6) =>
        LMatch.Design(new(LoadImpedance.Constant(new Complex(12, -300)), 50, frequencyHz, powerW, PartQuality.FromQ(250, 2000))).Candidates[0];

    [Fact]
    public void Capacitors_stand_the_envelope_and_carry_the_carrier()
    {
        static CapacitorBank Bank(double powerW, double crest)
        {
            var ideal = MatchDesigner.Design(new(LoadImpedance.Constant(new Complex(20, -60)), 50, 1.85e6, powerW, PartQuality.HomeBuilt)).Candidates
                .First(c => c.TopologyId == "l-shunt-at-line" && c.Ladder.Sections[0].Title == "shunt capacitor");
            return Realisation.Of(ideal, new Workshop([]) { Own = [Vacuum], PeakFactor = crest, WiresM = [5e-3] }).Capacitors.Single().Bank;
        }

        var (modulated, carrier, strong) = (Bank(Carrier, Crest), Bank(Carrier, 1), Bank(4 * Carrier, 1));
        Near.Relative(strong.Checks[0].Demand.Value, modulated.Checks[0].Demand.Value, 1e-3);
        Near.Relative(carrier.Checks[1].Demand.Value, modulated.Checks[1].Demand.Value, 1e-3);
    }

    [Fact]
    public void Turns_of_a_coil_stand_the_envelope_and_heat_with_the_carrier()
    {
        var report = CoilReport.Of(new AirCoil(0.1, 20, 6e-3, 3e-3), 1.85e6);
        var (modulated, carrier, strong) = (report.At(new RmsAmps(4), 1, Crest), report.At(new RmsAmps(4)), report.At(new RmsAmps(8)));
        Near.Relative(strong.PerTurn.Value, modulated.PerTurn.Value, 1e-12);
        Near.Relative(carrier.Heat.Value, modulated.Heat.Value, 1e-12);
    }

    [Fact]
    public void Open_contacts_stand_the_envelope_and_closed_ones_carry_the_carrier()
    {
        static SwitchPlan Plan(double powerW, double crest) => SwitchPlan.Of(
        [
            new("160 m", 1.81e6, 1.89e6, Match(powerW)) { PeakFactor = crest },
            new("80 m", 3.5e6, 3.8e6, Match(powerW, 3.65e6)) { PeakFactor = crest },
        ], new Relay("relay", new PeakVolts(10e3), new RmsAmps(15)));

        var (modulated, carrier, strong) = (Plan(Carrier, Crest), Plan(Carrier, 1), Plan(4 * Carrier, 1));
        Assert.Equal(5, modulated.Contacts.Length);
        foreach (var (m, c, s) in modulated.Contacts.Zip(carrier.Contacts, strong.Contacts))
        {
            Near.Relative(s.Voltage.Demand.Value, m.Voltage.Demand.Value, 1e-9);
            if (m.Current is not null)
                Near.Relative(c.Current!.Demand.Value, m.Current.Demand.Value, 1e-9);
        }
    }

    // Two bands, one of them modulated: the worse of the two crests counts, not that of the stronger carrier.
    [Fact]
    public void The_band_with_the_higher_envelope_governs_a_contact()
    {
        var relay = new Relay("relay", new PeakVolts(10e3), new RmsAmps(15));
        string Governs(double crest) => SwitchPlan.Of([new("loud", 1.81e6, 1.89e6, Match(Carrier)), new("modulated", 1.95e6, 1.99e6, Match(0.6 * Carrier, 1.97e6)) { PeakFactor = crest }], relay)
            .Contacts.Single(c => c.Name == "ground").Voltage.GoverningCase;
        Assert.Equal("loud", Governs(1));
        Assert.Equal("modulated", Governs(Crest));
    }

    [Fact]
    public void A_feed_line_stands_the_envelope()
    {
        static double Demand(double powerW, double crest) =>
            FeedLine.Of(LineStock.Coax75, 20, new(30, 40), 3.65e6, powerW).Checks("main", new(2000), new(10), peakFactor: crest)[0].Demand.Value;
        Near.Relative(Demand(4 * Carrier, 1), Demand(Carrier, Crest), 1e-9);
    }
}
