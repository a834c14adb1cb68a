using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Chains;

/// <summary>Looks a guy chain over: its weakest link, its clear length, its turnbuckle's travel and the rules of making it up.</summary>
public static class ChainAnalysis
{
    /// <summary>The caution that goes with every tension in a guy.</summary>
    public const string Caution = "A guy under tension stores energy: stand clear of its line, never slacken one guy alone, and follow the maker's data for every fitting.";

    private static readonly Source Page = Source.Derived("docs/theory/guy-chains.md");

    /// <summary>Examines a chain.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="demand">What is asked of it.</param>
    /// <param name="factors">Factors and limits; the defaults when null.</param>
    public static ChainReport Examine(GuyChain chain, ChainDemand demand, ChainFactors? factors = null)
    {
        factors ??= new ChainFactors();
        var findings = ChainRules.Examine(chain, demand, factors);
        var capacities = Capacities(chain, factors);
        // A fitting that develops the full strand is as strong as it, and then the strand is named.
        var weakest = capacities.OrderBy(c => c.Capacity.Value).ThenBy(c => c.Piece is StrandPiece ? 0 : 1).FirstOrDefault();
        var clear = ClearLength(chain, demand.LengthM);
        var checks = ImmutableArray.CreateBuilder<Check>();
        if (weakest is not null)
        {
            checks.Add(Strength(chain, demand, weakest));
        }

        var strand = Strand(chain);
        if (strand is not null)
        {
            checks.AddRange(SetTension(chain, demand, strand, factors));
            if (chain.Pieces.OfType<TurnbucklePiece>().FirstOrDefault() is { } turnbuckle)
            {
                checks.AddRange(Travel(chain, demand, strand, turnbuckle, factors));
            }
        }

        return new(capacities, weakest, clear, checks.ToImmutable(), findings);
    }

    /// <summary>The even cable that stretches and weighs like the chain; null when the clear length cannot be found or is nothing.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="lengthM">Unstretched length from eye to lug, m.</param>
    public static EquivalentCable? Equivalent(GuyChain chain, double lengthM)
    {
        var length = Trail.Given("unstretched length from anchor eye to mast attachment", "L", lengthM, QuantityKind.Length, FromAnalysis);
        var strands = chain.Pieces.OfType<StrandPiece>().ToArray();
        if (strands.Length == 0 || lengthM <= 0 || (strands.Any(s => s.FixedLengthM is null) && ClearLength(chain, lengthM) is not { Value: > 0 }))
        {
            return null;
        }

        var clear = ClearLength(chain, lengthM)?.Value ?? 0;
        double Length(StrandPiece s) => s.FixedLengthM ?? clear;
        var give = strands.Sum(s => Length(s) / s.AxialStiffnessN);
        var mass = strands.Sum(s => Length(s) * s.MassKgPerM) + chain.Pieces.Sum(p => p.MassKg);
        Trail[] stiff = [length, .. strands.Select(s => Trail.Given($"axial stiffness of {s.Name}", "EAi", s.AxialStiffnessN, QuantityKind.Force, InputSource.Design))];
        return new(
            Trail.Computed("axial stiffness of the guy", "EA", lengthM / give, QuantityKind.Force, "EA = L/Σ(li/EAi)", Page, stiff).Within("hardware and insulators taken as stiff"),
            Trail.Computed("mass per length of the guy", "m", mass / lengthM, QuantityKind.LinearMass, "m = (Σ li·mi + Σ masses of pieces)/L", Page, length)
                .Within("many small masses, or few light ones", MassIsLumpy(chain, mass) ? "A single piece carries more than a fifth of the guy's mass; the sag under it is deeper than an even cable shows." : null));
    }

    private static bool MassIsLumpy(GuyChain chain, double total) => chain.Pieces.Any(p => p is not (StrandPiece or TurnbucklePiece or ShacklePiece) && p.MassKg > 0.2 * total);

    private static ImmutableArray<PieceCapacity> Capacities(GuyChain chain, ChainFactors factors)
    {
        var safety = Trail.Given("factor of safety on breaking strength", "FS", factors.Safety, QuantityKind.Ratio, factors.SafetySource, "changeable");
        var all = ImmutableArray.CreateBuilder<PieceCapacity>();
        for (var i = 0; i < chain.Pieces.Length; i++)
        {
            if (Breaking(chain, i) is { } breaking)
            {
                all.Add(new(
                    chain.Pieces[i], i, breaking,
                    Trail.Computed($"capacity of {chain.Pieces[i].Name}", "Tc", breaking.Value / factors.Safety, QuantityKind.Force, "Tc = Tb/FS", factors.SafetySource, breaking, safety)));
            }
        }

        return all.ToImmutable();
    }

