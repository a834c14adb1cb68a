using Mastwright.Analysis.Stand;
using Mastwright.Build.Tension;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Report.Sheets;

/// <summary>A mast with its guys at the tensions asked for, standing in still air on the tensioning day: what the build papers measure from.</summary>
public sealed class StandingGuys
{
    /// <summary>Height over the lean that is still called plumb; common practice, no source.</summary>
    public const double PlumbOneIn = 400;

    // Below this a gauge does not tell the difference.
    private const double UnlikeShare = 0.03;
    private const double GravityMPerS2 = 9.80665;

    private readonly SetMast set;

    private StandingGuys(Station station, Mast mast, StandModel model, PreparedMast prepared, SetMast set)
    {
        (Station, Mast, Model, Prepared, Still, this.set) = (station, mast, model, prepared, set.Solution, set);
        Influence = TensionInfluence.Of(prepared, set.Solution);
    }

    /// <summary>The station.</summary>
    public Station Station { get; }

    /// <summary>The mast.</summary>
    public Mast Mast { get; }

    /// <summary>The mast as the solver sees it, every guy set by its length.</summary>
    public StandModel Model { get; }

    /// <summary>The mast prepared for solving.</summary>
    public PreparedMast Prepared { get; }

    /// <summary>It stands in still air on the tensioning day.</summary>
    public MastSolution Still { get; }

    /// <summary>How taking up one guy changes the others.</summary>
    public TensionInfluence? Influence { get; }

    /// <summary>Finds the lengths that give the tensions; null when the mast cannot stand with them.</summary>
    public static StandingGuys? Of(Station station, Mast mast, CancellationToken cancellation = default)
    {
        var asked = StandModel.Of(station, mast);
        if (TensionSetting.SetPlumb(asked.Structure, null, cancellation) is not { Solution.IsStable: true } set)
        {
            return null;
        }

        var prepared = MastSolver.Prepare(set.Mast, [new Structure.Mast.LoadCase("still air", set.Mast.InstallationTemperatureK)]);
        return new StandingGuys(station, mast, asked with { Structure = set.Mast }, prepared, set);
    }

    /// <summary>What must be said when the tensions asked for do not balance on a plumb mast; null when they do.</summary>
    /// <param name="show">Shows a length in the reader's units.</param>
    public string? Unbalanced(Func<double, string> show) =>
        set.LargestLeanM > Mast.LengthM / PlumbOneIn
            ? $"With these guys mast {Mast.Name} cannot be brought plumb: a guy level stays {show(set.LargestLeanM)} off. Give every level guys all round; the lengths and readings here are those of the leaning mast."
            : set.LargestMissShare > UnlikeShare
                ? $"On a plumb mast the guys of mast {Mast.Name} cannot all pull alike: their anchors lie at unlike distances, heights or bearings. Each level has the tension asked for on average; single guys differ by up to {100 * set.LargestMissShare:0} % from it, and the readings here say how."
                : null;

    /// <summary>
    /// The tension a guy has at its anchor on the tensioning day when the mast stands plumb and its level has, on
    /// average, the tension asked for.
    /// </summary>
    public Trail Wanted(ModelGuy guy)
    {
        var tension = Mast.Guys[guy.Level - 1].InitialTension;
        var strength = guy.Strand.Part.Given("breaking strength", "Tb", guy.Strand.BreakingN, QuantityKind.Force);
        var asked = tension.ShareOfStrength is { } share
            ? Trail.Computed("tension asked for", "Ta", share * guy.Strand.BreakingN, QuantityKind.Force, "Ta = s·Tb", Source.DesignFile,
                Trail.Given("share of breaking strength", "s", share, QuantityKind.Ratio, Source.DesignFile), strength)
            : Trail.Given("tension asked for", "Ta", tension.ForceN!.Value, QuantityKind.Force, Source.DesignFile);
        return Trail.Computed($"set tension of {guy.Guy.Name}", "T0", Still.Guy(guy.Guy.Name).AnchorTensionN, QuantityKind.Force,
            "equilibrium in still air with the mast plumb at every guy level and Ta as the mean of the level", Source.Derived("docs/theory/structure-mast.md"), asked);
    }

    /// <summary>The guy between its pins on the standing mast, for pulse, swing, pitch and sag.</summary>
    public GuySpan Span(ModelGuy guy)
    {
        var chord = Still.Guy(guy.Guy.Name).ChordM;
        var level = Mast.Guys[guy.Level - 1];
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
        return new GuySpan(guy.Guy.Name, double.Hypot(chord.X, chord.Y), chord.Z, guy.Strand.MassKgPerM * GravityMPerS2, guy.Strand.AreaM2 * guy.Strand.ModulusPa,
            [.. GuyPlaces.InsulatorsM(Mast, level).Select(d => new LumpedMass(1 - (d / chord.Length), insulator.MassKg))]);
    }
}
