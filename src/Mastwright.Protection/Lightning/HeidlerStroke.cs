using Mastwright.Model.Trails;
using MathNet.Numerics.Integration;

namespace Mastwright.Protection.Lightning;

/// <summary>
/// A lightning current of the form i = (I/k)·(t/τ₁)ⁿ/(1 + (t/τ₁)ⁿ)·e^(−t/τ₂) (Heidler; IEC 62305-1 annex B), in amperes and seconds.
/// </summary>
/// <param name="Name">Name, e.g. <c>"first negative stroke, level I"</c>.</param>
/// <param name="CrestA">I, the nominal crest.</param>
/// <param name="Correction">k, which makes the crest come out as I.</param>
/// <param name="FrontS">τ₁ of the front.</param>
/// <param name="TailS">τ₂ of the tail.</param>
/// <param name="Exponent">n; 10 in the standard.</param>
public sealed record HeidlerStroke(string Name, double CrestA, double Correction, double FrontS, double TailS, double Exponent = 10)
{
    /// <summary>Where its crest comes from: the standard's table, or the design file for an own stroke.</summary>
    public Source Source { get; init; } = LightningCurrents.Source;

    /// <summary>Current at a time.</summary>
    public double CurrentA(double timeS)
    {
        if (timeS <= 0)
            return 0;
        var x = Math.Pow(timeS / FrontS, Exponent);
        // For late times x/(1 + x) is 1 even when x overflows.
        var rise = double.IsInfinity(x) ? 1 : x / (1 + x);
        return CrestA / Correction * rise * Math.Exp(-timeS / TailS);
    }

    /// <summary>Steepness di/dt at a time in A/s.</summary>
    public double SteepnessAPerS(double timeS)
    {
        if (timeS <= 0)
            return 0;
        var x = Math.Pow(timeS / FrontS, Exponent);
        return CurrentA(timeS) * ((Exponent / (timeS * (1 + x))) - (1 / TailS));
    }

    /// <summary>Time of the crest: the root of n·τ₂/t = 1 + (t/τ₁)ⁿ.</summary>
    public double CrestTimeS()
    {
        var (low, high) = (0.1 * FrontS, 50 * FrontS);
        for (var i = 0; i < 200 && high - low > 1e-15 * high; i++)
        {
            var mid = 0.5 * (low + high);
            if (SteepnessAPerS(mid) > 0)
                low = mid;
            else
                high = mid;
        }

        return 0.5 * (low + high);
    }

    /// <summary>The crest itself, within about 0.1 % of nominal for the standard's constants.</summary>
    public double CrestFoundA() => CurrentA(CrestTimeS());

    /// <summary>Charge ∫ i dt in coulombs.</summary>
    public double ChargeC() => Integral(i => i);

    /// <summary>Specific energy ∫ i² dt in J/Ω.</summary>
    public double SpecificEnergyJPerOhm() => Integral(i => i * i);

    /// <summary>Greatest steepness in A/s.</summary>
    public double GreatestSteepnessAPerS()
    {
        var best = 0.0;
        var crest = CrestTimeS();
        for (var i = 1; i <= 4000; i++)
            best = Math.Max(best, SteepnessAPerS(crest * i / 4000));
        return best;
    }

    /// <summary>Mean steepness between 30 and 90 % of the crest in A/s, as the standard counts it.</summary>
    public double MeanSteepnessAPerS()
    {
        var crest = CrestTimeS();
        var top = CurrentA(crest);
        return 0.6 * top / (TimeOf(0.9 * top, crest) - TimeOf(0.3 * top, crest));
    }

    private double TimeOf(double amperes, double crest)
    {
        var (low, high) = (0.0, crest);
        for (var i = 0; i < 100; i++)
        {
            var mid = 0.5 * (low + high);
            if (CurrentA(mid) < amperes)
                low = mid;
            else
                high = mid;
        }

        return 0.5 * (low + high);
    }

    private double Integral(Func<double, double> of)
    {
        ReadOnlySpan<double> cuts = [0, 0.5, 0.8, 1, 1.25, 2, 5, 20];
        var sum = 0.0;
        for (var i = 1; i < cuts.Length; i++)
            sum += GaussLegendreRule.Integrate(t => of(CurrentA(t)), cuts[i - 1] * FrontS, cuts[i] * FrontS, 48);
        for (var from = 20 * FrontS; from < 50 * TailS; from += 5 * TailS)
            sum += GaussLegendreRule.Integrate(t => of(CurrentA(t)), from, from + (5 * TailS), 48);
        return sum;
    }
}
