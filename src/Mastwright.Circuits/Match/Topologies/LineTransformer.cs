using Mastwright.Circuits.Lines;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match.Topologies;

/// <summary>
/// A length of one line with a series element at the load. A quarter wave of √(R·Z0) is the special case that needs
/// the load's reactance cancelled; another impedance Zt works wherever the circle through Z0 about Zt crosses the load's
/// resistance: X'² = (ρ²(R + Zt)² - (R - Zt)²)/(1 - ρ²), ρ = |Z0 - Zt|/(Z0 + Zt) (derived on the theory page).
/// </summary>
public sealed class LineTransformer : ITopology
{
    /// <inheritdoc/>
    public string Id => "line-transformer";

    /// <inheritdoc/>
    public string Title => "length of standard line with a series element";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem) =>
        problem.Lines.SelectMany(line => At(problem, line));

    /// <summary>Solutions with one kind of line.</summary>
    internal static IEnumerable<Ladder> At(MatchProblem problem, LineType line)
    {
        var (r, xa, z0, zt) = (problem.TargetOhm.Real, problem.TargetOhm.Imaginary, problem.LineOhm, line.CharacteristicOhm);
        var rho = (z0 - zt) / (z0 + zt);
        if (Math.Abs(rho) < 1e-3)
            yield break;
        var square = ((rho * rho * (r + zt) * (r + zt)) - ((r - zt) * (r - zt))) / (1 - (rho * rho));
        if (square < -1e-9 * z0 * z0)
            yield break;
        var at = Math.Sqrt(Math.Max(0, square));
        foreach (var x in at < 1e-6 * z0 ? new[] { 0.0 } : [at, -at])
        {
            var load = new System.Numerics.Complex(r, x);
            var turn = Mismatch.Reflection(load, zt).Phase - (rho > 0 ? 0 : Math.PI);
            var angle = turn / 2;
            while (angle < 1e-9)
                angle += Math.PI;
            var length = line.LengthM(angle, problem.FrequencyHz);
            var series = Reactances.Reactance("series reactance", "Xs", x - xa, "Xs = X' - Xa", Reactances.LoadReactance(xa));
            var why = Trail.Computed("line length", "l", length, QuantityKind.Length, "l = θ/(2π)·v·c/f, θ = (arg Γ at the load - arg Γ at the line)/2", Source.Derived("docs/theory/circuits-matching.md"), Reactances.LoadResistance(r), Reactances.Line(problem));
            yield return Reactances.LadderOf(new LineSection(line, length) { Why = why }, Reactances.Series(problem, series));
        }
    }
}

/// <summary>A quarter wave of line of √(R·Z0), made to measure, with the load's reactance cancelled in series.</summary>
public sealed class QuarterWave : ITopology
{
    /// <inheritdoc/>
    public string Id => "quarter-wave";

    /// <inheritdoc/>
    public string Title => "quarter wave of line made to measure";

    /// <inheritdoc/>
    public IEnumerable<Ladder> Synthesise(MatchProblem problem)
    {
        var zt = Math.Sqrt(problem.TargetOhm.Real * problem.LineOhm);
        return zt is < 15 or > 600 || Math.Abs((zt / problem.LineOhm) - 1) < 0.03 ? [] : LineTransformer.At(problem, LineStock.Ideal(zt)).Take(1);
    }
}
