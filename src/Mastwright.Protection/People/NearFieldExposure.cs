using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using static System.FormattableString;

namespace Mastwright.Protection.People;

/// <summary>Electric and magnetic field at a point, rms size of the whole vector.</summary>
/// <param name="ElectricVPerM">Electric field in V/m, rms.</param>
/// <param name="MagneticAPerM">Magnetic field in A/m, rms.</param>
public readonly record struct FieldStrength(double ElectricVPerM, double MagneticAPerM);

/// <summary>Near field of the antenna at a point, for the reference power of the request. x east, y north, z up, in metres, the ground at z = 0.</summary>
/// <param name="point">The point.</param>
public delegate FieldStrength NearFieldAt(Vec3 point);

/// <summary>What is asked about near fields.</summary>
/// <param name="Field">The solved near field.</param>
/// <param name="ReferenceW">Power into the antenna for which <paramref name="Field"/> answers, in watts.</param>
/// <param name="Emission">What is transmitted; its gain is not used.</param>
/// <param name="Centre">The mast's foot.</param>
/// <param name="NearestM">Nearest distance looked at, in metres, positive.</param>
/// <param name="FarthestM">Farthest distance looked at, in metres.</param>
public sealed record NearFieldRequest(NearFieldAt Field, double ReferenceW, Emission Emission, Vec3 Centre, double NearestM = 0.5, double FarthestM = 100)
{
    /// <summary>Number of bearings looked along.</summary>
    public int Bearings { get; init; } = 12;

    /// <summary>Number of steps from the nearest to the farthest distance, each in the same ratio to the last: distances are rounded up to the next of them.</summary>
    public int Steps { get; init; } = 240;

    /// <summary>Heights over which squares are averaged for limits that average over the body, in metres.</summary>
    public ImmutableArray<double> BodyHeightsM { get; init; } = [0.1, 0.5, 0.9, 1.3, 1.7];
}

/// <summary>Distance that one limit asks for.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="ElectricM">Distance from the mast beyond which the electric field stays inside it.</param>
/// <param name="MagneticM">The same for the magnetic field.</param>
/// <param name="BearingRad">Bearing in which the larger of the two was found, from east towards north.</param>
/// <param name="Findings">Says when the limit is exceeded up to the farthest distance looked at.</param>
public sealed record NearFieldDistance(ExposureLimit Limit, Trail ElectricM, Trail MagneticM, double BearingRad, ImmutableArray<Finding> Findings)
{
    /// <summary>The larger of the two distances.</summary>
    public Trail Governing => ElectricM.Value >= MagneticM.Value ? ElectricM : MagneticM;
}

