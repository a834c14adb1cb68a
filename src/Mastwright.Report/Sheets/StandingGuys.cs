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

    private const double GravityMPerS2 = 9.80665;

    private StandingGuys(Station station, Mast mast, StandModel model, PreparedMast prepared, MastSolution still)
    {
        (Station, Mast, Model, Prepared, Still) = (station, mast, model, prepared, still);
        Influence = TensionInfluence.Of(prepared, still);
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
        if (TensionSetting.SetWhenStanding(asked.Structure, null, cancellation) is not { } set)
        {
            return null;
        }

        var still = new Structure.Mast.LoadCase("still air", set.InstallationTemperatureK);
        var prepared = MastSolver.Prepare(set, [still]);
        var solution = prepared.Solve(still, null, cancellation);
        return solution.IsStable ? new StandingGuys(station, mast, asked with { Structure = set }, prepared, solution) : null;
    }

    /// <summary>What must be said when the tensions asked for pull the mast out of plumb; null when they balance.</summary>
    public string? Lean(Func<double, string> show)
    {
        var top = Still.Nodes[^1].DisplacementM;
        var out_ = double.Hypot(top.X, top.Y);
        if (out_ < Mast.LengthM / PlumbOneIn)
        {
            return null;
        }

        var bearing = Math.Atan2(top.X, top.Y) * 180 / Math.PI;
        return $"With the tensions the file asks for the top of mast {Mast.Name} stands {show(out_)} out of plumb, towards {(bearing + 360) % 360:0}°: they do not balance on these anchors. " +
            "Ask for tensions that balance (more on the steeper guys), or move an anchor; the lengths and readings here are those of the leaning mast.";
    }

    /// <summary>The tension a guy is to have at its anchor on the tensioning day.</summary>
    public Trail Wanted(ModelGuy guy)
    {
        var tension = Mast.Guys[guy.Level - 1].InitialTension;
        var strength = guy.Strand.Part.Given("breaking strength", "Tb", guy.Strand.BreakingN, QuantityKind.Force);
        return tension.ShareOfStrength is { } share
            ? Trail.Computed($"set tension of {guy.Guy.Name}", "T0", share * guy.Strand.BreakingN, QuantityKind.Force, "T0 = s·Tb", Source.DesignFile,
                Trail.Given("share of breaking strength", "s", share, QuantityKind.Ratio, Source.DesignFile), strength)
            : Trail.Given($"set tension of {guy.Guy.Name}", "T0", tension.ForceN!.Value, QuantityKind.Force, Source.DesignFile);
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
