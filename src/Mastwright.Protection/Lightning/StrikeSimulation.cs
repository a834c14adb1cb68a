using Mastwright.Circuits.Transient;
using Mastwright.Model.Trails;
using Mastwright.Protection.Earthing;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Lightning;

/// <summary>
/// Follows a lightning current through mast, gap, earth, network, cable and house in time. The whole station is one circuit in the transient engine;
/// the gap fires by the equal-area rule and its arc follows Toepler's law in series with a burning voltage.
/// </summary>
public static class StrikeSimulation
{
    private static readonly Source Page = Source.Derived("docs/theory/lightning.md");

    /// <summary>Runs a scenario; null when it has faults, which <see cref="StrikeScenario.Faults"/> names.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="tolerance">Error allowed in each step, as a share of every charge and flux.</param>
    /// <param name="solved">The earth of <see cref="StrikeScenario.Earth"/> when it has been solved already; null solves it.</param>
    /// <param name="cancellation">Cancels.</param>
    public static StrikeResult? Run(
        StrikeScenario scenario, IProgress<double>? progress = null, double tolerance = 1e-4, RadialEarth? solved = null, CancellationToken cancellation = default)
    {
        if (!scenario.Faults().IsEmpty)
            return null;
        var earth = solved ?? new RadialEarth(scenario.Earth, SoilIonisation.CriticalFieldCigre);
        var spark = scenario.Gap is { } gap ? GapBreakdown.PeakVolts(gap.Electrodes, gap.SpacingM, gap.Air) : null;
        var end = scenario.EndS ?? Math.Min(5 * scenario.Stroke.TailS, 2e-3);
        var options = new TransientOptions(end) { RelativeTolerance = tolerance, FloorV = 100, FloorA = 1 };
        var raw = StrikeCircuit.Build(scenario, earth, spark).Run(options, progress, cancellation);
        return new StrikeReading(scenario, earth, spark, raw).Read();
    }

    /// <summary>
    /// What a longer strap costs: rise of the voltage across the base for each extra metre of strap in the gap's path, from two runs, in volts a metre
    /// (a value of kind voltage). Null when there is no gap or the scenario has faults.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="extraM">Extra length of the second run in metres.</param>
    /// <param name="solved">The earth when it has been solved already; null solves it.</param>
    public static Trail? CostOfLongerStrap(StrikeScenario scenario, double extraM = 1, RadialEarth? solved = null)
    {
        if (!scenario.Faults().IsEmpty || scenario.Gap is not { } gap)
            return null;
        var earth = solved ?? new RadialEarth(scenario.Earth, SoilIonisation.CriticalFieldCigre);
        if (Run(scenario, solved: earth) is not { } one || Run(scenario with { Gap = gap with { StrapLengthM = gap.StrapLengthM + extraM } }, solved: earth) is not { } two)
            return null;
        var (before, after) = (AfterFiring(one), AfterFiring(two));
        return Trail.Computed("voltage for each metre of strap", "ΔU", (after.Value - before.Value) / extraM, QuantityKind.PeakVoltage, "ΔU = (U2 − U1)/Δl, two runs", Page,
            before, after, Trail.Given("extra length", "Δl", extraM, QuantityKind.Length, Source.DesignFile))
            .Remark("Voltage across the base once the gap burns: strap and arc.");
    }

    /// <summary>
    /// The voltage a stroke would build up across the gap if it never fired: the front its volt-time curve is read from. No network and no cable stand beside
    /// the gap, which makes it the steepest such a stroke can be there. Null when the scenario has faults or no gap.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="solved">The earth when it has been solved already; null solves it.</param>
    public static StrikeFront? FrontAtGap(StrikeScenario scenario, RadialEarth? solved = null)
    {
        const int steps = 400;
        var open = scenario with { Feed = [], Cable = null, House = null };
        if (open.Gap is null || !open.Faults().IsEmpty)
            return null;
        var never = Trail.Assumed("spark voltage of a gap that never fires", "Us", 1e12, QuantityKind.PeakVoltage, "only the front is wanted");
        var end = scenario.Stroke.CrestTimeS();
        var raw = StrikeCircuit.Build(open, solved ?? new RadialEarth(scenario.Earth, SoilIonisation.CriticalFieldCigre), never)
            .Run(new TransientOptions(end) { RelativeTolerance = 1e-3, FloorV = 100, FloorA = 1, LongestStepS = end / steps });
        return new(scenario.Stroke.Name, raw.TimesS, [.. raw.VoltageAcross(StrikeCircuit.GapPart)]);
    }

    // Before it fires the gap sets the voltage; what the strap adds shows afterwards.
    private static Trail AfterFiring(StrikeResult result)
    {
        var across = result.Raw.VoltageAcross("base insulator");
        var from = (result.FiredAtS?.Value ?? 0) + 20e-9;
        var peak = Enumerable.Range(0, across.Count).Where(i => result.Raw.TimesS[i] > from).Select(i => Math.Abs(across[i])).DefaultIfEmpty(0).Max();
        return Trail.Computed("base voltage after firing", "U", peak, QuantityKind.PeakVoltage, "transient run", Page);
    }
}
