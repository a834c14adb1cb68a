using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Catalog;
using Mastwright.Fields.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Radiate;

/// <summary>One piece of a guy between insulators while the mast transmits.</summary>
/// <param name="Level">Guy level, from 1.</param>
/// <param name="Anchor">The anchor the guy goes to.</param>
/// <param name="Piece">Number of the piece, from 1 at the mast.</param>
/// <param name="FromM">Where it begins, along the guy from the mast, m.</param>
/// <param name="ToM">Where it ends, m.</param>
/// <param name="LargestRms">Largest current on it, A RMS.</param>
/// <param name="OfMast">That current over the largest on the mast.</param>
/// <param name="Waves">Its length in wavelengths.</param>
/// <param name="Grounded">Whether its lower end stands in the ground.</param>
public sealed record GuyPiece(int Level, string Anchor, int Piece, double FromM, double ToM, double LargestRms, double OfMast, double Waves, bool Grounded)
{
    /// <summary>From this share of the mast's current on, a piece is worth cutting (common practice, no source).</summary>
    public const double Noticeable = 0.1;

    /// <summary>Whether it carries enough to change pattern and impedance.</summary>
    public bool Rings => OfMast > Noticeable && !Bonded;

    /// <summary>Whether it is bonded to the mast: a top-loading wire, or the stub above the first insulator.</summary>
    public bool Bonded => Piece == 1;
}

/// <summary>One guy insulator while the mast transmits.</summary>
/// <param name="Level">Guy level, from 1.</param>
/// <param name="Anchor">The anchor the guy goes to.</param>
/// <param name="AtM">Where it sits, along the guy from the mast, m.</param>
/// <param name="PeakV">Peak voltage across it, V.</param>
public sealed record GuyInsulator(int Level, string Anchor, double AtM, double PeakV);

/// <summary>All guys of a mast on one band or in one switch position.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Case">The band, or group and position.</param>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="Pieces">Conducting pieces.</param>
/// <param name="Insulators">Insulators between them.</param>
public sealed record GuyDrive(string Mast, string Case, double FrequencyHz, ImmutableArray<GuyPiece> Pieces, ImmutableArray<GuyInsulator> Insulators)
{
    /// <summary>Whether the currents are those over the real soil; else over perfect ground.</summary>
    public bool OverSoil { get; init; }
}

/// <summary>What the guys do at radio frequency: currents on their pieces and voltages across their insulators.</summary>
internal static class GuyStress
{
    // Rain, dirt and radio frequency bring an insulator's flashover below its wet value at power frequency.
    private const double FlashoverMargin = 2;

    private static readonly Source Solver = Source.Derived("docs/theory/fields-wires.md");

    /// <summary>The guys of a mast that transmits alone.</summary>
    /// <param name="mast">The mast.</param>
    /// <param name="band">The band.</param>
    /// <param name="driven">The currents for one watt into the lossless feed.</param>
    /// <param name="lossyOverLossless">Feed resistance with earth loss over the lossless one.</param>
    public static GuyDrive OfBand(Mast mast, Band band, DrivenWires driven, double lossyOverLossless) =>
        Of(mast, band.Title, driven, Math.Sqrt(band.PowerW / lossyOverLossless), band.ModulationPeak);

    /// <summary>The guys of a mast for any drive.</summary>
    /// <param name="mast">The mast.</param>
    /// <param name="title">What the drive is called.</param>
    /// <param name="driven">The currents.</param>
    /// <param name="amplitude">What to multiply them with for full power.</param>
    /// <param name="modulationPeak">Crest with modulation over the carrier's.</param>
    public static GuyDrive Of(Mast mast, string title, DrivenWires driven, double amplitude, double modulationPeak)
    {
        var largest = LargestByWire(driven, amplitude);
        var mastRms = largest.Where(w => w.Key.StartsWith($"mast {mast.Name}, run ", StringComparison.Ordinal) || w.Key == WireModels.LeadOf(mast.Name)).Max(w => w.Value * (w.Key.Contains(LatticeWires.LegMark, StringComparison.Ordinal) ? Legs(mast) : 1));
        var wires = driven.Mesh.Model.Wires.ToDictionary(w => w.Name);
        var loads = driven.Mesh.Model.Loads.Select((l, i) => (l, i)).ToDictionary(p => p.l.Name, p => p.i);
        var pieces = ImmutableArray.CreateBuilder<GuyPiece>();
        var insulators = ImmutableArray.CreateBuilder<GuyInsulator>();
        for (var level = 1; level <= mast.Guys.Length; level++)
        {
            foreach (var anchor in mast.Anchors.Select(a => a.Name))
            {
                var guy = WireModels.GuyName(mast.Name, level, anchor);
                var along = 0.0;
                for (var p = 1; wires.TryGetValue($"{guy}, piece {p}", out var wire); p++)
                {
                    if (loads.TryGetValue($"insulator {p - 1} in {guy}", out var load))
                    {
                        var ohm = driven.Mesh.Model.Loads[load].Element.ImpedanceOhm(driven.FrequencyHz).Magnitude;
                        insulators.Add(new(level, anchor, along, Math.Sqrt(2) * driven.LoadCurrent(load).Magnitude * ohm * amplitude * modulationPeak));
                    }

                    var amps = largest[wire.Name];
                    pieces.Add(new(level, anchor, p, along, along + wire.LengthM, amps, amps / mastRms, wire.LengthM / Vacuum.WavelengthM(driven.FrequencyHz), Math.Abs(wire.End.Z) < 1e-6));
                    along += wire.LengthM;
                }
            }
        }

        return new(mast.Name, title, driven.FrequencyHz, pieces.ToImmutable(), insulators.ToImmutable()) { OverSoil = driven.Mesh.Model.Ground is Fields.Wires.Ground.HalfSpace };
    }