    /// <summary>Breaking strength of the piece at a place; null for pieces that carry nothing themselves.</summary>
    private static Trail? Breaking(GuyChain chain, int place)
    {
        var piece = chain.Pieces[place];
        if (piece is EndFitting fitting)
        {
            // It belongs to the strand on one of its sides, past a thimble or another fitting.
            var strand = NearestStrand(chain, place);
            if (strand is null)
            {
                return null;
            }

            var whole = Trail.Given($"breaking strength of {strand.Name}", "Tb", strand.BreakingN, QuantityKind.Force, InputSource.Design);
            var share = Trail.Given($"share of it that {fitting.Name} holds", "η", fitting.Efficiency, QuantityKind.Ratio, InputSource.Design);
            return Trail.Computed($"strength of {strand.Name} in {fitting.Name}", "Tb", strand.BreakingN * fitting.Efficiency, QuantityKind.Force, "Tb = η·Tb,strand", Source.CommonPractice, share, whole);
        }

        if (double.IsPositiveInfinity(piece.BreakingN))
        {
            return null;
        }

        var breaking = Trail.Given($"breaking strength of {piece.Name}", "Tb", piece.BreakingN, QuantityKind.Force, InputSource.Design, piece.WorkingLoadN is { } w ? FormattableString.Invariant($"its working load is {w / 1000:F1} kN") : null);
        return piece is ShacklePiece { SideLoaded: true }
            ? Trail.Computed(
                $"breaking strength of {piece.Name} pulled from the side", "Tb", 0.5 * piece.BreakingN, QuantityKind.Force, "Tb = 0.5·Tb,in line", Source.FromMemory("ASME B30.26: half the rating at a right angle", "2015"), breaking)
            : breaking;
    }

    internal static StrandPiece? NearestStrand(GuyChain chain, int place)
    {
        for (var off = 1; off < chain.Pieces.Length; off++)
        {
            if (place + off < chain.Pieces.Length && chain.Pieces[place + off] is StrandPiece after)
            {
                return after;
            }

            if (place - off >= 0 && chain.Pieces[place - off] is StrandPiece before)
            {
                return before;
            }
        }

        return null;
    }

    private static StrandPiece? Strand(GuyChain chain) => chain.Pieces.OfType<StrandPiece>().MinBy(s => s.BreakingN);

    private static Check Strength(GuyChain chain, ChainDemand demand, PieceCapacity weakest)
    {
        var tension = Trail.Given("greatest tension", "T", demand.GreatestTensionN, QuantityKind.Force, FromAnalysis);
        return Check.AtMost(
            $"stand.guy.strength[{chain.Name}]", Trade.Stand, $"Guy strength: weakest link is {weakest.Piece.Name}", tension, weakest.Capacity, demand.GoverningCase,
            weakest.Piece is StrandPiece ? "Take the next larger strand, and fittings to match." : $"Take a stronger {weakest.Piece.Name}; the strand itself can carry more.", Caution);
    }

    /// <summary>Strand left between end fittings once all hardware has its length.</summary>
    private static Trail? ClearLength(GuyChain chain, double lengthM)
    {
        var open = chain.Pieces.OfType<StrandPiece>().Where(s => s.FixedLengthM is null).ToArray();
        if (open.Length != 1)
        {
            return null;
        }

        var total = Trail.Given("unstretched length from anchor eye to mast attachment", "L", lengthM, QuantityKind.Length, FromAnalysis);
        var inputs = new List<Trail> { total };
        foreach (var piece in chain.Pieces.Where(p => !ReferenceEquals(p, open[0])))
        {
            var length = Taken(piece);
            if (length.Value > 0)
            {
                inputs.Add(length);
            }
        }

        var clear = lengthM - inputs.Skip(1).Sum(t => t.Value);
        return Trail.Computed($"clear length of {open[0].Name}", "Lc", clear, QuantityKind.Length, "Lc = L - lengths of all other pieces", Page, [.. inputs])
            .Within("more than nothing", clear <= 0 ? "The other pieces are longer than the guy." : null);
    }

    private static Trail Taken(ChainPiece piece) => piece switch
    {
        TurnbucklePiece t => Trail.Computed(
            $"length of {t.Name} as set", "lt", t.ClosedLengthM + (t.OpenShare * t.TakeUpM), QuantityKind.Length, "lt = closed length + open share·take-up", Page,
            Trail.Given("closed length", "lc", t.ClosedLengthM, QuantityKind.Length, InputSource.Design),
            Trail.Given("open share", "o", t.OpenShare, QuantityKind.Ratio, InputSource.Design),
            Trail.Given("take-up", "u", t.TakeUpM, QuantityKind.FineLength, InputSource.Design)),
        StrandPiece s => Trail.Given($"length of {s.Name}", "ls", s.FixedLengthM ?? 0, QuantityKind.Length, InputSource.Design),
        _ => Trail.Given($"length of {piece.Name}", "l", piece.LengthM, QuantityKind.Length, InputSource.Design),
    };

