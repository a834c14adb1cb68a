using System.Globalization;

namespace Mastwright.Model.Design;

/// <summary>Names of the amateur bands by wavelength. Band edges are the widest of the three ITU regions and serve for naming and for the width of a sweep.</summary>
public static class AmateurBands
{
    private static readonly (double FromMhz, double ToMhz, string Name)[] Bands =
    [
        (0.1357, 0.1378, "2200 m"), (0.472, 0.479, "630 m"), (1.8, 2.0, "160 m"), (3.5, 4.0, "80 m"), (5.25, 5.45, "60 m"),
        (7.0, 7.3, "40 m"), (10.1, 10.15, "30 m"), (14.0, 14.35, "20 m"), (18.068, 18.168, "17 m"), (21.0, 21.45, "15 m"),
        (24.89, 24.99, "12 m"), (28.0, 29.7, "10 m"), (50, 54, "6 m"),
    ];

    /// <summary>Edges of the band that holds <paramref name="frequencyHz"/>, Hz; null when none does.</summary>
    public static (double LowHz, double HighHz)? EdgesOf(double frequencyHz)
    {
        var mhz = frequencyHz / 1e6;
        var band = Bands.FirstOrDefault(b => mhz >= b.FromMhz && mhz <= b.ToMhz);
        return band.Name is null ? null : (band.FromMhz * 1e6, band.ToMhz * 1e6);
    }

    /// <summary>The band that holds <paramref name="frequencyHz"/>, or the frequency itself in MHz.</summary>
    public static string NameOf(double frequencyHz)
    {
        var mhz = frequencyHz / 1e6;
        var name = Bands.FirstOrDefault(b => mhz >= b.FromMhz && mhz <= b.ToMhz).Name;
        return name ?? mhz.ToString("0.###", CultureInfo.InvariantCulture) + " MHz";
    }
}
