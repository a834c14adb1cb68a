using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Tests;

/// <summary>Models the tests share.</summary>
internal static class Monopoles
{
    public const double FrequencyHz = 3.6e6;

    /// <summary>Old formulas take the wave impedance as 120π; this brings them to the exact one.</summary>
    public const double PerTextbookOhm = Vacuum.WaveImpedanceOhm / (120 * Math.PI);

    public static double Wavelength => Vacuum.WavelengthM(FrequencyHz);

    /// <summary>A base-fed monopole on perfect ground, its height in radians of phase.</summary>
    public static WireModel OverGround(double kh, double heightOverRadius)
    {
        var h = kh * Wavelength / (2 * Math.PI);
        return WireModel.Over(Ground.Perfect)
            .With(new Wire("mast", Vec3.Zero, new(0, 0, h), h / heightOverRadius))
            .WithFeed("base", "mast");
    }

    /// <summary>Two base-fed monopoles side by side, heights and spacing in wavelengths.</summary>
    public static WireModel Pair(double height1, double height2, double spacing, double radius) =>
        WireModel.Over(Ground.Perfect)
            .With(
                new Wire("one", Vec3.Zero, new(0, 0, height1 * Wavelength), radius * Wavelength),
                new Wire("two", new(spacing * Wavelength, 0, 0), new(spacing * Wavelength, 0, height2 * Wavelength), radius * Wavelength))
            .WithFeed("base one", "one")
            .WithFeed("base two", "two");

    public static MeshOptions UniformMesh(double segments) => new(1, segments, Uniform: true);

    public static SolverOptions Uniform(double segments) => new(UniformMesh(segments));

    public static WireSolution Solve(WireModel model, SolverOptions? options = null) =>
        WireSolver.Solve(model, FrequencyHz, options, TestContext.Current.CancellationToken).Require();

    public static WireMesh Mesh(WireModel model, double segments)
    {
        var (mesh, findings) = WireMesh.Build(model, FrequencyHz, UniformMesh(segments));
        Assert.Empty(findings);
        return mesh!;
    }

    /// <summary>Sets the unknowns so that a vertical wire standing on the ground carries sin k(h − z)/sin kh.</summary>
    public static Complex[] SinusoidOn(WireMesh mesh, int wire)
    {
        var k = Vacuum.WaveNumber(FrequencyHz);
        var h = mesh.Model.Wires[wire].LengthM;
        var x = new Complex[mesh.UnknownCount];
        for (var s = 0; s < mesh.Segments.Length; s++)
            if (mesh.Segments[s].Wire == wire)
                foreach (var term in mesh.Basis.At(new(s, 0)))
                    x[term.Unknown] = term.Weight * Math.Sin(k * (h - mesh.Segments[s].Start.Z)) / Math.Sin(k * h);
        return x;
    }

    /// <summary>xᵀ Z y: the reaction between two currents.</summary>
    public static Complex Reaction(WireMesh mesh, Complex[] x, Complex[] y)
    {
        var matrix = ImpedanceMatrix.Fill(mesh, FrequencyHz, TestContext.Current.CancellationToken);
        var n = x.Length;
        var sum = Complex.Zero;
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                sum += x[i] * matrix[i, j] * y[j];
        return sum;
    }

    /// <summary>A mesh carrying given unknowns, without solving.</summary>
    public static DrivenWires Carrying(WireMesh mesh, Complex[] unknowns) => new(mesh, FrequencyHz, unknowns, new Complex[mesh.FeedEnds.Length]);

    public static void Near(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"expected {expected} within {relative:P3}, found {actual}");

    public static void Near(Complex expected, Complex actual, double relative) =>
        Assert.True((actual - expected).Magnitude <= relative * expected.Magnitude, $"expected {expected} within {relative:P3}, found {actual}");
}
