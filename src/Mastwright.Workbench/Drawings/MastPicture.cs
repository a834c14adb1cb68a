using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Numerics;

namespace Mastwright.Workbench.Drawings;

/// <summary>One guy for a drawing.</summary>
/// <param name="Level">Number of its level.</param>
/// <param name="Anchor">Its anchor.</param>
/// <param name="High">Upper end at rest.</param>
/// <param name="Low">Lower end.</param>
/// <param name="Use">Use of its allowed tension; null when unknown.</param>
/// <param name="TensionN">The tension behind it; null when unknown.</param>
/// <param name="InsulatorsAtM">Distances of its insulators from the mast.</param>
internal sealed record GuyPicture(int Level, string Anchor, Vec3 High, Vec3 Low, double? Use, double? TensionN, ImmutableArray<double> InsulatorsAtM)
{
    /// <summary>0 easy, 1 busy, 2 near the limit, 3 beyond it.</summary>
    public int Grade => Use switch
    {
        null or <= 0.5 => 0,
        <= 0.9 => 1,
        <= 1 => 2,
        _ => 3,
    };

    /// <summary>What the grade means; the drawing says it beside the colour.</summary>
    public string Words => Use is { } u ? $"level {Level} to {Anchor}: {View.Percent(u)} of the tension allowed" : $"level {Level} to {Anchor}";
}

/// <summary>A mast with its guys in space under one load case, or under the worst of all.</summary>
internal sealed class MastPicture
{
    private MastPicture(Mast mast, CaseResult? shown, ImmutableArray<GuyPicture> guys) => (Mast, Case, Guys) = (mast, shown, guys);

    /// <summary>The mast.</summary>
    public Mast Mast { get; }

    /// <summary>The case shown; null for the worst of all at rest.</summary>
    public CaseResult? Case { get; }

    /// <summary>Its guys.</summary>
    public ImmutableArray<GuyPicture> Guys { get; }

    /// <summary>Its lower end.</summary>
    public Vec3 Foot => new(Mast.EastM, Mast.NorthM, Mast.Base.HeightM);

    /// <summary>Largest level movement, m.</summary>
    public double LargestMoveM => Case is null || Case.Axis.IsEmpty ? 0 : Case.Axis.Max(a => double.Hypot(a.MoveM.X, a.MoveM.Y));

    /// <summary>Largest movement of any point of the axis, up and down included, m: what an exaggeration must leave plain.</summary>
    public double LargestMovementM => Case is null || Case.Axis.IsEmpty ? 0 : Case.Axis.Max(a => a.MoveM.Length);

    /// <summary>A mast of the station.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="stand">How it stands; null when unknown.</param>
    /// <param name="caseName">The case to show; null for the worst tension of each guy.</param>
    public static MastPicture Of(Station station, Mast mast, StandResult? stand, string? caseName)
    {
        var shown = caseName is null ? null : stand?.Cases.FirstOrDefault(c => c.Name == caseName);
        var guys = mast.Guys.SelectMany((level, l) => AnchorsOf(mast, level).Select(anchor =>
        {
            var loads = (shown is null ? stand?.Cases ?? [] : [shown]).SelectMany(c => c.Guys).Where(g => g.Level == l + 1 && g.Anchor == anchor.Name).ToList();
            var worst = loads.Count == 0 ? null : loads.MaxBy(g => g.TensionN);
            var high = new Vec3(mast.EastM, mast.NorthM, level.HeightM);
            var low = new Vec3(mast.EastM + (anchor.DistanceM * Math.Sin(anchor.BearingRad)), mast.NorthM + (anchor.DistanceM * Math.Cos(anchor.BearingRad)), anchor.RiseM);
            return new GuyPicture(l + 1, anchor.Name, high, low, worst?.ShareOfBreaking * station.Limits.GuyFactor, worst?.TensionN, level.InsulatorsAtM);
        }));
        return new MastPicture(mast, shown, [.. guys]);
    }

    /// <summary>The axis, moved by the case times a factor.</summary>
    public ImmutableArray<Vec3> Axis(double factor) => Case is null || Case.Axis.IsEmpty
        ? [Foot, Foot + (Mast.LengthM * Vec3.Up)]
        : [.. Case.Axis.Select(a => Foot + (a.HeightM * Vec3.Up) + (factor * a.MoveM))];

    /// <summary>A point of the axis at a height above ground, moved by the case times a factor.</summary>
    public Vec3 AxisAt(double heightM, double factor)
    {
        var above = heightM - Mast.Base.HeightM;
        var rest = Foot + (above * Vec3.Up);
        if (Case is null || Case.Axis.Length < 2)
        {
            return rest;
        }

        var next = Math.Clamp(Case.Axis.TakeWhile(a => a.HeightM < above).Count(), 1, Case.Axis.Length - 1);
        var (a, b) = (Case.Axis[next - 1], Case.Axis[next]);
        var t = b.HeightM > a.HeightM ? Math.Clamp((above - a.HeightM) / (b.HeightM - a.HeightM), 0, 1) : 0;
        return rest + (factor * (a.MoveM + (t * (b.MoveM - a.MoveM))));
    }

    /// <summary>A round factor that makes a movement plain to see on a mast of this height.</summary>
    public static double Exaggeration(double moveM, double heightM)
    {
        double[] round = [1, 2, 5, 10, 20, 50, 100, 200, 500];
        return moveM <= 0 ? 1 : round.LastOrDefault(f => f * moveM <= 0.09 * heightM, 1);
    }

    private static IEnumerable<Anchor> AnchorsOf(Mast mast, GuyLevel level) =>
        level.Anchors.IsEmpty ? mast.Anchors : mast.Anchors.Where(a => level.Anchors.Contains(a.Name));
}
