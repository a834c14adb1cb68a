namespace Mastwright.Protection.Gaps;

/// <summary>
/// The exact field of two equal spheres at opposite potentials, and of a sphere facing a plane, by successive images
/// (Maxwell; Smythe, Static and Dynamic Electricity). Kept as a plain closed form: it is also the oracle of the boundary-element engine.
/// </summary>
public static class SphereImages
{
    /// <summary>
    /// Electric field on the axis of a gap for one volt across it, in 1/m.
    /// </summary>
    /// <param name="radiusM">Sphere radius in metres.</param>
    /// <param name="spacingM">Gap in metres.</param>
    /// <param name="facesPlate">True for a sphere at 1 V facing a plane at 0 V; false for two equal spheres at ±½ V.</param>
    /// <param name="distanceM">Distances from the sphere's surface along the axis, in metres, each within the gap.</param>
    public static double[] AxisFieldPerVolt(double radiusM, double spacingM, bool facesPlate, ReadOnlySpan<double> distanceM)
    {
        // A sphere facing a plane at gap s is half of two spheres at gap 2s.
        var gap = facesPlate ? 2 * spacingM : spacingM;
        var centre = (2 * radiusM) + gap;
        var field = new double[distanceM.Length];
        var x = 0.0;
        var q = radiusM * (facesPlate ? 1.0 : 0.5);
        var smallest = 1e-13 * q;
        while (q > smallest)
        {
            for (var i = 0; i < field.Length; i++)
            {
                var p = radiusM + distanceM[i];
                field[i] += (q / ((p - x) * (p - x))) + (q / ((centre - x - p) * (centre - x - p)));
            }

            var toOther = centre - x;
            q *= radiusM / toOther;
            x = radiusM * radiusM / toOther;
        }

        return field;
    }

    /// <summary>Greatest field times gap over voltage, f = Emax·s/U, at least 1: how far from uniform the gap is.</summary>
    public static double FieldFactor(double radiusM, double spacingM, bool facesPlate) =>
        AxisFieldPerVolt(radiusM, spacingM, facesPlate, [0.0])[0] * spacingM;
}
