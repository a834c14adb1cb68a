using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using static System.FormattableString;

namespace Mastwright.Protection.Statics;

/// <summary>An atmospheric field to study.</summary>
/// <param name="Name">Name, e.g. <c>"under cloud"</c>.</param>
/// <param name="FieldVPerM">Size of the field at level ground in V/m, with its trail.</param>
public sealed record Weather(string Name, Trail FieldVPerM)
{
    /// <summary>About 300, 1000 and 5000 V/m in fair weather, under cloud and in a storm: common practice, no source. Literature (Chalmers; Rakov and Uman, from memory) has 100 to 150 V/m in fair weather and 1 to 10 kV/m under storm cloud.</summary>
    public static ImmutableArray<Weather> Usual { get; } =
    [
        new("fair weather", Field(300)),
        new("under cloud", Field(1000)),
        new("storm", Field(5000)),
    ];

    private static Trail Field(double value) => Trail.Given("atmospheric field", "E0", value, QuantityKind.ElectricField, Source.CommonPractice);
}

/// <summary>The strongest place on one part of the mast.</summary>
/// <param name="Part">Shaft and rod, or ring.</param>
/// <param name="HeightM">Its height in metres.</param>
/// <param name="Enhancement">Surface field over atmospheric field.</param>
/// <param name="OnsetGradient">Gradient at which corona begins there.</param>
/// <param name="OnsetField">Atmospheric field in which it begins.</param>
/// <param name="Checks">One check for each weather.</param>
public sealed record CoronaPlace(string Part, double HeightM, Trail Enhancement, Trail OnsetGradient, Trail OnsetField, ImmutableArray<Check> Checks);

/// <summary>Static and corona on one mast.</summary>
/// <param name="CapacitanceF">Capacitance of the mast to ground.</param>
/// <param name="EffectiveHeightM">Electrical height: floating potential over atmospheric field; null for a mast standing on the ground.</param>
/// <param name="FloatingV">Potential of the insulated, undrained mast in each weather, before anything sparks or sprays; empty for a mast standing on the ground.</param>
/// <param name="Places">Strongest places, the earliest to spray first.</param>
/// <param name="HandEnhancement">The hand formula beside it: tip of one plain rod of the same height and tip radius.</param>
/// <param name="Findings">Remarks.</param>
public sealed record StaticResult(
    Trail CapacitanceF, Trail? EffectiveHeightM, ImmutableArray<(Weather Weather, Trail Volts)> FloatingV,
    ImmutableArray<CoronaPlace> Places, Trail HandEnhancement, ImmutableArray<Finding> Findings)
{
    /// <summary>Shaft and rod from the foot up: height in metres, and the atmospheric field in V/m in which that place would begin to spray.</summary>
    public ImmutableArray<(double HeightM, double OnsetVPerM)> Along { get; init; } = [];
}

/// <summary>
/// Static and corona of one mast in the atmospheric field by the axisymmetric boundary-element solution: the mast earthed for direct current, as a
/// drained mast is.
/// </summary>
public static class StaticStudy
{
    /// <summary>What goes on every page about static.</summary>
    public const string Caution =
        "An insulated mast can carry tens of kilovolts under a cloud that has not yet struck. Never touch the mast or its feed, and never work near it, when a storm is near. " +
        "Bond the mast to earth before any work on it.";

    private static readonly Source Engine = Source.Derived("docs/theory/corona-static.md");

