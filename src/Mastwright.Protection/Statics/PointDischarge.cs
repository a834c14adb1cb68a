using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Protection.Statics;

/// <summary>The current that sprays from a point into the air under a cloud.</summary>
public static class PointDischarge
{
    private static readonly Source Chapman = Source.FromMemory("Chapman, The magnitude of corona point discharge current, J. Atmos. Sci. 27", "1970");
    private static readonly Source WhippleScrase = Source.FromMemory("Whipple and Scrase, Point discharge in the electric field of the earth, Geophys. Mem. 68", "1936");

    /// <summary>
    /// Current from an elevated point in wind, I = 2π ε₀ (V − V₁) W: V is the potential between the point and the air at its height, V₁ that at onset.
    /// </summary>
    /// <param name="fieldVPerM">Atmospheric field.</param>
    /// <param name="onsetFieldVPerM">Atmospheric field at which the point begins to spray.</param>
    /// <param name="heightM">Height of the point in metres.</param>
    /// <param name="windMPerS">Wind at the point in m/s.</param>
    public static Trail InWind(Trail fieldVPerM, Trail onsetFieldVPerM, double heightM, double windMPerS)
    {
        const double twoPiEps = 2 * Math.PI * Vacuum.PermittivityFPerM;
        var volts = Math.Max(0, (fieldVPerM.Value - onsetFieldVPerM.Value) * heightM);
        return Trail.Computed("point-discharge current", "Ip", twoPiEps * volts * windMPerS, QuantityKind.PeakCurrent,
            "Ip = 2π·ε0·(E0 − E1)·h·W", Chapman,
            fieldVPerM, onsetFieldVPerM,
            Trail.Given("height of the point", "h", heightM, QuantityKind.Length, Source.DesignFile),
            Trail.Given("wind speed", "W", windMPerS, QuantityKind.Speed, Source.DesignFile))
            .Within("one point, steady field, wind above about 1 m/s", windMPerS < 1 ? "In still air the current is carried by the field alone and this law is too low." : null)
            .Remark("Published currents at one field differ by a factor of several from site to site.");
    }

    /// <summary>
    /// The square law measured at Kew with one point 8.4 m high: I = 8·10⁻⁴ (F² − 8.6²) µA with F in V/cm. Beside the other law, for its order of magnitude.
    /// </summary>
    /// <param name="fieldVPerM">Atmospheric field.</param>
    public static Trail AtKew(Trail fieldVPerM)
    {
        var f = fieldVPerM.Value / 100;
        return Trail.Computed("point-discharge current, 8.4 m point", "Ik", Math.Max(0, 8e-4 * ((f * f) - (8.6 * 8.6))) * 1e-6, QuantityKind.PeakCurrent,
            "Ik = 8e-4 (F² − 8.6²) µA, F in V/cm", WhippleScrase, fieldVPerM)
            .Within("one point 8.4 m high, fields of 0.86 to about 10 kV/m", fieldVPerM.Value > 1e4 ? "The field is above those observed." : null);
    }
}
