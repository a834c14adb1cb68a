using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.People;

namespace Mastwright.Analysis.Survive;

/// <summary>The fence: fields at it, and burns behind it.</summary>
public static class FenceRun
{
    private const int Bearings = 8;

    /// <summary>Fields at the fence on one band, each limit for the public held against the square averaged as it asks.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="band">The band.</param>
    /// <param name="drive">The currents.</param>
    /// <param name="fields">Their fields.</param>
    internal static ImmutableArray<Check> AtFence(Station station, Mast mast, Band band, MastDrive drive, Func<Vec3, NearFieldSample> fields)
    {
        if (station.Fence is not { } fence)
        {
            return [];
        }

        var request = ExposureRun.Request(mast, band, drive, fence.RadiusM + 1, fields);
        request = Remembering(request);
        var radius = Trail.Given("fence radius", "r", fence.RadiusM, QuantityKind.Length, Source.DesignFile);
        return
        [
            .. ExposureLimits.All(Population.Public, band.FrequencyHz).Select(limit =>
            {
                var use = Enumerable.Range(0, Bearings).Max(b =>
                {
                    var (s, c) = Math.SinCos(2 * Math.PI * b / Bearings);
                    return NearFieldExposure.Use(request, limit, mast.EastM + (fence.RadiusM * c), mast.NorthM + (fence.RadiusM * s));
                });
                return Check.AtMost($"survive.fence.field[{mast.Name}, {band.Title}, {ExposureLimits.Name(limit.Rule)}]", Trade.Survive, "Fields at the fence are inside the limits",
                    Trail.Computed("share of the limit used at the fence", "u", use, QuantityKind.Ratio, "u = max((E/Elim)², (H/Hlim)²), from the solved currents", Source.Derived("docs/theory/exposure.md"),
                        radius, limit.ElectricVPerM, limit.MagneticAPerM, request.Emission.CountingPower(limit)).Within(drive.Range),
                    Trail.Given("whole limit", "1", 1, QuantityKind.Ratio, limit.ElectricVPerM.Source), $"{band.Title}, {ExposureLimits.Name(limit.Rule)}, general public",
                    "Widen the fence, transmit less power or for a shorter time.", FarFieldExposure.Caution);
            }),
        ];
    }

    /// <summary>The same request, asked once for each place: every limit looks at the same ones. Not for several threads.</summary>
    internal static NearFieldRequest Remembering(NearFieldRequest request)
    {
        var field = request.Field;
        var known = new Dictionary<Vec3, FieldStrength>();
        return request with
        {
            Field = point =>
            {
                if (!known.TryGetValue(point, out var strength))
                {
                    known[point] = strength = field(point);
                }

                return strength;
            },
        };
    }

    /// <summary>Touching the base, the fence's height and lock.</summary>
    public static ImmutableArray<Check> Burns(Station station, Mast mast, MastResult result)
    {
        if (result.Bands.IsEmpty)
        {
            return [];
        }

        var worst = result.Bands.MaxBy(b => b.BasePeakV.Value)!;
        var part = new TouchablePart($"base of {mast.Name}", worst.BaseRmsV, mast.Base.HeightM);
        var closed = station.Fence is { Locked: true };
        var checks = RfBurn.Checks([part], Population.Public, worst.FrequencyHz, closed).Select(c => c with { GoverningCase = worst.Name }).ToList();
        if (station.Fence is { } fence)
        {
            checks.Add(RfBurn.FenceCheck(Trail.Given("fence radius", "r", fence.RadiusM, QuantityKind.Length, Source.DesignFile), RfBurn.FenceRadius([], mast.Base.LeadDiameterM / 2, RfBurn.ReachOver(fence.HeightM))) with
            {
                Id = $"survive.fence.reach[{mast.Name}]",
                Title = "The fence is out of an arm's reach of the base",
                GoverningCase = worst.Name,
            });
            if (RfBurn.HeightCheck(fence.HeightM, worst.BaseRmsV) is { } height)
            {
                checks.Add(height with { Id = $"survive.fence.height[{mast.Name}]", GoverningCase = worst.Name });
            }

            return [.. checks];
        }

        // A silent file is not an open mast: it is said, and looked at, but does not condemn the design.
        return [.. checks.Select(c => c.Verdict == Verdict.Fail
            ? c with { Verdict = Verdict.Caution, Cure = "Never energise it without a locked fence or cover; the file names none: add “fence:” with its radius." } : c)];
    }
}
