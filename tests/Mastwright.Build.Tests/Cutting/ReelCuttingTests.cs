using FsCheck.Xunit;
using Mastwright.Build.Cutting;

namespace Mastwright.Build.Tests.Cutting;

public class ReelCuttingTests
{
    private static CuttingPlan Plan(IReadOnlyList<PieceWanted> pieces, IReadOnlyList<Reel> reels, ReelCuttingOptions? options = null)
    {
        var reading = ReelCutting.Plan(pieces, reels, options);
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings));
        return reading.Value!;
    }

    /// <summary>
    /// The true optimum by dynamic programming over all subsets of pieces: an independent proof for small sets. Lengths in
    /// whole decimetres; infinity when the reels do not do.
    /// </summary>
    private static double Optimum(int[] pieces, (int Length, int Available)[] reels)
    {
        var full = (1 << pieces.Length) - 1;
        var sum = new int[full + 1];
        for (var mask = 1; mask <= full; mask++)
        {
            var low = int.TrailingZeroCount(mask);
            sum[mask] = sum[mask & (mask - 1)] + pieces[low];
        }
        return Recurse(full, [.. reels.Select(r => r.Available)], []);

        double Recurse(int mask, int[] left, Dictionary<string, double> memory)
        {
            if (mask == 0) return 0;
            var key = mask + ":" + string.Join(',', left);
            if (memory.TryGetValue(key, out var known)) return known;
            var result = double.PositiveInfinity;
            var lowest = mask & -mask;
            for (var sub = mask; sub > 0; sub = (sub - 1) & mask)
            {
                if ((sub & lowest) == 0) continue;
                for (var r = 0; r < reels.Length; r++)
                {
                    if (left[r] == 0 || sum[sub] > reels[r].Length) continue;
                    var next = (int[])left.Clone();
                    next[r]--;
                    result = Math.Min(result, reels[r].Length + Recurse(mask & ~sub, next, memory));
                }
            }
            return memory[key] = result;
        }
    }

    [Property(MaxTest = 150)]
    public bool Small_plans_are_as_good_as_trying_everything(int seed)
    {
        var random = new Random(seed);
        var pieces = Enumerable.Range(0, random.Next(1, 9)).Select(_ => random.Next(15, 95)).ToArray();
        (int Length, int Available)[] reels = random.Next(3) switch
        {
            0 => [(100, 99)],
            1 => [(100, 99), (140, 99)],
            _ => [(100, random.Next(1, 4)), (130, random.Next(1, 3)), (210, random.Next(0, 3))],
        };
        var reading = ReelCutting.Plan(
            [.. pieces.Select((p, i) => new PieceWanted($"p{i}", p / 10.0, 1))],
            [.. reels.Select((r, i) => new Reel($"r{i}", r.Length / 10.0, r.Available == 99 ? null : r.Available))]);
        var optimum = Optimum(pieces, [.. reels.Select(r => (r.Length, Math.Min(r.Available, pieces.Length)))]);
        if (double.IsInfinity(optimum)) return !reading.IsUsable;
        var plan = reading.Value!;
        return plan.IsProvenOptimal && Math.Abs(plan.ReelLength.Value - (optimum / 10)) < 1e-9 && Math.Abs(plan.Bound.Value - plan.ReelLength.Value) < 1e-9
            && (plan.FirstFitM ?? double.MaxValue) >= plan.ReelLength.Value - 1e-9;
    }

    [Property(MaxTest = 60)]
    public bool A_plan_holds_every_piece_once_and_fits_its_reels(int seed)
    {
        var random = new Random(seed);
        var kerf = random.Next(2) * 0.004;
        PieceWanted[] wanted = [.. Enumerable.Range(0, random.Next(1, 7)).Select(i => new PieceWanted($"p{i}", 2 + (random.Next(0, 3000) / 100.0) + (i * 1e-3), random.Next(1, 7), random.Next(0, 2)))];
        var plan = Plan(wanted, [new("big", 100), new("small", 40)], new(kerf, 5, 20_000));
        var fits = plan.Reels.All(r => r.Pieces.Sum(p => p.Count * p.LengthM) + (kerf * (r.Pieces.Sum(p => p.Count) - 1)) <= r.LengthM + 1e-9);
        var all = wanted.All(w => plan.Reels.Sum(r => r.Pieces.Where(p => p.Name == w.Name).Sum(p => p.Count)) == w.Count + w.Spares);
        var bounded = plan.Bound.Value <= plan.ReelLength.Value + 1e-9 && plan.ReelLength.Value <= plan.FirstFitM + 1e-9;
        var pieces = wanted.Sum(w => w.LengthM * (w.Count + w.Spares));
        return fits && all && bounded && Math.Abs(plan.Waste.Value + plan.KeptM + pieces - plan.ReelLength.Value) < 1e-6;
    }

    [Fact]
    public void The_textbook_roll_is_cut_with_the_known_optimum()
    {
        // A classic of the cutting-stock literature (master roll 5600 mm, 13 orders), optimum 73 rolls with waste 0.401 %,
        // from memory.
        (int Width, int Count)[] orders = [(1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12), (2100, 14), (2140, 16), (2150, 18), (2200, 20)];
        var plan = Plan([.. orders.Select(o => new PieceWanted($"{o.Width}", o.Width / 1000.0, o.Count))], [new("roll", 5.6)], new(NodeLimit: 3_000_000));
        Assert.Equal(73 * 5.6, plan.ReelLength.Value, 6);
        Assert.True(plan.IsProvenOptimal);
        Assert.Equal(0.00401, 1 - (orders.Sum(o => o.Width * o.Count) / 1000.0 / plan.ReelLength.Value), 5e-6);
    }

    [Fact]
    public void First_fit_wastes_a_reel_where_the_plan_does_not()
    {
        // The anomaly of first-fit-decreasing (Graham, SIAM J. Appl. Math. 17 (1969), from memory): a reel of 60 does it in
        // three, one of 61 makes it open a fourth.
        PieceWanted[] pieces = [new("a", 44, 1), new("b", 24, 2), new("c", 22, 1), new("d", 21, 1), new("e", 17, 1), new("f", 8, 2), new("g", 6, 2)];
        var plan = Plan(pieces, [new("bar", 61)]);
        Assert.True(plan.IsProvenOptimal);
        Assert.Equal(3 * 61, plan.ReelLength.Value, 9);
        Assert.Equal(4 * 61, plan.FirstFitM!.Value, 9);
    }

    [Fact]
    public void Sixty_radials_come_out_of_the_least_wire()
    {
        var plan = Plan([new("radial", 20.5, 60, 2), new("jumper", 1.2, 16)], [new("drum", 250), new("coil", 100)]);
        Assert.True(plan.IsProvenOptimal);
        Assert.True(plan.ReelLength.Value >= (62 * 20.5) + (16 * 1.2));
    }

    [Theory]
    [InlineData(30, 1, 20, "piece-too-long")]
    [InlineData(-1, 1, 20, "piece-bad")]
    [InlineData(1, 0, 20, "pieces-none")]
    [InlineData(1, 1, 0, "reel-bad")]
    public void What_cannot_be_cut_is_said(double length, int count, double reel, string code) =>
        Assert.Contains(ReelCutting.Plan([new("x", length, count)], [new("r", reel)]).Errors, f => f.Code == code);

    [Fact]
    public void Too_few_reels_are_said() =>
        Assert.Equal("reels-too-few", Assert.Single(ReelCutting.Plan([new("x", 6, 3)], [new("r", 10, 2)]).Errors).Code);
}
