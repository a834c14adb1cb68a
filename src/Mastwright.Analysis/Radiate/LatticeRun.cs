using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>A bare mast on one band, its lattice taken both ways.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="EquivalentOhm">Impedance as one round conductor, Ω.</param>
/// <param name="LegsOhm">Impedance leg by leg, Ω.</param>
/// <param name="EquivalentHeat">Share of the power that heats the mast, as one round conductor.</param>
/// <param name="LegsHeat">The same leg by leg.</param>
public sealed record LatticeBand(string Mast, Band Band, Complex EquivalentOhm, Complex LegsOhm, double EquivalentHeat, double LegsHeat)
{
    /// <summary>Difference of the impedances over the larger of the two.</summary>
    public double Apart => (EquivalentOhm - LegsOhm).Magnitude / Math.Max(EquivalentOhm.Magnitude, LegsOhm.Magnitude);

    /// <summary>How far the frequency of the equivalent would have to move for the same reactance, as a share; the difference in electrical length.</summary>
    public required double LengthApart { get; init; }
}

/// <summary>Whether one round conductor may stand for a lattice: both solved, over perfect ground, the mast bare.</summary>
public static class LatticeRun
{
    /// <summary>Every lattice mast on every band.</summary>
    public static (ImmutableArray<LatticeBand> Bands, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var bands = ImmutableArray.CreateBuilder<LatticeBand>();
        var findings = new List<Finding>();
        foreach (var mast in station.Masts.Where(m => m.Sections.Any(s => s.Lattice is not null)))
        {
            var (round, legs) = (WireModels.Bare(station, mast, LatticeModel.Equivalent), WireModels.Bare(station, mast, LatticeModel.Legs));
            foreach (var band in station.Bands)
            {
                progress?.Report(new AnalysisStep($"Mast {mast.Name} leg by leg on {band.Title}", (double)bands.Count / (station.Bands.Length * station.Masts.Length)));
                var (a, b) = (WireSolver.Solve(round, band.FrequencyHz, null, cancellation), WireSolver.Solve(legs, band.FrequencyHz, null, cancellation));
                var beside = WireSolver.Solve(round, 1.001 * band.FrequencyHz, null, cancellation);
                findings.AddRange(a.Findings.Concat(b.Findings));
                if (a.Solution is { } one && b.Solution is { } other && beside.Solution is { } near)
                {
                    var slope = (near.FeedImpedance().Imaginary - one.FeedImpedance().Imaginary) / 0.001;
                    bands.Add(new(mast.Name, band, one.FeedImpedance(), other.FeedImpedance(), Heat(one), Heat(other)) { LengthApart = (other.FeedImpedance().Imaginary - one.FeedImpedance().Imaginary) / slope });
                }
            }
        }

        return (bands.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }

    private static double Heat(WireSolution solution)
    {
        DrivenWires driven = solution.DrivePower(1);
        return driven.LossPowerW / driven.InputPowerW;
    }
}
