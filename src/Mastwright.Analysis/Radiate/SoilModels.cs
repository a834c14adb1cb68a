using System.Collections.Immutable;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Wire = Mastwright.Fields.Wires.Wire;

namespace Mastwright.Analysis.Radiate;

/// <summary>The station over its real soil, ready to be solved.</summary>
/// <param name="Model">The wires; feeds in the order of the masts.</param>
/// <param name="Findings">How the wires differ from the design.</param>
public sealed record SoilModel(WireModel Model, ImmutableArray<Finding> Findings);

/// <summary>
/// Turns the station into wires over real soil: masts, top wires and guys as over perfect ground, and every radial, screen and
/// anchor as a wire in the soil or above it.
/// </summary>
public static class SoilModels
{
    /// <summary>A guy that ends on the ground goes on as a rod this long: the anchor's metal (common practice, no source).</summary>
    public const double AnchorRodM = 1.0;

    private const double RodRadiusM = 0.009;

    /// <summary>The whole station.</summary>
    /// <param name="station">The station.</param>
    /// <param name="soil">The soil; that of the site when left out.</param>
    public static SoilModel Of(Station station, Soil? soil = null) => Of(station, soil ?? Soils.Of(station.Site), m => RadialPlan.Of(station, m));

    /// <summary>The wires with other radials than the design's.</summary>
    internal static SoilModel Of(Station station, Soil soil, Func<Mast, RadialPlan> plan)
    {
        var model = WireModels.Of(station) with { Ground = Ground.Over(soil) };
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var mast in station.Masts)
        {
            var planned = plan(mast);
            if (mast.Radials.Lay != RadialLay.Elevated)
            {
                model = AddRadials(model, mast, planned);
            }

            if (planned.Remark is { } remark)
            {
                findings.Add(new("radials-as-solved", Severity.Note, char.ToUpperInvariant(remark[0]) + remark[1..] + "."));
            }
        }

        if (soil.Model is { } dispersion && station.Bands.Any(b => b.FrequencyHz > dispersion.HighestHz))
        {
            findings.Add(new("soil-beyond-fit", Severity.Note, System.FormattableString.Invariant($"The soil model of {dispersion.Title} was fitted up to {dispersion.HighestHz / 1e6:0.#} MHz and is stretched beyond that.")));
        }

        return new(AddAnchors(model), findings.ToImmutable());
    }

    /// <summary>Elevated radials, joined under the mast's feed; they belong to the model over perfect ground, too.</summary>
    internal static WireModel AddElevated(WireModel model, Station station, Mast mast)
    {
        var hub = new Vec3(mast.EastM, mast.NorthM, mast.Radials.HeightM!.Value);
        return AddSpokes(model, mast, hub, RadialPlan.Of(station, mast).Radials);
    }

    private static WireModel AddRadials(WireModel model, Mast mast, RadialPlan plan)
    {
        var radius = mast.Radials.WireDiameterM / 2;
        var depth = Math.Max(Math.Max(mast.Radials.DepthM, EarthScreens.ShallowestM), 2 * radius);
        Vec3 foot = new(mast.EastM, mast.NorthM, 0), hub = foot with { Z = -depth };
        model = model.With(new Wire($"stub of {mast.Name}", hub, foot, Math.Min(RodRadiusM, 0.4 * depth), Conductor.Copper));
        model = AddSpokes(model, mast, hub, plan.Radials);
        return mast.Radials.Screen is { } screen ? AddScreen(model, mast, hub, plan, screen) : model;
    }

    private static WireModel AddSpokes(WireModel model, Mast mast, Vec3 hub, ImmutableArray<PlannedRadial> radials)
    {
        var radius = mast.Radials.WireDiameterM / 2;
        var jacket = mast.Radials.Jacket is { } j ? new Jacket(j.ThicknessM, j.RelativePermittivity, j.LossTangent) : null;
        var wires = radials.Select((r, i) => new Wire($"radial {i + 1} of {mast.Name}", hub, Out(hub, r.AzimuthRad, r.LengthM), radius, Conductor.Copper) { Jacket = jacket });
        return model.With([.. wires]);
    }

    // A sheet as short wires between the radials, so many that they lie no wider than 0.3 of its radius apart at its edge, and a rim.
    private static WireModel AddScreen(WireModel model, Mast mast, Vec3 hub, RadialPlan plan, GroundScreen screen)
    {
        var (n, edge, radius) = (plan.Radials.Length, screen.RadiusM, mast.Radials.WireDiameterM / 2);
        if (plan.Radials.Min(r => r.LengthM) <= edge)
        {
            return model;
        }

        var between = Math.Max(0, (int)Math.Ceiling(2 * Math.PI / (0.3 * n)) - 1);
        var wires = new List<Wire>();
        for (var i = 0; i < n; i++)
        {
            var from = plan.Radials[i].AzimuthRad;
            var step = 2 * Math.PI / n / (between + 1);
            for (var k = 0; k <= between; k++)
            {
                var (a, b) = (Out(hub, from + (k * step), edge), Out(hub, from + ((k + 1) * step), edge));
                if (k > 0)
                {
                    wires.Add(new Wire($"screen {i + 1}.{k} of {mast.Name}", hub, a, radius, Conductor.Copper));
                }

                wires.Add(new Wire($"screen rim {i + 1}.{k} of {mast.Name}", a, b, radius, Conductor.Copper));
            }
        }

        return model.With([.. wires]);
    }

    // The metal of an anchor or of an earthed pole reaches into the soil; where a radial passes in its way it is left standing on the surface.
    private static WireModel AddAnchors(WireModel model)
    {
        var feet = model.Wires.Where(w => w.Name.StartsWith("guy ", StringComparison.Ordinal) || w.Name.StartsWith(WireModels.MetalPrefix, StringComparison.Ordinal))
            .SelectMany(w => new[] { w.Start, w.End }).Where(p => Math.Abs(p.Z) < 1e-6).ToList();
        var rods = new List<Wire>();
        foreach (var foot in feet.Where((f, i) => feet.FindIndex(g => (g - f).Length < 1e-3) == i))
        {
            var down = foot with { Z = -AnchorRodM };
            if (model.Wires.Where(w => Math.Max(w.Start.Z, w.End.Z) < -1e-9).All(w => Clear(w, foot)))
            {
                rods.Add(new Wire($"anchor rod {rods.Count + 1}", foot with { Z = 0 }, down, RodRadiusM, Conductor.Zinc));
            }
        }

        return model.With([.. rods]);
    }

    private static bool Clear(Wire wire, Vec3 foot)
    {
        Vec3 along = wire.End - wire.Start, to = foot - wire.Start;
        var t = Math.Clamp(((to.X * along.X) + (to.Y * along.Y)) / Math.Max((along.X * along.X) + (along.Y * along.Y), 1e-12), 0, 1);
        return double.Hypot(to.X - (t * along.X), to.Y - (t * along.Y)) > 0.05;
    }

    private static Vec3 Out(Vec3 hub, double azimuthRad, double lengthM)
    {
        var (sin, cos) = Math.SinCos(azimuthRad);
        return hub + new Vec3(lengthM * cos, lengthM * sin, 0);
    }
}
