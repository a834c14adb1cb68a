using System.Collections.Immutable;
using Mastwright.Analysis.Stand;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tensioning;

namespace Mastwright.Analysis.Tune;

/// <summary>An insulator in a guy.</summary>
/// <param name="Fraction">Place along the guy, 0 at the anchor, 1 at the mast.</param>
/// <param name="MassKg">Its mass.</param>
public readonly record struct GuyInsulator(double Fraction, double MassKg);

/// <summary>A guy of the standing mast in still air: what someone with a gauge or a stop-watch needs to know.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Level">Its level.</param>
/// <param name="SpanM">Level distance from the anchor's eye to the pin on the mast as it stands.</param>
/// <param name="RiseM">Height of that pin over the eye.</param>
/// <param name="WeightNPerM">Weight of a metre of strand.</param>
/// <param name="AxialStiffnessN">EA of the strand.</param>
/// <param name="BreakingN">Breaking strength of the strand.</param>
/// <param name="Insulators">Insulators in it.</param>
/// <param name="AnchorTensionN">Tension at the anchor it should have at this temperature.</param>
/// <param name="Hardware">Its fittings; null when the design does not describe them.</param>
public sealed record GuyAtRest(
    string Name, GuyLevel Level, double SpanM, double RiseM, double WeightNPerM, double AxialStiffnessN, double BreakingN,
    ImmutableArray<GuyInsulator> Insulators, double AnchorTensionN, GuyHardware? Hardware);

/// <summary>A mast as set, standing in still air at one temperature.</summary>
public sealed class StandingMast
{
    private const double GravityMPerS2 = 9.80665;
    private const double RowStepK = 5;

    private readonly PreparedMast prepared;

    private StandingMast(StandModel model, PreparedMast prepared, double temperatureK, ImmutableArray<GuyAtRest> guys, double[,] influence) =>
        (Model, this.prepared, TemperatureK, Guys, InfluenceNPerM) = (model, prepared, temperatureK, guys, influence);

    /// <summary>The mast with its guys at their set lengths.</summary>
    public StandModel Model { get; }

    /// <summary>The temperature.</summary>
    public double TemperatureK { get; }

    /// <summary>The guys, in the order of the influence matrix.</summary>
    public ImmutableArray<GuyAtRest> Guys { get; }

    /// <summary>Change of the anchor tension of guy i for each metre taken up on guy j, N/m.</summary>
    public double[,] InfluenceNPerM { get; }

    /// <summary>The mast at a temperature, or a finding when it does not stand.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="temperatureK">Temperature of mast and guys.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (StandingMast? Mast, Finding? Problem) Of(Station station, Mast mast, double temperatureK, CancellationToken cancellation)
    {
        var model = Set(station, mast, cancellation);
        var still = new LoadCase("still air", temperatureK);
        var prepared = MastSolver.Prepare(model.Structure, [still]);
        var solution = prepared.Solve(still, null, cancellation);
        if (!solution.IsStable || TensionInfluence.Of(prepared, solution) is not { } influence)
        {
            return (null, new Finding("mast-falls", Severity.Error, $"Mast {mast.Name} does not stand in still air, so there is nothing to tune.",
                WayOut: "Mend the design first: `mastwright check` shows what to change."));
        }

        var guys = influence.GuyNames.Select(name => AtRest(model.Guys.First(g => g.Guy.Name == name), mast, solution.Guy(name)));
        return (new StandingMast(model, prepared, temperatureK, [.. guys], influence.NPerM), null);
    }

    /// <summary>Tensions to find at the anchors in still air, by temperature.</summary>
    /// <param name="fromK">Coldest.</param>
    /// <param name="toK">Hottest.</param>
    /// <param name="cancellation">Stops the work.</param>
    public IReadOnlyList<TensionRow> Expected(double fromK, double toK, CancellationToken cancellation)
    {
        var steps = Math.Max(1, (int)Math.Ceiling((toK - fromK) / RowStepK));
        return TensionSetting.Table(prepared, [.. Enumerable.Range(0, steps + 1).Select(i => fromK + ((toK - fromK) * i / steps))], cancellation);
    }

    /// <summary>The mast of the design with its guys at the lengths that give the tensions asked for.</summary>
    internal static StandModel Set(Station station, Mast mast, CancellationToken cancellation)
    {
        var asked = StandModel.Of(station, mast);
        return TensionSetting.SetPlumb(asked.Structure, null, cancellation) is { } set ? asked with { Structure = set.Mast } : asked;
    }

    private static GuyAtRest AtRest(ModelGuy guy, Mast mast, GuyResult rest)
    {
        var level = mast.Guys[guy.Level - 1];
        var insulator = Catalogue.Default.StrainInsulators[level.Insulator];
        var chord = rest.ChordM.Length;
        var places = level.InsulatorsAtM.IsEmpty ? [0.0] : level.InsulatorsAtM;
        return new GuyAtRest(
            guy.Guy.Name, level, double.Hypot(rest.ChordM.X, rest.ChordM.Y), rest.ChordM.Z, guy.Strand.MassKgPerM * GravityMPerS2,
            guy.Strand.AreaM2 * guy.Strand.ModulusPa, guy.Strand.BreakingN,
            [.. places.Select(fromMastM => new GuyInsulator(Math.Clamp(1 - (fromMastM / chord), 0, 1), insulator.MassKg))],
            rest.AnchorTensionN, level.Hardware);
    }
}
