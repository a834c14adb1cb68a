using System.Collections.Immutable;
using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Earthing;

/// <summary>Voltages that a person beside the mast bridges.</summary>
/// <param name="DistanceM">Distance of the nearer foot from the mast in metres.</param>
/// <param name="SurfaceV">Potential of the soil there.</param>
/// <param name="StepV">Voltage over the next metre outwards.</param>
/// <param name="TouchV">Voltage between the plate (or the bonded mast) and the soil there.</param>
public sealed record GroundVoltage(double DistanceM, Trail SurfaceV, Trail StepV, Trail TouchV);

/// <summary>Step and touch voltages around the mast from the solved earth, between two radials, where the soil follows the plate least.</summary>
public static class GroundPotential
{
    /// <summary>
    /// Voltages along a line outwards.
    /// </summary>
    /// <param name="earth">The solved earth.</param>
    /// <param name="rise">Rise of the plate over remote earth.</param>
    /// <param name="bearingRad">Direction in radians from the first radial: half the angle between radials is the worst.</param>
    /// <param name="distancesM">Distances in metres, positive.</param>
    public static ImmutableArray<GroundVoltage> Along(BuriedConductors earth, Trail rise, double bearingRad, ImmutableArray<double> distancesM)
    {
        var (s, c) = Math.SinCos(bearingRad);
        double Share(double r) => earth.SurfaceShare(r * c, r * s);
        return
        [
            .. distancesM.Select(r => new GroundVoltage(r,
                Volts("potential of the soil", "Us", rise.Value * Share(r), "Us = Up·share(r)", rise, r),
                Volts("step voltage", "Ustep", rise.Value * (Share(r) - Share(r + 1)), "Ustep = Up·(share(r) − share(r + 1 m))", rise, r),
                Volts("touch voltage", "Utouch", rise.Value * (1 - Share(r)), "Utouch = Up·(1 − share(r))", rise, r))),
        ];
    }

    private static Trail Volts(string name, string symbol, double value, string formula, Trail rise, double distanceM) =>
        Trail.Computed(name, symbol, value, QuantityKind.PeakVoltage, formula, Source.Derived("docs/theory/earth.md"), rise,
            Trail.Given("distance", "r", distanceM, QuantityKind.Length, Source.DesignFile))
            .Within("uniform soil, low frequency: a steep front reaches less far along the radials", null);
}
