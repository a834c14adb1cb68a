using System.Collections.Immutable;
using Mastwright.Circuits.Ac;

namespace Mastwright.Circuits.Tolerance;

/// <summary>One state of the soil or the weather and the antenna's impedance in it.</summary>
/// <param name="Name">E.g. <c>"wet soil"</c>.</param>
/// <param name="Weight">Share of the days, any scale.</param>
/// <param name="Load">The antenna's impedance then.</param>
public sealed record LoadScenario(string Name, double Weight, LoadImpedance Load);

/// <summary>What varies. Values of parts are even over plus or minus their tolerance; temperature and scatter are normal.</summary>
public sealed record ToleranceSpec
{
    /// <summary>States of soil and weather; the candidate's own load alone when empty.</summary>
    public ImmutableArray<LoadScenario> Scenarios { get; init; } = [];

    /// <summary>Tolerance of coils, as a share. It counts only when <see cref="TunedOnSite"/> is false.</summary>
    public double Coil { get; init; } = 0.05;

    /// <summary>Tolerance of capacitors, as a share. It counts only when <see cref="TunedOnSite"/> is false.</summary>
    public double Capacitor { get; init; } = 0.05;

    /// <summary>Tolerance of lengths of line and stubs, as a share. It counts only when <see cref="TunedOnSite"/> is false.</summary>
    public double Length { get; init; } = 0.01;

    /// <summary>Whether the network is tuned after building, so that tolerances of parts are taken out and only drift is left.</summary>
    public bool TunedOnSite { get; init; } = true;

    /// <summary>Standard deviation of the temperature against that of the tuning day, kelvin.</summary>
    public double TemperatureK { get; init; } = 15;

    /// <summary>Temperature coefficient of coils, 1/K (common practice, no source: copper on plastic bars).</summary>
    public double CoilPerK { get; init; } = 50e-6;

    /// <summary>Temperature coefficient of capacitors, 1/K (common practice, no source: mica and air stay below).</summary>
    public double CapacitorPerK { get; init; } = 100e-6;

    /// <summary>Temperature coefficient of line lengths, electrical, 1/K.</summary>
    public double LengthPerK { get; init; } = 50e-6;

    /// <summary>Standard deviation of the load's resistance beside the scenarios, as a share.</summary>
    public double LoadResistance { get; init; } = 0.03;

    /// <summary>Standard deviation of the load's reactance beside the scenarios, ohms.</summary>
    public double LoadReactanceOhm { get; init; } = 2;
}

/// <summary>The outcome of a tolerance study.</summary>
/// <param name="Trials">Number of trials.</param>
/// <param name="Seed">The seed; the same seed gives the same outcome.</param>
/// <param name="SwrLimit">The limit.</param>
/// <param name="ShareInside">Share of the trials at or below the limit.</param>
/// <param name="Interval">95 % interval of that share (Wilson 1927).</param>
/// <param name="Median">Median standing wave ratio.</param>
/// <param name="Ninety">The standing wave ratio that nine of ten trials stay below.</param>
/// <param name="ByScenario">Share inside the limit in each scenario.</param>
/// <param name="Causes">The standing wave ratio nine of ten trials stay below when only one cause varies, the worst first.</param>
/// <param name="Sorted">All standing wave ratios, rising.</param>
public sealed record ToleranceResult(
    int Trials,
    int Seed,
    double SwrLimit,
    double ShareInside,
    (double Low, double High) Interval,
    double Median,
    double Ninety,
    ImmutableArray<(string Scenario, double ShareInside)> ByScenario,
    ImmutableArray<(string Cause, double Ninety)> Causes,
    ImmutableArray<double> Sorted);
