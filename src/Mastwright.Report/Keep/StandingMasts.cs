using Mastwright.Analysis;
using Mastwright.Analysis.Tune;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Keep;

/// <summary>Masts as they stand at a temperature. A round of readings asks for the same mast again and again: the last few answers are remembered. Safe to use from several threads.</summary>
public sealed class StandingMasts
{
    private const int Remembered = 8;

    private readonly Lock gate = new();
    private readonly Dictionary<(string Design, string Mast, double TemperatureK), (StandingMast? Mast, Finding? Problem)> known = [];
    private readonly Queue<(string Design, string Mast, double TemperatureK)> order = new();

    /// <summary>The mast at a temperature, or a finding when it does not stand.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">One of its masts.</param>
    /// <param name="temperatureK">The temperature; null for the one it is tensioned at.</param>
    /// <param name="cancellation">Stops the work.</param>
    public (StandingMast? Mast, Finding? Problem) Of(Station station, Mast mast, double? temperatureK, CancellationToken cancellation)
    {
        var kelvin = temperatureK ?? station.Site.TensioningTemperatureK;
        var key = (Fingerprint.Of(station), mast.Name, kelvin);
        lock (gate)
        {
            if (known.TryGetValue(key, out var found))
            {
                return found;
            }

            found = StandingMast.Of(station, mast, kelvin, cancellation);
            known[key] = found;
            order.Enqueue(key);
            if (order.Count > Remembered)
            {
                known.Remove(order.Dequeue());
            }

            return found;
        }
    }
}
