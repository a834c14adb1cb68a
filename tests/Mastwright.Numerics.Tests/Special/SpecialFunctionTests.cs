using System.Globalization;
using System.Numerics;
using Mastwright.Numerics.Special;

namespace Mastwright.Numerics.Tests.Special;

/// <summary>Every value against SciPy (table computed by scripts/special_tables.py).</summary>
public class SpecialFunctionTests
{
    private static readonly Dictionary<string, (Func<Complex, Complex> Function, double Tolerance)> Functions = new()
    {
        ["J0"] = (z => z.Imaginary == 0 ? Bessel.J0(z.Real) : Bessel.J0(z), 1e-12),
        ["J1"] = (z => z.Imaginary == 0 ? Bessel.J1(z.Real) : Bessel.J1(z), 1e-12),
        ["Y0"] = (z => Bessel.Y0(z.Real), 1e-12),
        ["Y1"] = (z => Bessel.Y1(z.Real), 1e-12),
        ["H10"] = (Bessel.H1Order0, 1e-12),
        ["H20"] = (Bessel.H2Order0, 1e-12),
        ["H21"] = (Bessel.H2Order1, 1e-12),
        ["Si"] = (z => ExponentialIntegrals.Si(z.Real), 1e-13),
        ["Ci"] = (z => ExponentialIntegrals.Ci(z.Real), 1e-12),
        ["E1"] = (ExponentialIntegrals.E1, 1e-10),
        ["w"] = (Faddeeva.W, 1e-13),
        ["erfc"] = (Faddeeva.Erfc, 1e-12),
        ["K"] = (z => EllipticIntegrals.K(z.Real), 1e-13),
        ["E"] = (z => EllipticIntegrals.E(z.Real), 1e-13),
    };

    [Theory]
    [InlineData("J0")]
    [InlineData("J1")]
    [InlineData("Y0")]
    [InlineData("Y1")]
    [InlineData("H10")]
    [InlineData("H20")]
    [InlineData("H21")]
    [InlineData("Si")]
    [InlineData("Ci")]
    [InlineData("E1")]
    [InlineData("w")]
    [InlineData("erfc")]
    [InlineData("K")]
    [InlineData("E")]
    public void Function_MatchesSciPy(string name)
    {
        var (function, tolerance) = Functions[name];
        var rows = Table().Where(r => r.Name == name).ToList();
        Assert.NotEmpty(rows);
        var wrong = rows
            .Select(r => (r.Z, r.W, Got: function(r.Z)))
            .Where(r => !(Complex.Abs(r.Got - r.W) <= tolerance * Scale(name, r.Z, r.W)))
            .Select(r => $"{name}({r.Z}) = {r.Got}, SciPy {r.W}, off {Complex.Abs(r.Got - r.W) / r.W.Magnitude:E1}");
        Assert.Empty(wrong);
    }

    [Fact]
    public void Cin_JoinsItsTwoFormsAndMatchesCi()
    {
        // Cin(x) = γ + ln x - Ci(x), Abramowitz and Stegun 5.2.2.
        foreach (var x in (double[])[0.5, 1.9, 2.1, 30])
            Assert.Equal(0.57721566490153286 + Math.Log(x) - ExponentialIntegrals.Ci(x), ExponentialIntegrals.Cin(x), 1e-12);
    }

    // Oscillating functions of real argument are held to their envelope: near a zero no relative accuracy exists, and at a
    // large argument its own rounding turns the phase.
    private static double Scale(string name, Complex z, Complex w) =>
        z.Imaginary == 0 && name is "J0" or "J1" or "Y0" or "Y1" or "Ci" or "Si"
            ? Math.Max(w.Magnitude, Math.Min(1, 1 / Math.Sqrt(Math.Abs(z.Real))) * Math.Max(1, Math.Abs(z.Real) / 1000))
            : w.Magnitude;

    private static IEnumerable<(string Name, Complex Z, Complex W)> Table() =>
        from line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "special.tsv"))
        where !line.StartsWith('#')
        let f = line.Split('\t')
        let v = f.Skip(1).Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray()
        select (f[0], new Complex(v[0], v[1]), new Complex(v[2], v[3]));
}
