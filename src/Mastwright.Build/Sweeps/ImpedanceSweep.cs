using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps;

/// <summary>An impedance at one frequency.</summary>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="ImpedanceOhm">Impedance in ohms, exp(+jωt): inductive is positive imaginary.</param>
public readonly record struct SweepPoint(double FrequencyHz, Complex ImpedanceOhm)
{
    /// <summary>Reflection against a real reference.</summary>
    public Complex Reflection(double referenceOhm) => (ImpedanceOhm - referenceOhm) / (ImpedanceOhm + referenceOhm);

    /// <summary>Standing-wave ratio against a real reference; infinite when everything comes back.</summary>
    public double Swr(double referenceOhm) => StandingWave.Ratio(Reflection(referenceOhm).Magnitude);
}

/// <summary>An impedance over frequency, frequencies rising.</summary>
/// <param name="Name">What was swept, for legends and messages.</param>
/// <param name="ReferenceOhm">Resistance against which reflection and standing-wave ratio are shown.</param>
/// <param name="Points">The points, at least one.</param>
public sealed record ImpedanceSweep(string Name, double ReferenceOhm, ImmutableArray<SweepPoint> Points)
{
    /// <summary>Lowest frequency.</summary>
    public double FromHz => Points[0].FrequencyHz;

    /// <summary>Highest frequency.</summary>
    public double ToHz => Points[^1].FrequencyHz;

    /// <summary>Point of the least standing-wave ratio.</summary>
    public SweepPoint BestMatch => Points.MinBy(p => p.Reflection(ReferenceOhm).Magnitude);

    /// <summary>Frequencies at which the reactance passes zero, by straight lines between points, rising order.</summary>
    public ImmutableArray<double> ResonancesHz()
    {
        var found = ImmutableArray.CreateBuilder<double>();
        for (var i = 1; i < Points.Length; i++)
        {
            var (a, b) = (Points[i - 1], Points[i]);
            var (xa, xb) = (a.ImpedanceOhm.Imaginary, b.ImpedanceOhm.Imaginary);
            if (xa == 0) found.Add(a.FrequencyHz);
            else if (xa * xb < 0) found.Add(a.FrequencyHz + ((b.FrequencyHz - a.FrequencyHz) * xa / (xa - xb)));
        }
        if (Points.Length > 0 && Points[^1].ImpedanceOhm.Imaginary == 0) found.Add(ToHz);
        return found.ToImmutable();
    }

    /// <summary>The one-port S parameters of this sweep, for writing to a file.</summary>
    public NetworkData ToNetwork() =>
        NetworkData.OnePort(NetworkParameter.S, ReferenceOhm, Points.Select(p => (p.FrequencyHz, p.Reflection(ReferenceOhm))));

    /// <summary>
    /// The impedance into one port of measured network data, the other ports closed with their references.
    /// A point that is an exact open circuit has no impedance in numbers: it is left out with a warning.
    /// </summary>
    /// <param name="data">Network data in any parameter.</param>
    /// <param name="port">Port from 1.</param>
    /// <param name="name">Name of the sweep.</param>
    public static Reading<ImpedanceSweep> FromNetwork(NetworkData data, int port, string name)
    {
        if (port < 1 || port > data.Ports) throw new ArgumentOutOfRangeException(nameof(port), port, $"The network has ports 1 to {data.Ports}.");
        var reference = data.ReferenceOhm[port - 1];
        var direct = data.Ports == 1 ? data.To(NetworkParameter.Z) : null;
        var scattering = data.Ports == 1 ? null : data.To(NetworkParameter.S);
        var points = ImmutableArray.CreateBuilder<SweepPoint>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        for (var i = 0; i < data.Points.Length; i++)
        {
            Complex z;
            if (direct is not null) z = direct.Points[i].Matrix[0];
            else
            {
                var s = scattering!.Points[i].Matrix[((port - 1) * data.Ports) + port - 1];
                z = reference * (1 + s) / (1 - s);
            }
            var f = data.Points[i].FrequencyHz;
            if (double.IsFinite(z.Real) && double.IsFinite(z.Imaginary)) points.Add(new(f, z));
            else findings.Add(new("impedance-infinite", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"At {f / 1e6:0.####} MHz the reading is an exact open circuit; the point is left out."), new(name, 0, 0, ""), null, null, "Check the plug at the measuring plane."));
        }
        if (points.Count > 0) return new(new(name, reference, points.ToImmutable()), findings.ToImmutable());
        findings.Add(new("sweep-empty", Severity.Error, "No point of the sweep has a finite impedance.", new(name, 0, 0, ""), null, null, "Check the plug at the measuring plane and sweep again."));
        return new(null, findings.ToImmutable());
    }
}

/// <summary>A standing-wave ratio over frequency without phase: enough to see a shift, not enough to move a plane or to fit.</summary>
/// <param name="Name">What was swept.</param>
/// <param name="ReferenceOhm">Reference resistance.</param>
/// <param name="Points">Frequency in hertz and ratio from 1, frequencies rising.</param>
public sealed record SwrSweep(string Name, double ReferenceOhm, ImmutableArray<(double FrequencyHz, double Swr)> Points);

/// <summary>Standing-wave ratio and reflection.</summary>
public static class StandingWave
{
    /// <summary>Ratio (1 + |Γ|)/(1 − |Γ|); infinite from |Γ| = 1 on.</summary>
    public static double Ratio(double reflectionMagnitude) =>
        reflectionMagnitude >= 1 ? double.PositiveInfinity : (1 + reflectionMagnitude) / (1 - reflectionMagnitude);

    /// <summary>Magnitude of reflection (S − 1)/(S + 1).</summary>
    public static double Reflection(double ratio) =>
        double.IsPositiveInfinity(ratio) ? 1 : (ratio - 1) / (ratio + 1);

    /// <summary>Return loss −20 log|Γ| in dB, positive.</summary>
    public static double ReturnLossDb(double reflectionMagnitude) => -20 * Math.Log10(reflectionMagnitude);
}
