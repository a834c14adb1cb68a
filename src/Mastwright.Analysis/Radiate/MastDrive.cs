using System.Collections.Immutable;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Analysis.Radiate;

/// <summary>
/// The currents of the whole station while one mast transmits, over the earth the verdict rests on: the real soil where the file asks for it, else a perfect
/// conductor with the earth's loss beside it.
/// </summary>
/// <param name="Driven">The currents for one watt into the solved feed.</param>
/// <param name="ReferenceW">Power into the real mast that drives these currents, W: over a perfect conductor more than one, by the earth's loss.</param>
internal sealed record MastDrive(DrivenWires Driven, double ReferenceW)
{
    private const string Around = "metal, wires and people nearby change the field";

    /// <summary>Whether the fields are those over the real soil.</summary>
    public bool OverSoil => Driven.Mesh.Model.Ground is Ground.HalfSpace;

    /// <summary>What the fields assume, in words to stand beside the number.</summary>
    public string Range => OverSoil
        ? $"fields solved over the real soil, flat and uniform; {Around}"
        : $"over a perfectly conducting plane, for the power the earth leaves; `mastwright near-field` solves over the real soil; {Around}";

    /// <summary>A mast of a solution over soil, or of one over perfect ground with its earth loss.</summary>
    /// <param name="solution">The currents.</param>
    /// <param name="feed">The mast's feed.</param>
    /// <param name="earthOhm">Earth loss at the base, Ω; counts over perfect ground only.</param>
    public static MastDrive Of(WireSolution solution, int feed, Func<double> earthOhm)
    {
        var resistance = solution.FeedImpedance(feed).Real;
        return new(solution.DrivePower(1, feed), solution.Mesh.Model.Ground is Ground.HalfSpace ? 1 : (resistance + earthOhm()) / resistance);
    }

    /// <summary>A mast on a frequency.</summary>
    public static MastDrive Of(Station station, WireSolution solution, int feed) =>
        Of(solution, feed, () => BandRun.Drive(station, station.Masts[feed], solution, feed).Earth.Value);

    /// <summary>The station over the earth the verdict rests on, or over a perfect conductor where the soil cannot be solved: the findings say so, and why.</summary>
    public static (WireSolution Solution, ImmutableArray<Finding> Findings) Solve(Station station, double frequencyHz, CancellationToken cancellation)
    {
        var soil = EarthChoice.IsExact(station) ? SoilSolver.Solve(SoilModels.Of(station).Model, frequencyHz, cancellation) : new(null, []);
        if (soil.Solution is { } real)
        {
            return (real, soil.Findings);
        }

        ImmutableArray<Finding> perfect = soil.Findings.IsEmpty ? [] : [new("fields-over-perfect-plane", Severity.Warning,
            FormattableString.Invariant($"At {frequencyHz / 1e6:0.###} MHz the station cannot be solved over its soil: these fields are those over a perfectly conducting plane."))];
        return (WireSolver.Solve(WireModels.Of(station), frequencyHz, null, cancellation).Require(), [.. perfect, .. soil.Findings]);
    }

    /// <summary>Both fields where the verdict asks for them: at the fence and where people stay.</summary>
    public Func<Vec3, NearFieldSample> FieldsNear(Station station, Mast mast) =>
        Fields(Driven, new Vec3(mast.EastM, mast.NorthM, 0), Math.Max(station.Site.PeopleDistanceM ?? 0, (station.Fence?.RadiusM ?? 0) + 1));

    /// <summary>Both fields at places beside a mast.</summary>
    /// <param name="driven">The currents.</param>
    /// <param name="foot">The mast's foot.</param>
    /// <param name="farthestM">Farthest level distance that will be asked for, m.</param>
    public static Func<Vec3, NearFieldSample> Fields(DrivenWires driven, Vec3 foot, double farthestM)
    {
        const double tallest = 2.5;
        return NearField.Within(driven, [foot + new Vec3(-farthestM, -farthestM, 0), foot + new Vec3(farthestM, farthestM, tallest)]);
    }
}
