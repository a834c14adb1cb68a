using System.Numerics;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Units;
using Mastwright.Numerics.Dense;

namespace Mastwright.Analysis.Radiate;

/// <summary>The far field of each mast carrying one ampere with the others open: any currents follow by adding.</summary>
internal sealed class GroupBasis
{
    private readonly FarField[] far;
    private readonly WireSolution solution;

    public GroupBasis(WireSolution solution)
    {
        this.solution = solution;
        var n = solution.PortImpedances.GetLength(0);
        far = [.. Enumerable.Range(0, n).Select(k =>
        {
            var one = new Complex[n];
            one[k] = 1;
            return FarField.Of(solution.DriveCurrents(one));
        })];
    }

    /// <summary>Base voltages for base currents.</summary>
    public Complex[] Volts(Complex[] currents)
    {
        var v = new Complex[currents.Length];
        for (var i = 0; i < v.Length; i++)
        {
            for (var j = 0; j < v.Length; j++)
            {
                v[i] += solution.PortImpedances[i, j] * currents[j];
            }
        }

        return v;
    }

    /// <summary>Power into all bases, W.</summary>
    public double PowerW(Complex[] currents) => Volts(currents).Zip(currents, (v, i) => (v * Complex.Conjugate(i)).Real).Sum();

    /// <summary>Currents in the ratios asked, at a power into all bases.</summary>
    public Complex[] AtPower(Complex[] asked, double powerW)
    {
        var scale = Math.Sqrt(powerW / PowerW(asked));
        return [.. asked.Select(a => a * scale)];
    }

    /// <summary>The fields of all masts in one direction.</summary>
    public FarFieldSample[] Towards(double elevationRad, double azimuthRad) => [.. far.Select(f => f.At((Math.PI / 2) - elevationRad, azimuthRad))];

    /// <summary>Gain as a ratio towards a direction.</summary>
    public double Gain(Complex[] currents, FarFieldSample[] towards)
    {
        Complex theta = default, phi = default;
        for (var k = 0; k < currents.Length; k++)
        {
            theta += currents[k] * towards[k].Theta;
            phi += currents[k] * towards[k].Phi;
        }

        return 4 * Math.PI * new FarFieldSample(theta, phi).SquaredV2 / (Vacuum.WaveImpedanceOhm * PowerW(currents));
    }

    /// <summary>Gain, front to back and cuts.</summary>
    public GroupPattern Pattern(Complex[] currents, double azimuthRad)
    {
        double At(double elevation, double azimuth) => SoilRun.Db(Gain(currents, Towards(elevation, azimuth)));
        double Upright(double angle) => angle <= Math.PI / 2 ? At(angle, azimuthRad) : At(Math.PI - angle, azimuthRad + Math.PI);
        var upright = Enumerable.Range(0, 91).Select(i => Upright(i * Math.PI / 90)).ToList();
        var best = Enumerable.Range(0, 90).Select(e => e * Math.PI / 180).MaxBy(e => At(e, azimuthRad));
        var gain = At(best, azimuthRad);
        var level = Enumerable.Range(0, 72).Select(i => At(best, (Math.PI / 2) - (i * Math.PI / 36))).ToList();
        return new(gain, best, gain - At(best, azimuthRad + Math.PI), [.. level.Select(d => d - level.Max())], [.. upright.Select(d => d - upright.Max())]);
    }

    /// <summary>
    /// The impedance matrix of some masts with admittances across their bases, the other masts open, and what share of the currents
    /// into that goes on into the masts.
    /// </summary>
    public (Complex[,] SeenOhm, Complex[,] IntoMasts) WithShunts(int[] fed, Complex[] shunts)
    {
        var n = fed.Length;
        var z = new Complex[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                z[i, j] = solution.PortImpedances[fed[i], fed[j]];
            }
        }

        // I_mast = (1 + Y Z)^-1 I, Z_seen = Z (1 + Y Z)^-1.
        var sum = new Complex[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                sum[i, j] = (i == j ? 1 : 0) + (shunts[i] * z[i, j]);
            }
        }

        var inverse = ComplexLu.Factor(ComplexMatrix.From(sum), new(Threads: 1)).Require().SolveMany(ComplexMatrix.Identity(n));
        var (into, seen) = (new Complex[n, n], new Complex[n, n]);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                into[i, j] = inverse[i, j];
                for (var k = 0; k < n; k++)
                {
                    seen[i, j] += z[i, k] * inverse[k, j];
                }
            }
        }

        return (seen, into);
    }
}
