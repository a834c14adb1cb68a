using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;
using static System.FormattableString;

namespace Mastwright.Protection.Statics;

/// <summary>A ring of tube round the top of a mast, bonded to it.</summary>
/// <param name="RingDiameterM">Diameter of the tube's centre line in metres.</param>
/// <param name="TubeDiameterM">Diameter of the tube in metres.</param>
/// <param name="LevelM">Height of its centre line above ground in metres.</param>
public sealed record CoronaRing(double RingDiameterM, double TubeDiameterM, double LevelM);

/// <summary>A section of a shaft below the topmost one.</summary>
/// <param name="TopM">Height of its upper end in metres.</param>
/// <param name="RadiusM">Its radius in metres.</param>
public sealed record ShaftStep(double TopM, double RadiusM);

/// <summary>The outline of an upright mast for electrostatics: a shaft with a rounded top, a rod or whisker on it, and a ring.</summary>
/// <param name="HeightM">Height of the shaft's top above ground in metres.</param>
/// <param name="RadiusM">Radius of the shaft in metres; for lattice, the radius of the round tube with the same capacitance (about 0.6 of the face width, common practice).</param>
/// <param name="BaseHeightM">Height of the shaft's foot above ground in metres: the insulator's length. 0 stands on the ground.</param>
/// <param name="RodLengthM">Length of the rod above the shaft in metres; 0 for none.</param>
/// <param name="RodRadiusM">Radius of the rod and its rounded tip in metres.</param>
/// <param name="Ring">Ring at the top; null for none.</param>
public sealed record MastOutline(
    double HeightM, double RadiusM, double BaseHeightM = 0.3, double RodLengthM = 0, double RodRadiusM = 0, CoronaRing? Ring = null)
{
    /// <summary>Sections below the topmost one, from the foot up, each with the height of its upper end and its radius; empty when the shaft is of one radius.</summary>
    public ImmutableArray<ShaftStep> Below { get; init; } = [];

    /// <summary>Radius of the shaft at its foot in metres.</summary>
    public double FootRadiusM => Below.IsEmpty ? RadiusM : Below[0].RadiusM;

    /// <summary>Height of the highest point of shaft and rod in metres.</summary>
    public double HighestM => HeightM + RodLengthM;

    /// <summary>Faults of the outline, empty when it can be solved.</summary>
    public ImmutableArray<Finding> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<Finding>();
        void Need(bool ok, string code, string message, string allowed)
        {
            if (!ok)
                faults.Add(new(code, Severity.Error, message, Allowed: allowed, WayOut: "Change the outline of the mast."));
        }

        Need(RadiusM > 0 && RadiusM < HeightM / 4, "mast-radius", Invariant($"The shaft radius is {RadiusM:0.###} m on a height of {HeightM:0.###} m."), "more than 0 and less than a quarter of the height");
        Need(BaseHeightM >= 0 && BaseHeightM + (2 * RadiusM) < HeightM, "mast-base", Invariant($"The foot of the shaft stands at {BaseHeightM:0.###} m."), "0 to below the top");
        var last = BaseHeightM + (BaseHeightM > 0 ? FootRadiusM : 0);
        foreach (var (step, above) in Below.Zip(Below.Skip(1).Append(new(HeightM, RadiusM))))
        {
            var shoulder = Math.Abs(step.RadiusM - above.RadiusM);
            Need(step.RadiusM > 0 && step.TopM > last + (2 * shoulder) && step.TopM + (2 * shoulder) + RadiusM < HeightM, "mast-step",
                Invariant($"A section of radius {step.RadiusM:0.###} m ends at {step.TopM:0.###} m."), "sections from the foot up, each longer than its shoulders");
            last = step.TopM;
        }

        Need(RodLengthM >= 0, "rod-length", Invariant($"The rod length is {RodLengthM:0.###} m."), "0 or more");
        Need(RodLengthM == 0 || (RodRadiusM > 0 && RodRadiusM <= RadiusM && RodLengthM > 3 * RodRadiusM), "rod-radius",
            Invariant($"The rod radius is {1000 * RodRadiusM:0.##} mm on a length of {RodLengthM:0.###} m."), "more than 0, at most the shaft's, and less than a third of its length");
        if (Ring is { } ring)
        {
            Need(ring.TubeDiameterM > 0 && (ring.RingDiameterM - ring.TubeDiameterM) / 2 > RadiusM, "ring-size",
                Invariant($"A ring of {ring.RingDiameterM:0.###} m with a tube of {1000 * ring.TubeDiameterM:0.#} mm does not clear the shaft of radius {RadiusM:0.###} m."), "inside clear of the shaft");
            Need(ring.LevelM - (ring.TubeDiameterM / 2) > BaseHeightM, "ring-level", Invariant($"The ring's level is {ring.LevelM:0.###} m."), "above the foot of the shaft");
        }

        return faults.ToImmutable();
    }

    /// <summary>Shaft and rod as wires on the axis, for the charge simulation in three dimensions.</summary>
    /// <param name="roundTop">Whether a shaft without a rod ends round in the open; otherwise something else stands on it.</param>
    internal ImmutableArray<Wire> AxisWires(bool roundTop)
    {
        var wires = ImmutableArray.CreateBuilder<Wire>();
        var from = BaseHeightM;
        foreach (var step in Below)
        {
            wires.Add(new(new(0, 0, from), new(0, 0, step.TopM), step.RadiusM));
            from = step.TopM;
        }

        wires.Add(new(new(0, 0, from), new(0, 0, HeightM), RadiusM, roundTop && RodLengthM <= 0));
        if (RodLengthM > 0)
            wires.Add(new(new(0, 0, HeightM), new(0, 0, HighestM), RodRadiusM, true));
        return wires.ToImmutable();
    }

    /// <summary>The outline as a body of revolution. Call only when <see cref="Faults"/> is empty.</summary>
    public AxisymmetricBody ToBody()
    {
        var pieces = ImmutableArray.CreateBuilder<MeridianCurve>();
        var foot = BaseHeightM > 0 ? BaseHeightM + FootRadiusM : 0;
        if (BaseHeightM > 0)
            pieces.Add(new MeridianArc(0, foot, FootRadiusM, FootRadiusM, -Math.PI / 2, 0));
        foreach (var (step, above) in Below.Zip(Below.Skip(1).Append(new(HeightM, RadiusM))))
            foot = Step(pieces, foot, step, above.RadiusM);
        var shoulder = RodLengthM > 0 ? RadiusM - RodRadiusM : RadiusM;
        var shaftTop = HeightM - shoulder;
        pieces.Add(new MeridianLine(RadiusM, foot, RadiusM, shaftTop));
        if (RodLengthM <= 0)
        {
            pieces.Add(new MeridianArc(0, shaftTop, RadiusM, RadiusM, 0, Math.PI / 2));
        }
        else
        {
            if (shoulder > 1e-9)
                pieces.Add(new MeridianArc(RodRadiusM, shaftTop, shoulder, shoulder, 0, Math.PI / 2));
            pieces.Add(new MeridianLine(RodRadiusM, HeightM, RodRadiusM, HighestM - RodRadiusM));
            pieces.Add(new MeridianArc(0, HighestM - RodRadiusM, RodRadiusM, RodRadiusM, 0, Math.PI / 2));
        }

        if (Ring is { } ring)
            pieces.Add(new MeridianArc(ring.RingDiameterM / 2, ring.LevelM, ring.TubeDiameterM / 2, ring.TubeDiameterM / 2, 0, 2 * Math.PI));
        return new("mast", pieces.ToImmutable());
    }

    // Sections meet in a rounded shoulder, outwards or inwards, so that no edge stands there that the mast has not got.
    private static double Step(ImmutableArray<MeridianCurve>.Builder pieces, double from, ShaftStep step, double aboveM)
    {
        var shoulder = step.RadiusM - aboveM;
        if (Math.Abs(shoulder) < 1e-6)
        {
            pieces.Add(new MeridianLine(step.RadiusM, from, aboveM, step.TopM));
            return step.TopM;
        }

        if (shoulder > 0)
        {
            pieces.Add(new MeridianLine(step.RadiusM, from, step.RadiusM, step.TopM - shoulder));
            pieces.Add(new MeridianArc(aboveM, step.TopM - shoulder, shoulder, shoulder, 0, Math.PI / 2));
            return step.TopM;
        }

        pieces.Add(new MeridianLine(step.RadiusM, from, step.RadiusM, step.TopM));
        pieces.Add(new MeridianArc(step.RadiusM, step.TopM - shoulder, -shoulder, -shoulder, -Math.PI / 2, 0));
        return step.TopM - shoulder;
    }

    /// <summary>Whether a surface point lies on the ring.</summary>
    internal bool OnRing(SurfacePoint point)
    {
        if (Ring is not { } ring)
            return false;
        var dr = point.Position.X - (ring.RingDiameterM / 2);
        var dz = point.Position.Z - ring.LevelM;
        return Math.Sqrt((dr * dr) + (dz * dz)) < 0.51 * ring.TubeDiameterM;
    }
}
