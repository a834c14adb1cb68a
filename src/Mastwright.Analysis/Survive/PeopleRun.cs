using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using Mastwright.Protection.People;

namespace Mastwright.Analysis.Survive;

/// <summary>Fields where people stay, from the solved currents, held against the published limits.</summary>
internal static class PeopleRun
{
    private static readonly double[] HeightsM = [0.5, 1.0, 1.5, 2.0];

    /// <summary>Checks of the electric and magnetic field at the stated distance on a band, for the public.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast that transmits.</param>
    /// <param name="band">The band.</param>
    /// <param name="drive">The currents.</param>
    /// <param name="fields">Their fields.</param>
    public static ImmutableArray<Check> Of(Station station, Mast mast, Band band, MastDrive drive, Func<Vec3, NearFieldSample> fields)
    {
        if (station.Site.PeopleDistanceM is not { } distanceM)
        {
            return [];
        }

        var around = Worst(fields, new Vec3(mast.EastM, mast.NorthM, 0), distanceM);
        return
        [
            .. ExposureLimits.All(Population.Public, band.FrequencyHz).SelectMany(limit =>
            {
                var power = new Emission(band.FrequencyHz, band.PowerW, 1, band.Duty).CountingPower(limit);
                var amplitude = Math.Sqrt(power.Value / drive.ReferenceW);
                return new[]
                {
                    One("electric", limit.ElectricVPerM, QuantityKind.ElectricField, around.ElectricVPerM * amplitude),
                    One("magnetic", limit.MagneticAPerM, QuantityKind.MagneticField, around.MagneticAPerM * amplitude),
                };

                Check One(string field, Trail allowed, QuantityKind kind, double value) => Check.AtMost(
                    $"survive.people.{field}[{mast.Name}, {band.Title}, {ExposureLimits.Name(limit.Rule)}]", Trade.Survive,
                    $"{field} field where people stay",
                    Trail.Computed($"{field} field at {QuantityFormat.Show(distanceM, QuantityKind.Length, station.UnitSystem, 3)}", field[..1].ToUpperInvariant(), value, kind,
                            "largest of 16 bearings and heights of 0.5 to 2 m, from the solved currents and charges", Source.Derived("docs/theory/fields-wires.md"), power)
                        .Within(drive.Range),
                    allowed, $"{band.Title}, {ExposureLimits.Name(limit.Rule)}, general public",
                    "Keep people farther away, transmit less power or for a shorter time, or fence the place off.", FarFieldExposure.Caution);
            }),
        ];
    }

    private static (double ElectricVPerM, double MagneticAPerM) Worst(Func<Vec3, NearFieldSample> fields, Vec3 foot, double distanceM)
    {
        double e = 0, h = 0;
        for (var a = 0; a < 16; a++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * a / 16);
            foreach (var height in HeightsM)
            {
                var sample = fields(foot + new Vec3(distanceM * cos, distanceM * sin, height));
                e = Math.Max(e, sample.Electric.Magnitude);
                h = Math.Max(h, sample.Magnetic.Magnitude);
            }
        }

        return (e, h);
    }
}
