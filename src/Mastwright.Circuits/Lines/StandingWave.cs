using System.Numerics;

namespace Mastwright.Circuits.Lines;

/// <summary>Voltage and current along a line, from what stands at its far end. Phasors are RMS.</summary>
/// <param name="Type">Kind of line.</param>
/// <param name="LengthM">Length, metres.</param>
/// <param name="FrequencyHz">Frequency, hertz.</param>
/// <param name="FarVoltage">Voltage at the far (load) end.</param>
/// <param name="FarCurrent">Current out of the far end into the load.</param>
public sealed record StandingWave(LineType Type, double LengthM, double FrequencyHz, Complex FarVoltage, Complex FarCurrent)
{
    /// <summary>Voltage at a distance from the far end, volts RMS.</summary>
    /// <param name="fromFarM">Distance from the far end, metres.</param>
    public Complex VoltageAt(double fromFarM)
    {
        var (forward, back) = Waves(fromFarM);
        return forward + back;
    }

    /// <summary>Current toward the far end at a distance from it, amperes RMS.</summary>
    /// <param name="fromFarM">Distance from the far end, metres.</param>
    public Complex CurrentAt(double fromFarM)
    {
        var (forward, back) = Waves(fromFarM);
        return (forward - back) / Type.CharacteristicOhm;
    }

    /// <summary>Standing wave ratio at a distance from the far end; infinite for total reflection.</summary>
    /// <param name="fromFarM">Distance from the far end, metres.</param>
    public double SwrAt(double fromFarM)
    {
        var (forward, back) = Waves(fromFarM);
        return Mismatch.Swr(forward == Complex.Zero ? 1 : back.Magnitude / forward.Magnitude);
    }

    /// <summary>The highest voltage on the line and its place, metres from the far end.</summary>
    public (double RmsVolts, double FromFarM) HighestVoltage() => Highest(x => VoltageAt(x).Magnitude);

    /// <summary>The highest current on the line and its place, metres from the far end.</summary>
    public (double RmsAmps, double FromFarM) HighestCurrent() => Highest(x => CurrentAt(x).Magnitude);

    private (Complex Forward, Complex Back) Waves(double x)
    {
        var grow = Complex.Exp(Type.PropagationPerM(FrequencyHz) * x);
        var z0 = Type.CharacteristicOhm;
        return ((FarVoltage + (z0 * FarCurrent)) / 2 * grow, (FarVoltage - (z0 * FarCurrent)) / 2 / grow);
    }

    // Samples a quarter of a half-wave lobe apart cannot miss a crest; a golden section sharpens the best one.
    private (double Value, double FromFarM) Highest(Func<double, double> size)
    {
        if (LengthM == 0)
            return (size(0), 0);
        var lobes = LengthM / (Type.WavelengthM(FrequencyHz) / 2);
        var n = Math.Min(4096, Math.Max(16, (int)Math.Ceiling(lobes * 16)));
        var (best, at) = (size(0), 0.0);
        for (var i = 1; i <= n; i++)
        {
            var x = LengthM * i / n;
            var s = size(x);
            if (s > best)
                (best, at) = (s, x);
        }

        var (lo, hi) = (Math.Max(0, at - (LengthM / n)), Math.Min(LengthM, at + (LengthM / n)));
        const double Golden = 0.6180339887498949;
        for (var i = 0; i < 40; i++)
        {
            var (a, b) = (hi - (Golden * (hi - lo)), lo + (Golden * (hi - lo)));
            if (size(a) > size(b))
                hi = b;
            else
                lo = a;
        }

        var refined = size((lo + hi) / 2);
        return refined > best ? (refined, (lo + hi) / 2) : (best, at);
    }
}
