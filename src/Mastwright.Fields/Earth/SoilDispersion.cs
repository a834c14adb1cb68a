using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Earth;

/// <summary>
/// How a soil's permittivity and conductivity change with frequency, by a published model that starts from its conductivity at low frequency.
/// All three are causal but differ among each other by tens of per cent: none replaces a measurement on the band.
/// </summary>
public abstract record SoilDispersion
{
    private SoilDispersion()
    {
    }

    /// <summary>The universal soil of Longmire and Smith 1975 (from memory): ε∞ = 5 and thirteen relaxations from hertz to terahertz.</summary>
    public static SoilDispersion LongmireSmith { get; } = new Relaxations();

    /// <summary>Messier 1980 (from memory), with ε∞ = 8.</summary>
    public static SoilDispersion Messier { get; } = new Roots();

    /// <summary>Alipio and Visacro 2014, mean values, in CIGRE brochure 781 (from memory); fitted to measurements up to 4 MHz.</summary>
    public static SoilDispersion AlipioVisacro { get; } = new Powers();

    /// <summary>Complex relative permittivity for the time factor exp(+jωt).</summary>
    /// <param name="conductivitySPerM">Conductivity at low frequency, S/m, positive.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public abstract Complex ComplexPermittivity(double conductivitySPerM, double frequencyHz);

    /// <summary>Highest frequency the model was fitted to, hertz.</summary>
    public virtual double HighestHz => double.PositiveInfinity;

    /// <summary>The model in words.</summary>
    public abstract string Title { get; }

    private static Complex Of(double permittivity, double conductivitySPerM, double frequencyHz) =>
        new(permittivity, -conductivitySPerM / (2 * Math.PI * frequencyHz * Vacuum.PermittivityFPerM));

    // εr(f) = ε∞ + Σ aₙ/(1 + jf/Fₙ), Fₙ = (125 σ₀)^0.8312·10^(n−1) Hz.
    private sealed record Relaxations : SoilDispersion
    {
        private static readonly double[] Strengths = [3.4e6, 2.74e5, 2.58e4, 3.38e3, 5.26e2, 1.33e2, 27.2, 12.5, 4.8, 2.17, 0.98, 0.392, 0.173];

        public override string Title => "Longmire and Smith 1975";

        public override Complex ComplexPermittivity(double conductivitySPerM, double frequencyHz)
        {
            var sum = Of(5, conductivitySPerM, frequencyHz);
            var corner = Math.Pow(125 * conductivitySPerM, 0.8312);
            foreach (var a in Strengths)
            {
                sum += a / new Complex(1, frequencyHz / corner);
                corner *= 10;
            }

            return sum;
        }
    }

    // σ = σ₀(1 + √(4πfε∞/σ₀)), ε = ε∞(1 + √(σ₀/(πfε∞))).
    private sealed record Roots : SoilDispersion
    {
        public override string Title => "Messier 1980";

        public override Complex ComplexPermittivity(double conductivitySPerM, double frequencyHz)
        {
            const double high = 8;
            var epsilon = high * Vacuum.PermittivityFPerM;
            return Of(
                high * (1 + Math.Sqrt(conductivitySPerM / (Math.PI * frequencyHz * epsilon))),
                conductivitySPerM * (1 + Math.Sqrt(4 * Math.PI * frequencyHz * epsilon / conductivitySPerM)), frequencyHz);
        }
    }

    // σ = σ₀ + σ₀·h·(f/1 MHz)^γ, ε = 12ε₀ + tan(πγ/2)·10⁻³·h(σ₀)·σ₀·f^(γ−1)/(2π·(1 MHz)^γ), h = 1.26·σ₀^(−0.73), σ₀ in mS/m, γ = 0.54.
    private sealed record Powers : SoilDispersion
    {
        public override string Title => "Alipio and Visacro 2014";

        public override double HighestHz => 4e6;

        public override Complex ComplexPermittivity(double conductivitySPerM, double frequencyHz)
        {
            const double power = 0.54;
            var milli = 1e3 * conductivitySPerM;
            var grown = 1e-3 * milli * 1.26 * Math.Pow(milli, -0.73) * Math.Pow(frequencyHz / 1e6, power);
            return Of(
                12 + (Math.Tan(Math.PI * power / 2) * grown / (2 * Math.PI * frequencyHz * Vacuum.PermittivityFPerM)),
                conductivitySPerM + grown, frequencyHz);
        }
    }
}
