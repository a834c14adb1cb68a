using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Lines;

/// <summary>A ferrite ring by its maker's figures.</summary>
/// <param name="Name">What the builder calls it.</param>
/// <param name="OuterM">Outer diameter, metres.</param>
/// <param name="InnerM">Inner diameter, metres.</param>
/// <param name="HeightM">Height, metres.</param>
/// <param name="Permeability">Initial relative permeability.</param>
/// <param name="RelaxationHz">Frequency at which its loss part peaks, hertz.</param>
public sealed record FerriteRing(string Name, double OuterM, double InnerM, double HeightM, double Permeability, double RelaxationHz)
{
    /// <summary>Complex relative permeability by one relaxation: μ = 1 + (μi - 1)/(1 + jf/fr) (Debye's form; makers' curves differ from it by some tens of percent).</summary>
    public Complex At(double frequencyHz) => 1 + ((Permeability - 1) / new Complex(1, frequencyHz / RelaxationHz));

    /// <summary>Turns of a cable that pass through the hole in one layer.</summary>
    public int MostTurns(double cableM) => (int)Math.Floor(Math.PI * Math.Max(0, InnerM - cableM) / cableM);

    /// <summary>Surface of a stack of rings, square metres.</summary>
    public double SurfaceM2(int rings) =>
        (Math.PI * (OuterM + InnerM) * HeightM * rings) + (Math.PI / 2 * ((OuterM * OuterM) - (InnerM * InnerM)));
}

/// <summary>What a choke has to do on one band.</summary>
/// <param name="Band">Name of the band.</param>
/// <param name="FrequencyHz">Frequency, hertz.</param>
/// <param name="Need">What drives the outside of the cable and what is needed.</param>
/// <param name="Duty">Average over peak power.</param>
public sealed record ChokeDuty(string Band, double FrequencyHz, CommonModeChoke Need, double Duty);

/// <summary>What a choke does on one band.</summary>
/// <param name="Duty">What is asked.</param>
/// <param name="ImpedanceOhm">Its impedance, ohms.</param>
/// <param name="Current">Current that is left on the outside, A RMS.</param>
/// <param name="Heat">Average heat in it, W.</param>
/// <param name="TemperatureRise">Rise of its surface above still air, K.</param>
public sealed record ChokeBand(ChokeDuty Duty, Complex ImpedanceOhm, Trail Current, Trail Heat, Trail TemperatureRise);

/// <summary>A choke: turns of the feed cable on a stack of ferrite rings.</summary>
/// <param name="Ring">The ring.</param>
/// <param name="Rings">How many are stacked.</param>
/// <param name="Turns">Turns of cable through them.</param>
/// <param name="Bands">What it does on each band.</param>
public sealed record FerriteChoke(FerriteRing Ring, int Rings, int Turns, ImmutableArray<ChokeBand> Bands)
{
    /// <summary>Capacitance across the winding, farads (common practice, no source: a single layer with its ends apart).</summary>
    public const double StrayF = 2e-12;

    /// <summary>The most its surface may warm up, kelvin (common practice, no source: far below where ferrite loses itself and plastic softens).</summary>
    public const double MostRiseK = 40;

    private const double SurfaceWPerM2K = 12;
    private const int MostRings = 6;

    /// <summary>Impedance of some turns through some rings, ohms: Z = jω·μ0·μ·N²·n·h·ln(D/d)/(2π) with the stray capacitance across it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not above zero.</exception>
    public static Complex ImpedanceOhm(FerriteRing ring, int rings, int turns, double frequencyHz)
    {
        var omega = 2 * Math.PI * Guard.Positive(frequencyHz);
        var geometry = 2e-7 * turns * turns * rings * ring.HeightM * Math.Log(ring.OuterM / ring.InnerM);
        var z = new Complex(0, omega * geometry) * ring.At(frequencyHz);
        return 1 / ((1 / z) + new Complex(0, omega * StrayF));
    }

