namespace Mastwright.Circuits.Coils;

/// <summary>Medhurst's measurements of single-layer coils (Wireless Engineer, February and March 1947).</summary>
public static class Medhurst
{
    /// <summary>What holds for the capacitance table.</summary>
    public const string CapacitanceRange = "single-layer coil, one end earthed, l/D from 0.1 to 50, stated accuracy 5 %";

    /// <summary>What holds for the resistance table.</summary>
    public const string ResistanceRange = "single-layer coil of many turns (about 30 or more), wire thicker than four skin depths, d/p from 0.1 to 1";

    private static readonly double[] CapacityShape = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 15, 20, 25, 30, 40, 50];

    private static readonly double[] Capacity = [0.96, 0.79, 0.70, 0.64, 0.60, 0.57, 0.54, 0.52, 0.50, 0.48, 0.47, 0.46, 0.46, 0.46, 0.47, 0.50, 0.56, 0.61, 0.67, 0.72, 0.77, 0.81, 0.92, 1.01, 1.12, 1.22, 1.32, 1.86, 2.36, 2.9, 3.4, 4.6, 5.8];

    private static readonly double[] ProximityShape = [0, 0.2, 0.4, 0.6, 0.8, 1, 2, 4, 6, 8, 10];

    private static readonly double[] ProximitySpacing = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0];

    // Rows by d/p from 0.1 to 1, columns by l/D as in ProximityShape, then the limit of a long coil.
    private static readonly double[][] Proximity =
    [
        [1.02, 1.02, 1.03, 1.03, 1.03, 1.03, 1.04, 1.04, 1.04, 1.04, 1.04, 1.05],
        [1.07, 1.08, 1.08, 1.10, 1.10, 1.10, 1.13, 1.15, 1.16, 1.165, 1.17, 1.19],
        [1.16, 1.19, 1.21, 1.22, 1.23, 1.24, 1.28, 1.32, 1.34, 1.34, 1.35, 1.40],
        [1.26, 1.29, 1.33, 1.38, 1.42, 1.45, 1.50, 1.54, 1.56, 1.57, 1.58, 1.65],
        [1.44, 1.48, 1.54, 1.60, 1.64, 1.67, 1.74, 1.78, 1.80, 1.81, 1.83, 1.93],
        [1.74, 1.77, 1.83, 1.89, 1.92, 1.94, 1.98, 2.01, 2.03, 2.08, 2.10, 2.22],
        [2.12, 2.20, 2.28, 2.38, 2.44, 2.47, 2.32, 2.27, 2.29, 2.34, 2.37, 2.51],
        [2.74, 2.83, 2.97, 3.10, 3.20, 3.17, 2.74, 2.60, 2.60, 2.62, 2.65, 2.81],
        [3.73, 3.84, 3.99, 4.11, 4.17, 4.10, 3.36, 3.05, 2.92, 2.90, 2.93, 3.11],
        [5.31, 5.45, 5.65, 5.80, 5.80, 5.55, 4.10, 3.54, 3.31, 3.20, 3.23, 3.41],
    ];

    /// <summary>Self-capacitance C = H·D with D in centimetres and C in picofarads, in farads. Between the rows H is straight against log l/D.</summary>
    /// <param name="diameterM">Mean diameter, metres.</param>
    /// <param name="lengthM">Length, metres; outside the table the end row holds.</param>
    public static double SelfCapacitanceF(double diameterM, double lengthM)
    {
        var (k, share) = Place(CapacityShape, lengthM / diameterM, logarithmic: true);
        var h = Capacity[k] + (share * (Capacity[k + 1] - Capacity[k]));
        return h * diameterM * 100 * 1e-12;
    }

    /// <summary>Whether a shape lies in the capacitance table.</summary>
    public static bool CapacitanceCovers(double diameterM, double lengthM) => lengthM / diameterM is >= 0.1 and <= 50;

    /// <summary>
    /// Proximity factor Φ: resistance of the coiled wire over that of the same wire straight, at high frequency
    /// (Medhurst 1947 table VIII, from memory); straight between rows and columns.
    /// </summary>
    /// <param name="lengthOverDiameter">l/D.</param>
    /// <param name="wireOverPitch">d/p; held to the table's 0.1 to 1.</param>
    public static double ProximityFactor(double lengthOverDiameter, double wireOverPitch)
    {
        var (row, share) = Place(ProximitySpacing, wireOverPitch, logarithmic: false);
        return AtShape(Proximity[row]) + (share * (AtShape(Proximity[row + 1]) - AtShape(Proximity[row])));

        double AtShape(double[] values)
        {
            // From l/D = 10 on, straight in D/l towards the long coil.
            if (lengthOverDiameter > 10)
                return values[11] + ((values[10] - values[11]) * 10 / lengthOverDiameter);
            var (column, part) = Place(ProximityShape, lengthOverDiameter, logarithmic: false);
            return values[column] + (part * (values[column + 1] - values[column]));
        }
    }

    private static (int Index, double Share) Place(double[] axis, double x, bool logarithmic)
    {
        x = Math.Clamp(x, axis[0], axis[^1]);
        var k = 0;
        while (k < axis.Length - 2 && axis[k + 1] < x)
            k++;
        var share = logarithmic
            ? Math.Log(x / axis[k]) / Math.Log(axis[k + 1] / axis[k])
            : (x - axis[k]) / (axis[k + 1] - axis[k]);
        return (k, share);
    }
}