/// <summary>Exposure in the near field: electric and magnetic field held apart against each limit, averaged as the limit says and never otherwise.</summary>
public static class NearFieldExposure
{
    /// <summary>Distances to every limit that exists at the frequency, largest first.</summary>
    public static ImmutableArray<NearFieldDistance> Distances(NearFieldRequest request, Population population, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(request.NearestM);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(request.FarthestM, request.NearestM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(request.ReferenceW);
        var limits = ExposureLimits.All(population, request.Emission.FrequencyHz);
        var samples = Sample(request, cancellation);
        return [.. limits.Select(l => Distance(request, l, samples)).OrderByDescending(d => d.Governing.Value)];
    }

    /// <summary>Share of a limit used at one place: the larger of (E/Elim)² and (H/Hlim)², 1 at the limit.</summary>
    public static double Use(NearFieldRequest request, ExposureLimit limit, double x, double y)
    {
        var scale = request.Emission.CountingPower(limit).Value / request.ReferenceW;
        var (e2, h2) = Squares(Column(request, x, y), limit);
        return scale * Math.Max(e2 / Square(limit.ElectricVPerM.Value), h2 / Square(limit.MagneticAPerM.Value));
    }

    private static NearFieldDistance Distance(NearFieldRequest request, ExposureLimit limit, FieldStrength[,][] samples)
    {
        var power = request.Emission.CountingPower(limit);
        var scale = power.Value / request.ReferenceW;
        var (electric, magnetic, bearing) = (0.0, 0.0, 0.0);
        var beyond = false;
        for (var b = 0; b < request.Bearings; b++)
        {
            // Looked at from outside inwards: the last place above the limit counts, wherever the field may fall and rise before it.
            var (foundE, foundH) = (false, false);
            for (var k = request.Steps; k >= 0 && !(foundE && foundH); k--)
            {
                var (e2, h2) = Squares(samples[b, k], limit);
                var outer = Radius(request, Math.Min(request.Steps, k + 1));
                if (!foundE && scale * e2 > Square(limit.ElectricVPerM.Value))
                {
                    foundE = true;
                    beyond |= k == request.Steps;
                    (electric, bearing) = outer > Math.Max(electric, magnetic) ? (outer, Bearing(request, b)) : (Math.Max(electric, outer), bearing);
                }

                if (!foundH && scale * h2 > Square(limit.MagneticAPerM.Value))
                {
                    foundH = true;
                    beyond |= k == request.Steps;
                    (magnetic, bearing) = outer > Math.Max(electric, magnetic) ? (outer, Bearing(request, b)) : (Math.Max(magnetic, outer), bearing);
                }
            }
        }

        ImmutableArray<Finding> findings = beyond
            ? [new("exposure-beyond-range", Severity.Warning, Invariant($"The limit of {ExposureLimits.Name(limit.Rule)} is exceeded out to the farthest distance looked at, {request.FarthestM:0.#} m."), WayOut: "Look farther out.")]
            : [];
        return new(limit, Trail($"distance for the electric field, {ExposureLimits.Name(limit.Rule)}", "RE", electric, power, limit.ElectricVPerM),
            Trail($"distance for the magnetic field, {ExposureLimits.Name(limit.Rule)}", "RH", magnetic, power, limit.MagneticAPerM), bearing, findings);
    }

    private static Trail Trail(string name, string symbol, double value, Trail power, Trail limit) =>
        Model.Trails.Trail.Computed(name, symbol, value, QuantityKind.Length, $"{symbol} = farthest place where field²·Pc/Pref > limit²", Source.Derived("docs/theory/exposure.md"), power, limit)
            .Remark(value == 0 ? "Inside the limit everywhere that was looked at." : "Rounded up to the next step of the search.");

    // A limit that averages is held against the mean square over the body; one that holds at every instant against the strongest place.
    private static (double E2, double H2) Squares(FieldStrength[] column, ExposureLimit limit) => limit.Averages && limit.Rule != ExposureRule.IcnirpLocal
        ? (column.Average(f => Square(f.ElectricVPerM)), column.Average(f => Square(f.MagneticAPerM)))
        : (column.Max(f => Square(f.ElectricVPerM)), column.Max(f => Square(f.MagneticAPerM)));

    private static FieldStrength[,][] Sample(NearFieldRequest request, CancellationToken cancellation)
    {
        var samples = new FieldStrength[request.Bearings, request.Steps + 1][];
        for (var b = 0; b < request.Bearings; b++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (s, c) = Math.SinCos(Bearing(request, b));
            for (var k = 0; k <= request.Steps; k++)
            {
                var r = Radius(request, k);
                samples[b, k] = Column(request, request.Centre.X + (r * c), request.Centre.Y + (r * s));
            }
        }

        return samples;
    }

    private static FieldStrength[] Column(NearFieldRequest request, double x, double y) =>
        [.. request.BodyHeightsM.Select(z => request.Field(new Vec3(x, y, request.Centre.Z + z)))];

    private static double Bearing(NearFieldRequest request, int b) => 2 * Math.PI * b / request.Bearings;

    private static double Radius(NearFieldRequest request, int k) => request.NearestM * Math.Pow(request.FarthestM / request.NearestM, (double)k / request.Steps);

    private static double Square(double x) => x * x;
}