    /// <summary>The smallest choke of the rings at hand that leaves no more current than allowed on any band and stays cool; a finding names the nearest when none does.</summary>
    /// <param name="rings">Rings at hand.</param>
    /// <param name="duties">What it has to do.</param>
    /// <param name="cableM">Outer diameter of the cable wound on it, metres.</param>
    public static (FerriteChoke? Choke, ImmutableArray<Finding> Findings) Design(IEnumerable<FerriteRing> rings, ImmutableArray<ChokeDuty> duties, double cableM)
    {
        var all = (from ring in rings
                   from n in Enumerable.Range(1, MostRings)
                   from t in Enumerable.Range(1, Math.Clamp(ring.MostTurns(Guard.Positive(cableM)), 0, 24))
                   orderby n * ring.OuterM * ring.OuterM * ring.HeightM, t
                   select (ring, n, t)).Select(c => Of(c.ring, c.n, c.t, duties)).ToList();
        if (all.FirstOrDefault(c => c.Shortfall <= 1 && c.Hottest <= MostRiseK) is { } good)
            return (good, []);
        var nearest = all.Where(c => c.Hottest <= MostRiseK).MinBy(c => c.Shortfall) ?? all.MinBy(c => c.Hottest);
        return (nearest, [new("choke-none", Severity.Warning, "No single choke of the rings at hand keeps the current on the outside of the cable below what is allowed on every band and stays cool; the nearest is shown.",
            Value: nearest is null ? "no ring takes this cable" : FormattableString.Invariant($"{nearest.Shortfall:0.0} times the current allowed, {nearest.Hottest:0} K"), Allowed: FormattableString.Invariant($"1 time, {MostRiseK:0} K"),
            WayOut: nearest is null ? "Wind thinner cable, or take larger rings." : "Put two chokes in series some metres apart, bury the cable, or allow more current on it.")]);
    }

    /// <summary>The worst current left over that allowed.</summary>
    public double Shortfall => Bands.Select(b => b.Current.Value / b.Duty.Need.AllowedA).DefaultIfEmpty(0).Max();

    /// <summary>The highest rise of temperature, K.</summary>
    public double Hottest => Bands.Select(b => b.TemperatureRise.Value).DefaultIfEmpty(0).Max();

    private static FerriteChoke Of(FerriteRing ring, int rings, int turns, ImmutableArray<ChokeDuty> duties) =>
        new(ring, rings, turns, [.. duties.Select(d => Of(ring, rings, turns, d))]);

    private static ChokeBand Of(FerriteRing ring, int rings, int turns, ChokeDuty duty)
    {
        var page = Source.Derived("docs/theory/circuits-lines.md");
        var z = ImpedanceOhm(ring, rings, turns, duty.FrequencyHz);
        var amps = duty.Need.DriveVoltage.Value / (z + duty.Need.PathOhm).Magnitude;
        var turned = Trail.Given("turns on the core", "N", turns, QuantityKind.Count, new("the choke as wound", SourceKind.Design));
        var current = Trail.Computed("current left on the outside", "I", amps, QuantityKind.RmsCurrent, "I = Vc/|Rp + Z|, Z = jω·μ0·μ(f)·N²·n·h·ln(D/d)/(2π)", page, duty.Need.DriveVoltage, turned);
        var heat = Trail.Computed("heat in the choke", "P", amps * amps * z.Real * duty.Duty, QuantityKind.Power, "P = η·I²·Re Z", page, current);
        var rise = Trail.Computed("temperature rise of the choke", "ΔT", heat.Value / (SurfaceWPerM2K * ring.SurfaceM2(rings)), QuantityKind.TemperatureDifference, "ΔT = P/(h·A), h = 12 W/(m²K)", Source.CommonPractice, heat)
            .Within("still air; a closed box adds its own rise");
        return new(duty, z, current, heat, rise);
    }
}
