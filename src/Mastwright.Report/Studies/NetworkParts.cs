using System.Globalization;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>The parts of a network as things to wind, buy and cut, in words and tables.</summary>
internal static class NetworkParts
{
    /// <summary>What serves for a section, in a few words.</summary>
    public static string Offer(UnitSystem units, Realisation real, SectionStress stress)
    {
        if (real.Coils.FirstOrDefault(c => c.Section == stress.Name) is { } wound)
        {
            var coil = wound.Proposal.Report.Coil;
            string Fine(double lengthM) => QuantityFormat.Show(lengthM, QuantityKind.FineLength, units, 3);
            return string.Create(CultureInfo.InvariantCulture, $"{coil.Turns:0.0} turns of {Fine(coil.WireM)} on {Fine(coil.DiameterM)}, {Fine(coil.LengthM)} long")
                + (wound.TapTurns is { } tap ? string.Create(CultureInfo.InvariantCulture, $", tap at {tap:0.0} turns from ground") : "");
        }

        if (real.Capacitors.FirstOrDefault(c => c.Section == stress.Name) is { } bought)
        {
            var bank = bought.Bank;
            return bank.Count == 1 ? bank.Item.Name : $"{bank.Item.Name}, {bank.InSeries} in series × {bank.InParallel} in parallel";
        }

        return stress.Section switch
        {
            TransformerSection t => string.Create(CultureInfo.InvariantCulture, $"{t.Ratio.Line} turns at the line, {t.Ratio.Load} at the mast, {t.PrimaryH * 1e6:0.#} µH at the line's winding"),
            LineSection or StubSection => "cut long and trim",
            _ => "nothing at hand serves: see the notes",
        };
    }

    /// <summary>Values of a network from line to mast, in a few words.</summary>
    public static string Values(DocumentBuilder document, MatchCandidate match) =>
        match.Ladder.Sections.IsEmpty ? "straight through" : string.Join(", ", match.Ladder.Sections.Select(s => $"{s.Title} {document.Show(s.Value, s.ValueKind, 3)}"));

    /// <summary>Tables of the coils to wind and the capacitors to buy.</summary>
    public static void Write(DocumentBuilder document, IReadOnlyList<WoundCoil> coils, IReadOnlyList<BoughtCapacitor> capacitors)
    {
        if (coils.Count > 0)
        {
            document.Table("Coils to wind; wind a turn or two more and set the last bit with a tap", ["Coil", "#Inductance", "#Turns", "#Tap from ground", "#Across, centre of wire", "#Length", "#Pitch", "#Wire or tube", "#Wire length", "#Own capacitance", "#Self-resonance", "#Q", "#Heat", "#Warmer by", "#Peak per turn"],
                coils.Select(c =>
                {
                    var (r, s, coil) = (c.Proposal.Report, c.Proposal.Stress, c.Proposal.Report.Coil);
                    return new Cell[]
                    {
                        c.Section, document.Show(r.Inductance, 4), Plain(coil.Turns), c.TapTurns is { } tap ? Plain(tap) + " turns" : "", document.Show(coil.DiameterM, QuantityKind.FineLength, 3),
                        document.Show(coil.LengthM, QuantityKind.FineLength, 3), document.Show(coil.PitchM, QuantityKind.FineLength, 3), document.Show(coil.WireM, QuantityKind.FineLength, 3),
                        document.Show(coil.WireLengthM, QuantityKind.Length, 3), document.Show(r.SelfCapacitance, 2), document.Show(r.SelfResonance, 3), document.Show(r.Quality, 3),
                        document.Show(s.Heat, 2), document.Show(s.TemperatureRise, 2), document.Show(s.PerTurn, 3),
                    };
                }));
        }

        if (capacitors.Count > 0)
        {
            document.Table("Capacitors to buy or cut, against their ratings at full power", ["Capacitor", "#Set to", "Part", "#In series", "#In parallel", "#Peak voltage on one", "#Rating", "#Heating current in one", "#Rating", "#Most used"],
                capacitors.Select(c =>
                {
                    var b = c.Bank;
                    var worst = b.Checks.MaxBy(k => k.Ratio)!;
                    return new Cell[]
                    {
                        c.Section, document.Show(b.CapacitanceF, QuantityKind.Capacitance, 4), b.Item.Name, Plain(b.InSeries), Plain(b.InParallel), document.Show(b.Checks[0].Demand, 3), document.Show(b.Checks[0].Capacity, 3),
                        document.Show(b.Checks[1].Demand, 3), document.Show(b.Checks[1].Capacity, 3), new(DocumentBuilder.Use(worst), worst.Verdict),
                    };
                }));
        }
    }

    private static string Plain(double value) => QuantityFormat.Digits(value, 3);
}