    private static IEnumerable<Check> SetTension(GuyChain chain, ChainDemand demand, StrandPiece strand, ChainFactors factors)
    {
        var set = Trail.Given("set tension", "T0", demand.SetTensionN, QuantityKind.Force, FromAnalysis);
        var breaking = Trail.Given($"breaking strength of {strand.Name}", "Tb", strand.BreakingN, QuantityKind.Force, InputSource.Design);
        var share = Trail.Computed("set tension over breaking strength", "T0/Tb", demand.SetTensionN / strand.BreakingN, QuantityKind.Ratio, "T0/Tb", Page, set, breaking);
        var source = Source.FromMemory("ANSI/TIA-222 commentary: 8 to 15 %, usually 10 %", "2005");
        yield return Check.AtLeast(
            $"stand.guy.set-least[{chain.Name}]", Trade.Stand, "Set tension is not too low", share, Trail.Given("least share", "s1", factors.LeastSetShare, QuantityKind.Ratio, source, "changeable"), "as set",
            "Raise the set tension: a loose guy lets the mast sway and itself gallop.", Caution);
        yield return Check.AtMost(
            $"stand.guy.set-most[{chain.Name}]", Trade.Stand, "Set tension is not too high", share, Trail.Given("greatest share", "s2", factors.GreatestSetShare, QuantityKind.Ratio, source, "changeable"), "as set",
            "Lower the set tension: a tight guy presses the mast down and hums.", Caution);
    }

    private static IEnumerable<Check> Travel(GuyChain chain, ChainDemand demand, StrandPiece strand, TurnbucklePiece turnbuckle, ChainFactors factors)
    {
        var length = Trail.Given("unstretched length", "L", demand.LengthM, QuantityKind.Length, FromAnalysis);
        var stiffness = Trail.Given($"axial stiffness of {strand.Name}", "EA", strand.AxialStiffnessN, QuantityKind.Force, InputSource.Design);
        var set = Trail.Given("set tension", "T0", demand.SetTensionN, QuantityKind.Force, FromAnalysis);
        var hot = Trail.Given("tension at the hottest", "Th", demand.HottestTensionN, QuantityKind.Force, FromAnalysis);
        var cold = Trail.Given("tension at the coldest", "Tc", demand.ColdestTensionN, QuantityKind.Force, FromAnalysis);
        var bedding = Trail.Given("bedding-in of new strand", "b", factors.BeddingStretch, QuantityKind.Ratio, Source.CommonPractice, "changeable");
        var takeUp = Trail.Given("take-up of the turnbuckle", "u", turnbuckle.TakeUpM, QuantityKind.FineLength, InputSource.Design);
        var open = Trail.Given("open share as set", "o", turnbuckle.OpenShare, QuantityKind.Ratio, InputSource.Design);

        var needIn = Trail.Computed(
            "travel wanted to tighten", "din", (Math.Max(0, demand.SetTensionN - demand.HottestTensionN) / strand.AxialStiffnessN * demand.LengthM) + (factors.BeddingStretch * demand.LengthM), QuantityKind.FineLength,
            "din = (T0 - Th)·L/EA + b·L", Page, set, hot, length, stiffness, bedding);
        var haveIn = Trail.Computed("travel left to tighten", "uin", turnbuckle.OpenShare * turnbuckle.TakeUpM, QuantityKind.FineLength, "uin = o·u", Page, open, takeUp);
        yield return Check.AtMost(
            $"stand.guy.take-up[{chain.Name}]", Trade.Build, "Turnbuckle can still tighten at the hottest", needIn, haveIn, "hottest, and once new strand has settled",
            "Set the turnbuckle further open when the guy is made up, or take one with more take-up.", Caution);

        var needOut = Trail.Computed(
            "travel wanted to slacken", "dout", Math.Max(0, demand.ColdestTensionN - demand.SetTensionN) / strand.AxialStiffnessN * demand.LengthM, QuantityKind.FineLength,
            "dout = (Tc - T0)·L/EA", Page, cold, set, length, stiffness);
        var haveOut = Trail.Computed("travel left to slacken", "uout", (1 - turnbuckle.OpenShare) * turnbuckle.TakeUpM, QuantityKind.FineLength, "uout = (1 - o)·u", Page, open, takeUp);
        yield return Check.AtMost(
            $"stand.guy.let-out[{chain.Name}]", Trade.Build, "Turnbuckle can still slacken at the coldest", needOut, haveOut, "coldest",
            "Set the turnbuckle less open when the guy is made up, or take one with more take-up; never run a thread out to its last turns.", Caution);
    }

    private static Source FromAnalysis { get; } = new("second-order analysis of the mast", SourceKind.Derived);
}
