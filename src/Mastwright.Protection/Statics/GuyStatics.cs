using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>A guy, from the mast down, broken by insulators.</summary>
/// <param name="Name">Name.</param>
/// <param name="Breaks">Points along it from its upper end to its lower end in metres: ends of the metal sections in order, so an even number.</param>
/// <param name="RadiusM">Radius of the strand in metres.</param>
/// <param name="UpperBonded">Whether its uppermost section is joined to the mast without an insulator.</param>
/// <param name="LowerEarthed">Whether its lowest section is joined to its earthed anchor.</param>
public sealed record InsulatedGuy(string Name, ImmutableArray<Vec3> Breaks, double RadiusM, bool UpperBonded = false, bool LowerEarthed = true);

/// <summary>One metal section of a guy in the atmospheric field.</summary>
/// <param name="Guy">Name of the guy.</param>
/// <param name="Section">Number from the top, starting at 1.</param>
/// <param name="PotentialPerFieldM">Its potential for an atmospheric field of 1 V/m, in metres.</param>
/// <param name="Enhancement">Greatest gradient on it over the atmospheric field.</param>
/// <param name="OnsetField">Atmospheric field in which it begins to spray.</param>
public sealed record GuySectionStatic(string Guy, int Section, Trail PotentialPerFieldM, Trail Enhancement, Trail OnsetField);

/// <summary>Voltage across one insulator of a guy in the atmospheric field.</summary>
/// <param name="Guy">Name of the guy.</param>
/// <param name="Insulator">Number from the top, starting at 1; the one at the mast is number 1 when there is one.</param>
/// <param name="VoltsPerFieldM">Voltage across it for an atmospheric field of 1 V/m, in metres.</param>
public sealed record GuyInsulatorStatic(string Guy, int Insulator, Trail VoltsPerFieldM);

/// <summary>Static on a guyed mast.</summary>
/// <param name="MastEnhancement">Greatest enhancement on the mast with the guys about it.</param>
/// <param name="Sections">Every metal section.</param>
/// <param name="Insulators">Every insulator between two conductors.</param>
/// <param name="Unknowns">Number of unknowns solved.</param>
public sealed record GuyStaticResult(Trail MastEnhancement, ImmutableArray<GuySectionStatic> Sections, ImmutableArray<GuyInsulatorStatic> Insulators, int Unknowns);

/// <summary>
/// Guys and their insulators in the atmospheric field by the three-dimensional charge simulation: the mast earthed through its drain, sections between
/// insulators floating without charge, until something sprays or a leaking insulator drains it.
/// </summary>
public static class GuyStatics
{
    private static readonly Source Engine = Source.Derived("docs/theory/corona-static.md");

    /// <summary>Solves mast and guys.</summary>
    /// <param name="mast">The mast; its ring is left out here.</param>
    /// <param name="guys">The guys.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor of the strand.</param>
    /// <param name="bondedRods">Rods, whiskers and ring pieces anywhere on the mast, joined to it; null for none.</param>
    /// <param name="cancellation">Cancels.</param>
    public static GuyStaticResult Solve(
        MastOutline mast, ImmutableArray<InsulatedGuy> guys, AirState air, double roughness, ImmutableArray<Wire>? bondedRods = null, CancellationToken cancellation = default)
    {
        if (guys.Any(g => g.Breaks.Length < 2 || g.Breaks.Length % 2 != 0))
            throw new ArgumentException("A guy has an even number of section ends, two at least.", nameof(guys));
        var conductors = new List<WireConductor> { new("mast", [.. mast.AxisWires(roundTop: true), .. bondedRods ?? []]) };
        var states = new List<ConductorState> { ConductorState.Earthed };
        var where = new List<(InsulatedGuy Guy, int Section, int Conductor)>();
        foreach (var guy in guys)
        {
            var sections = guy.Breaks.Length / 2;
            for (var s = 0; s < sections; s++)
            {
                where.Add((guy, s, conductors.Count));
                conductors.Add(new($"{guy.Name} {s + 1}", [new(guy.Breaks[2 * s], guy.Breaks[(2 * s) + 1], guy.RadiusM)]));
                var held = (s == 0 && guy.UpperBonded) || (s == sections - 1 && guy.LowerEarthed);
                states.Add(held ? ConductorState.Earthed : ConductorState.Floating);
            }
        }

        var basis = WireElectrostatics.Solve(conductors, segmentM: mast.HighestM / 12, cancellation: cancellation);
        // Fair-weather field points down; its size is what matters, and an upward one keeps the signs simple.
        var field = basis.With(states, 1);
        return new(
            Trail.Computed("field enhancement on the mast among its guys", "kE", Math.Abs(field.Strongest(0).FieldVPerM), QuantityKind.Ratio, "kE = σ/(ε0·E0), charge simulation", Engine)
                .Within("tip gradients about 3 % low", null),
            [.. where.Select(w => Section(w.Guy, w.Section, w.Conductor, field, air, roughness))],
            [.. guys.SelectMany(g => Insulators(g, where, field))],
            basis.Unknowns);
    }

    private static GuySectionStatic Section(InsulatedGuy guy, int section, int conductor, ElectrostaticField field, AirState air, double roughness)
    {
        var gain = Math.Abs(field.Strongest(conductor).FieldVPerM);
        var enhancement = Trail.Computed($"field enhancement, {guy.Name} section {section + 1}", "kE", gain, QuantityKind.Ratio, "kE = σ/(ε0·E0), charge simulation", Engine);
        var onset = CoronaOnset.GradientVPerM(guy.RadiusM, double.PositiveInfinity, air, roughness);
        return new(guy.Name, section + 1,
            Trail.Computed($"potential over field, {guy.Name} section {section + 1}", "he", field.PotentialV[conductor], QuantityKind.Length, "he = V/E0, no charge", Engine),
            enhancement,
            Trail.Computed($"atmospheric field at onset, {guy.Name} section {section + 1}", "E1", onset.Value / gain, QuantityKind.ElectricField, "E1 = Ec/kE", Engine, onset, enhancement)
                .Remark("Cut ends of strand and the edges of clips spray earlier."));
    }

    private static IEnumerable<GuyInsulatorStatic> Insulators(InsulatedGuy guy, List<(InsulatedGuy Guy, int Section, int Conductor)> where, ElectrostaticField field)
    {
        var own = where.Where(w => ReferenceEquals(w.Guy, guy)).Select(w => field.PotentialV[w.Conductor]).ToList();
        // The mast above and the earth below close the chain; both are at zero.
        if (!guy.UpperBonded)
            own.Insert(0, 0);
        if (!guy.LowerEarthed)
            own.Add(0);
        for (var i = 1; i < own.Count; i++)
        {
            yield return new(guy.Name, i, Trail.Computed($"voltage over field, {guy.Name} insulator {i}", "hi", Math.Abs(own[i] - own[i - 1]), QuantityKind.Length, "hi = |V1 − V2|/E0", Engine));
        }
    }
}
