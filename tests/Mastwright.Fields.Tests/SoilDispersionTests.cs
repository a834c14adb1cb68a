using Mastwright.Fields.Earth;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Soils that change with frequency: causality, limits, and the published models against each other.</summary>
public class SoilDispersionTests
{
    private const double Epsilon0 = 8.8541878128e-12;

    private static readonly string[] Models = ["ls", "messier", "av"];

    private static SoilDispersion Of(string name) => name switch { "ls" => SoilDispersion.LongmireSmith, "messier" => SoilDispersion.Messier, _ => SoilDispersion.AlipioVisacro };

    [Theory]
    [InlineData("ls")]
    [InlineData("messier")]
    [InlineData("av")]
    public void Conductivity_at_low_frequency_is_the_one_given_and_both_keep_their_order(string model)
    {
        var soil = new Soil("test", 10, 0.004, Of(model));
        Near(0.004, soil.ConductivityAt(0.01), 0.01);
        double[] frequencies = [1e2, 1e4, 1e6, 1e7, 3e7];
        for (var i = 1; i < frequencies.Length; i++)
        {
            // A passive relaxing medium conducts better and stores less as frequency rises (Debye; Kramers and Kronig).
            Assert.True(soil.ConductivityAt(frequencies[i]) > soil.ConductivityAt(frequencies[i - 1]));
            Assert.True(soil.PermittivityAt(frequencies[i]) < soil.PermittivityAt(frequencies[i - 1]));
        }
    }

    [Theory]
    [InlineData("messier", 0.5, 8)]
    [InlineData("av", 0.54, 12)]
    public void What_grows_as_a_power_has_the_phase_that_causality_asks(string model, double power, double permittivity)
    {
        // (jω)^γ is the only causal admittance growing as ω^γ: its imaginary part is tan(πγ/2) of its real part.
        var soil = new Soil("test", 10, 0.004, Of(model));
        foreach (var f in (double[])[1e5, 1e6, 2e7])
        {
            var stored = 2 * Math.PI * f * Epsilon0 * (soil.PermittivityAt(f) - permittivity);
            Near(Math.Tan(Math.PI * power / 2), stored / (soil.ConductivityAt(f) - 0.004), 1e-6);
        }
    }

    [Fact]
    public void Relaxations_obey_Kramers_and_Kronig()
    {
        // ε′(ω) = ε∞ + (2/π)∫ x·ε″(x)/(x² − ω²) dx of what is left without the steady conduction, by the midpoint rule in ln x, singularity straddled.
        var soil = new Soil("test", 10, 0.004, SoilDispersion.LongmireSmith);
        double Lost(double f) => -soil.ComplexPermittivity(f).Imaginary - (0.004 / (2 * Math.PI * f * Epsilon0));
        foreach (var f in (double[])[1e5, 2e6, 2e7])
        {
            var sum = 0.0;
            const double step = 0.002;
            for (var i = -15000; i < 8000; i++)
            {
                var x = f * Math.Exp(step * (i + 0.5));
                sum += step * x * x * Lost(x) / ((x * x) - (f * f));
            }

            Near(soil.PermittivityAt(f), 5 + (2 / Math.PI * sum), 0.01);
        }
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.005)]
    [InlineData(0.02)]
    public void Published_models_agree_as_roughly_as_they_are_known_to(double conductivity)
    {
        // Reviews of the models find them within a factor of two or so of each other in conductivity up to a few megahertz (from memory).
        foreach (var f in (double[])[1e5, 1e6, 3.6e6])
        {
            var all = Models.Select(m => new Soil("test", 10, conductivity, Of(m)).ConductivityAt(f)).ToList();
            Assert.InRange(all.Max() / all.Min(), 1, 2.5);
        }
    }
}
