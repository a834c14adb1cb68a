namespace Mastwright.Structure.Raising;

/// <summary>A stretch of mast with even weight.</summary>
/// <param name="BottomM">Lower end, m from the hinge.</param>
/// <param name="TopM">Upper end, m.</param>
/// <param name="WeightNPerM">Weight per length, N/m.</param>
public sealed record WeightRun(double BottomM, double TopM, double WeightNPerM);

/// <summary>A weight at one place.</summary>
/// <param name="AtM">Distance from the hinge, m.</param>
/// <param name="WeightN">Weight, N.</param>
public sealed record WeightAt(double AtM, double WeightN);

/// <summary>
/// The bending of a mast lying level on its hinge and hanging from one lifting point, or from two that an equalising
/// bridle loads alike: statics of a beam that rests on the hinge. At an angle ψ above the ground everything is cos ψ times as much.
/// </summary>
/// <param name="Runs">Weights along it.</param>
/// <param name="Lumps">Weights at places.</param>
/// <param name="LiftM">Middle of the lifting points, m from the hinge.</param>
/// <param name="SpreadM">Distance between the two lifting points; 0 for one.</param>
/// <param name="DynamicFactor">Factor on the weight.</param>
public sealed record LiftBending(IReadOnlyList<WeightRun> Runs, IReadOnlyList<WeightAt> Lumps, double LiftM, double SpreadM, double DynamicFactor)
{
    /// <summary>Length of the mast, m.</summary>
    public double LengthM => Runs.Max(r => r.TopM);

    /// <summary>Pull of the lifting lines across the mast while it lies level, N: moments about the hinge.</summary>
    public double LiftN => DynamicFactor * (Runs.Sum(r => r.WeightNPerM * (r.TopM - r.BottomM) * (r.TopM + r.BottomM) / 2) + Lumps.Sum(w => w.WeightN * w.AtM)) / LiftM;

    /// <summary>Bending moment at a place, hogging negative, N·m, while it lies level.</summary>
    /// <param name="atM">Distance from the hinge, m.</param>
    public double MomentNm(double atM)
    {
        // Of everything beyond the place, about the place: lines lift, weight sags.
        var lines = (LiftN / 2 * Math.Max(0, LiftM - (SpreadM / 2) - atM)) + (LiftN / 2 * Math.Max(0, LiftM + (SpreadM / 2) - atM));
        var weight = Lumps.Sum(w => w.WeightN * Math.Max(0, w.AtM - atM)) + Runs.Sum(r => Beyond(r, atM));
        return lines - (DynamicFactor * weight);
    }

    /// <summary>Largest moment either way, N·m, and where.</summary>
    public (double MomentNm, double AtM) Worst()
    {
        var places = Enumerable.Range(0, 401).Select(i => LengthM * i / 400).Concat([LiftM - (SpreadM / 2), LiftM + (SpreadM / 2)]).Concat(Lumps.Select(w => w.AtM))
            .Where(x => x >= 0 && x <= LengthM);
        var at = places.MaxBy(x => Math.Abs(MomentNm(x)));
        return (Math.Abs(MomentNm(at)), at);
    }

    /// <summary>The lifting point, kept to its spread, at which the largest moment is least.</summary>
    public LiftBending Best()
    {
        var places = Enumerable.Range(0, 121).Select(i => LengthM * (0.4 + (0.6 * i / 120))).Where(a => a + (SpreadM / 2) <= LengthM + 1e-9 && a - (SpreadM / 2) > 0);
        return places.Select(a => this with { LiftM = a }).MinBy(l => l.Worst().MomentNm) ?? this;
    }

    private static double Beyond(WeightRun run, double atM)
    {
        var from = Math.Max(run.BottomM, atM);
        return run.TopM <= from ? 0 : run.WeightNPerM * (run.TopM - from) * (((run.TopM + from) / 2) - atM);
    }
}

/// <summary>
/// Temporary side guys of a lift, from the lifting point to anchors in line with the hinge pin: they keep their length through
/// the whole turn, and one of them holds the mast against a side wind.
/// </summary>
/// <param name="LiftM">Where they hold the mast, m from the hinge.</param>
/// <param name="DistanceM">Distance of their anchors from the hinge, m.</param>
/// <param name="SideMomentNm">Moment of the side wind on the mast about the hinge, N·m; the same at every angle.</param>
public sealed record SideGuys(double LiftM, double DistanceM, double SideMomentNm)
{
    /// <summary>Their length, the same at every angle, m.</summary>
    public double LengthM => double.Hypot(LiftM, DistanceM);

    /// <summary>Tension of the windward one, N: moments about the hinge across the wind.</summary>
    public double TensionN => SideMomentNm / LiftM * LengthM / DistanceM;
}
