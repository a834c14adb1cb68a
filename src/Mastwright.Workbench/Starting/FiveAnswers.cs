using System.Globalization;
using System.Text;
using Mastwright.Analysis;
using Mastwright.Model.Units;

namespace Mastwright.Workbench.Starting;

/// <summary>The answers to the five questions a station begins with.</summary>
/// <param name="SpaceM">Shorter side of the free ground, m.</param>
/// <param name="HeightM">Height of the mast top above ground, m.</param>
/// <param name="BandsHz">Frequencies to work on, Hz.</param>
/// <param name="PowerW">Power, W.</param>
/// <param name="Soil">Soil as a conductor: catalogue name.</param>
public sealed record FiveAnswers(double SpaceM, double HeightM, IReadOnlyList<double> BandsHz, double PowerW, string Soil)
{
    /// <summary>What stands in the way; empty when the answers can be used.</summary>
    public IReadOnlyList<string> Problems()
    {
        var problems = new List<string>();
        void Need(bool ok, string words)
        {
            if (!ok)
            {
                problems.Add(words);
            }
        }

        Need(SpaceM is >= 8 and <= 1000, "The shorter side of the ground must be between 8 m and 1000 m.");
        Need(HeightM is >= 5 and <= 60, "The mast must be between 5 m and 60 m high.");
        Need(BandsHz.Count > 0, "Choose at least one band.");
        Need(PowerW is >= 1 and <= 10000, "The power must be between 1 W and 10 kW.");
        Need(CatalogueNames.Of("soils")!.Contains(Soil), "Choose a soil.");
        return problems;
    }

    /// <summary>
    /// The text of a first design: a lattice mast on a ball pivot, guys at most 11 m apart, anchors at six tenths of the height
    /// where the ground allows, radials as long as it allows. A beginning to be changed, not an optimum; common practice, no source.
    /// </summary>
    public string Text()
    {
        const double baseM = 0.5;
        var lengthM = Math.Round(HeightM - baseM, 1);
        var half = (SpaceM / 2) - 0.5;
        var anchorM = Math.Min(Math.Round(0.62 * HeightM, 1), Math.Round(half, 1));
        var levels = Math.Max(1, (int)Math.Ceiling((HeightM - 1) / 11.5));
        var lowest = BandsHz.Min();
        var radialM = Math.Max(2, Math.Round(Math.Min(half, Vacuum.SpeedOfLightMPerS / lowest / 4), 1));
        var count = radialM * 4 * lowest / Vacuum.SpeedOfLightMPerS < 0.5 ? 32 : 60;
        var text = new StringBuilder();
        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');

        Line($"# A beginning from five answers: {SpaceM:0.#} m of ground, {HeightM:0.#} m high, {BandsHz.Count} band{(BandsHz.Count == 1 ? "" : "s")}, {PowerW:0.#} W, {Soil}.");
        Line($"# Change whatever you know better. Wind, ice and distances below are guesses until you have looked them up.");
        Line($"mastwright: 1");
        Line($"name: New station");
        Line($"units: metric");
        Line($"");
        Line($"site:");
        Line($"  wind:");
        Line($"    method: asce-7-22");
        Line($"    speed: 110 mph                  # look up your own");
        Line($"    exposure: open");
        Line($"  soil: {Soil}");
        Line($"  # power-line-distance:, people-distance:, boundary-distance: measure them and write them here");
        Line($"");
        Line($"masts:");
        Line($"  - name: A");
        Line($"    base: {{ height: {baseM} m, pivot: ball-and-cone, insulator: base-post-60kN }}");
        Line($"    sections:");
        Line($"      - {{ length: {lengthM} m, lattice: tri-300-steel }}");
        Line($"    anchors:                          # state rated-pull once you know it");
        Line($"      - {{ name: north, bearing: 0 °, distance: {anchorM} m }}");
        Line($"      - {{ name: south-east, bearing: 120 °, distance: {anchorM} m }}");
        Line($"      - {{ name: south-west, bearing: 240 °, distance: {anchorM} m }}");
        Line($"    guys:");
        for (var level = 1; level <= levels; level++)
        {
            var height = Math.Round(level == levels ? HeightM - 0.8 : (HeightM - 0.8) * level / levels, 1);
            var guyM = double.Hypot(height, anchorM);
            var at = string.Join(", ", Enumerable.Range(0, 8).Select(i => i == 0 ? 0.4 : 5.5 * i).Where(d => d < guyM - 1).Select(d => d.ToString("0.#", CultureInfo.InvariantCulture) + " m"));
            Line($"      - {{ height: {height} m, strand: {(level == levels ? "1/4 in EHS" : "3/16 in EHS")}, insulators-at: [{at}], insulator: ANSI 54-2 }}");
        }

        Line($"    radials: {{ count: {count}, length: {radialM} m, wire: 14 AWG, depth: 0 mm }}");
        Line($"");
        Line($"bands:");
        foreach (var f in BandsHz.Order())
        {
            Line($"  - {{ frequency: {f / 1e6:0.###} MHz, power: {PowerW:0.#} W }}");
        }

        return text.ToString();
    }
}
