using System.Collections.Immutable;

namespace Mastwright.Build.Tension;

/// <summary>A mass at one place of a guy: an insulator and its fittings.</summary>
/// <param name="Fraction">Place along the guy, 0 at the anchor, 1 at the mast.</param>
/// <param name="MassKg">Mass in kilograms.</param>
public readonly record struct LumpedMass(double Fraction, double MassKg);

/// <summary>A guy between its two pins, as the tension methods see it.</summary>
/// <param name="Name">Name shown in sheets.</param>
/// <param name="SpanM">Horizontal distance from the anchor's pin to the mast's pin, metres.</param>
/// <param name="RiseM">Height of the mast's pin above the anchor's pin, metres; negative when the anchor is the higher.</param>
/// <param name="WeightNPerM">Weight of one unstretched metre of strand, N/m.</param>
/// <param name="AxialStiffnessN">Stiffness EA of the strand, newtons.</param>
/// <param name="Masses">Insulators and fittings; empty for plain strand.</param>
public sealed record GuySpan(
    string Name,
    double SpanM,
    double RiseM,
    double WeightNPerM,
    double AxialStiffnessN,
    ImmutableArray<LumpedMass> Masses = default)
{
    /// <summary>Standard acceleration of free fall, m/s² (ISO 80000-3).</summary>
    public const double Gravity = 9.80665;

    /// <summary>Straight distance between the pins.</summary>
    public double ChordM => Math.Sqrt((SpanM * SpanM) + (RiseM * RiseM));

    /// <summary>Insulators and fittings, never default.</summary>
    public ImmutableArray<LumpedMass> LumpedMasses => Masses.IsDefault ? [] : Masses;

    /// <summary>Weight of one metre with insulators and fittings spread evenly over the guy.</summary>
    public double SpreadWeightNPerM => WeightNPerM + (LumpedMasses.Sum(m => m.MassKg) * Gravity / ChordM);

    /// <summary>Mass of one metre with insulators and fittings spread evenly.</summary>
    public double SpreadMassKgPerM => SpreadWeightNPerM / Gravity;
}
