using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Fields.Wires;

/// <summary>
/// What a wire is made of, as radio frequency sees it. Radius, not strand count, is what the wire itself carries;
/// a stranded or braided conductor is described by lowering its conductivity.
/// </summary>
/// <param name="Name">Trade name of the metal.</param>
/// <param name="ConductivitySPerM">DC conductivity in S/m; positive infinity means no loss.</param>
/// <param name="RelativePermeability">Relative permeability at radio frequency; 1 for non-magnetic metals.</param>
public sealed record Conductor(string Name, double ConductivitySPerM, double RelativePermeability)
{
    /// <summary>A conductor without loss.</summary>
    public static Conductor Perfect { get; } = new("perfect conductor", double.PositiveInfinity, 1);

    /// <summary>Annealed copper: 5.80e7 S/m (IACS definition, IEC 60028).</summary>
    public static Conductor Copper { get; } = new("copper", 5.80e7, 1);

    /// <summary>Structural aluminium alloy (6061-T6): 2.5e7 S/m, from memory: handbook value of 43 % IACS.</summary>
    public static Conductor Aluminium { get; } = new("aluminium", 2.5e7, 1);

    /// <summary>
    /// Mild steel: 6e6 S/m, relative permeability 100 in weak fields; from memory: order of magnitude only, the permeability of
    /// guy strand is scattered from about 50 to 300.
    /// </summary>
    public static Conductor Steel { get; } = new("steel", 6e6, 100);

    /// <summary>
    /// A hot-dip galvanised surface: the current flows in the zinc when the coat is thicker than the skin depth
    /// (about 46 μm at 7 MHz); 1.69e7 S/m, from memory: handbook value of zinc.
    /// </summary>
    public static Conductor Zinc { get; } = new("zinc", 1.69e7, 1);

    /// <summary>Whether the metal loses no power.</summary>
    public bool IsPerfect => double.IsPositiveInfinity(ConductivitySPerM);

    /// <summary>
    /// Internal impedance per metre of a round solid wire, exact for an axially symmetric current:
    /// z = γ/(2πaσ)·I₀(γa)/I₁(γa), γ = (1 + j)/δ, δ = √(2/ωμσ).
    /// Source: Ramo, Whinnery and Van Duzer, Fields and Waves in Communication Electronics (from memory).
    /// </summary>
    /// <param name="radiusM">Wire radius in metres.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    /// <returns>Series impedance in Ω/m; zero for a perfect conductor.</returns>
    public Complex InternalImpedancePerM(double radiusM, double frequencyHz)
    {
        if (IsPerfect)
            return Complex.Zero;
        var skinDepthM = SkinDepthM(frequencyHz);
        var gamma = new Complex(1, 1) / skinDepthM;
        return gamma / (2 * Math.PI * radiusM * ConductivitySPerM * BesselRatio(gamma * radiusM));
    }

    /// <summary>Depth at which the current density has fallen to 1/e, in metres.</summary>
    public double SkinDepthM(double frequencyHz) => Math.Sqrt(
        1 / (Math.PI * frequencyHz * Vacuum.PermeabilityHPerM * RelativePermeability * ConductivitySPerM));

    // I1(x)/I0(x) by its continued fraction 1/(2/x + 1/(4/x + 1/(6/x + ...))), run backwards from far enough out.
    private static Complex BesselRatio(Complex x)
    {
        var size = x.Magnitude;
        if (size > 400)
            return 1 - (1 / (2 * x)) - (1 / (8 * x * x));
        var terms = (int)(2 * size) + 30;
        var tail = Complex.Zero;
        for (var n = terms; n >= 1; n--)
            tail = 1 / ((2 * n / x) + tail);
        return tail;
    }
}
