using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Circuits.Lines;

/// <summary>One place on a feed line at full power.</summary>
/// <param name="FromLoadM">Distance from the load, metres.</param>
/// <param name="Voltage">Voltage there.</param>
/// <param name="Current">Current there.</param>
/// <param name="Swr">Standing wave ratio there.</param>
public sealed record FeedLinePoint(double FromLoadM, PeakVolts Voltage, RmsAmps Current, double Swr);

/// <summary>What a feed line does between the transmitter and what hangs on its end.</summary>
/// <param name="InputOhm">Impedance at the transmitter's end, ohms.</param>
/// <param name="SwrAtLoad">Standing wave ratio at the load.</param>
/// <param name="SwrAtInput">Standing wave ratio at the transmitter's end, lower by what the loss hides.</param>
/// <param name="MatchedLoss">Loss with a matched load, dB.</param>
/// <param name="TotalLoss">Loss with this load, dB.</param>
/// <param name="LoadPower">Power that reaches the load, W.</param>
/// <param name="HighestVoltage">Highest crest voltage on the line, V.</param>
/// <param name="HighestVoltageFromLoadM">Where, metres from the load.</param>
/// <param name="HighestCurrent">Highest RMS current on the line, A.</param>
/// <param name="Profile">Voltage, current and standing wave ratio along the line.</param>
public sealed record FeedLine(
    Complex InputOhm,
    Trail SwrAtLoad,
    Trail SwrAtInput,
    Trail MatchedLoss,
    Trail TotalLoss,
    Trail LoadPower,
    Trail HighestVoltage,
    double HighestVoltageFromLoadM,
    Trail HighestCurrent,
    ImmutableArray<FeedLinePoint> Profile)
{
    private static readonly Source Page = Source.Derived("docs/theory/circuits-lines.md");

    /// <summary>Holds the line against what its maker says it stands.</summary>
    /// <param name="name">Name of the line, for the checks' ids.</param>
    /// <param name="peakRating">Peak radio-frequency voltage it stands.</param>
    /// <param name="currentRating">RMS current it carries at this frequency.</param>
    /// <param name="dutyRatio">Average over peak power of the mode; heating follows its root.</param>
    /// <param name="peakFactor">Crest with modulation over the crest at the stated power; breakdown follows it.</param>
    /// <param name="units">The reader's units, for places along the line.</param>
    public ImmutableArray<Check> Checks(string name, PeakVolts peakRating, RmsAmps currentRating, double dutyRatio = 1, double peakFactor = 1, UnitSystem units = UnitSystem.Metric)
    {
        var maker = new Source("the line's maker", SourceKind.MakerData);
        var heating = Trail.Computed("heating current on the line", "Ih", HighestCurrent.Value * Math.Sqrt(dutyRatio), QuantityKind.RmsCurrent, "Ih = I·√η", Page, HighestCurrent);
        var crest = Trail.Computed("highest peak voltage on the line with modulation", "Vm", peakFactor * HighestVoltage.Value, QuantityKind.PeakVoltage, "Vm = m·Vp", Page, HighestVoltage, CrestFactor.Of(peakFactor));
        return
        [
            Check.AtMost($"feed.line.voltage[{name}]", Trade.Feed, "Voltage along the feed line", crest, Trail.Given("peak rating", "Vr", peakRating.Value, QuantityKind.PeakVoltage, maker), $"{QuantityFormat.Show(HighestVoltageFromLoadM, QuantityKind.Length, units, 3)} from the load, full power", "Match at the mast instead of at the transmitter, or use a heavier line."),
            Check.AtMost($"feed.line.current[{name}]", Trade.Feed, "Heating along the feed line", heating, Trail.Given("current rating", "Ir", currentRating.Value, QuantityKind.RmsCurrent, maker), "full power", "Match at the mast instead of at the transmitter, or use a heavier line."),
        ];
    }

    /// <summary>Works a feed line out by the nodal solver.</summary>
    /// <param name="type">Kind of line.</param>
    /// <param name="lengthM">Length, metres.</param>
    /// <param name="loadOhm">What hangs on its end, ohms, resistance above zero.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="powerW">Power going into the line, watts.</param>
    /// <param name="points">Places on the profile.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static FeedLine Of(LineType type, double lengthM, Complex loadOhm, double frequencyHz, double powerW, int points = 101)
    {
        Guard.Positive(loadOhm.Real, nameof(loadOhm));
        var stated = new Source("the problem as stated", SourceKind.Design);
        var l = Trail.Given("line length", "l", lengthM, QuantityKind.Length, stated);
        var p = Trail.Given("power into the line", "P", powerW, QuantityKind.Power, stated);
        var z0 = Trail.Given("line impedance", "Z0", type.CharacteristicOhm, QuantityKind.Resistance, new(type.Name, SourceKind.MakerData));
        var r = Trail.Given("load resistance", "R", loadOhm.Real, QuantityKind.Resistance, stated);
        var x = Trail.Given("load reactance", "X", loadOhm.Imaginary, QuantityKind.Resistance, stated);
        var s = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, powerW, type.CharacteristicOhm),
            new Line("W", "in", "out", type, lengthM),
            new MultiportLoad("ANT", "out", loadOhm)).Solve(frequencyHz).AtInputPower(powerW);
        var load = s.Part("ANT").Ports[0];
        var wave = new StandingWave(type, lengthM, frequencyHz, load.VoltagePhasor, load.CurrentPhasor);
        var (volts, at) = wave.HighestVoltage();
        var input = s.InputImpedanceOhm("TX");
        var swr = Trail.Computed("standing wave ratio at the load", "S", Mismatch.Swr(loadOhm, type.CharacteristicOhm), QuantityKind.Ratio, "S = (1 + |Γ|)/(1 - |Γ|), Γ = (Z - Z0)/(Z + Z0)", Page, r, x, z0);
        var matched = Trail.Computed("matched loss", "A", type.LossDbPerM(frequencyHz) * lengthM, QuantityKind.Decibel, "A = (k1·√f + k2·f)·l", new(type.Name, SourceKind.MakerData), l);
        var total = Trail.Computed("line loss with this load", "At", s.LossDb, QuantityKind.Decibel, "At = 10·log(power in/power out) of the line equations", Page, matched, swr);
        const string Along = "highest of the standing wave along the line";
        return new(
            input,
            swr,
            Trail.Computed("standing wave ratio at the transmitter", "Si", Mismatch.Swr(input, type.CharacteristicOhm), QuantityKind.Ratio, "S of the input impedance", Page, swr, matched),
            matched,
            total,
            Trail.Computed("power at the load", "Pl", s.LoadPowerW, QuantityKind.Power, "Pl = P/10^(At/10)", Page, p, total),
            Trail.Computed("highest peak voltage on the line", "Vp", volts * Math.Sqrt(2), QuantityKind.PeakVoltage, Along, Page, p, z0, swr),
            at,
            Trail.Computed("highest current on the line", "I", wave.HighestCurrent().RmsAmps, QuantityKind.RmsCurrent, Along, Page, p, z0, swr),
            [.. Enumerable.Range(0, points).Select(k => lengthM * k / (points - 1)).Select(d => new FeedLinePoint(d, new RmsVolts(wave.VoltageAt(d).Magnitude).ToPeak(), new(wave.CurrentAt(d).Magnitude), wave.SwrAt(d)))]);
    }
}