    /// <summary>Whether the insulators hold: the worst of each level over all drives.</summary>
    public static IEnumerable<Check> Checks(Mast mast, IReadOnlyList<GuyDrive> drives, UnitSystem units)
    {
        for (var level = 1; level <= mast.Guys.Length; level++)
        {
            var l = level;
            var all = drives.SelectMany(d => d.Insulators.Where(i => i.Level == l).Select(i => (Drive: d, Insulator: i))).ToList();
            if (all.Count == 0)
            {
                continue;
            }

            var (drive, worst) = all.MaxBy(x => x.Insulator.PeakV);
            var part = Catalogue.Default.StrainInsulators[mast.Guys[level - 1].Insulator];
            var demand = Trail.Computed("peak voltage across a guy insulator", "Vp", worst.PeakV, QuantityKind.PeakVoltage, "Vp = √2·I/(ωC)·m, I the solved current through the insulator at full power, m the modulation's crest", Solver,
                    Trail.Given("frequency", "f", drive.FrequencyHz, QuantityKind.Frequency, Source.DesignFile), part.Given("capacitance between the ends", "C", part.CapacitanceF, QuantityKind.Capacitance))
                .Within($"dry and clean; solved over {(drive.OverSoil ? "the real soil" : "perfect ground")}; the insulator a capacitance of no length");
            var wet = part.Given("wet flashover at power frequency", "Uw", part.WetFlashoverV, QuantityKind.RmsVoltage);
            var capacity = Trail.Computed("peak voltage allowed", "Va", Math.Sqrt(2) * part.WetFlashoverV / FlashoverMargin, QuantityKind.PeakVoltage, "Va = √2·Uw/2", Source.CommonPractice, wet);
            yield return Check.AtMost($"survive.guy-insulator[{mast.Name}, level {level}]", Trade.Survive, "Guy insulators hold the radio-frequency voltage", demand, capacity,
                $"{drive.Case}: guy to {worst.Anchor}, insulator at {QuantityFormat.Show(worst.AtM, QuantityKind.Length, units, 3)} from the mast",
                "Put two or three insulators in series there, or take longer ones.");
        }
    }

    /// <summary>Notes on guys that take part in the radiation.</summary>
    public static IEnumerable<Finding> Notes(Mast mast, IReadOnlyList<GuyDrive> drives, UnitSystem units)
    {
        var ringing = drives.Select(d => (Drive: d, Worst: d.Pieces.Where(p => p.Rings).MaxBy(p => p.OfMast))).Where(x => x.Worst is not null).ToList();
        if (ringing.Count == 0)
        {
            yield break;
        }

        var words = ringing.Select(x => string.Create(CultureInfo.InvariantCulture,
            $"{x.Drive.Case}: level {x.Worst!.Level}, {QuantityFormat.Show(x.Worst.FromM, QuantityKind.Length, units, 3)} to {QuantityFormat.Show(x.Worst.ToM, QuantityKind.Length, units, 3)} from the mast{(x.Worst.Grounded ? ", grounded at its foot" : "")}, {100 * x.Worst.OfMast:0} %"));
        yield return new("guys-carry-current", Severity.Note,
            $"Guys of mast {mast.Name} carry more than a tenth of the mast's largest current, and are in the impedance, the pattern and the loss shown: {string.Join("; ", words)}.",
            WayOut: "`mastwright guy-currents` shows every piece and where to cut it.");
    }

    private static int Legs(Mast mast) => mast.Sections.Where(s => s.Lattice is not null).Max(LatticeWires.Legs);

    private static Dictionary<string, double> LargestByWire(DrivenWires driven, double amplitude)
    {
        var largest = new double[driven.Mesh.Model.Wires.Length];
        for (var s = 0; s < driven.Mesh.Segments.Length; s++)
        {
            var (a, b) = driven.EndCurrents(s);
            var wire = driven.Mesh.Segments[s].Wire;
            largest[wire] = Math.Max(largest[wire], amplitude * Math.Max(a.Magnitude, b.Magnitude));
        }

        return driven.Mesh.Model.Wires.Select((w, i) => (w.Name, largest[i])).ToDictionary(p => p.Name, p => p.Item2);
    }
}