    /// <summary>Solves one mast; null when the outline has faults, which <see cref="MastOutline.Faults"/> names.</summary>
    /// <param name="mast">The mast.</param>
    /// <param name="air">The thinnest air, in which corona begins first.</param>
    /// <param name="roughness">Roughness factor, see <see cref="CoronaOnset"/>.</param>
    /// <param name="weathers">Fields to study, e.g. <see cref="Weather.Usual"/>.</param>
    /// <param name="refinement">1 for about half a percent.</param>
    /// <param name="cancellation">Cancels.</param>
    public static StaticResult? Solve(
        MastOutline mast, AirState air, double roughness, ImmutableArray<Weather> weathers, double refinement = 1, CancellationToken cancellation = default)
    {
        if (!mast.Faults().IsEmpty)
            return null;
        var basis = AxisymmetricElectrostatics.Solve([mast.ToBody()], refinement: refinement, cancellation: cancellation);
        var field = basis.With([ConductorState.Earthed], 1);
        List<CoronaPlace> places = [Place("shaft and rod", mast, field, p => !mast.OnRing(p), air, roughness, weathers)];
        if (mast.Ring is not null)
            places.Add(Place("ring", mast, field, mast.OnRing, air, roughness, weathers));

        var insulated = mast.BaseHeightM > 0;
        var height = insulated
            ? Trail.Computed("effective height", "he", basis.EffectiveHeightM(0), QuantityKind.Length, "he = Q(E = 1 V/m)/(C·1 V/m), boundary elements", Engine, Height(mast))
            : null;
        var floating = height is null ? [] : weathers.Select(w => (w, Trail.Computed($"floating potential, {w.Name}", "Vf", height.Value * w.FieldVPerM.Value,
            QuantityKind.PeakVoltage, "Vf = he·E0", Engine, height, w.FieldVPerM)
            .Remark("Without a drain and before anything sparks over or sprays."))).ToImmutableArray();
        var capacitance = Trail.Computed("capacitance of the mast", "C", basis.SelfCapacitanceF(0), QuantityKind.Capacitance, "C = Q/V, boundary elements", Engine, Height(mast))
            .Remark(Invariant($"{basis.Unknowns} unknowns."));
        return new(capacitance, height, floating,
            [.. places.OrderBy(p => p.OnsetField.Value)], RodEnhancement(mast.HighestM, mast.RodLengthM > 0 ? mast.RodRadiusM : mast.RadiusM), Remarks(mast))
        {
            Along = CoronaOnset.Along(field, p => !mast.OnRing(p), air, roughness),
        };
    }

    /// <summary>
    /// The hand formula: enhancement at the tip of an upright rod with a half-ball end on a plane, 1.2 (2.15 + h/a)^0.90 (Edgcombe and Valdrè 2001).
    /// </summary>
    /// <param name="heightM">Height in metres.</param>
    /// <param name="radiusM">Radius in metres.</param>
    public static Trail RodEnhancement(double heightM, double radiusM)
    {
        var ratio = heightM / radiusM;
        return Trail.Computed("enhancement by hand, plain rod", "kE", 1.2 * Math.Pow(2.15 + ratio, 0.90), QuantityKind.Ratio, "kE = 1.2 (2.15 + h/a)^0.90",
            Source.FromMemory("Edgcombe and Valdrè, J. Microscopy 203", "2001"),
            Trail.Given("height", "h", heightM, QuantityKind.Length, Source.DesignFile), Trail.Given("radius of the tip", "a", radiusM, QuantityKind.FineLength, Source.DesignFile))
            .Within("4 ≤ h/a ≤ 3000", ratio is < 4 or > 3000 ? "h/a is outside 4 to 3000, for which the formula was fitted." : null)
            .Remark("For one rod of the same radius all the way down; a thicker mast under a thin rod, and a ring, change it.");
    }

    private static CoronaPlace Place(
        string part, MastOutline mast, ElectrostaticField field, Func<SurfacePoint, bool> where, AirState air, double roughness, ImmutableArray<Weather> weathers)
    {
        var (point, gain, gradient) = CoronaOnset.First(field, where, air, roughness);
        var enhancement = Trail.Computed($"field enhancement, {part}", "kE", gain, QuantityKind.Ratio, "kE = σ/(ε0·E0), boundary elements", Engine, Height(mast));
        var onsetField = Trail.Computed($"atmospheric field at onset, {part}", "E1", gradient.Value / gain, QuantityKind.ElectricField, "E1 = Ec/kE", Engine, gradient, enhancement);
        var checks = weathers.Select(w => Check.AtMost($"survive.corona[{part}, {w.Name}]", Trade.Survive, $"No corona on the {part} ({w.Name})",
            w.FieldVPerM, onsetField, w.Name, "Blunt or shorten the rod, fit a larger ring, or round the top.", Caution)).ToImmutableArray();
        return new(part, point.Position.Z, enhancement, gradient, onsetField, checks);
    }

    private static ImmutableArray<Finding> Remarks(MastOutline mast)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (mast.Ring is { } ring && mast.HighestM > ring.LevelM + (0.5 * ring.RingDiameterM))
        {
            findings.Add(new("ring-below-tip", Severity.Warning, Invariant($"The tip stands {mast.HighestM - ring.LevelM:0.##} m above the ring, farther than the ring's radius: the ring hardly shields it."),
                WayOut: "Raise the ring to the level of the tip, or shorten the rod."));
        }

        return findings.ToImmutable();
    }

    private static Trail Height(MastOutline mast) => Trail.Given("height of the highest point", "h", mast.HighestM, QuantityKind.Length, Source.DesignFile);
}
